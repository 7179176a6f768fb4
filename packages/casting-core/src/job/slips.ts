import { type Document, isMap, visit } from "yaml";
import { shown } from "../units/parse.js";
import { spaceSentence, UNSPACED } from "./tree.js";

/** What is wrong with a text so that it is not YAML: where, counted from its beginning, and in a sentence. */
export interface Slip {
  offset: number;
  sentence: string;
}

/** An error as the YAML reader tells it, its message on one line. */
interface Told {
  code: string;
  message: string;
  /** Where it gave up, or where a quote opens that it misses the end of. */
  offset: number;
  quote?: number | undefined;
}

/** Errors after which the rest is read as it stands; after any other it is read askew, and what is found there follows from it. */
const PASSED: ReadonlySet<string> = new Set(["TAB_AS_INDENT", "BAD_DQ_ESCAPE"]);

/** No more of them are told, and a text with more is not read to its end: each takes the reader time. */
export const MOST = 20;
/** The reader allows a key no more letters than this. */
const LONGEST_KEY = 1024;
/** A key with its colon, beginning where one may: the text before it, its quote, its name. */
const KEY = /^([^:]*?)(["']?)([^\s:,"'{}[\]]+)\2[ \t]*:(?=\s|$)/;

/**
 * What the YAML reader found wrong, in the order of the text; a quote that nothing closes where it opens, not where it
 * gave up. One mistake makes several errors on its line: the first says what it is.
 */
export function slipsOf(document: Document, text: string, lineOf: (offset: number) => number): Slip[] {
  const errors = document.errors.map(({ code, message, pos: [offset] }) => {
    const quote = message.startsWith("Missing closing") ? opening(document, offset) : undefined;
    return { code, message, offset: quote ?? offset, quote };
  });
  errors.sort((a, b) => a.offset - b.offset || Number(b.quote !== undefined) - Number(a.quote !== undefined));
  const slips = new Map<number, Slip>();
  for (const told of errors) {
    const line = lineOf(told.offset);
    if (slips.has(line) || slips.size >= MOST) continue;
    slips.set(line, slipOf(document, text, told));
    if (!PASSED.has(told.code)) break;
  }
  return [...slips.values()];
}

/** Where the scalar begins that ends at `end`. */
function opening(document: Document, end: number): number | undefined {
  let start: number | undefined;
  visit(document, {
    Scalar(_, { range }) {
      if (range?.[1] === end) start = range[0];
    },
  });
  return start;
}

/** One error of the YAML reader in words of ours. */
function slipOf(document: Document, text: string, told: Told): Slip {
  const { code, message, offset, quote } = told;
  if (quote !== undefined)
    return { offset, sentence: "a quote opens here that nothing closes; close it, or take it away" };
  switch (code) {
    case "MULTIPLE_DOCS":
      return { offset, sentence: "a second document begins here; a job file holds one job, so remove the rest" };
    case "TAB_AS_INDENT":
      return { offset, sentence: "a tab indents this line; use spaces" };
    case "BAD_SCALAR_START":
      return { offset, sentence: `a value cannot begin with ${shown(text[offset]!)}; put it in quotes` };
    default: {
      const sentence = `the text is not YAML (${message}); check quotes, colons and indentation here`;
      return cure(document, text, told) ?? { offset, sentence };
    }
  }
}

/** A slip that many make, by the error and a look at the text where it stands. */
function cure(document: Document, text: string, told: Told): Slip | undefined {
  const { code, message, offset } = told;
  const open = /end with an? ([}\]])$/.exec(message)?.[1];
  if (open !== undefined) return unclosedBracket(document, text, told, open);
  if (/^(?:All \w+ items must start|A block sequence may not|Sequence item without)/.test(message)) {
    const sentence =
      "this line begins in another column than the lines before it that it belongs with; begin them all in the same one";
    return { offset: offset + text.slice(offset).search(/[^ ]|$/), sentence };
  }
  if (message.startsWith("Unexpected ,")) return { offset, sentence: "nothing stands before this comma; remove one" };
  const close = /token in YAML stream: "([}\]])"$/.exec(message)?.[1];
  if (close !== undefined) return { offset, sentence: `this ${close} closes nothing; remove it` };
  const within = isWithin(document, offset);
  const isApart = /^(?:Unexpected .* at node end|Unexpected .*-quoted-scalar token|Missing , between)/.test(message);
  if (within ? isApart || isRunOn(told) : code === "BLOCK_IN_FLOW") return missingComma(text, told);
  if (isApart && /["']$/.test(text.slice(0, offset).trimEnd())) {
    return {
      offset,
      sentence: "text stands here after the quote that ends the value; put all of it in one pair of quotes",
    };
  }
  return isRunOn(told) ? runOn(text, offset) : undefined;
}

/** Whether a value ran on into a key, or a key without its colon into the next. */
function isRunOn({ code, message }: Told): boolean {
  return (
    code === "BLOCK_IN_FLOW" ||
    code === "MULTILINE_IMPLICIT_KEY" ||
    message.startsWith("Nested mappings") ||
    message.startsWith("Implicit map keys need to be followed")
  );
}

/** Whether braces or brackets stand about `offset`. */
function isWithin(document: Document, offset: number): boolean {
  let within = false;
  visit(document, {
    Collection(_, { flow, range }) {
      if (flow && range && range[0] < offset && offset < range[1]) within = true;
    },
  });
  return within;
}

/** A brace or bracket that ends where the reader gave up on it is told where it opens. */
function unclosedBracket(document: Document, text: string, { offset }: Told, close: string): Slip | undefined {
  let start: number | undefined;
  visit(document, {
    Collection(_, node) {
      if (node.flow && isMap(node) === (close === "}") && node.range?.[1] === offset) start = node.range[0];
    },
  });
  if (start === undefined) return undefined;
  const cut = text.slice(offset).trim() === "";
  const fact = cut
    ? `the text ends before the ${text[start]} that opens here is closed`
    : `nothing closes the ${text[start]} that opens here`;
  return { offset: start, sentence: `${fact}; write ${close} where it ends${cut ? ", or copy the file whole" : ""}` };
}

/** What follows on a value within braces or brackets; a value that itself begins as a key does is text with a colon. */
function missingComma(text: string, { code, offset }: Told): Slip {
  const rest = text.slice(offset, offset + LONGEST_KEY);
  const [, before = "", , key] = KEY.exec(rest) ?? [];
  if (code === "BLOCK_IN_FLOW" && before === "")
    return { offset, sentence: colonSentence(/^[^,}\]\n]*/.exec(rest)![0]) };
  const sentence = `a comma is missing before ${key === undefined ? "this" : shown(key)}; write one, or quotes round the whole value`;
  return { offset: offset + before.length, sentence };
}

function colonSentence(value: string): string {
  return `${shown(value.trim())} has a colon in it; put it in quotes if it is one text, or begin a new line, indented, where it is a key and its value`;
}

/** A value that runs on to a colon in its own line or a later one, or a line whose own colon is missing or has no space. */
function runOn(text: string, offset: number): Slip | undefined {
  const before = text.slice(text.lastIndexOf("\n", offset - 1) + 1, offset);
  const line = /^.*/.exec(text.slice(offset))![0].trimEnd();
  const isValue = !/^[\s-]*$/.test(before);
  if (/:(?:\s|$)/.test(line)) return { offset, sentence: colonSentence(line) };
  if (!isValue) {
    const key = UNSPACED.exec(line)?.[1];
    if (key !== undefined) return { offset, sentence: spaceSentence(line, key) };
    const [, word, value] = /^([\w-]+)(?:\s*=\s*|\s+)(\S.*)$/.exec(line) ?? [];
    const such = word === undefined ? "" : `, such as ${shown(`${word}: ${value}`)}`;
    return line.includes(":") ? undefined : { offset, sentence: `this line has no colon; write key: value${such}` };
  }
  const next = KEY.exec(text.slice(offset, offset + LONGEST_KEY));
  if (!next) return undefined;
  const number = text.slice(0, offset).split("\n").length;
  const sentence = `this line is indented further than line ${number}, whose key has its value already; begin both keys in the same column`;
  return { offset: offset + next[1]!.length, sentence };
}

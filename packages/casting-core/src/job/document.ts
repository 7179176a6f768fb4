import { type Document, Lexer, LineCounter, Parser, parseDocument } from "yaml";
import { CastingError } from "../errors.js";
import { MOST, type Slip, slipsOf } from "./slips.js";
import { TOO_DEEP } from "./tree.js";

/** A text read as YAML 1.2, and where in it an offset stands. */
export interface Written {
  document: Document.Parsed;
  /** Line and column of an offset, counted from 1. */
  at(offset: number): { line: number; column: number };
}

/** Nodes within nodes: the reader follows them by calls of its own, and a text must not use up the stack. */
const DEEPEST = 250;
/** More values than this in one pair of brackets are in no job, whose longest list has half as many. */
const LONGEST = 1000;
const TOO_LONG =
  "more than 1,000 values stand within the bracket that opens here; no job has as many, so check that this is the right file";
/** The lexeme before a plain value. */
const PLAIN = "\u001f";
/** How lexemes begin that are values. */
const VALUES = `"'*${PLAIN}`;

/** The document that `text` is. Throws one `invalid` error with what makes it no YAML, each with its place. */
export function documentOf(text: string): Written {
  const counter = new LineCounter();
  const at = (offset: number) => {
    const { line, col } = counter.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const { end, refused } = lookedOver(text, counter);
  const document = parseDocument(refused ? "" : text.slice(0, end), {
    version: "1.2",
    merge: false,
    uniqueKeys: false,
    prettyErrors: false,
  });
  const slips = refused ? [refused] : slipsOf(document, text, (offset) => at(offset).line);
  if (slips.length > 0) {
    const faults = slips.map(({ offset, sentence }) => ({ path: [], text: sentence, ...at(offset) }));
    throw new CastingError("invalid", faults);
  }
  return { document, at };
}

/**
 * How far a text is worth reading: to its end, to where it has slipped too often, or not at all where it nests too deep or
 * a list is too long. A first look, which takes as little however the text is written.
 */
function lookedOver(text: string, counter: LineCounter): { end: number; refused?: Slip } {
  const parser = new Parser(counter.addNewLine);
  counter.addNewLine(0);
  let slips = 0;
  let before = "";
  for (const lexeme of new Lexer().lex(text)) {
    for (const { type } of parser.next(lexeme)) if (type === "error") slips++;
    const end = parser.offset;
    if (parser.stack.length > DEEPEST) return { end, refused: { offset: end, sentence: TOO_DEEP } };
    const top = parser.stack.at(-1);
    if (top?.type === "flow-collection" && top.items.length > LONGEST)
      return { end, refused: { offset: top.offset, sentence: TOO_LONG } };
    if (before === PLAIN) {
      before = VALUES;
      continue;
    }
    // No two values follow each other on a line, nor two commas anywhere.
    if ((isValue(before) && isValue(lexeme)) || (before === "," && lexeme === ",")) slips++;
    if (lexeme.trim() !== "" || lexeme.includes("\n")) before = lexeme;
    if (slips > MOST) return { end };
  }
  return { end: text.length };
}

function isValue(lexeme: string): boolean {
  return lexeme !== "" && VALUES.includes(lexeme[0]!);
}

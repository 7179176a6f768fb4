import { isAlias, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument, type Scalar } from "yaml";
import { CastingError, type Fault } from "../errors.js";
import { shown } from "../units/parse.js";

/** A job as written: scalars as their text, true and false as such. */
export type Raw = string | boolean | Raw[] | { [key: string]: Raw };

type Path = readonly (string | number)[];

/** A job's tree, and where each of its values stands in the text. */
export interface JobTree {
  raw: { [key: string]: Raw };
  /** What cannot be read, value by value; the rest of the tree stands. */
  faults: Fault[];
  /** Line and column, counted from 1, of the value at `path`, or of the nearest thing above it that is there. */
  place(path: Path): { line: number; column: number };
  /** `path` as it stands in the text: a single piece is written without a list. */
  written(path: Path): Path;
}

/** A job file may be this long: more is a mistake, and slow to read. */
const MOST_BYTES = 64 * 1024;
const MOST_LINES = 1000;
const DEEPEST = 8;
const TOO_DEEP = "this is nested deeper than any job; check brackets and indentation";
/** Words that YAML reads as nothing, or as no finite number. */
const NOTHING = /^(?:|~|null|Null|NULL)$/;

/**
 * Reads YAML 1.2 (JSON is part of it) as far as a job needs it: maps, lists and scalars, without anchors, tags,
 * directives or a second document. Throws one `invalid` error where there is no tree at all.
 */
export function readTree(text: string): JobTree {
  const lines = new LineCounter();
  const faults: Fault[] = [];
  const places = new Map<string, number>();
  const at = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const fault = (path: Path, offset: number, sentence: string): void => {
    faults.push({ path, text: sentence, ...at(offset) });
  };
  const whole = unreadable(text);
  if (whole) throw new CastingError("invalid", [{ path: [], text: whole, line: 1, column: 1 }]);

  const document = parseDocument(text, { version: "1.2", lineCounter: lines, merge: false, uniqueKeys: false });
  const seen = new Set<number>();
  for (const error of document.errors) {
    // One mistake makes several errors on its line: the first says what it is.
    const { line } = at(error.pos[0]);
    if (seen.has(line) || seen.size >= 20) continue;
    seen.add(line);
    fault([], error.pos[0], yamlSentence(error.code, error.message));
  }
  if (faults.length > 0) throw new CastingError("invalid", faults);
  const { directives, warnings } = document;
  const unknown = warnings.some((warning) => warning.code === "BAD_DIRECTIVE");
  if (unknown || directives?.yaml.explicit || Object.keys(directives?.tags ?? {}).length > 1) {
    throw new CastingError("invalid", [
      { path: [], text: "a job has no directives such as %YAML; remove that line", line: 1, column: 1 },
    ]);
  }
  const raw = walk(document.contents, [], places, fault);
  if (typeof raw !== "object" || Array.isArray(raw)) {
    if (faults.length === 0)
      fault([], 0, "the job is not a list of keys and values; casting new writes one to start from");
    throw new CastingError("invalid", faults);
  }
  const written = (path: Path): Path =>
    path[0] === "pieces" && path[1] === 0 && !Array.isArray(raw["pieces"]) ? ["pieces", ...path.slice(2)] : path;
  return {
    raw,
    faults,
    written,
    place(wanted) {
      const path = written(wanted);
      for (let length = path.length; length > 0; length--) {
        const offset = places.get(keyOf(path.slice(0, length)));
        if (offset !== undefined) return at(offset);
      }
      return { line: 1, column: 1 };
    },
  };
}

/** Why a text is not even looked at, in one sentence. */
function unreadable(text: string): string | undefined {
  if (text.length > MOST_BYTES || bytesOf(text) > MOST_BYTES) {
    return "the job is longer than 64 KiB; a job takes a page, so check that this is the right file";
  }
  // A line break at the very end begins no line of its own.
  let lines = text.endsWith("\n") ? 0 : 1;
  for (let i = text.indexOf("\n"); i >= 0; i = text.indexOf("\n", i + 1)) lines++;
  if (lines > MOST_LINES)
    return "the job has more than 1,000 lines; a job takes a page, so check that this is the right file";
  if (/^(?:\s|#.*)*$/.test(text.slice(0, 4096)) && text.trim().length < 4096 && !/^[^#\s]/m.test(text)) {
    return "the job is empty; casting new writes one to start from";
  }
  const control = /(?![\t\n\r\u0085])\p{Cc}/u.exec(text);
  if (control) return "the job holds control characters, so it is not a text file; save it as plain UTF-8 text";
  return undefined;
}

/** Length in UTF-8. */
function bytesOf(text: string): number {
  let bytes = text.length;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    if (unit >= 0x80) bytes++;
    // Half of a pair: the two together take four.
    if (unit >= 0x800 && (unit & 0xf800) !== 0xd800) bytes++;
  }
  return bytes;
}

/** What the YAML reader found wrong, in words of ours. */
function yamlSentence(code: string, message: string): string {
  const first = message.split("\n")[0]!.replace(/ at line .*$/, "");
  switch (code) {
    case "RESOURCE_EXHAUSTION":
      return TOO_DEEP;
    case "MULTIPLE_DOCS":
      return "a second document begins here; a job file holds one job, so remove the rest";
    case "TAB_AS_INDENT":
      return "a tab indents this line; use spaces";
    default:
      return `the text is not YAML (${first}); check quotes, colons and indentation here`;
  }
}

function walk(
  node: unknown,
  path: Path,
  places: Map<string, number>,
  fault: (path: Path, offset: number, sentence: string) => void,
): Raw {
  const offset = (node as Node | null)?.range?.[0] ?? 0;
  if (!places.has(keyOf(path))) places.set(keyOf(path), offset);
  const refuse = (sentence: string): Raw => {
    fault(path, offset, sentence);
    return "";
  };
  if (path.length > DEEPEST) return refuse(TOO_DEEP);
  if (isAlias(node) || (node as { anchor?: string } | null)?.anchor !== undefined) {
    return refuse("anchors and aliases (& and *) are not read in a job; write the value out");
  }
  if ((node as Node | null)?.tag !== undefined) return refuse("tags (!) are not read in a job; write the plain value");
  if (isMap(node)) {
    const map: { [key: string]: Raw } = Object.create(null);
    for (const [index, { key, value }] of node.items.entries()) {
      const before = node.items[index - 1];
      const figure = value === null && partedFigure(before?.value, key);
      if (figure) {
        fault(
          [...path, textOf(before!.key as Scalar)],
          ((before!.key as Node).range ?? [offset])[0],
          commaSentence(figure),
        );
        continue;
      }
      const name = isScalar(key) ? textOf(key) : undefined;
      const start = (key as Node | null)?.range?.[0] ?? offset;
      if (name === undefined || (key as Node).tag !== undefined || (key as { anchor?: string }).anchor !== undefined) {
        fault(path, start, "a key here is not a plain word; write key: value");
        continue;
      }
      const inner = [...path, name];
      if (Object.hasOwn(map, name)) {
        fault(inner, start, "the same key stands twice; keep one of them");
        continue;
      }
      places.set(keyOf(inner), start);
      map[name] = walk(value, inner, places, fault);
    }
    return map;
  }
  if (isSeq(node)) {
    return node.items.map((item, index) => {
      const figure = partedFigure(item, node.items[index + 1]);
      // [30,45] are two numbers, [4,5 kg] is one mass.
      if (figure && /\p{L}|["'%]/u.test(figure)) fault([...path, index], offset, commaSentence(figure));
      return walk(item, [...path, index], places, fault);
    });
  }
  if (isScalar(node)) {
    if (typeof node.value === "boolean") return node.value;
    if (node.type === "PLAIN" && NOTHING.test(textOf(node)))
      return refuse("there is no value; write one, or remove the key");
    return textOf(node);
  }
  return refuse("there is no value; write one, or remove the key");
}

/** A figure with a decimal comma that braces or brackets part into two, `4` and `5`: its text, or nothing. */
function partedFigure(before: unknown, after: unknown): string | undefined {
  if (!isScalar(before) || !isScalar(after) || before.type !== "PLAIN" || after.type !== "PLAIN") return undefined;
  if (!before.range || before.range[1] + 1 !== after.range?.[0]) return undefined;
  const [whole, rest] = [textOf(before), textOf(after)];
  return /^[-+]?\d+$/.test(whole) && /^\d+(?:\s*[\p{L}"'%]|$)/u.test(rest) ? `${whole},${rest}` : undefined;
}

function commaSentence(figure: string): string {
  return `${shown(figure)} has a decimal comma; write it with a point, ${shown(figure.replace(",", "."))}, or a space after the comma where two values are meant`;
}

/** A scalar as it was written: numbers keep their digits. */
function textOf(scalar: Scalar): string {
  return typeof scalar.value === "string" ? scalar.value : (scalar.source ?? String(scalar.value));
}

function keyOf(path: Path): string {
  return path.map((part) => `${typeof part === "number" ? "#" : "."}${part}`).join("\u0000");
}

/** `value` in a sentence: lists and maps by their kind. */
export function shownRaw(value: unknown): string {
  if (Array.isArray(value)) return "a list";
  return typeof value === "object" && value !== null ? "a list of keys" : shown(String(value));
}

import { CastingError, type Fault } from "../errors.js";
import { shown } from "../units/parse.js";
import { documentOf } from "./document.js";
import { keyOf, type Path, type Raw, walk } from "./tree.js";

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

/**
 * Reads YAML 1.2 (JSON is part of it) as far as a job needs it: maps, lists and scalars, without anchors, tags,
 * directives or a second document. Throws one `invalid` error where there is no tree at all.
 */
export function readTree(text: string): JobTree {
  const whole = unreadable(text);
  if (whole) throw new CastingError("invalid", [{ path: [], text: whole, line: 1, column: 1 }]);

  const { document, at } = documentOf(text);
  const faults: Fault[] = [];
  const places = new Map<string, number>();
  const fault = (path: Path, offset: number, sentence: string): void => {
    faults.push({ path, text: sentence, ...at(offset) });
  };
  const { directives, warnings } = document;
  const unknown = warnings.some((warning) => warning.code === "BAD_DIRECTIVE");
  if (unknown || directives?.yaml.explicit || Object.keys(directives?.tags ?? {}).length > 1) {
    throw new CastingError("invalid", [
      { path: [], text: "a job has no directives such as %YAML; remove that line", line: 1, column: 1 },
    ]);
  }
  const raw = walk(document.contents, [], { text, places, fault });
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
  if (/^\s*\{\s*"format":\s*"casting-plan\//.test(text)) {
    return `this is a plan, not a job; name the job it was made from, or save what stands in it under "job" as a job of its own`;
  }
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

/** `value` in a sentence: lists and maps by their kind. */
export function shownRaw(value: unknown): string {
  if (Array.isArray(value)) return "a list";
  return typeof value === "object" && value !== null ? "a list of keys" : shown(String(value));
}

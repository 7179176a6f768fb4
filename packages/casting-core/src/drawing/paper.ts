import { CastingError } from "../errors.js";
import type { Units } from "../job/types.js";
import { paperNamed } from "../papers.js";
import { parseLength } from "../units/parse.js";
import { CHECK, MARGIN } from "./block.js";

/** A paper to print on, mm, upright; `full`: each sheet on a page of its own size. */
export type PrintPaper = { full: true } | { full?: false; name: string; width: number; height: number };

/** Between the drawing on a page and its lower margin: the words. */
export const FOOTER = 26;

/** The paper of a job's `print.paper`. Throws `invalid` where it is unknown or too small for the check squares. */
export function paperOf(text: string, units: Units): PrintPaper {
  if (text === "full") return { full: true };
  const known = paperNamed(text);
  if (known) return known;
  const [first, second, more] = text.split(/x/i);
  if (first === undefined || second === undefined || more !== undefined) {
    throw refused(`"${text}" is not a paper that is known; write a name such as A4, or WIDTHxHEIGHT`);
  }
  const unit = /[a-z"]+\s*$/i.exec(second)?.[0] ?? "";
  const width = parseLength(/[a-z"]\s*$/i.test(first) ? first : `${first.trim()}${unit}`, units);
  const height = parseLength(second, units);
  const least = Math.ceil(CHECK.inch + 2 * MARGIN);
  if (Math.min(width, height) < least || Math.max(width, height) < least + FOOTER) {
    throw refused(
      `paper of ${text} is too small for the check squares; it takes ${least} x ${least + FOOTER} mm or more`,
    );
  }
  if (Math.max(width, height) > 5000)
    throw refused(`paper of ${text} is larger than the 5000 mm that a page may have; check its unit`);
  return { name: text, width: Math.min(width, height), height: Math.max(width, height) };
}

function refused(text: string): CastingError {
  return new CastingError("invalid", [{ path: ["print", "paper"], text }]);
}

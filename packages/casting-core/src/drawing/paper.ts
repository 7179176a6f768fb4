import { CastingError } from "../errors.js";
import type { Units } from "../job/types.js";
import { paperNamed, paperSize } from "../papers.js";

/** A paper to print on, mm, upright; `full`: each sheet on a page of its own size. */
export type PrintPaper = { full: true } | { full?: false; name: string; width: number; height: number };

/** Between the drawing on a page and its lower margin: the words. */
export const FOOTER = 26;

/** The paper of a job's `print.paper`. Throws `invalid` where it is none, as a job's reading does before. */
export function paperOf(text: string, units: Units): PrintPaper {
  if (text === "full") return { full: true };
  const known = paperNamed(text);
  if (known) return known;
  const size = paperSize(text, units);
  if (size) return { name: text, width: size[0], height: size[1] };
  const fault = `"${text}" is not a paper that is known; write a name such as A4, or WIDTHxHEIGHT`;
  throw new CastingError("invalid", [{ path: ["print", "paper"], text: fault }]);
}

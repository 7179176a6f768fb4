import type { Units } from "../job/types.js";
import { type Note, note } from "../notes.js";
import { fineLength } from "../units/figure-text.js";
import type { Blank } from "./types.js";
import { sagittaDoubt, uncertaintyText } from "./words.js";

/** A way to the target of which more than this share is in doubt is not known well enough to grind on (common practice). */
const DOUBTED = 0.5;

/** What the maker should know of the glass as it was measured. */
export function blankNotes(blank: Blank, units: Units): Note[] {
  const { sagitta, target, measured } = blank;
  const doubt = sagittaDoubt(blank);
  if (!measured || !target || doubt === undefined) return [];
  const left = Math.abs(target.sagitta - sagitta);
  if (doubt < DOUBTED * left) return [];
  const text = `The sagitta still to go, ${fineLength(left, units)}, is known only give or take ${fineLength(doubt, units)}, as the radius is give or take ${uncertaintyText(measured, units)}: measure better before grinding on it, with more readings, a finer dial, or a wider instrument whose size is well known.`;
  return [note("warning", "target-in-doubt", text)];
}

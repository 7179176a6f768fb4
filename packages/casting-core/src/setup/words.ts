import type { Job } from "../job/types.js";
import type { Note } from "../notes.js";
import { followsText } from "../units/figure-text.js";
import { lengthText } from "../units/length-text.js";
import { matchOfPass } from "./pass.js";
import type { SetupWear } from "./types.js";

/** What the pass does to the curve and, with a target, whether that leads to it: by middle and edge, and by its whole shape. */
export function passText(wear: SetupWear): string {
  const does = `${wear.does} the curve`;
  if (!wear.toward) return does;
  const leads = { toward: "toward", away: "away from", neither: "neither toward nor away from" }[wear.toward];
  return `${does}, ${leads} the target in middle against edge; judged by all zones it ${followsText(matchOfPass(wear))}`;
}

/** A note of the first pass. */
export function note(level: Note["level"], code: string, text: string): Note {
  return { code, level, text };
}

/** A length to a hundredth of a millimetre, in the job's units. */
export function words(job: Job, mm: number): string {
  return lengthText(Math.round(mm * 100) / 100, job.units);
}

import type { Blank } from "../blank/types.js";
import type { Job } from "../job/types.js";
import type { Setup, SetupWear } from "./types.js";

/** Standard errors that the range spans on each side: about 95 % (JCGM 100:2008, 6.2). */
const COVERAGE = 2;

/**
 * Minutes of this pass until the target, from the maker's own measured pair alone: the sagitta changes in proportion to
 * the time (F. W. Preston's relation at a constant load and speed). Nothing without a target and a rate, and nothing
 * where the pass measured led away from the target, or this one is predicted to: then it is not the pass measured. A
 * change that its error swallows is refused with the job.
 */
export function timeTo(
  { setup: { rate } }: Pick<Job, "setup">,
  blank: Blank,
  { toward }: Pick<SetupWear, "toward">,
): Setup["time"] {
  if (!rate || toward === "away") return undefined;
  const change = Math.abs(rate.change);
  const error = COVERAGE * rate.error;
  if (!blank.target) return undefined;
  const left = blank.target.sagitta - blank.sagitta;
  if (left * rate.change <= 0) return undefined;
  const minutes = (per: number) => (Math.abs(left) / per) * rate.minutes;
  return { minutes: minutes(change), least: minutes(change + error), most: minutes(change - error) };
}

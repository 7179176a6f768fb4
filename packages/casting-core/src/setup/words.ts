import type { Curve, Job, Units } from "../job/types.js";
import { atLeast } from "../units/bound-text.js";
import { closeLengths, followsText } from "../units/figure-text.js";
import { KEPT } from "./grades.js";
import type { Bevel, Place, SetupWear } from "./types.js";

/** A run as it is written in a job: `an offset of 50 mm with no stroke`. */
export function placeText({ offset, stroke }: Place, units: Units): string {
  const [at, along] = closeLengths([offset, stroke], units);
  return `an offset of ${at} with ${stroke > 0 ? `a stroke of ${along}` : "no stroke"}`;
}

/** What a pass makes of a face that is flat. */
const OF_FLAT = { deepens: "hollows the flat face", flattens: "bulges the flat face", keeps: "keeps the face flat" };

/** What the pass does to the curve and, with a target, whether that leads to it: by middle and edge, and by its whole shape. */
export function passText(wear: SetupWear, curve: Curve): string {
  const does = curve === "flat" ? OF_FLAT[wear.does] : `${wear.does} the curve`;
  if (!wear.toward) return does;
  const leads = { toward: "toward", away: "away from", neither: "neither toward nor away from" }[wear.toward];
  // Plans of earlier versions have no such figure.
  const judged = wear.match === undefined ? "" : `; judged by all zones it ${followsText(wear.match)}`;
  return `${does}, ${leads} the target in middle against edge${judged}`;
}

/** A leg wider than this share of the blank's diameter takes too much of its face to be cut at once (common practice). */
const WIDE = 1 / 20;

/** Whether a bevel of `leg` mm may be cut at once. */
export function isBevel(leg: number, { blank }: Pick<Job, "blank">): boolean {
  return leg <= WIDE * blank.diameter;
}

/** Of a blank too small to bear a bevel of `leg` mm at once: what is kept up instead. Nothing where it bears it. */
export function keptUp(leg: number, job: Pick<Job, "blank" | "units">): string | undefined {
  return isBevel(leg, job) ? undefined : `${atLeast(KEPT, job.units)} at all times, renewed as it wears`;
}

/** How a front bevel that does not last is renewed: once, `before` a grain that is named, or as it wears. */
export function renewalText(
  { needed, renewTo = needed }: Bevel,
  job: Pick<Job, "blank" | "units">,
  before: string,
): string {
  const kept = keptUp(renewTo, job);
  return kept ? `keep ${kept}` : `renew it to ${atLeast(renewTo, job.units)} before ${before}`;
}

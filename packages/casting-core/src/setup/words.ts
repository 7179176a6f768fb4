import type { Curve, Job, Units } from "../job/types.js";
import { atLeast, atMost } from "../units/bound-text.js";
import { closeLengths, followsText, meanText, minutesText, shareText, timesText } from "../units/figure-text.js";
import { KEPT } from "./grades.js";
import { isHard } from "./pass.js";
import type { Bevel, Place, Setup, SetupWear, SweepRow } from "./types.js";

/** A run as it is written in a job: `an offset of 50 mm with no stroke`. */
export function placeText({ offset, stroke }: Place, units: Units): string {
  const [at, along] = closeLengths([offset, stroke], units);
  return `an offset of ${at} with ${stroke > 0 ? `a stroke of ${along}` : "no stroke"}`;
}

/** What the mirror's edge bears, and the overhang from which on the tool lifts. */
export function edgeText({ edgePressure, liftsAt }: Pick<Setup, "edgePressure" | "liftsAt">, units: Units): string {
  return `${meanText(edgePressure)}; the far side lifts from ${atMost(liftsAt, units)} on`;
}

/** What another run has the mirror's edge bear: `1.45 x`, and where it is, `1.62 x, too much`. */
export function runEdgeText(run: Pick<SweepRow, "edgePressure">): string {
  return `${timesText(run.edgePressure)}${isHard(run) ? ", too much" : ""}`;
}

/** How much more a run takes of the mirror's middle than of its edge, see SetupWear.bend: `+12.3 %`. */
export function bendText({ bend }: Pick<SweepRow, "bend">): string {
  return `${bend > 0 ? "+" : ""}${shareText(bend)}`;
}

/** What a time to the target rests on, and how far off it may be. */
export function rateText({ least, most }: NonNullable<Setup["time"]>): string {
  return `by the rate measured, ${minutesText(least)} to ${minutesText(most)} at twice its error`;
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

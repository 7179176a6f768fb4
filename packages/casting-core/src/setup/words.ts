import type { Curve } from "../job/types.js";
import { followsText } from "../units/figure-text.js";
import type { SetupWear } from "./types.js";

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

import { followsText } from "../units/figure-text.js";
import { matchOfPass } from "./pass.js";
import type { SetupWear } from "./types.js";

/** What the pass does to the curve and, with a target, whether that leads to it: by middle and edge, and by its whole shape. */
export function passText(wear: SetupWear): string {
  const does = `${wear.does} the curve`;
  if (!wear.toward) return does;
  const leads = { toward: "toward", away: "away from", neither: "neither toward nor away from" }[wear.toward];
  return `${does}, ${leads} the target in middle against edge; judged by all zones it ${followsText(matchOfPass(wear))}`;
}

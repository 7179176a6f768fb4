import type { Tool } from "../../blank/types.js";
import type { Job } from "../../job/types.js";
import { random } from "../../random.js";
import { sinCos, TAU } from "../../trig.js";
import { check } from "../check.js";
import { fieldOf } from "../field.js";
import type { PlacedPiece, Quality } from "../types.js";
import { RINGS, radialVariation, ringCoverage } from "./rings.js";
import { symmetry } from "./symmetry.js";

/** Draws of the hand come from a stream of their own, so that they shift nothing else. */
const STREAM = 1000;

/**
 * What a layout becomes when a person lays each piece up to `job.layout.hand` mm off, anywhere in that circle alike
 * (a seeded simulation). Nothing where the hand is 0: machines and jigs lay true.
 */
export function byHandOf(job: Job, tool: Tool, pieces: readonly PlacedPiece[]): Quality["byHand"] {
  const { hand, seed } = job.layout;
  if (hand === 0) return undefined;
  const source = random(seed, STREAM);
  const laid = pieces.map((piece): PlacedPiece => {
    const [s, c] = sinCos(TAU * source.next());
    const off = hand * Math.sqrt(source.next());
    const [dx, dy] = [off * c, off * s];
    return {
      ...piece,
      x: piece.x + dx,
      y: piece.y + dy,
      outline: piece.outline.map(([x, y]) => [x + dx, y + dy]),
    };
  });
  const radius = tool.diameter / 2;
  const { gapMin, rimMin } = check(laid, fieldOf(job, tool), job.layout.gap + hand);
  return {
    ...(pieces.length > 1 ? { gapMin } : {}),
    rimMin,
    radialVariation: radialVariation(ringCoverage(laid, radius, RINGS)),
    symmetry: symmetry(laid, radius),
  };
}

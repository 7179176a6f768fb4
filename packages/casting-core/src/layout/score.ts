import type { Pattern } from "./quality/pattern.js";
import { radialVariation } from "./quality/rings.js";

/** A likeness up to this cannot be told from chance by eye (common practice). */
const SYMMETRY_FREE = 0.05;

/** Rings that differ by no more are even: no piece is given up for less (common practice). */
const VARIATION_FREE = 0.005;

/** What a unit of variation or symmetry above the free part is worth in shares of the count. */
const PER_VARIATION = 6;
const PER_SYMMETRY = 1;

/**
 * What is judged poor, so that one more start is worth its time: rings or turns that a person would see on the glass.
 * Fewer pieces make coarser rings: the variation allowed grows as 1 / √count, 0.017 for 225 pieces.
 */
const POOR_VARIATION = 0.25;

/**
 * How good a start came out, the larger the better: the pieces laid, each counted as one, less what unevenness and
 * symmetry would cost. One piece in 170 weighs as much as 0.001 of radial variation: the pattern prints its rings into
 * the glass, a piece less only wears the tool a little sooner. Divided by what they cost, not lessened by it: of a few
 * pieces the rings are always so coarse that nothing would be left of the count, and fewer pieces would be better. `target`: what the rings are meant to be covered, see targetOf.
 */
export function score(
  count: number,
  { rings, symmetry }: Pattern,
  target?: Float64Array,
): { score: number; poor: boolean } {
  const variation = radialVariation(rings, target);
  const costs =
    PER_VARIATION * Math.max(0, variation - VARIATION_FREE) + PER_SYMMETRY * Math.max(0, symmetry - SYMMETRY_FREE);
  return {
    score: count / (1 + costs),
    poor: variation * Math.sqrt(count) > POOR_VARIATION || symmetry > SYMMETRY_FREE,
  };
}

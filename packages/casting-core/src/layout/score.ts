import { RINGS, radialVariation, ringCoverage } from "./rings.js";
import { symmetry } from "./symmetry.js";
import type { PlacedPiece } from "./types.js";

/** A likeness up to this cannot be told from chance by eye (common practice). */
const SYMMETRY_FREE = 0.05;

/** What a unit of variation, or of symmetry above the free part, is worth in shares of the count. */
const PER_VARIATION = 2;
const PER_SYMMETRY = 1;

/**
 * How good a start came out, the larger the better: the pieces laid, each counted as one, less what unevenness and
 * symmetry would cost. One piece in 200 weighs as much as 0.0025 of radial variation: the pattern prints its rings into
 * the glass, a piece less only wears the tool a little sooner.
 */
export function score(pieces: readonly PlacedPiece[], radius: number): number {
  const variation = radialVariation(ringCoverage(pieces, radius, RINGS));
  const likeness = Math.max(0, symmetry(pieces, radius) - SYMMETRY_FREE);
  return pieces.length * (1 - PER_VARIATION * variation - PER_SYMMETRY * likeness);
}

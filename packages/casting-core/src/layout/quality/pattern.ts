import type { PlacedPiece } from "../types.js";
import { RINGS, ringCoverage } from "./rings.js";
import { symmetry } from "./symmetry.js";

/** What a pattern would print into the glass: starts are compared by it, and the plan tells it. */
export interface Pattern {
  /** Share of each ring of the tool that is covered, see ringCoverage. */
  rings: Float64Array;
  /** Likeness to itself turned, see symmetry. */
  symmetry: number;
}

/** The pattern of pieces on a tool of `radius` mm. */
export function patternOf(pieces: readonly PlacedPiece[], radius: number): Pattern {
  return { rings: ringCoverage(pieces, radius, RINGS), symmetry: symmetry(pieces, radius) };
}

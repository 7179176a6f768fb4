import type { Outline } from "../geometry/types.js";

/** A piece where it lies. x, y: centroid, whole micrometres in mm; outline: true corners rounded to 1 µm. */
export interface PlacedPiece {
  /** From 1, in the order of laying. */
  id: number;
  kind: number;
  item?: string;
  x: number;
  y: number;
  /** Degrees counter-clockwise from the job's pose. */
  angle: number;
  outline: Outline;
  /** Only for a round piece. */
  radius?: number;
}

/** Where every piece lies, seen from the back, and how good that is. Lengths mm. */
export interface Layout {
  seed: number;
  /** The asked gap, mm; `hand` is added to it in laying out. */
  gap: number;
  hand: number;
  pieces: PlacedPiece[];
  /** What is left of each kind's stock; empty in a mix with shares, which say how many of each are laid. */
  unplaced: { kind: number; count: number }[];
  quality: Quality;
}

/** How good the layout is; each figure is defined in the contract of the plan. */
export interface Quality {
  count: number;
  coverage: number;
  hardCoverage: number;
  /** Absent for a single piece. */
  gapMin?: number;
  rimMin: number;
  /** Absent for mixes. */
  latticeCount?: number;
  radialVariation: number;
  symmetry: number;
  /** Predicted for the job's set-up by Preston's relation, see wearOf. */
  zoning: number;
  offCentre: number;
  /** What the figures become when a person lays the pieces (simulated); absent where `hand` is 0. */
  byHand?: { gapMin?: number; rimMin: number; radialVariation: number; symmetry: number };
}

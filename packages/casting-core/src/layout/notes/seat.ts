import type { Tool } from "../../blank/types.js";
import type { Curve } from "../../job/types.js";
import type { PieceKind } from "../../pieces/types.js";
import { asin, hypot } from "../../trig.js";
import type { PlacedPiece } from "../types.js";

/** How flat pieces sit on curved glass. */
export interface Seat {
  /** By kind: height of the hollow under a flat piece, µm, and whether it rocks (convex: it touches in the middle only). */
  hollows: { kind: number; hollow: number; rocks: boolean }[];
  /** How much nearer a piece and its nearest neighbour stand at their backs than at the glass, at most, mm; negative where they spread. */
  lean: number;
  /** How much longer the way along the glass is than across, from the axis to the outermost centroid, mm. */
  film: number;
}

/**
 * A flat piece that bears at the radius b on glass of radius R leaves a hollow of b² / 2R (geometry, the sagitta of a
 * shallow cap): a nut by its bearing ring, others by their corners. Pieces stand square to the glass, so on concave glass
 * their backs lean together: by distance × thickness / R between two neighbours.
 */
export function seatOf(curve: Curve, tool: Tool, kinds: readonly PieceKind[], pieces: readonly PlacedPiece[]): Seat {
  const radius = tool.curveRadius;
  if (radius === undefined)
    return { hollows: kinds.map(({ kind }) => ({ kind, hollow: 0, rocks: false })), lean: 0, film: 0 };
  const hollows = kinds.map(({ kind, bearing, reach }) => {
    const bears = bearing ? bearing.outer / 2 : reach;
    return { kind, hollow: (bears * bears * 1000) / (2 * radius), rocks: curve === "convex" };
  });
  const thickest = Math.max(...kinds.map((kind) => kind.thickness));
  const sign = curve === "convex" ? -1 : 1;
  const farthest = pieces.reduce((most, { x, y }) => Math.max(most, hypot(x, y)), 0);
  return {
    hollows,
    lean: (sign * spacingOf(pieces) * thickest) / radius,
    film: radius * asin(Math.min(1, farthest / radius)) - farthest,
  };
}

/** Largest distance from a piece to its nearest neighbour, mm: neighbours farther apart lean more. */
function spacingOf(pieces: readonly PlacedPiece[]): number {
  return pieces
    .map((piece) => nearestOf(piece, pieces))
    .reduce((most, distance) => (distance < Infinity ? Math.max(most, distance) : most), 0);
}

function nearestOf(piece: PlacedPiece, pieces: readonly PlacedPiece[]): number {
  let least = Infinity;
  for (const other of pieces) {
    if (other === piece) continue;
    const dx = other.x - piece.x;
    const dy = other.y - piece.y;
    const squared = dx * dx + dy * dy;
    if (squared < least) least = squared;
  }
  return Math.sqrt(least);
}

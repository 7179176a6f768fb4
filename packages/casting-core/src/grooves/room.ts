import { farthest, pointToSegment } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";
import type { PlacedPiece } from "../layout/types.js";

/** Least distance from the line through `points` to a piece, mm; 0 where it touches. The line does not cross the piece. */
export function lineToPiece(points: readonly Point[], piece: PlacedPiece): number {
  let least = Infinity;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1]!;
    const b = points[i]!;
    if (piece.radius !== undefined) {
      least = Math.min(least, pointToSegment([piece.x, piece.y], a, b) - piece.radius);
      continue;
    }
    let previous = piece.outline[piece.outline.length - 1]!;
    for (const corner of piece.outline) {
      least = Math.min(
        least,
        pointToSegment(corner, a, b),
        pointToSegment(a, previous, corner),
        pointToSegment(b, previous, corner),
      );
      previous = corner;
    }
  }
  return Math.max(0, least);
}

/** The same from the nearest of many pieces; only those that can be nearest are measured. */
export function lineToNearest(points: readonly Point[], pieces: readonly PlacedPiece[]): number {
  let least = Infinity;
  const [ax, ay] = points[0]!;
  const spread = farthest(points.map(([x, y]): Point => [x - ax, y - ay]));
  for (const piece of pieces) {
    const reach = piece.radius ?? farthest(piece.outline.map(([x, y]): Point => [x - piece.x, y - piece.y]));
    const limit = least + reach + spread;
    const dx = piece.x - ax;
    const dy = piece.y - ay;
    if (dx * dx + dy * dy < limit * limit) least = Math.min(least, lineToPiece(points, piece));
  }
  return least;
}

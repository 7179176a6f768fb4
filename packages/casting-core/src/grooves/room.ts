import Flatbush from "flatbush";
import { pointToSegment } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";
import type { PlacedPiece } from "../layout/types.js";

/** Least distance from the line through `points` to a piece, mm; 0 where it touches or crosses it. */
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
    let before = side(a, b, previous);
    for (const corner of piece.outline) {
      const after = side(a, b, corner);
      if (before * after < 0 && side(previous, corner, a) * side(previous, corner, b) < 0) return 0;
      before = after;
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

/** Twice the area of the triangle a, b, c; positive where c lies to the left of the way from a to b. */
function side([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number {
  return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
}

/** Measures from lines to the nearest of many pieces. */
export interface Surroundings {
  /** Least distance from the line to any piece, mm, or `limit` where none is nearer. */
  within(points: readonly Point[], limit: number): number;
  /** Least distance from the line to any piece, mm. */
  nearest(points: readonly Point[]): number;
}

/** `pieces`, at least one, ready to be measured to. */
export function surroundingsOf(pieces: readonly PlacedPiece[]): Surroundings {
  const index = new Flatbush(pieces.length);
  for (const { outline } of pieces) {
    const xs = outline.map(([x]) => x);
    const ys = outline.map(([, y]) => y);
    index.add(Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys));
  }
  index.finish();
  const within = (points: readonly Point[], limit: number): number => {
    const xs = points.map(([x]) => x);
    const ys = points.map(([, y]) => y);
    const found = index.search(
      Math.min(...xs) - limit,
      Math.min(...ys) - limit,
      Math.max(...xs) + limit,
      Math.max(...ys) + limit,
    );
    return found.reduce((least, piece) => Math.min(least, lineToPiece(points, pieces[piece]!)), limit);
  };
  return {
    within,
    nearest: (points) => {
      for (let limit = 8; ; limit *= 2) {
        const least = within(points, limit);
        if (least < limit) return least;
      }
    },
  };
}

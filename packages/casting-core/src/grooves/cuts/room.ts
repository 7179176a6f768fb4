import Flatbush from "flatbush";
import { boxOf } from "../../geometry/polygon.js";
import type { Outline, Point } from "../../geometry/types.js";
import type { PlacedPiece } from "../../layout/types.js";

/** Least distance from the line through `points` to a piece, mm; 0 where it touches or crosses it. */
export function lineToPiece(points: readonly Point[], piece: PlacedPiece): number {
  let least = Infinity;
  let ax = points[0]![0];
  let ay = points[0]![1];
  for (let i = 1; i < points.length && least > 0; i++) {
    const to = points[i]!;
    const squared =
      piece.radius === undefined
        ? partToOutline(ax, ay, to[0], to[1], piece.outline)
        : pointToPart(piece.x, piece.y, ax, ay, to[0], to[1]);
    least = Math.min(least, squared);
    ax = to[0];
    ay = to[1];
  }
  return Math.max(0, Math.sqrt(least) - (piece.radius ?? 0));
}

/** Least squared distance between the straight part from a to b and an outline's sides; 0 where it crosses one. */
function partToOutline(ax: number, ay: number, bx: number, by: number, outline: Outline): number {
  const dx = bx - ax;
  const dy = by - ay;
  let least = Infinity;
  let corner = outline[outline.length - 1]!;
  let px = corner[0];
  let py = corner[1];
  let before = dx * (py - ay) - dy * (px - ax);
  for (let n = 0; n < outline.length; n++) {
    corner = outline[n]!;
    const cx = corner[0];
    const cy = corner[1];
    // On which side of the part the corner lies, and on which side of the outline's side the part's ends.
    const after = dx * (cy - ay) - dy * (cx - ax);
    if (before * after < 0) {
      const ofA = (cx - px) * (ay - py) - (cy - py) * (ax - px);
      const ofB = (cx - px) * (by - py) - (cy - py) * (bx - px);
      if (ofA * ofB < 0) return 0;
    }
    least = Math.min(
      least,
      pointToPart(cx, cy, ax, ay, bx, by),
      pointToPart(ax, ay, px, py, cx, cy),
      pointToPart(bx, by, px, py, cx, cy),
    );
    before = after;
    px = cx;
    py = cy;
  }
  return least;
}

/** Squared distance of (x, y) from the straight part from a to b: without arrays, as it is asked a million times. */
function pointToPart(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const squared = dx * dx + dy * dy;
  const t = squared > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / squared)) : 0;
  const ox = x - ax - t * dx;
  const oy = y - ay - t * dy;
  return ox * ox + oy * oy;
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
    index.add(...boxOf(outline));
  }
  index.finish();
  const within = (points: readonly Point[], limit: number): number => {
    const [left, bottom, right, top] = boxOf(points);
    const found = index.search(left - limit, bottom - limit, right + limit, top + limit);
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

import type { Outline } from "../../geometry/types.js";
import { atan2, degrees, radians, sinCos } from "../../trig.js";
import type { PlacedPiece } from "../types.js";
import { type Bed, piecesOf } from "./bed.js";

/**
 * What the grid can take from a gap, mm: each outline's corners move by up to 1.4 µm, its centroid's rounding and their
 * own together; the rest is the overlap that settling leaves.
 */
export const MARGIN = 0.0034;

/**
 * The pieces of `bed` on the grid that is written out: centroids in whole micrometres, angles in millionths of a degree
 * within one fold of the shape, corners worked out from those and rounded to whole micrometres. Ids are 1, 2, … in the
 * bed's order.
 */
export function snap(bed: Bed): PlacedPiece[] {
  const pieces: PlacedPiece[] = [];
  const laid = piecesOf(bed);
  for (let i = 0; i < laid.count; i++) {
    const kind = bed.shapes.kinds[laid.kind[i]!]!;
    const x = micrometre(laid.x[i]!);
    const y = micrometre(laid.y[i]!);
    const angle = Number.isFinite(kind.fold) ? snapAngle(laid.sine[i]!, laid.cosine[i]!, 360 / kind.fold) : 0;
    const piece: PlacedPiece = {
      id: i + 1,
      kind: kind.kind,
      x,
      y,
      angle,
      outline: laidOutline(kind.outline, x, y, angle),
    };
    if (kind.item !== undefined) piece.item = kind.item;
    // To a millionth of a millimetre, so that every format writes the very number that is proved.
    if (kind.radius !== undefined) piece.radius = Math.round(kind.radius * 1e6) / 1e6;
    pieces.push(piece);
  }
  return pieces;
}

/** The true `outline` turned by `angle` degrees and moved to (x, y), corners rounded to 1 µm. */
export function laidOutline(outline: Outline, x: number, y: number, angle: number): Outline {
  const [s, c] = sinCos(radians(angle));
  return outline.map(([px, py]) => [micrometre(x + c * px - s * py), micrometre(y + s * px + c * py)]);
}

/** `length` mm rounded to whole micrometres, never −0. */
function micrometre(length: number): number {
  return Math.round(length * 1000) / 1000 + 0;
}

function snapAngle(s: number, c: number, period: number): number {
  const angle = degrees(atan2(s, c));
  const within = Math.round((angle - Math.floor(angle / period) * period) * 1e6) / 1e6;
  return within >= period ? 0 : within;
}

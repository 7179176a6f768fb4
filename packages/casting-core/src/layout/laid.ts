import { CastingError, type Fault } from "../errors.js";
import type { PieceKind } from "../pieces/types.js";
import type { PlacedPiece } from "./types.js";

/** Throws `invalid` where a piece of a layout that was put together by hand is of none of `kinds`, or has no outline. */
export function mustBeLaid(kinds: readonly PieceKind[], pieces: readonly PlacedPiece[]): void {
  const faults = pieces.flatMap((piece, n): Fault[] => {
    const { id, kind } = piece;
    const fault = (key: string, text: string): Fault[] => [
      { path: ["layout", "pieces", n, key], text: `piece ${id} ${text}` },
    ];
    if (!kinds[kind]) {
      return fault("kind", `is of kind ${kind}; write the place of its kind in the job's pieces, counted from 0`);
    }
    return hasOutline(piece) ? [] : fault("outline", "has no outline; give it three corners or more, in mm");
  });
  if (faults.length > 0) throw new CastingError("invalid", faults);
}

/** Whether a piece lies somewhere: a round one by its middle and radius, any other by its corners. */
export function hasOutline({ x, y, radius, outline = [] }: PlacedPiece): boolean {
  if (radius !== undefined) return radius > 0 && [x, y, radius].every(Number.isFinite);
  return outline.length > 2 && outline.flat().every(Number.isFinite);
}

import type { PieceKind } from "../../pieces/types.js";
import { hypot, radians, sinCos } from "../../trig.js";
import type { PlacedPiece } from "../types.js";

/**
 * How far the pieces of each kind lie turned alike, |mean exp(i n θ)| with n the kind's symmetry: 0 for none of it, 1 for
 * all parallel. The most of all kinds with at least `least` pieces; rounds have no turn.
 */
export function orientationOrder(kinds: readonly PieceKind[], pieces: readonly PlacedPiece[], least = 1): number {
  return kinds.reduce((most, { kind, fold }) => {
    const turns = pieces.filter((piece) => piece.kind === kind).map(({ angle }) => sinCos(radians(fold * angle)));
    if (!Number.isFinite(fold) || turns.length < least) return most;
    const sum = (axis: 0 | 1) => turns.reduce((total, turn) => total + turn[axis], 0);
    return Math.max(most, hypot(sum(0), sum(1)) / turns.length);
  }, 0);
}

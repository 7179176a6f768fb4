import { atan2, hypot, TAU } from "../trig.js";
import type { PlacedPiece } from "./types.js";

/**
 * The pieces in the order a person lays them, numbered from 1: ring by ring from the middle out, each ring `pitch` mm
 * wide and laid counter-clockwise from the x axis, so that the hand never reaches over pieces already laid.
 */
export function inLayingOrder(pieces: readonly PlacedPiece[], pitch: number): PlacedPiece[] {
  const keyed = pieces.map((piece) => {
    const angle = atan2(piece.y, piece.x);
    return { piece, ring: Math.floor(hypot(piece.x, piece.y) / pitch), angle: angle < 0 ? angle + TAU : angle };
  });
  keyed.sort((a, b) => a.ring - b.ring || a.angle - b.angle || a.piece.x - b.piece.x || a.piece.y - b.piece.y);
  return keyed.map(({ piece }, n) => ({ ...piece, id: n + 1 }));
}

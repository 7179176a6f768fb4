import { findLimits, openLimits } from "./limits";
import { listNeighbours } from "./neighbours";
import { count, kind, shift } from "./pieces";
import { awayFromOrder, turns } from "./shake";
import { reach } from "./shapes";
import { findSlopes, openSlopes } from "./slopes";
import { moves, openSolve, solve } from "./solve";

/** Readies for strides: pairs of neighbours are listed once, with a skin for all strides together. */
export function openPolish(gap: f64, skin: f64): void {
  listNeighbours(gap, skin);
  openLimits();
  openSlopes();
  openSolve();
}

/**
 * Moves all pieces at once so that the rings' excess lessens most among all that the limits allow, each by up to `size`
 * mm: as far as limits and slopes can be taken for straight. Pieces are asked to turn by up to `turn` radians away from
 * their common orientation, where their order is above `free`.
 */
export function takeStride(gap: f64, size: f64, turn: f64, free: f64): void {
  findLimits(gap, 2 * size);
  findSlopes();
  awayFromOrder(turn, free);
  for (let i = 0; i < count; i++) {
    moves[3 * i] = 0;
    moves[3 * i + 1] = 0;
    moves[3 * i + 2] = turns[i];
  }
  solve();
  for (let i = 0; i < count; i++) step(i, size);
}

function step(i: i32, size: f64): void {
  const dx = moves[3 * i];
  const dy = moves[3 * i + 1];
  const turn = moves[3 * i + 2];
  const swing = turn * reach[kind[i]];
  const whole = Math.sqrt(dx * dx + dy * dy + swing * swing);
  const share = whole > size ? size / whole : 1;
  shift(i, share * dx, share * dy, share * turn);
}

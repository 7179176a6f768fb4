import { type Bed, restore, shift, snapshot } from "./bed.js";
import { unevenness } from "./even.js";
import { findLimits, type Limits, newLimits } from "./limits.js";
import { listNeighbours, type Neighbours } from "./neighbours.js";
import { RINGS } from "./rings.js";
import { settle } from "./settle.js";
import { awayFromOrder } from "./shake.js";
import { findSlopes, newSlopes, type Slopes } from "./slopes.js";
import { solve } from "./solve.js";

/** Times that limits and slopes are measured anew. */
const STEPS = 30;

/** Most that a piece is moved at a time, as a share of a ring's width: as far as limits and slopes can be taken for straight. */
const STRIDE = 0.1;

/**
 * Most that a piece would turn away from the common orientation at a time, radians; and the order up to which none
 * would. Without it pieces that are pushed close lie parallel all over a tool that was shaken to no order (measured).
 */
const DISALIGN = 0.3;
const ORDER_FREE = 0.12;

/** Skins of neighbours listed: a piece moves farther than one stride in all. */
const SKINS = 4;

/**
 * Evens the coverage of the rings without giving up a piece, by small moves and turns of all pieces at once: each time
 * those that lessen the rings' excess most among all that the limits allow (see solve). Returns how uneven the bed is
 * then; leaves it as it was where that did not help.
 */
export function polish(bed: Bed, list: Neighbours, gap: number, skin: number): number {
  const before = snapshot(bed);
  const variation = unevenness(bed);
  const stride = (STRIDE * bed.field.edge) / RINGS;
  listNeighbours(bed, list, gap, SKINS * skin);
  const limits: Limits = newLimits(bed, list);
  const slopes: Slopes = newSlopes(bed.count);
  const moves = new Float64Array(3 * bed.count);
  const turns = new Float64Array(bed.count);
  for (let n = 0; n < STEPS; n++) {
    findLimits(bed, list, gap, 2 * stride, limits);
    findSlopes(bed, slopes);
    awayFromOrder(bed, DISALIGN, turns, ORDER_FREE);
    moves.fill(0);
    for (let i = 0; i < bed.count; i++) moves[3 * i + 2] = turns[i]!;
    solve(bed, limits, slopes, moves);
    for (let i = 0; i < bed.count; i++) step(bed, i, moves, stride);
  }
  list.count = -1;
  const settled = settle(bed, list, gap, skin);
  const reached = unevenness(bed);
  if (settled && reached < variation) return reached;
  restore(bed, before);
  list.count = -1;
  return variation;
}

function step(bed: Bed, i: number, moves: Float64Array, stride: number): void {
  const [dx, dy, turn] = [moves[3 * i]!, moves[3 * i + 1]!, moves[3 * i + 2]!];
  const swing = turn * bed.shapes.reach[bed.kind[i]!]!;
  const size = Math.sqrt(dx * dx + dy * dy + swing * swing);
  const share = size > stride ? stride / size : 1;
  shift(bed, i, share * dx, share * dy, share * turn);
}

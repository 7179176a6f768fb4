import { RINGS, radialVariation } from "../quality/rings.js";
import { type Bed, restore, snapshot } from "./bed.js";
import { settle } from "./settle.js";

/** Times that limits and slopes are measured anew. */
const STRIDES = 30;

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
 * those that lessen the rings' excess most among all that the limits allow. Returns how uneven the bed is then; leaves it
 * as it was where that did not help.
 */
export function polish(bed: Bed, gap: number, skin: number): number {
  const { engine, field } = bed;
  const before = snapshot(bed);
  const variation = unevenness(bed);
  const size = (STRIDE * field.edge) / RINGS;
  engine.openPolish(gap, SKINS * skin);
  for (let n = 0; n < STRIDES; n++) engine.takeStride(gap, size, DISALIGN, ORDER_FREE);
  engine.forgetNeighbours();
  const settled = settle(bed, gap, skin);
  const reached = unevenness(bed);
  if (settled && reached < variation) return reached;
  restore(bed, before);
  return variation;
}

/** How far the rings are off their targets, see radialVariation. */
export function unevenness({ engine, target }: Bed): number {
  engine.forgetRings();
  engine.evenOut(0);
  return radialVariation(new Float64Array(engine.memory.buffer, engine.covered.value, RINGS), target);
}

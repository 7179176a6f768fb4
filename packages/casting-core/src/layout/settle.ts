import { hypot } from "../trig.js";
import type { Bed } from "./bed.js";
import { remove } from "./bed.js";
import type { Neighbours } from "./neighbours.js";
import { sweep } from "./relax.js";

/** Overlap that counts as none while relaxing, mm: below the margin that the snap to micrometres needs. */
const TOLERANCE = 0.0005;

/** Sweeps after which the overlap must have shrunk by a quarter, or a piece too many is assumed. */
const PATIENCE = 120;
const SHRINK = 0.75;

/** Sweeps at most before one is taken out all the same. */
const LONGEST = 1200;

/** Sweeps until no overlap is left or no progress is made; returns whether none is left. */
export function settle(bed: Bed, list: Neighbours, gap: number, skin: number, longest = LONGEST): boolean {
  let mark = Infinity;
  for (let n = 0; n < longest; n++) {
    const most = sweep(bed, list, gap, skin);
    if (most < TOLERANCE) return true;
    if (n % PATIENCE === PATIENCE - 1) {
      if (most > mark * SHRINK) return false;
      mark = most;
    }
  }
  return false;
}

/** Pieces taken out at once, at most this share of all: a large bed has several places that jam apart from each other. */
const AT_ONCE = 0.01;

/** Places are apart when they are at least this many reaches away from each other. */
const APART = 6;

/**
 * Settles the bed; while it will not, takes out the most squeezed piece of every jammed place, of the kind that the mix
 * of one piece fewer gives up (`mix`: see mixOf). At the end no overlap is left.
 */
export function settleOrThin(bed: Bed, list: Neighbours, gap: number, skin: number, mix: Int32Array): void {
  const strain = new Float64Array(bed.count);
  while (bed.count > 0 && !settle(bed, list, gap, skin)) {
    sweep(bed, list, gap, skin, strain);
    thin(bed, strain, mix);
  }
}

function thin(bed: Bed, strain: Float64Array, mix: Int32Array): void {
  const most = Math.max(1, Math.floor(AT_ONCE * bed.count));
  const apart = APART * Math.max(...bed.shapes.reach);
  const gone: { x: number; y: number }[] = [];
  const doomed: number[] = [];
  const worstFirst = Array.from({ length: bed.count }, (_, i) => i)
    .filter((i) => strain[i]! > TOLERANCE)
    .sort((a, b) => strain[b]! - strain[a]! || a - b);
  for (const i of worstFirst) {
    if (doomed.length === most) break;
    if (bed.kind[i] !== mix[bed.count - doomed.length - 1]) continue;
    if (gone.some(({ x, y }) => hypot(bed.x[i]! - x, bed.y[i]! - y) < apart)) continue;
    gone.push({ x: bed.x[i]!, y: bed.y[i]! });
    doomed.push(i);
  }
  // No piece of the kind to give up is squeezed: then any of that kind makes room elsewhere.
  if (doomed.length === 0) doomed.push(bed.kind.subarray(0, bed.count).lastIndexOf(mix[bed.count - 1]!));
  for (const i of doomed.sort((a, b) => b - a)) remove(bed, i);
}

import type { Bed } from "./bed.js";
import { remove } from "./bed.js";
import type { Neighbours } from "./neighbours.js";
import { sweep } from "./relax.js";

/** Overlap that counts as none while relaxing, mm: below the margin that the snap to micrometres needs. */
export const TOLERANCE = 0.0005;

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

/**
 * Settles the bed; while it will not, takes out the most squeezed piece of the kind that the mix of one piece fewer
 * gives up (`mix`: see mixOf). At the end no overlap is left.
 */
export function settleOrThin(bed: Bed, list: Neighbours, gap: number, skin: number, mix: Int32Array): void {
  const strain = new Float64Array(bed.count);
  while (bed.count > 0 && !settle(bed, list, gap, skin)) {
    sweep(bed, list, gap, skin, strain);
    removeWorst(bed, strain, mix[bed.count - 1]!);
  }
}

/** Takes out the piece of `kind` with the largest strain. */
export function removeWorst(bed: Bed, strain: Float64Array, kind: number): void {
  let worst = -1;
  let most = -1;
  for (let i = 0; i < bed.count; i++) {
    if (bed.kind[i] === kind && strain[i]! > most) {
      most = strain[i]!;
      worst = i;
    }
  }
  remove(bed, worst);
}

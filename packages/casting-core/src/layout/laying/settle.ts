import { hypot } from "../../trig.js";
import { type Bed, countOf, piecesOf, remove } from "./bed.js";

/** Overlap that counts as none while relaxing, mm: below the margin that the snap to micrometres needs. */
const TOLERANCE = 0.0005;

/** Sweeps after which the overlap must have shrunk by a quarter, or a piece too many is assumed. */
const PATIENCE = 120;
const SHRINK = 0.75;

/** Sweeps at most before one is taken out all the same. */
const LONGEST = 1200;

/** Sweeps until no overlap is left or no progress is made; returns whether none is left. */
export function settle({ engine }: Bed, gap: number, skin: number, longest = LONGEST): boolean {
  let mark = Infinity;
  for (let n = 0; n < longest; n++) {
    const most = engine.sweep(gap, skin);
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
export function settleOrThin(bed: Bed, gap: number, skin: number, mix: Int32Array): void {
  while (countOf(bed) > 0 && !settle(bed, gap, skin)) {
    bed.engine.sweep(gap, skin);
    thin(bed, mix);
  }
}

function thin(bed: Bed, mix: Int32Array): void {
  const { count, kind, x, y } = piecesOf(bed);
  const strain = new Float64Array(bed.engine.memory.buffer, bed.engine.strain.value, count);
  const most = Math.max(1, Math.floor(AT_ONCE * count));
  const apart = APART * Math.max(...bed.shapes.reach);
  const gone: { x: number; y: number }[] = [];
  const doomed: number[] = [];
  const worstFirst = Array.from({ length: count }, (_, i) => i)
    .filter((i) => strain[i]! > TOLERANCE)
    .sort((a, b) => strain[b]! - strain[a]! || a - b);
  for (const i of worstFirst) {
    if (doomed.length === most) break;
    if (kind[i] !== mix[count - doomed.length - 1]) continue;
    if (gone.some((place) => hypot(x[i]! - place.x, y[i]! - place.y) < apart)) continue;
    gone.push({ x: x[i]!, y: y[i]! });
    doomed.push(i);
  }
  // No piece of the kind to give up is squeezed: then any of that kind makes room elsewhere.
  if (doomed.length === 0) doomed.push(kind.lastIndexOf(mix[count - 1]!));
  for (const i of doomed.sort((a, b) => b - a)) remove(bed, i);
}

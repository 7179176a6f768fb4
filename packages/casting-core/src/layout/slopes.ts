import { PI } from "../trig.js";
import type { Bed } from "./bed.js";
import { type Footprint, footprintOf, newFootprint } from "./footprint.js";
import { FIRST_RING, LAST_RING, RINGS } from "./rings.js";

/**
 * How the excess of each ring that counts (coverage ÷ mean − target) grows as the pieces that cover some of it move and turn:
 * ring `r`'s pieces stand at `start[r]` to `start[r + 1]`, with what a mm along x and y and a radian add.
 */
export interface Slopes {
  excess: Float64Array;
  /** How hard each ring was pulled back, kept from one time to the next. */
  pull: Float64Array;
  start: Int32Array;
  piece: Int32Array;
  alongX: Float64Array;
  alongY: Float64Array;
  turning: Float64Array;
  prints: Footprint[];
}

/** No slopes yet, with room for those of `count` pieces. */
export function newSlopes(count: number): Slopes {
  const each = () => new Float64Array(count * RINGS);
  return {
    excess: new Float64Array(RINGS),
    pull: new Float64Array(RINGS),
    start: new Int32Array(RINGS + 1),
    piece: new Int32Array(count * RINGS),
    alongX: each(),
    alongY: each(),
    turning: each(),
    prints: Array.from({ length: count }, newFootprint),
  };
}

/** Measures the slopes of the pieces of `bed` as they lie. */
export function findSlopes(bed: Bed, slopes: Slopes): void {
  const { excess, start, piece, alongX, alongY, turning, prints } = slopes;
  const width = bed.field.edge / RINGS;
  excess.fill(0);
  prints.forEach((print, i) => {
    footprintOf(bed, i, print);
    const last = Math.min(LAST_RING, print.last);
    for (let ring = Math.max(FIRST_RING, print.first); ring <= last; ring++)
      excess[ring] = excess[ring]! + print.area[ring]! / (PI * width * width * (2 * ring + 1));
  });
  const wanted = bed.target.subarray(FIRST_RING, LAST_RING + 1).reduce((sum, share) => sum + share, 0);
  const mean = excess.reduce((sum, share) => sum + share, 0) / wanted;
  let n = 0;
  for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
    start[ring] = n;
    excess[ring] = excess[ring]! / mean - bed.target[ring]!;
    const share = 1 / (PI * width * width * (2 * ring + 1) * mean);
    for (let i = 0; i < bed.count; i++) {
      const print = prints[i]!;
      if (ring < print.first || ring > print.last) continue;
      piece[n] = i;
      alongX[n] = print.alongX[ring]! * share;
      alongY[n] = print.alongY[ring]! * share;
      turning[n] = print.turning[ring]! * share;
      n++;
    }
  }
  start[LAST_RING + 1] = n;
}

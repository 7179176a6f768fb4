import type { Random } from "../random.js";
import { type Bed, shift } from "./bed.js";

/** Kicks every piece by up to `size` times its reach in each direction, and turns it by up to `size` radians. */
export function shake(bed: Bed, source: Random, size: number): void {
  const { shapes, kind } = bed;
  for (let i = 0; i < bed.count; i++) {
    const k = kind[i]!;
    const step = 2 * size * shapes.reach[k]!;
    const dx = (source.next() - 0.5) * step;
    const dy = (source.next() - 0.5) * step;
    shift(bed, i, dx, dy, shapes.fold[k]! === 0 ? 0 : 2 * size * (source.next() - 0.5));
  }
}

/** Turns the pieces of each kind away from their common orientation, see awayFromOrder. */
export function disalign(bed: Bed, size: number, turns: Float64Array): void {
  awayFromOrder(bed, size, turns);
  for (let i = 0; i < bed.count; i++) if (turns[i]! !== 0) shift(bed, i, 0, 0, turns[i]!);
}

/**
 * Leaves in `turns` how each piece is to turn so that no crystal spans the tool: with the order ψ = mean exp(i n θ) of
 * its kind it follows the slope of −|ψ|², by at most `size` radians; not at all where |ψ| is at most `free`.
 */
export function awayFromOrder(bed: Bed, size: number, turns: Float64Array, free = 0): void {
  const { shapes, kind } = bed;
  turns.fill(0);
  for (let k = 0; k < shapes.kinds.length; k++) {
    const fold = shapes.fold[k]!;
    if (fold === 0) continue;
    let sumX = 0;
    let sumY = 0;
    let n = 0;
    for (let i = 0; i < bed.count; i++) {
      if (kind[i]! !== k) continue;
      multiple(bed, i, fold);
      sumX += turned[0]!;
      sumY += turned[1]!;
      n++;
    }
    if (n < 2 || sumX * sumX + sumY * sumY <= free * free * n * n) continue;
    for (let i = 0; i < bed.count; i++) {
      if (kind[i]! !== k) continue;
      multiple(bed, i, fold);
      // Order times the sine of the angle by which the piece runs ahead of the common orientation.
      turns[i] = (size * (turned[1]! * sumX - turned[0]! * sumY)) / n;
    }
  }
}

/** Cosine and sine that `multiple` left: an array, since a module's own numbers are slow to write. */
const turned = new Float64Array(2);

/** Leaves the cosine and sine of `fold` times the turn of piece `i` in `turned`. */
function multiple(bed: Bed, i: number, fold: number): void {
  const c = bed.cosine[i]!;
  const s = bed.sine[i]!;
  let x = c;
  let y = s;
  for (let n = 1; n < fold; n++) {
    const nextX = x * c - y * s;
    y = x * s + y * c;
    x = nextX;
  }
  turned[0] = x;
  turned[1] = y;
}

import { cosine, count, kind, shift, sine } from "./pieces";
import { fold, kinds, reach } from "./shapes";

/** Three numbers in [0, 1) for each piece, to be written before every shake. */
export let draws = new StaticArray<f64>(0);

/** How each piece is to turn, radians, see awayFromOrder. */
export let turns = new StaticArray<f64>(0);

/** Makes room for `capacity` pieces. */
export function openShake(capacity: i32): void {
  draws = new StaticArray<f64>(3 * capacity);
  turns = new StaticArray<f64>(capacity);
}

/** Kicks every piece by up to `size` times its reach in each direction, and turns it by up to `size` radians. */
export function shake(size: f64): void {
  for (let i = 0; i < count; i++) {
    const step = 2 * size * reach[kind[i]];
    const turn = fold[kind[i]] === 0 ? 0 : 2 * size * (draws[3 * i + 2] - 0.5);
    shift(i, (draws[3 * i] - 0.5) * step, (draws[3 * i + 1] - 0.5) * step, turn);
  }
}

/** Turns the pieces of each kind away from their common orientation, see awayFromOrder. */
export function disalign(size: f64): void {
  awayFromOrder(size, 0);
  for (let i = 0; i < count; i++) if (turns[i] !== 0) shift(i, 0, 0, turns[i]);
}

/**
 * Leaves in `turns` how each piece is to turn so that no crystal spans the tool: with the order ψ = mean exp(i n θ) of
 * its kind it follows the slope of −|ψ|², by at most `size` radians; not at all where |ψ| is at most `free`.
 */
export function awayFromOrder(size: f64, free: f64): void {
  for (let i = 0; i < count; i++) turns[i] = 0;
  for (let k = 0; k < kinds; k++) {
    if (fold[k] === 0) continue;
    let sumX: f64 = 0;
    let sumY: f64 = 0;
    let n = 0;
    for (let i = 0; i < count; i++) {
      if (kind[i] !== k) continue;
      multiple(i, fold[k]);
      sumX += multipleX;
      sumY += multipleY;
      n++;
    }
    if (n < 2 || sumX * sumX + sumY * sumY <= free * free * n * n) continue;
    for (let i = 0; i < count; i++) {
      if (kind[i] !== k) continue;
      multiple(i, fold[k]);
      // Order times the sine of the angle by which the piece runs ahead of the common orientation.
      turns[i] = (size * (multipleY * sumX - multipleX * sumY)) / n;
    }
  }
}

let multipleX: f64 = 0;
let multipleY: f64 = 0;

/** Leaves the cosine and sine of `times` times the turn of piece `i` in `multipleX` and `multipleY`. */
function multiple(i: i32, times: i32): void {
  const c = cosine[i];
  const s = sine[i];
  let mx = c;
  let my = s;
  for (let n = 1; n < times; n++) {
    const nextX = mx * c - my * s;
    my = mx * s + my * c;
    mx = nextX;
  }
  multipleX = mx;
  multipleY = my;
}

import { corners, ROW, shape, stride } from "./shapes";

/*
 * The pieces as they are being laid: centroid, turn (as cosine and sine) and the corners and normals that follow from
 * them, corner `c` of piece `i` at `(i × stride + c) × ROW`.
 */

/** A corner as it stands in memory, and the outward unit normal of the edge it begins. */
@unmanaged
export class Corner {
  x: f64 = 0;
  y: f64 = 0;
  nx: f64 = 0;
  ny: f64 = 0;
}

/** Bytes from one corner to the next. */
export const CORNER: usize = offsetof<Corner>();

export let count: i32 = 0;
export let kind = new StaticArray<i32>(0);
export let x = new StaticArray<f64>(0);
export let y = new StaticArray<f64>(0);
export let cosine = new StaticArray<f64>(0);
export let sine = new StaticArray<f64>(0);
export let outline = new StaticArray<f64>(0);

/** Number of the sweep that runs or ran last, and of the one in or after which each piece was moved last. */
export let tick: i32 = 0;
export let moved = new StaticArray<i32>(0);

/** Where the first corner of piece `i` stands: loops over corners go from there by address (less to work out than an index). */
export function cornersOf(i: i32): usize {
  return changetype<usize>(outline) + <usize>(i * stride) * CORNER;
}

/** The corner at an address. */
export function cornerAt(at: usize): Corner {
  return changetype<Corner>(at);
}

/** Makes room for `capacity` pieces; none lies there yet. */
export function openPieces(capacity: i32): void {
  count = 0;
  kind = new StaticArray<i32>(capacity);
  x = new StaticArray<f64>(capacity);
  y = new StaticArray<f64>(capacity);
  cosine = new StaticArray<f64>(capacity);
  sine = new StaticArray<f64>(capacity);
  outline = new StaticArray<f64>(capacity * stride * ROW);
  moved = new StaticArray<i32>(capacity);
}

/** Begins a new sweep; with `all`, every piece counts as moved. */
export function nextTick(all: bool): void {
  if (all) for (let i = 0; i < count; i++) moved[i] = tick;
  tick++;
}

/** Lays piece `i`, which may be the next one. */
export function put(i: i32, ofKind: i32, atX: f64, atY: f64, cosineOf: f64, sineOf: f64): void {
  if (i === count) count++;
  kind[i] = ofKind;
  x[i] = atX;
  y[i] = atY;
  cosine[i] = cosineOf;
  sine[i] = sineOf;
  refresh(i);
}

/** Takes all pieces from number `left` on away. */
export function leave(left: i32): void {
  count = left;
}

/** Moves piece `i` by (dx, dy) and turns it by `turn` radians (small: the turn is a second-order rational one). */
export function shift(i: i32, dx: f64, dy: f64, turn: f64): void {
  x[i] = x[i] + dx;
  y[i] = y[i] + dy;
  if (turn !== 0) {
    // The tangent half-angle form keeps cosine² + sine² = 1 up to rounding, whatever the size of the turn.
    const half = turn / 2;
    const scale = 1 / (1 + half * half);
    const c = (1 - half * half) * scale;
    const s = 2 * half * scale;
    const c0 = cosine[i];
    const s0 = sine[i];
    cosine[i] = c0 * c - s0 * s;
    sine[i] = s0 * c + c0 * s;
  }
  refresh(i);
}

/**
 * Works out the corners and normals of piece `i` again after it was moved: x and y at once, two numbers to a vector. A
 * point (px, py) comes to (x, y) + px (c, s) − py (s, −c).
 */
function refresh(i: i32): void {
  moved[i] = tick;
  const k = kind[i];
  const c = cosine[i];
  const s = sine[i];
  const middle = f64x2.replace_lane(f64x2.splat(x[i]), 1, y[i]);
  const along = f64x2.replace_lane(f64x2.splat(c), 1, s);
  const across = f64x2.replace_lane(f64x2.splat(s), 1, -c);
  let from = changetype<usize>(shape) + <usize>(k * stride) * CORNER;
  let to = cornersOf(i);
  for (let n = corners[k]; n > 0; n--, from += CORNER, to += CORNER) {
    const point = f64x2.sub(
      f64x2.add(middle, f64x2.mul(along, v128.load64_splat(from))),
      f64x2.mul(across, v128.load64_splat(from, 8)),
    );
    const normal = f64x2.sub(
      f64x2.mul(along, v128.load64_splat(from, 16)),
      f64x2.mul(across, v128.load64_splat(from, 24)),
    );
    v128.store(to, point);
    v128.store(to, normal, 16);
  }
}

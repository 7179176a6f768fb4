import type { Field } from "./field.js";
import { ROW, type Shapes } from "./shapes.js";
import { targetOf } from "./target.js";

/** A bed's pieces, to come back to. */
export interface Snapshot {
  count: number;
  kind: Int32Array;
  x: Float64Array;
  y: Float64Array;
  cosine: Float64Array;
  sine: Float64Array;
}

/**
 * The film with the pieces as they are being laid, in flat arrays: centroid, turn (as cosine and sine) and the corners
 * and normals that follow from them: `outline` as in Shapes, corner `c` of piece `i` at `(i × shapes.stride + c) × ROW`.
 */
export interface Bed extends Snapshot {
  shapes: Shapes;
  field: Field;
  /** See targetOf. */
  target: Float64Array;
  outline: Float64Array;
}

/** An empty bed with room for `capacity` pieces. */
export function emptyBed(shapes: Shapes, field: Field, capacity: number): Bed {
  const each = () => new Float64Array(capacity);
  return {
    shapes,
    field,
    target: targetOf(field, Math.min(...shapes.reach)),
    count: 0,
    kind: new Int32Array(capacity),
    x: each(),
    y: each(),
    cosine: each(),
    sine: each(),
    outline: new Float64Array(capacity * shapes.stride * ROW),
  };
}

/** Adds a piece and returns its index. */
export function add(bed: Bed, kind: number, x: number, y: number, cosine: number, sine: number): number {
  const i = bed.count++;
  bed.kind[i] = kind;
  bed.x[i] = x;
  bed.y[i] = y;
  bed.cosine[i] = cosine;
  bed.sine[i] = sine;
  refresh(bed, i);
  return i;
}

/** Takes piece `i` away; the last piece gets its index. */
export function remove(bed: Bed, i: number): void {
  const last = --bed.count;
  if (i === last) return;
  bed.kind[i] = bed.kind[last]!;
  bed.x[i] = bed.x[last]!;
  bed.y[i] = bed.y[last]!;
  bed.cosine[i] = bed.cosine[last]!;
  bed.sine[i] = bed.sine[last]!;
  refresh(bed, i);
}

export function snapshot(bed: Bed): Snapshot {
  return {
    count: bed.count,
    kind: bed.kind.slice(0, bed.count),
    x: bed.x.slice(0, bed.count),
    y: bed.y.slice(0, bed.count),
    cosine: bed.cosine.slice(0, bed.count),
    sine: bed.sine.slice(0, bed.count),
  };
}

export function restore(bed: Bed, from: Snapshot): void {
  bed.count = 0;
  for (let i = 0; i < from.count; i++) {
    add(bed, from.kind[i]!, from.x[i]!, from.y[i]!, from.cosine[i]!, from.sine[i]!);
  }
}

/** Works out the corners and normals of piece `i` again after it was moved. */
function refresh(bed: Bed, i: number): void {
  const { shapes } = bed;
  const k = bed.kind[i]!;
  const x = bed.x[i]!;
  const y = bed.y[i]!;
  const c = bed.cosine[i]!;
  const s = bed.sine[i]!;
  const shape = shapes.outline;
  const { outline } = bed;
  let from = k * shapes.stride * ROW;
  let to = i * shapes.stride * ROW;
  for (let n = shapes.corners[k]!; n > 0; n--, from += ROW, to += ROW) {
    const px = shape[from]!;
    const py = shape[from + 1]!;
    const nx = shape[from + 2]!;
    const ny = shape[from + 3]!;
    outline[to] = x + c * px - s * py;
    outline[to + 1] = y + s * px + c * py;
    outline[to + 2] = c * nx - s * ny;
    outline[to + 3] = s * nx + c * ny;
  }
}

/** Moves piece `i` by (dx, dy) and turns it by `turn` radians (small: the turn is a second-order rational one). */
export function shift(bed: Bed, i: number, dx: number, dy: number, turn: number): void {
  const { x, y, cosine, sine } = bed;
  x[i] = x[i]! + dx;
  y[i] = y[i]! + dy;
  if (turn !== 0) {
    // The tangent half-angle form keeps cosine² + sine² = 1 up to rounding, whatever the size of the turn.
    const half = turn / 2;
    const scale = 1 / (1 + half * half);
    const c = (1 - half * half) * scale;
    const s = 2 * half * scale;
    const c0 = cosine[i]!;
    const s0 = sine[i]!;
    cosine[i] = c0 * c - s0 * s;
    sine[i] = s0 * c + c0 * s;
  }
  refresh(bed, i);
}

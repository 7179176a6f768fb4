import { RINGS } from "../src/layout/quality/ring-numbers";

/*
 * The kinds of pieces and the field they lie in, in flat arrays: what `Shapes` and `Field` of the layout say, written
 * here once by whoever opens the bed. Lengths mm.
 */

/** Numbers that a corner takes in an outline: its place and the outward unit normal of the edge it begins. */
export const ROW: i32 = 4;

export let kinds: i32 = 0;
/** Corners that a kind has at most: corner `c` of kind `k` stands at `k × stride + c`, times ROW in `shape`. */
export let stride: i32 = 0;
export let corners = new StaticArray<i32>(0);
export let shape = new StaticArray<f64>(0);
/** Distance of each edge from the centroid. */
export let normalAt = new StaticArray<f64>(0);
export let edge = new StaticArray<f64>(0);
export let radius = new StaticArray<f64>(0);
export let reach = new StaticArray<f64>(0);
export let inner = new StaticArray<f64>(0);
export let area = new StaticArray<f64>(0);
export let turnEase = new StaticArray<f64>(0);
export let fold = new StaticArray<i32>(0);

/** Radius of the circle that holds the pieces, and of the tool. */
export let fieldRadius: f64 = 0;
export let fieldEdge: f64 = 0;
/** Circles kept clear: x, y and radius of each. */
export let circles: i32 = 0;
export let circle = new StaticArray<f64>(0);
/** What each ring is meant to be covered, as a share of what the others are. */
export let target = new StaticArray<f64>(0);

/** Makes room for the tables of `ofKinds` kinds with up to `ofStride` corners, and for `ofCircles` kept circles. */
export function openShapes(ofKinds: i32, ofStride: i32, ofCircles: i32): void {
  kinds = ofKinds;
  stride = ofStride;
  circles = ofCircles;
  const n = kinds * stride;
  corners = new StaticArray<i32>(kinds);
  shape = new StaticArray<f64>(n * ROW);
  normalAt = new StaticArray<f64>(n);
  edge = new StaticArray<f64>(n);
  radius = new StaticArray<f64>(kinds);
  reach = new StaticArray<f64>(kinds);
  inner = new StaticArray<f64>(kinds);
  area = new StaticArray<f64>(kinds);
  turnEase = new StaticArray<f64>(kinds);
  fold = new StaticArray<i32>(kinds);
  circle = new StaticArray<f64>(3 * circles);
  target = new StaticArray<f64>(RINGS + 1);
}

/** Sets the circle that holds the pieces, and the tool's edge. */
export function setField(holds: f64, tool: f64): void {
  fieldRadius = holds;
  fieldEdge = tool;
}

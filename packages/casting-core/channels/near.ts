import { alongX, alongY, bars, barX, barY, discX, discY, length, points } from "./strips";

/*
 * What lies near what, by a square grid: the discs of each cell, and the bars that run through it, as chains.
 */

/** The discs and bars found last. */
export let nearDiscs: i32 = 0;
export let nearBars: i32 = 0;
export let nearDisc = new StaticArray<i32>(0);
export let nearBar = new StaticArray<i32>(0);

let cell: f64 = 1;
let left: f64 = 0;
let low: f64 = 0;
let columns: i32 = 0;
let rows: i32 = 0;

/** The first disc of each cell, and the next one in the cell of each disc; −1: none. */
let firstDisc = new StaticArray<i32>(0);
let nextDisc = new StaticArray<i32>(0);

/** The same of the bars: one that is longer than a cell is in the chains part by part. */
let firstPart = new StaticArray<i32>(0);
let nextPart = new StaticArray<i32>(0);
let barOf = new StaticArray<i32>(0);

/** The search that last came across each bar. */
let search: i32 = 0;
let cameAcross = new StaticArray<i32>(0);

/** Lays an empty grid over all points, its cells at least `width` mm wide and not many more than there are points. */
export function openGrid(width: f64): void {
  const count = points.length / 2;
  let right: f64 = -Infinity;
  let high: f64 = -Infinity;
  left = Infinity;
  low = Infinity;
  for (let n = 0; n < count; n++) {
    left = Math.min(left, points[2 * n]);
    right = Math.max(right, points[2 * n]);
    low = Math.min(low, points[2 * n + 1]);
    high = Math.max(high, points[2 * n + 1]);
  }
  cell = Math.max(width, Math.max(right - left, high - low) / Math.ceil(Math.sqrt(count)));
  columns = i32(Math.floor((right - left) / cell)) + 1;
  rows = i32(Math.floor((high - low) / cell)) + 1;
  firstDisc = emptyChains();
  firstPart = emptyChains();
  nextDisc = new StaticArray<i32>(count);
  nearDisc = new StaticArray<i32>(count);
}

function emptyChains(): StaticArray<i32> {
  const chains = new StaticArray<i32>(columns * rows);
  for (let n = 0; n < chains.length; n++) chains[n] = -1;
  return chains;
}

function columnOf(x: f64): i32 {
  return i32(Math.max(0, Math.min(columns - 1, Math.floor((x - left) / cell))));
}

function rowOf(y: f64): i32 {
  return i32(Math.max(0, Math.min(rows - 1, Math.floor((y - low) / cell))));
}

function cellAt(x: f64, y: f64): i32 {
  return rowOf(y) * columns + columnOf(x);
}

/** The disc at (x, y), −1 if there is none yet. */
export function discAt(x: f64, y: f64): i32 {
  let d = firstDisc[cellAt(x, y)];
  while (d >= 0 && (discX[d] !== x || discY[d] !== y)) d = nextDisc[d];
  return d;
}

/** Enters disc `d` into the grid. */
export function enterDisc(d: i32): void {
  const at = cellAt(discX[d], discY[d]);
  nextDisc[d] = firstDisc[at];
  firstDisc[at] = d;
}

/** Enters all bars into the grid. */
export function enterBars(): void {
  let parts = 0;
  for (let b = 0; b < bars; b++) parts += partsOf(b);
  nextPart = new StaticArray<i32>(parts);
  barOf = new StaticArray<i32>(parts);
  nearBar = new StaticArray<i32>(bars);
  cameAcross = new StaticArray<i32>(bars);
  search = 0;
  let part = 0;
  for (let b = 0; b < bars; b++) {
    const long = length[b] / partsOf(b);
    for (let n = 0; n < partsOf(b); n++, part++) {
      const middle = (n + 0.5) * long;
      const at = cellAt(barX[b] + middle * alongX[b], barY[b] + middle * alongY[b]);
      barOf[part] = b;
      nextPart[part] = firstPart[at];
      firstPart[at] = part;
    }
  }
}

/** Into how many parts, none longer than a cell is wide, bar `b` falls. */
function partsOf(b: i32): i32 {
  return i32(Math.ceil(length[b] / cell));
}

/** Finds the discs and bars that come within `far` of (x, y) along both axes. */
export function findNear(x: f64, y: f64, far: f64): void {
  nearDiscs = 0;
  nearBars = 0;
  search++;
  // A part is entered by its middle.
  const about = far + cell / 2;
  const firstColumn = columnOf(x - about);
  const lastColumn = columnOf(x + about);
  const lastRow = rowOf(y + about);
  for (let row = rowOf(y - about); row <= lastRow; row++) {
    for (let at = row * columns + firstColumn; at <= row * columns + lastColumn; at++) {
      for (let d = firstDisc[at]; d >= 0; d = nextDisc[d]) {
        if (Math.abs(discX[d] - x) <= far && Math.abs(discY[d] - y) <= far) nearDisc[nearDiscs++] = d;
      }
      for (let part = firstPart[at]; part >= 0; part = nextPart[part]) {
        const b = barOf[part];
        if (cameAcross[b] === search) continue;
        cameAcross[b] = search;
        if (comesNear(barX[b] - x, alongX[b] * length[b], far) && comesNear(barY[b] - y, alongY[b] * length[b], far))
          nearBar[nearBars++] = b;
      }
    }
  }
}

/** Whether what runs from `start` on by `way` comes within `far` of 0. */
function comesNear(start: f64, way: f64, far: f64): bool {
  return Math.min(start, start + way) <= far && Math.max(start, start + way) >= -far;
}

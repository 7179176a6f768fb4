/*
 * The channels as discs and bars in flat arrays: a disc round every point of their lines, a bar along every straight part.
 * Lengths mm.
 */

/** x and y of every point, line after line; written by the caller. */
export let points = new StaticArray<f64>(0);
/** How many points there are up to the end of each line; written by the caller. */
export let lineEnd = new StaticArray<i32>(0);

/** A straight part: start, unit direction, length. */
export let bars: i32 = 0;
export let barX = new StaticArray<f64>(0);
export let barY = new StaticArray<f64>(0);
export let alongX = new StaticArray<f64>(0);
export let alongY = new StaticArray<f64>(0);
export let length = new StaticArray<f64>(0);

/** A point; where a line bends, the bars before and after it too, where lines only end −1. */
export let discs: i32 = 0;
export let discX = new StaticArray<f64>(0);
export let discY = new StaticArray<f64>(0);
export let before = new StaticArray<i32>(0);
export let after = new StaticArray<i32>(0);

/** Makes room for `lines` lines with `count` points together. */
export function openStrips(lines: i32, count: i32): void {
  points = new StaticArray<f64>(2 * count);
  lineEnd = new StaticArray<i32>(lines);
  bars = 0;
  barX = new StaticArray<f64>(count);
  barY = new StaticArray<f64>(count);
  alongX = new StaticArray<f64>(count);
  alongY = new StaticArray<f64>(count);
  length = new StaticArray<f64>(count);
  discs = 0;
  discX = new StaticArray<f64>(count);
  discY = new StaticArray<f64>(count);
  before = new StaticArray<i32>(count);
  after = new StaticArray<i32>(count);
}

/** Adds the bar from (x, y) along (ux, uy). */
export function addBar(x: f64, y: f64, ux: f64, uy: f64, long: f64): void {
  barX[bars] = x;
  barY[bars] = y;
  alongX[bars] = ux;
  alongY[bars] = uy;
  length[bars] = long;
  bars++;
}

/** Adds the disc at (x, y). */
export function addDisc(x: f64, y: f64, barBefore: i32, barAfter: i32): void {
  discX[discs] = x;
  discY[discs] = y;
  before[discs] = barBefore;
  after[discs] = barAfter;
  discs++;
}

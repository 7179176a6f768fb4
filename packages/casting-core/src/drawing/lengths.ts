import type { Point } from "../geometry/types.js";
import { hypot } from "../trig.js";
import { enters, type Ink, overlap, type Rect } from "./ink.js";

/** Side of the cells in which the length of lines is counted, and steps along a line, mm. */
const CELL = 2;
const ALONG_LINE = 1;
/**
 * Lengths are summed in whole parts of a mm: the sums are exact, and come to 0 wherever there is no line. A page holds far
 * less than the two kilometres that there is room for.
 */
const PARTS = 1000;

/** Length of the lines within a rectangle, mm, to whole cells: 0 only where there is none. Words have no lines. */
export type Lengths = (x: number, y: number, width: number, height: number) => number;

/** Counts the lines of `ink` in one window after the other: each time ends the use of what was counted before. */
export function lengthsIn(ink: readonly Ink[]): (window: Rect) => Lengths {
  const lines = ink.filter(({ solid }) => !solid);
  let room = new Int32Array(0);
  return (window) => {
    const columns = Math.ceil(window.width / CELL) + 1;
    const rows = Math.ceil(window.height / CELL) + 1;
    const across = columns + 1;
    const size = across * (rows + 1);
    if (room.length < size) room = new Int32Array(size);
    // Sums over all cells above and to the left of a corner: any rectangle's is that of its four corners.
    const sums = room.subarray(0, size).fill(0);
    for (const line of lines) if (overlap(line.bounds, window)) addLines(sums, across, window, line.points);
    addUp(sums, across);
    const column = (x: number) => Math.max(0, Math.min(columns - 1, Math.floor((x - window.x) / CELL)));
    const row = (y: number) => Math.max(0, Math.min(rows - 1, Math.floor((y - window.y) / CELL)));
    return (x, y, width, height) => {
      const left = column(x);
      const right = column(x + width) + 1;
      const top = row(y) * across;
      const bottom = (row(y + height) + 1) * across;
      return (sums[bottom + right]! - sums[top + right]! - sums[bottom + left]! + sums[top + left]!) / PARTS;
    };
  };
}

/** Adds the length of a drawn line to the cells it runs through, `across` in a row, in short parts. */
function addLines(cells: Int32Array, across: number, window: Rect, points: readonly Point[]): void {
  for (let n = 1; n < points.length; n++) {
    const from = points[n - 1]!;
    const to = points[n]!;
    if (!enters(from[0], from[1], to[0], to[1], window)) continue;
    const dx = to[0] - from[0];
    const dy = to[1] - from[1];
    const length = hypot(dx, dy);
    const parts = Math.ceil(length / ALONG_LINE);
    // Up: of no line is nothing left.
    const part = Math.ceil((length / parts) * PARTS);
    for (let n = 0; n < parts; n++) {
      const x = from[0] + (dx * (n + 0.5)) / parts - window.x;
      const y = from[1] + (dy * (n + 0.5)) / parts - window.y;
      if (x < 0 || y < 0 || x > window.width || y > window.height) continue;
      cells[(Math.floor(y / CELL) + 1) * across + Math.floor(x / CELL) + 1]! += part;
    }
  }
}

/** Makes each cell the sum of all above and to the left of it; the first row and column are empty. */
function addUp(cells: Int32Array, across: number): void {
  for (let start = across; start < cells.length; start += across) {
    let row = 0;
    for (let n = start + 1; n < start + across; n++) {
      row += cells[n]!;
      cells[n] = cells[n - across]! + row;
    }
  }
}

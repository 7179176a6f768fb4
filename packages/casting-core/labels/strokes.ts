import { enterBars, findNear, openGrid } from "../channels/near";
import { addBar, bars, barX, barY, lineEnd, points } from "../channels/strips";
import { hypot } from "../src/arc";
import { enters } from "./box";

/*
 * The straight parts of what is drawn: each is a bar in the channels' grid, with its end and its line beside it.
 */

/** Cells of the grid are at least so wide, mm: about as much as a number with its room. */
const CELL: f64 = 4;
/** What is looked up reaches so much further, mm: more than rounding takes away. */
const SLACK: f64 = 1e-6;

/** Where each stroke ends, and the line that it belongs to. */
export let endX = new StaticArray<f64>(0);
export let endY = new StaticArray<f64>(0);
export let lineOf = new StaticArray<i32>(0);

/** Takes the lines apart into strokes, and enters those into the grid; a point that repeats the one before adds none. */
export function drawStrokes(): void {
  const count = points.length / 2;
  endX = new StaticArray<f64>(count);
  endY = new StaticArray<f64>(count);
  lineOf = new StaticArray<i32>(count);
  if (count === 0) return;
  openGrid(CELL);
  let first = 0;
  for (let line = 0; line < lineEnd.length; line++) {
    for (let p = first + 1; p < lineEnd[line]; p++) {
      const x = points[2 * p - 2];
      const y = points[2 * p - 1];
      const dx = points[2 * p] - x;
      const dy = points[2 * p + 1] - y;
      const long = hypot(dx, dy);
      if (long === 0) continue;
      endX[bars] = points[2 * p];
      endY[bars] = points[2 * p + 1];
      lineOf[bars] = line;
      addBar(x, y, dx / long, dy / long, long);
    }
    first = lineEnd[line];
  }
  enterBars();
}

/** Finds the strokes that come within `far` of a box, and some more, as the bars near it. */
export function findRound(x: f64, y: f64, width: f64, height: f64, far: f64): void {
  findNear(x + width / 2, y + height / 2, Math.max(width, height) / 2 + far + SLACK);
}

/** Whether stroke `s` has any part in a box. */
export function strokeEnters(s: i32, x: f64, y: f64, width: f64, height: f64): bool {
  return enters(barX[s], barY[s], endX[s], endY[s], x, y, width, height);
}

import { hypot } from "../src/arc";
import { discAt, enterBars, enterDisc, openGrid } from "./near";
import { addBar, addDisc, bars, discs, lineEnd, points } from "./strips";

/**
 * Draws the lines as discs and bars, and enters those into the grid. Where several lines meet, one disc stands for all; a
 * point that repeats the one before it is passed over.
 */
export function drawLines(width: f64): void {
  openGrid(width);
  let first = 0;
  for (let n = 0; n < lineEnd.length; n++) {
    drawLine(first, lineEnd[n]);
    first = lineEnd[n];
  }
  // Ends come last: the disc of a bend knows its bars, also where other lines end.
  first = 0;
  for (let n = 0; n < lineEnd.length; n++) {
    const last = lineEnd[n] - 1;
    if (first <= last) {
      drawPoint(first, -1, -1);
      drawPoint(last, -1, -1);
    }
    first = last + 1;
  }
  enterBars();
}

/** The straight parts from point `first` to `end`, and the points between them. */
function drawLine(first: i32, end: i32): void {
  let corner = first;
  for (let p = first + 1; p < end; p++) {
    const x = points[2 * corner];
    const y = points[2 * corner + 1];
    const dx = points[2 * p] - x;
    const dy = points[2 * p + 1] - y;
    const long = hypot(dx, dy);
    if (long === 0) continue;
    addBar(x, y, dx / long, dy / long, long);
    if (corner > first) drawPoint(corner, bars - 2, bars - 1);
    corner = p;
  }
}

/** The disc round point `p`, unless there is one, between two bars or, −1, at the end of a line. */
function drawPoint(p: i32, before: i32, after: i32): void {
  const x = points[2 * p];
  const y = points[2 * p + 1];
  if (discAt(x, y) >= 0) return;
  addDisc(x, y, before, after);
  enterDisc(discs - 1);
}

import type { Point } from "../geometry/types.js";
import { hypot } from "../trig.js";
import { CHECK } from "./block.js";
import { enters, grown, type Ink, overlap, type Rect } from "./ink.js";

/** Between two places that are tried, mm: over the page, then more closely. */
const COARSE = 12;
const FINE = 3;
/** Room inside the trim lines for the crosses that join pages, mm. */
const CROSSES = 4;
/** Least room between a side and what is drawn along it, mm: it must be seen apart to be measured. */
const BESIDE = 1.5;
/** Side of the cells in which the length of lines is counted, and steps along a line, mm. */
const CELL = 1;
const ALONG_LINE = 0.5;
/**
 * A line along a side counts so many times its length, a word inside the squares and one struck by a side so many mm: lines
 * can be followed under the squares, and a word inside is still read.
 */
const ALONG = 10;
const INSIDE = 100;
const STRUCK = 5000;

/** Which sides of a page are shared with a neighbour. */
interface Neighbours {
  left: boolean;
  right: boolean;
  above: boolean;
  below: boolean;
}

/**
 * Where on a page the check squares lie over least of the drawing, inside the trim lines where there is room; among
 * equals low and left. `at` is their upper left corner in the window; `covered` is 0 where they cover nothing.
 */
export function squaresPlace(
  ink: readonly Ink[],
  window: Rect,
  shared: number,
  { left, right, above, below }: Neighbours,
): { at: Point; covered: number } {
  const side = CHECK.inch;
  // From where to where the squares' corner may lie, in one direction.
  const range = (room: number, before: boolean, after: boolean): [number, number] => {
    const inset = (neighbour: boolean) => (neighbour ? shared / 2 + CROSSES : 0);
    const spare = room - side - inset(before) - inset(after);
    return spare >= 0 ? [inset(before), room - side - inset(after)] : [0, room - side];
  };
  const [across, down] = [range(window.width, left, right), range(window.height, above, below)];
  const length = lengthsOf(ink, window);
  const words = ink.filter(({ solid, bounds }) => solid && overlap(bounds, window)).map(({ bounds }) => bounds);
  let best: Point = [across[0], down[1]];
  let least = Infinity;
  const tryAll = (xs: readonly number[], ys: readonly number[]): void => {
    for (const y of ys) {
      for (const x of xs) {
        if (least === 0) return;
        const covered = coveredBy({ x: window.x + x, y: window.y + y, width: side, height: side }, length, words);
        if (covered >= least) continue;
        best = [x, y];
        least = covered;
      }
    }
  };
  tryAll(steps(across, COARSE), steps(down, COARSE).reverse());
  const about = (at: number, [from, to]: [number, number]) =>
    steps([Math.max(from, at - COARSE), Math.min(to, at + COARSE)], FINE);
  // Where every place strikes a word the best may lie anywhere between them.
  if (least >= STRUCK) tryAll(steps(across, FINE), steps(down, FINE).reverse());
  else tryAll(about(best[0], across), about(best[1], down).reverse());
  return { at: best, covered: least };
}

/** From one end to the other in equal steps no longer than `step`. */
function steps([from, to]: [number, number], step: number): number[] {
  const count = Math.max(1, Math.ceil((to - from) / step));
  return Array.from({ length: count + 1 }, (_, n) => from + ((to - from) * n) / count);
}

/** Length of what lies under the squares or along their sides, mm, words counted with it. */
function coveredBy(square: Rect, length: (within: Rect) => number, words: readonly Rect[]): number {
  const { x, y, width, height } = square;
  const room = grown(square, BESIDE);
  // The nested squares' sides are 0.8 mm apart.
  const wide = 2 * BESIDE + 0.8;
  const sides =
    length({ ...room, height: wide }) +
    length({ ...room, y: y + height + BESIDE - wide, height: wide }) +
    length({ ...room, width: wide }) +
    length({ ...room, x: x + width + BESIDE - wide, width: wide });
  let covered = length(room) + ALONG * sides;
  const inside = grown(square, -(BESIDE + 0.8));
  for (const word of words) if (overlap(word, room)) covered += contains(inside, word) ? INSIDE : STRUCK;
  return covered;
}

function contains(outer: Rect, { x, y, width, height }: Rect): boolean {
  const [right, bottom] = [outer.x + outer.width, outer.y + outer.height];
  return x >= outer.x && y >= outer.y && x + width <= right && y + height <= bottom;
}

/** Length of the lines within any rectangle, mm, to whole cells: 0 only where there is none. Words have no lines. */
function lengthsOf(ink: readonly Ink[], window: Rect): (within: Rect) => number {
  const columns = Math.ceil(window.width / CELL) + 1;
  const rows = Math.ceil(window.height / CELL) + 1;
  const column = (x: number) => Math.max(0, Math.min(columns - 1, Math.floor((x - window.x) / CELL)));
  const row = (y: number) => Math.max(0, Math.min(rows - 1, Math.floor((y - window.y) / CELL)));
  // Sums over all cells above and to the left of a corner: any rectangle's is that of its four corners.
  const sums = new Float64Array((columns + 1) * (rows + 1));
  for (const { points, solid, bounds } of ink) {
    if (solid || !overlap(bounds, window)) continue;
    for (let n = 1; n < points.length; n++) {
      const from = points[n - 1]!;
      const to = points[n]!;
      if (enters(from[0], from[1], to[0], to[1], window)) addLine(sums, columns + 1, window, from, to);
    }
  }
  addUp(sums, columns + 1);
  return ({ x, y, width, height }) => {
    const [left, right] = [column(x), column(x + width) + 1];
    const [top, bottom] = [row(y) * (columns + 1), (row(y + height) + 1) * (columns + 1)];
    return Math.max(0, sums[bottom + right]! - sums[top + right]! - sums[bottom + left]! + sums[top + left]!);
  };
}

/** Adds the length of a line to the cells it runs through, `across` in a row, in short parts. */
function addLine(cells: Float64Array, across: number, window: Rect, from: Point, to: Point): void {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const length = hypot(dx, dy);
  const parts = Math.ceil(length / ALONG_LINE);
  const part = length / parts;
  for (let n = 0; n < parts; n++) {
    const x = from[0] + (dx * (n + 0.5)) / parts - window.x;
    const y = from[1] + (dy * (n + 0.5)) / parts - window.y;
    if (x < 0 || y < 0 || x > window.width || y > window.height) continue;
    cells[(Math.floor(y / CELL) + 1) * across + Math.floor(x / CELL) + 1]! += part;
  }
}

/** Makes each cell the sum of all above and to the left of it; the first row and column are empty. */
function addUp(cells: Float64Array, across: number): void {
  for (let start = across; start < cells.length; start += across) {
    for (let n = start + 1; n < start + across; n++) {
      cells[n]! += cells[n - 1]! + cells[n - across]! - cells[n - across - 1]!;
    }
  }
}

import type { Point } from "../geometry/types.js";
import { CHECK } from "./block.js";
import { grown, type Ink, lengthWithin, overlap, type Rect } from "./ink.js";

/** Between two places that are tried, mm: over the page, then about the best. */
const COARSE = 12;
const FINE = 3;
/** Room inside the trim lines for the crosses that join pages, mm. */
const CROSSES = 4;
/** Least room between a side and what is drawn along it, mm: it must be seen apart to be measured. */
const BESIDE = 1.5;
/** A line along a side counts so many times its length, a word so many mm. */
const ALONG = 10;
const WORD = 100;

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
  let best: Point = [across[0], down[1]];
  let least = Infinity;
  const tryAll = (xs: readonly number[], ys: readonly number[]): void => {
    for (const y of ys) {
      for (const x of xs) {
        if (least === 0) return;
        const covered = coveredBy({ x: window.x + x, y: window.y + y, width: side, height: side }, ink, least);
        if (covered >= least) continue;
        best = [x, y];
        least = covered;
      }
    }
  };
  tryAll(steps(across, COARSE), steps(down, COARSE).reverse());
  const about = (at: number, [from, to]: [number, number]) =>
    steps([Math.max(from, at - COARSE), Math.min(to, at + COARSE)], FINE);
  tryAll(about(best[0], across), about(best[1], down).reverse());
  return { at: best, covered: least };
}

/** From one end to the other in equal steps no longer than `step`. */
function steps([from, to]: [number, number], step: number): number[] {
  const count = Math.max(1, Math.ceil((to - from) / step));
  return Array.from({ length: count + 1 }, (_, n) => from + ((to - from) * n) / count);
}

/** Length of what lies under the squares or along their sides, mm, counted no further than to `enough`. */
function coveredBy(square: Rect, ink: readonly Ink[], enough: number): number {
  const { x, y, width, height } = square;
  const room = grown(square, BESIDE);
  // The nested squares' sides are 0.8 mm apart.
  const wide = 2 * BESIDE + 0.8;
  const sides = [
    { ...room, height: wide },
    { ...room, y: y + height + BESIDE - wide, height: wide },
    { ...room, width: wide },
    { ...room, x: x + width + BESIDE - wide, width: wide },
  ];
  let covered = 0;
  for (const each of ink) {
    if (!overlap(each.bounds, room)) continue;
    if (each.solid) covered += WORD;
    covered += lengthWithin(each, room);
    for (const bar of sides) covered += ALONG * lengthWithin(each, bar);
    if (covered >= enough) break;
  }
  return covered;
}

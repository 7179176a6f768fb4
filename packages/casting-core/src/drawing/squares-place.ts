import type { Point } from "../geometry/types.js";
import { CHECK } from "./block.js";
import { grown, type Ink, overlap, type Rect } from "./ink.js";
import { type Lengths, lengthsIn } from "./lengths.js";

/** Between two places that are tried, mm: over the page, then more closely. */
const COARSE = 12;
const FINE = 3;
/** Room inside the trim lines for the crosses that join pages, mm. */
const CROSSES = 4;
/** Least room between a side and what is drawn along it, mm: it must be seen apart to be measured. */
const BESIDE = 1.5;
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

/** Where a page's check squares lie: their upper left corner in its window; `covered` is 0 where they cover nothing. */
interface Place {
  at: Point;
  covered: number;
}

/**
 * Finds where on a page of a drawing the check squares lie over least of it, inside the trim lines where there is room;
 * among equals low and left. The pages share `shared` mm.
 */
export function squaresPlaces(ink: readonly Ink[], shared: number): (window: Rect, beside: Neighbours) => Place {
  const lengths = lengthsIn(ink);
  const words = ink.filter(({ solid }) => solid).map(({ bounds }) => bounds);
  return (window, beside) => {
    const near = words.filter((word) => overlap(word, window));
    return squaresPlace(lengths(window), near, window, shared, beside);
  };
}

function squaresPlace(
  length: Lengths,
  words: readonly Rect[],
  window: Rect,
  shared: number,
  { left, right, above, below }: Neighbours,
): Place {
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
        const square = { x: window.x + x, y: window.y + y, width: side, height: side };
        const covered = coveredBy(square, length, words, least);
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

/** Length of what lies under the squares or along their sides, mm, words counted with it; from `most` on it may be more. */
function coveredBy(square: Rect, length: Lengths, words: readonly Rect[], most: number): number {
  const { x, y, width, height } = square;
  const room = grown(square, BESIDE);
  let covered = length(room.x, room.y, room.width, room.height);
  if (covered >= most) return covered;
  // The nested squares' sides are 0.8 mm apart.
  const wide = 2 * BESIDE + 0.8;
  const sides =
    length(room.x, room.y, room.width, wide) +
    length(room.x, y + height + BESIDE - wide, room.width, wide) +
    length(room.x, room.y, wide, room.height) +
    length(x + width + BESIDE - wide, room.y, wide, room.height);
  covered += ALONG * sides;
  if (covered >= most) return covered;
  const inside = grown(square, -(BESIDE + 0.8));
  for (const word of words) if (overlap(word, room)) covered += contains(inside, word) ? INSIDE : STRUCK;
  return covered;
}

function contains(outer: Rect, { x, y, width, height }: Rect): boolean {
  const [right, bottom] = [outer.x + outer.width, outer.y + outer.height];
  return x >= outer.x && y >= outer.y && x + width <= right && y + height <= bottom;
}

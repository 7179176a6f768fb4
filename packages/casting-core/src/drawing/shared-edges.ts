import type { Point } from "../geometry/types.js";
import { type Finder, grown, type Ink, overlap, partsIn, type Rect, touches } from "./ink.js";
import { columnName, type Page, type Tiling } from "./pages.js";
import { line, type Shape, type Style } from "./sheet.js";

/** Half a cross, mm. */
const ARM = 3;
/** Between a mark and what is drawn, mm. */
const CLEAR = 0.5;
/** Steps in which free places are looked for, mm. */
const STEP = 1;
/** A cross would rather run through so many lines than through one word. */
const WORD = 20;
const TRIM: Style = { line: 0.2, dash: [1.5, 1.5], ink: "grey" };

/** An edge that a page shares with a neighbour: the trim line along the middle of what both show, in the sheet's mm. */
export interface Shared {
  /** The neighbour's name. */
  name: string;
  upright: boolean;
  /** Where the line lies across its direction, and from where to where it runs. */
  across: number;
  from: number;
  to: number;
  /** To which side of it the page lies. */
  inward: 1 | -1;
}

/** The edges that a page shares with its neighbours. */
export function sharedEdges({ pages, overlap }: Tiling, page: Page): Shared[] {
  const { column, row } = page;
  const sides = [
    { column: column - 1, row, upright: true, inward: 1 },
    { column: column + 1, row, upright: true, inward: -1 },
    { column, row: row - 1, upright: false, inward: 1 },
    { column, row: row + 1, upright: false, inward: -1 },
  ] as const;
  return sides.flatMap(({ column, row, upright, inward }): Shared[] => {
    const other = pages.find((each) => each.column === column && each.row === row);
    if (!other) return [];
    // Always from the page before the edge, so that both pages find the same places.
    const { x, y, width, height } = (inward === 1 ? other : page).window;
    return [
      {
        name: `${columnName(column)}${row + 1}`,
        upright,
        inward,
        across: (upright ? x + width : y + height) - overlap / 2,
        from: upright ? y : x,
        to: upright ? y + height : x + width,
      },
    ];
  });
}

/** A place along an edge, `aside` to the right of it or below. */
export function onEdge({ upright, across }: Shared, along: number, aside = 0): Point {
  return upright ? [across + aside, along] : [along, across + aside];
}

/** A drawn line's straight parts about an edge: most of a circle never comes near. */
export interface Near {
  parts: readonly Ink[];
  bounds: Rect;
  solid: boolean;
}

/** What of the drawing comes near an edge: where its crosses may stand, and a little more. */
export function nearEdge(edge: Shared, find: Finder): Near[] {
  const { from, to } = edge;
  const strip = bar(edge, (from + to) / 2, (to - from) / 2 + STEP, ARM + 2 * CLEAR);
  return find(strip).flatMap((ink): Near[] => {
    const parts = partsIn(ink, strip);
    return parts.length === 0 ? [] : [{ parts, bounds: ink.bounds, solid: ink.solid }];
  });
}

/** Where the two crosses of an edge stand: near its quarters, moved to where they meet least. */
export function places(edge: Shared, near: readonly Near[]): number[] {
  const { from, to } = edge;
  return [0.25, 0.75].map((share) => {
    const wish = from + (to - from) * share;
    const reach = 0.17 * (to - from);
    let best = wish;
    let least = Infinity;
    for (let off = 0; off <= reach && least > reach; off += STEP) {
      for (const along of [wish - off, wish + off]) {
        const cost = off + reach * metBy(edge, along, near);
        if (cost < least) {
          best = along;
          least = cost;
        }
      }
    }
    return best;
  });
}

/** How many lines a cross meets, a word counted as many. */
function metBy(edge: Shared, along: number, near: readonly Near[]): number {
  const both = bar(edge, along, ARM + CLEAR, ARM + CLEAR);
  const long = bar(edge, along, ARM + CLEAR, CLEAR);
  const short = bar(edge, along, CLEAR, ARM + CLEAR);
  const isMet = (part: Ink) => touches(part, long) || touches(part, short);
  let met = 0;
  for (const { parts, bounds, solid } of near) {
    if (overlap(bounds, both) && parts.some(isMet)) met += solid ? WORD : 1;
  }
  return met;
}

/** The rectangle round a place on the edge: `half` along it and `wide` across it to both sides. */
function bar(edge: Shared, along: number, half: number, wide: number): Rect {
  const [x, y] = onEdge(edge, along);
  const [hx, hy] = edge.upright ? [wide, half] : [half, wide];
  return { x: x - hx, y: y - hy, width: 2 * hx, height: 2 * hy };
}

/** A cross on an edge. */
export function cross(edge: Shared, along: number): Shape[] {
  return [
    line(onEdge(edge, along - ARM), onEdge(edge, along + ARM)),
    line(onEdge(edge, along, -ARM), onEdge(edge, along, ARM)),
  ];
}

/** The trim line where neither the drawing nor any cross is. */
export function trimLine(edge: Shared, near: readonly Near[], crosses: readonly Ink[]): Shape[] {
  const { from, to, upright } = edge;
  const starts: number[] = [];
  for (let along = from; along < to; along += STEP) starts.push(along);
  const taken = starts.map(() => false);
  // What lies on the line's last, broken step alone, behind its end, is no bar to it.
  const whole = bar(edge, (from + to) / 2, (to - from) / 2, CLEAR);
  const onLine = (part: Ink) => touches(part, whole);
  const met = near.flatMap(({ parts }) => (parts.some(onLine) ? parts : []));
  const strip = grown(whole, STEP);
  for (const part of [...met, ...crosses.filter(onLine)]) {
    if (!overlap(part.bounds, strip)) continue;
    const { x, y, width, height } = part.bounds;
    const [low, long] = upright ? [y, height] : [x, width];
    // One step more to both sides: the starts are sums, and not quite where they were reckoned.
    const last = Math.min(starts.length - 1, Math.floor((low + long - from) / STEP) + 1);
    for (let n = Math.max(0, Math.floor((low - from) / STEP) - 1); n <= last; n++) {
      taken[n] ||= touches(part, bar(edge, starts[n]! + STEP / 2, STEP / 2, CLEAR));
    }
  }
  const lines: Shape[] = [];
  let start = from;
  const end = (at: number) => {
    if (at - start > STEP) lines.push(line(onEdge(edge, start), onEdge(edge, at), TRIM));
  };
  starts.forEach((along, n) => {
    if (!taken[n]) return;
    end(along);
    start = along + STEP;
  });
  end(to);
  return lines;
}

import { distance } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";
import { sinCos, TAU } from "../trig.js";
import { enters, grown, inkOf, overlap, type Rect, rectsIn, textBox } from "./ink.js";
import {
  distances,
  isBlocked,
  isClear,
  justNearer,
  leaderFree,
  type Neighbourhood,
  square,
  wellNearer,
} from "./neighbourhood.js";
import { type Shape, text } from "./sheet.js";
import { strokesOf } from "./strokes.js";

/** Sizes of the numbers, mm: the first that finds room; the last ones serve tools of tiny pieces. */
const SIZES = [4, 3.5, 3, 2.5, 1.8, 1.2];
/** From here on a number that is nearer to another cut is better than a still smaller one. */
const READABLE = 2.5;
/** Between a number and whatever is drawn, mm. */
const CLEAR = 0.35;
/** Between a number and the index, or another number on its line: nearer it would be read with it, mm. */
const APART = 1.2;
/** The same to either side of the index's word: a number there is read as the word's. */
const BY_WORD = 6;
/** Lengths of leaders to be tried, mm, and their width. */
const LENGTHS = [1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 9, 10, 12];
const WIDTH = 0.2;
/** Radius of the dot at the start, mm. */
const DOT = 0.55;
/** Sine and cosine of the directions that are tried. */
const DIRECTIONS = Array.from({ length: 48 }, (_, n) => sinCos((TAU * n) / 48));
/** No leader with its number reaches further from its start, mm. */
const REACH = 20;

/** Where a number may go: its size and its box, and where its leader ends. */
interface Place {
  size: number;
  box: Rect;
  end: Point;
}

/** Whether nothing is in the way of a number with its leader; `room`: its box and what is kept clear round it. */
type IsFree = (place: Place, room: Rect) => boolean;

/**
 * For each cut a dot where it begins, and its number with a leader that ends in the dot:
 * clear of every line and other number, and nearer to its own cut than to any other where there is such a place.
 * `walls` are lines that a leader may not cross, `lines` all others that a number must not lie on, `arrows` the cuts' own:
 * a leader keeps off its cut's where it can. From the `index`, its stroke and its word, both keep well away.
 */
export function cutNumbers(
  cuts: readonly (readonly Point[])[],
  walls: readonly Shape[],
  lines: readonly Shape[],
  arrows: readonly Shape[],
  [stroke, word]: readonly [stroke: Shape, word: Shape],
): { leaders: Shape[]; numbers: Shape[] } {
  const closed = [...walls, stroke];
  const strokes = strokesOf([...cuts, ...[...closed, ...lines, ...arrows].map((shape) => inkOf(shape).points)]);
  const read = inkOf(word).bounds;
  const apart = [inkOf(stroke).bounds, beside(read, BY_WORD - APART)].map((each) => grown(each, APART - CLEAR));
  const starts = cuts.map((cut) => cut[0]!);
  const startsIn = rectsIn(starts.map((start) => square(start, 0)));
  const taken: (Place & { start: Point })[] = [];
  starts.forEach((start, index) => {
    const here = square(start, REACH);
    const dots = startsIn(here).flatMap((n) => (distance(starts[n]!, start) < REACH ? [square(starts[n]!, DOT)] : []));
    // What stands in reach of another start lies no further from it than that.
    const near = startsIn(grown(here, REACH))
      .filter((n) => n < index)
      .map((n) => taken[n]!)
      .filter((other) => crosses(other.start, other.end, here) || overlap(other.box, here));
    const boxes = [...apart, ...dots, ...near.map(({ box }) => beside(box, APART - CLEAR))];
    const from: Neighbourhood = {
      index,
      start,
      around: strokes(start),
      cuts: cuts.length,
      closed: cuts.length + closed.length,
    };
    const free: IsFree = ({ end }, room) =>
      isClear(room, from) &&
      boxes.every((other) => !overlap(other, room)) &&
      near.every((other) => !crosses(other.start, other.end, room)) &&
      near.every((other) => !crosses(start, end, grown(other.box, CLEAR / 2))) &&
      !crosses(start, end, read) &&
      leaderFree(start, end, from);
    taken.push({ start, ...placeFor(from, free, inkOf(arrows[index]!).bounds) });
  });
  return {
    leaders: taken.flatMap(({ start, end }): Shape[] => [
      { kind: "polyline", points: [start, end], style: { line: WIDTH } },
      { kind: "circle", centre: start, radius: DOT, style: { line: 0, fill: "black" } },
    ]),
    numbers: taken.map(({ size, box: { x, y, width, height } }, index) =>
      text([x + width / 2, y + height], String(index + 1), size, "middle"),
    ),
  };
}

/** A box of letters with the room to either side that keeps 6 and 32 from being read as 632. */
function beside({ x, y, width, height }: Rect, by: number): Rect {
  return { x: x - by, y, width: width + 2 * by, height };
}

function crosses([ax, ay]: Point, [bx, by]: Point, box: Rect): boolean {
  return enters(ax, ay, bx, by, box);
}

/** The largest number that finds a free place by its start; at worst one over lines, which its leader still names. */
function placeFor(from: Neighbourhood, free: IsFree, arrow: Rect): Place {
  const readable = SIZES.filter((size) => size >= READABLE);
  const smaller = SIZES.filter((size) => size < READABLE);
  return placeIn(readable, from, free, arrow) ?? placeIn(smaller, from, free, arrow) ?? overLines(from);
}

/**
 * A free place for a number in one of `sizes`, looked for from the largest size and the shortest leader on: the first off
 * its cut's arrow and plainly nearer to its own cut than to any other; else the first off it and nearer at all; else the
 * first that is free.
 */
function placeIn(sizes: readonly number[], from: Neighbourhood, free: IsFree, arrow: Rect): Place | undefined {
  let firstNearer: Place | undefined;
  let first: Place | undefined;
  for (const size of sizes) {
    for (const length of LENGTHS) {
      const places = freePlaces(size, length, from, free);
      first ??= places[0];
      const offArrow = places
        .filter(({ end }) => !crosses(from.start, end, arrow))
        .map((place) => ({ place, far: distances(place.box, from) }));
      const well = offArrow.filter(({ far }) => wellNearer(far));
      if (well.length > 0) return well.reduce((a, b) => (b.far.own.middle < a.far.own.middle ? b : a)).place;
      firstNearer ??= offArrow.find(({ far }) => justNearer(far))?.place;
    }
  }
  return firstNearer ?? first;
}

/** The free places of a number in one size with a leader of one length, by direction. */
function freePlaces(size: number, length: number, from: Neighbourhood, free: IsFree): Place[] {
  const letters = lettersOf(from, size);
  const places: Place[] = [];
  for (const direction of DIRECTIONS) {
    const box = boxBeside(from.start, letters, length, direction);
    const room = grown(box, CLEAR);
    // Nearly all places end here: the rest of them is not worked out.
    if (isBlocked(room, from)) continue;
    const place = { size, box, end: leaderEnd(from.start, length, direction) };
    if (free(place, room)) places.push(place);
  }
  return places;
}

/** Where nothing is free: as small and as near as can be. */
function overLines(from: Neighbourhood): Place {
  const [size, length, direction] = [SIZES.at(-1)!, LENGTHS[0]!, DIRECTIONS[0]!];
  const box = boxBeside(from.start, lettersOf(from, size), length, direction);
  return { size, box, end: leaderEnd(from.start, length, direction) };
}

/** The box of a cut's number in one size, wherever it is to go. */
function lettersOf({ index }: Neighbourhood, size: number): Rect {
  return textBox(text([0, 0], String(index + 1), size));
}

type Direction = readonly [sine: number, cosine: number];

/** The box of a number with a leader of this length in one of the directions round its start. */
function boxBeside(
  [x, y]: Point,
  { width, height }: Pick<Rect, "width" | "height">,
  length: number,
  [s, c]: Direction,
): Rect {
  // From the number's middle to its box along the leader.
  const inside = Math.min(width / 2 / Math.max(1e-9, Math.abs(c)), height / 2 / Math.max(1e-9, Math.abs(s)));
  const far = length + inside;
  return { x: x + far * c - width / 2, y: y + far * s - height / 2, width, height };
}

/** Where such a leader ends, clear of the number. */
function leaderEnd([x, y]: Point, length: number, [s, c]: Direction): Point {
  const reach = Math.max(0, length - CLEAR);
  return [x + reach * c, y + reach * s];
}

import { pointToSegment } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";
import { hypot, sinCos, TAU } from "../trig.js";
import { boundsOf, enters, grown, inkOf, overlap, type Rect, rectToSegment, textBox } from "./ink.js";
import { type Shape, type Text, text } from "./sheet.js";
import { type Around, strokesOf } from "./strokes.js";

/** Sizes of the numbers, mm: the first that finds room; the last ones serve tools of tiny pieces. */
const SIZES = [4, 3.5, 3, 2.5, 1.8, 1.2];
/** From here on a number that is nearer to another cut is better than a still smaller one. */
const READABLE = 2.5;
/** Between a number and whatever is drawn, mm. */
const CLEAR = 0.35;
/** How much nearer than any other the number's own cut must be, mm. */
const NEARER = 0.2;
/** Lengths of leaders to be tried, mm; their width, and room to the lines beside them. */
const LENGTHS = [1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 9, 10, 12];
const LEADER = { line: 0.2, beside: 0.45 };
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

/** What is drawn round the start of a cut: its own strokes and those of other cuts, walls and lines, by their owners. */
interface Surroundings {
  index: number;
  start: Point;
  around: Around;
  /** Owners below these are cuts; cuts or walls. */
  cuts: number;
  closed: number;
}

/**
 * For each cut a dot where it begins, and its number with a leader that ends in the dot:
 * clear of every line and other number, and nearer to its own cut than to any other where there is such a place.
 * `walls` are lines that a leader may not cross, `lines` all others that a number must not lie on.
 */
export function cutNumbers(
  cuts: readonly (readonly Point[])[],
  walls: readonly Shape[],
  lines: readonly Shape[],
): { leaders: Shape[]; numbers: Shape[] } {
  const strokes = strokesOf([...cuts, ...[...walls, ...lines].map((shape) => inkOf(shape).points)]);
  const words = lines.filter((shape): shape is Text => shape.kind === "text").map(textBox);
  const starts = cuts.map((cut) => cut[0]!);
  const taken: (Place & { start: Point })[] = [];
  starts.forEach((start, index) => {
    const here = square(start, REACH);
    const dots = starts.filter((other) => apart(other, start) < REACH).map((other) => square(other, DOT));
    const near = taken.filter(({ box, start, end }) => rectToSegment(here, start, end) === 0 || overlap(box, here));
    const boxes = [...words.filter((word) => overlap(word, here)), ...dots, ...near.map(({ box }) => box)];
    const from = { index, start, around: strokes(start), cuts: cuts.length, closed: cuts.length + walls.length };
    const free = ({ box, end }: Place): boolean => {
      const room = grown(box, CLEAR);
      return (
        isClear(room, from) &&
        boxes.every((other) => !overlap(other, room)) &&
        near.every((other) => rectToSegment(room, other.start, other.end) > 0) &&
        near.every((other) => rectToSegment(grown(other.box, CLEAR / 2), start, end) > 0) &&
        leaderFree(start, end, from)
      );
    };
    taken.push({ start, ...placeFor(from, free) });
  });
  return {
    leaders: taken.flatMap(({ start, end }): Shape[] => [
      { kind: "polyline", points: [start, end], style: { line: LEADER.line } },
      { kind: "circle", centre: start, radius: DOT, style: { line: 0, fill: "black" } },
    ]),
    numbers: taken.map(({ size, box: { x, y, width, height } }, index) =>
      text([x + width / 2, y + height], String(index + 1), size, "middle"),
    ),
  };
}

/** The largest number that finds a free place by its start; at worst one over lines, which its leader still names. */
function placeFor(from: Surroundings, free: (place: Place) => boolean): Place {
  for (const readable of [true, false]) {
    let [nearer, any]: (Place | undefined)[] = [];
    for (const size of SIZES.filter((each) => each >= READABLE === readable)) {
      const { width, height } = textBox(text([0, 0], String(from.index + 1), size));
      for (const length of LENGTHS) {
        let best: Place | undefined;
        let least = Infinity;
        for (const direction of DIRECTIONS) {
          const place = placed(from.start, size, { width, height }, length, direction);
          if (!free(place)) continue;
          any ??= place;
          const far = distances(place, from);
          if (justNearer(far)) nearer ??= place;
          if (far.own.middle < least && wellNearer(far)) {
            best = place;
            least = far.own.middle;
          }
        }
        if (best) return best;
      }
    }
    if (nearer ?? any) return (nearer ?? any)!;
  }
  const size = SIZES.at(-1)!;
  return placed(from.start, size, textBox(text([0, 0], String(from.index + 1), size)), LENGTHS[0]!, DIRECTIONS[0]!);
}

/** The number of a cut with a leader of this length in one of the directions round its start. */
function placed(
  [x, y]: Point,
  size: number,
  { width, height }: Pick<Rect, "width" | "height">,
  length: number,
  [s, c]: readonly [number, number],
): Place {
  // From the number's middle to its box along the leader.
  const inside = Math.min(width / 2 / Math.max(1e-9, Math.abs(c)), height / 2 / Math.max(1e-9, Math.abs(s)));
  const far = length + inside;
  const reach = Math.max(0, length - CLEAR);
  return {
    size,
    box: { x: x + far * c - width / 2, y: y + far * s - height / 2, width, height },
    end: [x + reach * c, y + reach * s],
  };
}

/** Whether nothing is drawn in the room of a number. */
function isClear(room: Rect, { start, around }: Surroundings): boolean {
  const reach = farCorner(room, start);
  const { ends, away } = around(reach);
  for (let n = 0; away[n]! <= reach; n++) if (met(ends, n, room)) return false;
  return true;
}

/** Whether a leader runs apart from the lines that meet in its start, and crosses none. */
function leaderFree(start: Point, end: Point, { around, closed }: Surroundings): boolean {
  const length = apart(start, end);
  const squares = [0.5, 0.75, 1].map((share) => {
    const at: Point = [start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share];
    return square(at, Math.min(LEADER.beside, 0.5 * share * length));
  });
  const bounds = boundsOf([start, end]);
  const reach = length + LEADER.beside * Math.SQRT2;
  const { ends, owner, away } = around(reach);
  for (let n = 0; away[n]! <= reach; n++) {
    if (owner[n]! >= closed) continue;
    if (squares.some((each) => met(ends, n, each))) return false;
    if (away[n]! >= 1e-6 && met(ends, n, bounds) && cross(start, end, ...endsOf(ends, n))) return false;
  }
  return true;
}

/** Whether a stroke has any part in the room. */
function met(ends: Float64Array, n: number, room: Rect): boolean {
  return enters(ends[4 * n]!, ends[4 * n + 1]!, ends[4 * n + 2]!, ends[4 * n + 3]!, room);
}

function endsOf(ends: Float64Array, n: number): [Point, Point] {
  return [
    [ends[4 * n]!, ends[4 * n + 1]!],
    [ends[4 * n + 2]!, ends[4 * n + 3]!],
  ];
}

function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = ([px, py]: Point, [qx, qy]: Point, [x, y]: Point) => (qx - px) * (y - py) - (qy - py) * (x - px);
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
}

/** How far a number's middle and its box are from its own cut and from the nearest other one, mm. */
interface Distances {
  own: { middle: number; box: number };
  other: { middle: number; box: number };
}

function wellNearer({ own, other }: Distances): boolean {
  return own.middle + NEARER < other.middle && own.box + NEARER < other.box;
}

function justNearer({ own, other }: Distances): boolean {
  return own.middle < other.middle;
}

function distances({ box }: Place, { index, start, around, cuts }: Surroundings): Distances {
  const middle: Point = [box.x + box.width / 2, box.y + box.height / 2];
  const far: Distances = { own: { middle: Infinity, box: Infinity }, other: { middle: Infinity, box: Infinity } };
  // The cut's own start is as near as its leader is long: what lies further off than that cannot be nearer.
  const reach = 2 * farCorner(box, start) + NEARER;
  const { ends, owner, away } = around(reach);
  for (let n = 0; away[n]! <= reach; n++) {
    if (owner[n]! >= cuts) continue;
    const [from, to] = endsOf(ends, n);
    const one = owner[n] === index ? far.own : far.other;
    one.middle = Math.min(one.middle, pointToSegment(middle, from, to));
    one.box = Math.min(one.box, rectToSegment(box, from, to));
  }
  return far;
}

/** How far the rectangle's furthest corner is from a point, mm. */
function farCorner({ x, y, width, height }: Rect, [px, py]: Point): number {
  return hypot(
    Math.max(Math.abs(x - px), Math.abs(x + width - px)),
    Math.max(Math.abs(y - py), Math.abs(y + height - py)),
  );
}

function square([x, y]: Point, half: number): Rect {
  return { x: x - half, y: y - half, width: 2 * half, height: 2 * half };
}

function apart([ax, ay]: Point, [bx, by]: Point): number {
  return hypot(bx - ax, by - ay);
}

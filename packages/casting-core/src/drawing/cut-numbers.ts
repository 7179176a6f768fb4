import { pointToSegment } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";
import { hypot, sinCos, TAU } from "../trig.js";
import { boundsOf, grown, inkOf, overlap, type Rect, rectToSegment, type Stroke, strokesOf, textBox } from "./ink.js";
import { type Shape, type Text, text } from "./sheet.js";

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
const DIRECTIONS = 48;
/** No leader with its number reaches further from its start, mm. */
const REACH = 20;

interface Place {
  number: Text;
  box: Rect;
  leader: [Point, Point];
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
  const ways = strokesOf(cuts);
  const closed = strokesOf([...cuts, ...walls.map((shape) => inkOf(shape).points)]);
  const drawn = strokesOf([...cuts, ...[...walls, ...lines].map((shape) => inkOf(shape).points)]);
  const words = lines.filter((shape): shape is Text => shape.kind === "text").map(textBox);
  const starts = cuts.map((cut) => cut[0]!);
  const taken: Place[] = [];
  starts.forEach((start, index) => {
    const around = square(start, REACH);
    const dots = starts.filter((other) => apart(other, start) < REACH).map((other) => square(other, DOT));
    const near = taken.filter((other) => rectToSegment(around, ...other.leader) === 0 || overlap(other.box, around));
    const free = ({ box, leader }: Place): boolean => {
      const room = grown(box, CLEAR);
      return (
        [...words, ...dots].every((other) => !overlap(other, room)) &&
        near.every((other) => !overlap(other.box, room) && rectToSegment(room, ...other.leader) > 0) &&
        near.every((other) => rectToSegment(grown(other.box, CLEAR / 2), ...leader) > 0) &&
        drawn(room).length === 0 &&
        leaderFree(leader, closed)
      );
    };
    taken.push(placeFor(index, start, free, ways));
  });
  return {
    leaders: taken.flatMap(({ leader }): Shape[] => [
      { kind: "polyline", points: leader, style: { line: LEADER.line } },
      { kind: "circle", centre: leader[0], radius: DOT, style: { line: 0, fill: "black" } },
    ]),
    numbers: taken.map(({ number }) => number),
  };
}

/** The largest number that finds a free place by its start; at worst one over lines, which its leader still names. */
function placeFor(index: number, start: Point, free: (place: Place) => boolean, ways: (near: Rect) => Stroke[]): Place {
  for (const readable of [true, false]) {
    let [nearer, any]: (Place | undefined)[] = [];
    for (const size of SIZES.filter((each) => each >= READABLE === readable)) {
      for (const length of LENGTHS) {
        let best: Place | undefined;
        let least = Infinity;
        for (let direction = 0; direction < DIRECTIONS; direction++) {
          const place = placed(index, start, size, length, direction);
          if (!free(place)) continue;
          any ??= place;
          const far = distances(place, index, ways);
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
  return placed(index, start, SIZES.at(-1)!, LENGTHS[0]!, 0);
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

/** The number of a cut with a leader of this length in one of the directions round its start. */
function placed(index: number, [x, y]: Point, size: number, length: number, direction: number): Place {
  const [s, c] = sinCos((TAU * direction) / DIRECTIONS);
  const words = String(index + 1);
  const { width, height } = textBox(text([0, 0], words, size));
  // From the number's middle to its box along the leader.
  const inside = Math.min(width / 2 / Math.max(1e-9, Math.abs(c)), height / 2 / Math.max(1e-9, Math.abs(s)));
  const middle: Point = [x + (length + inside) * c, y + (length + inside) * s];
  const number = text([middle[0], middle[1] + height / 2], words, size, "middle");
  const reach = Math.max(0, length - CLEAR);
  return {
    number,
    box: textBox(number),
    leader: [
      [x, y],
      [x + reach * c, y + reach * s],
    ],
  };
}

/** Whether a leader runs apart from the lines that meet in its start, and crosses none. */
function leaderFree([start, end]: [Point, Point], closed: (near: Rect) => Stroke[]): boolean {
  const length = apart(start, end);
  for (const share of [0.5, 0.75, 1]) {
    const at: Point = [start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share];
    if (closed(square(at, Math.min(LEADER.beside, 0.5 * share * length))).length > 0) return false;
  }
  return closed(boundsOf([start, end])).every(
    ({ from, to }) => pointToSegment(start, from, to) < 1e-6 || !cross(start, end, from, to),
  );
}

function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = ([px, py]: Point, [qx, qy]: Point, [x, y]: Point) => (qx - px) * (y - py) - (qy - py) * (x - px);
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
}

function distances({ box, leader: [start] }: Place, index: number, ways: (near: Rect) => Stroke[]): Distances {
  const middle: Point = [box.x + box.width / 2, box.y + box.height / 2];
  const far: Distances = { own: { middle: Infinity, box: Infinity }, other: { middle: Infinity, box: Infinity } };
  for (const { from, to, owner } of ways(grown(box, apart(middle, start) + NEARER))) {
    const one = owner === index ? far.own : far.other;
    one.middle = Math.min(one.middle, pointToSegment(middle, from, to));
    one.box = Math.min(one.box, rectToSegment(box, from, to));
  }
  return far;
}

function square([x, y]: Point, half: number): Rect {
  return { x: x - half, y: y - half, width: 2 * half, height: 2 * half };
}

function apart([ax, ay]: Point, [bx, by]: Point): number {
  return hypot(bx - ax, by - ay);
}

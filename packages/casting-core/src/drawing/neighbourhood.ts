import { distance, pointToSegment } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";
import { hypot } from "../trig.js";
import { boundsOf, enters, pointToRect, type Rect, rectToSegment } from "./ink.js";
import type { Around, Stroke } from "./strokes.js";

/** How much nearer than any other the number's own cut must be, mm. */
const NEARER = 0.2;
/** Room beside a leader to the lines that it runs along, mm. */
const BESIDE = 0.45;

/** What comes so near to a start meets in it, mm: places are rounded to 1 µm, the tool's edge is drawn in chords. */
const MEETS = 2e-3;

/** What is drawn round the start of a cut: its own strokes and those of other cuts, walls and lines, by their owners. */
export interface Neighbourhood {
  index: number;
  start: Point;
  around: Around;
  /** Owners below these are cuts; cuts or walls. */
  cuts: number;
  closed: number;
  /** What was last found in the room of a number. */
  lastHit?: Stroke;
}

/** Whether what was in the way of one place is in that of the next, as it most often is. */
export function isBlocked(room: Rect, from: Neighbourhood): boolean {
  return from.lastHit !== undefined && met(from.lastHit, room);
}

/** Whether nothing is drawn in the room of a number. */
export function isClear(room: Rect, from: Neighbourhood): boolean {
  const hit = strokeIn(room, from);
  if (hit) from.lastHit = hit;
  return hit === undefined;
}

/** A stroke that has any part in the room, where there is one. */
function strokeIn(room: Rect, { start, around }: Neighbourhood): Stroke | undefined {
  const reach = farCorner(room, start);
  const { strokes, away } = around(reach);
  // What lies as far off as the room is most often what is in it: from there outward first, then what is nearer.
  const first = firstFrom(away, Math.min(reach, pointToRect(start, room)));
  for (let n = first; away[n]! <= reach; n++) if (met(strokes[n]!, room)) return strokes[n];
  for (let n = first - 1; n >= 0; n--) if (met(strokes[n]!, room)) return strokes[n];
  return undefined;
}

/** Index of the first of `sorted` that is not below `least`; the last is infinite. */
function firstFrom(sorted: Float64Array, least: number): number {
  let [from, to] = [0, sorted.length - 1];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (sorted[middle]! < least) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** Whether a leader runs apart from the lines that meet in its start, and crosses none. */
export function leaderFree(start: Point, end: Point, { around, closed }: Neighbourhood): boolean {
  const length = distance(start, end);
  const squares = [0.5, 0.75, 1].map((share) => {
    const at: Point = [start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share];
    return square(at, Math.min(BESIDE, 0.5 * share * length));
  });
  const bounds = boundsOf([start, end]);
  const reach = length + BESIDE * Math.SQRT2;
  const { strokes, away } = around(reach);
  for (let n = 0; away[n]! <= reach; n++) {
    const stroke = strokes[n]!;
    if (stroke.owner >= closed) continue;
    if (squares.some((each) => met(stroke, each))) return false;
    if (away[n]! >= MEETS && met(stroke, bounds) && cross(start, end, stroke.from, stroke.to)) return false;
  }
  return true;
}

/** Whether a stroke has any part in the room. */
function met({ from, to }: Stroke, room: Rect): boolean {
  return enters(from[0], from[1], to[0], to[1], room);
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

/** Whether a number stands plainly nearer to its own cut than to any other. */
export function wellNearer({ own, other }: Distances): boolean {
  return own.middle + NEARER < other.middle && own.box + NEARER < other.box;
}

/** Whether its middle at least is nearer to its own cut. */
export function justNearer({ own, other }: Distances): boolean {
  return own.middle < other.middle;
}

/** How far a number's box is from the cuts round its start. */
export function distances(box: Rect, { index, start, around, cuts }: Neighbourhood): Distances {
  const middle: Point = [box.x + box.width / 2, box.y + box.height / 2];
  const far: Distances = { own: { middle: Infinity, box: Infinity }, other: { middle: Infinity, box: Infinity } };
  const apartBy = distance(middle, start);
  const half = hypot(box.width, box.height) / 2;
  const { strokes, away } = around(2 * farCorner(box, start) + NEARER);
  for (let n = 0; n < strokes.length; n++) {
    // The cut's own start is as near as its leader is long: what lies further off than that cannot be nearer.
    const least = away[n]! - apartBy;
    if (least > apartBy + half + NEARER) break;
    const { from, to, owner } = strokes[n]!;
    if (owner >= cuts) continue;
    const one = owner === index ? far.own : far.other;
    if (least > one.middle && least > one.box + half) continue;
    const toMiddle = pointToSegment(middle, from, to);
    one.middle = Math.min(one.middle, toMiddle);
    if (toMiddle < one.box + half) one.box = Math.min(one.box, rectToSegment(box, from, to));
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

/** The square about a point, `half` to every side. */
export function square([x, y]: Point, half: number): Rect {
  return { x: x - half, y: y - half, width: 2 * half, height: 2 * half };
}

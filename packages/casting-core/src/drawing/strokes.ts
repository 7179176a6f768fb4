import Flatbush from "flatbush";
import { pointToSegment } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";

/** Straight parts of drawn lines round a point, nearest first. */
interface Strokes {
  /** From where to where each runs: x, y, x, y. */
  ends: Float64Array;
  /** The line that each belongs to. */
  owner: Int32Array;
  /** How far each lies from the point, mm; one more, infinitely far, comes last. */
  away: Float64Array;
}

/** The strokes that come within `reach` of a point, mm, and some beyond it. */
export type Around = (reach: number) => Strokes;

/** The reach that is looked up at first, mm: enough for most. */
const FIRST = 12;

/** Finds the straight parts of `lines` round a point. */
export function strokesOf(lines: readonly (readonly Point[])[]): (at: Point) => Around {
  const all: { from: Point; to: Point; owner: number }[] = [];
  lines.forEach((points, owner) => {
    for (let i = 1; i < points.length; i++) all.push({ from: points[i - 1]!, to: points[i]!, owner });
  });
  const index = new Flatbush(Math.max(1, all.length));
  for (const { from, to } of all) {
    index.add(Math.min(from[0], to[0]), Math.min(from[1], to[1]), Math.max(from[0], to[0]), Math.max(from[1], to[1]));
  }
  if (all.length === 0) index.add(Infinity, Infinity, Infinity, Infinity);
  index.finish();
  return (at) => {
    const [x, y] = at;
    let known = 0;
    let strokes: Strokes;
    return (reach) => {
      if (reach > known) {
        known = Math.max(reach, known > 0 ? 2 * known : FIRST);
        const found = index.search(x - known, y - known, x + known, y + known).map((n) => all[n]!);
        strokes = sorted(at, found);
      }
      return strokes;
    };
  };
}

function sorted(at: Point, found: readonly { from: Point; to: Point; owner: number }[]): Strokes {
  const away = Float64Array.from(found, ({ from, to }) => pointToSegment(at, from, to));
  const order = [...away.keys()].sort((a, b) => away[a]! - away[b]!);
  const ends = new Float64Array(4 * found.length);
  order.forEach((n, at) => {
    const { from, to } = found[n]!;
    ends.set(from, 4 * at);
    ends.set(to, 4 * at + 2);
  });
  return {
    ends,
    owner: Int32Array.from(order, (n) => found[n]!.owner),
    away: Float64Array.from([...order.map((n) => away[n]!), Infinity]),
  };
}

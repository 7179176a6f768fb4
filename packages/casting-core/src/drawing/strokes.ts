import Flatbush from "flatbush";
import { pointToSegment } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";

/** A straight part of a drawn line, and the line that it belongs to. */
export interface Stroke {
  from: Point;
  to: Point;
  owner: number;
}

/** Strokes round a point, nearest first. */
interface Strokes {
  strokes: Stroke[];
  /** How far each lies from the point, mm, rounded down to a millionth; one more, infinitely far, comes last. */
  away: Float64Array;
}

/** The strokes that come within `reach` of a point, mm, and some beyond it. */
export type Around = (reach: number) => Strokes;

/** The reach that is looked up at first, mm: enough for most. */
const FIRST = 12;

/** Finds the straight parts of `lines` round a point. */
export function strokesOf(lines: readonly (readonly Point[])[]): (at: Point) => Around {
  const all: Stroke[] = [];
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

/** Parts of a mm by which strokes are put in order. */
const FINE = 1e6;

function sorted(at: Point, found: readonly Stroke[]): Strokes {
  const count = found.length;
  // Distance and place in one number each: plain numbers are sorted many times as fast as by a function.
  const keys = new Float64Array(count);
  for (let n = 0; n < count; n++) {
    keys[n] = Math.floor(pointToSegment(at, found[n]!.from, found[n]!.to) * FINE) * count + n;
  }
  keys.sort();
  const strokes: Stroke[] = [];
  const away = new Float64Array(count + 1).fill(Infinity);
  for (let n = 0; n < count; n++) {
    strokes.push(found[keys[n]! % count]!);
    away[n] = Math.floor(keys[n]! / count) / FINE;
  }
  return { strokes, away };
}

import { distance } from "../../geometry/distance.js";
import type { Point } from "../../geometry/types.js";
import { acos } from "../../trig.js";
import { along, rounded } from "../polyline.js";
import type { Surroundings } from "./room.js";
import { ROOM_SLACK } from "./uncut.js";

/** A turn sharper than this is a corner where a cutter dwells, radians (10°: the lines' own bends stay far below it). */
const SHARP = 0.175;
/** Points of a way looked at on each side of a corner. */
const LOOK = 40;
/** Points of a rounded corner between its ends. */
const PARTS = 6;
/** A point of the way this near to where a rounding ends goes, mm: on whole micrometres it could stand there twice. */
const SAME = 0.001;

/**
 * `ways` with their corners rounded: from up to a cutter's width before a corner to as far behind it, by a parabola that
 * touches both sides. A corner is rounded as far as the cutter's side keeps `clearance` to every piece, else left sharp.
 */
export function roundedWays(
  ways: readonly (readonly Point[])[],
  around: Surroundings,
  cutter: number,
  clearance: number,
): Point[][] {
  const least = cutter / 2 + clearance;
  return ways.map((way) => {
    const path: Point[] = [way[0]!];
    for (let i = 1; i < way.length; i++) {
      const corner = way[i]!;
      const before = path[path.length - 1]!;
      const after = way[i + 1];
      const bow = after && turn(before, corner, after) > SHARP ? bowAt(path, way, i, around, cutter, least) : undefined;
      if (!bow) {
        path.push([corner[0], corner[1]]);
        continue;
      }
      path.length = bow.keep;
      path.push(...bow.points);
      i = bow.next - 1;
    }
    return path;
  });
}

interface Bow {
  /** Points of the path so far that stay. */
  keep: number;
  points: Point[];
  /** First point of the way after the rounding. */
  next: number;
}

function bowAt(
  path: readonly Point[],
  way: readonly Point[],
  at: number,
  around: Surroundings,
  cutter: number,
  least: number,
): Bow | undefined {
  const corner = way[at]!;
  for (const reach of [cutter, cutter / 2, cutter / 4]) {
    const back = walk([corner, ...path.slice(-LOOK).reverse()], reach);
    const ahead = walk(way.slice(at, at + LOOK), reach);
    if (!back || !ahead) continue;
    const points: Point[] = [];
    for (let part = 0; part <= PARTS; part++) {
      const share = part / PARTS;
      points.push(rounded(along(along(back.point, corner, share), along(corner, ahead.point, share), share)));
    }
    // The bow itself keeps the whole room; where it joins the way, its ends are a rounding off the way, which may be
    // as narrow as the cutter goes.
    const joined = [path[path.length - 1 - back.passed]!, ...points, way[at + 1 + ahead.passed]!];
    const narrow = least - ROOM_SLACK / 2;
    if (around.within(points, least) < least || around.within(joined, narrow) < narrow) continue;
    return { keep: path.length - back.passed, points, next: at + 1 + ahead.passed };
  }
  return undefined;
}

/** The point `reach` along a line and how many of its corners lie before it; undefined past its end or round a sharp turn. */
function walk(line: readonly Point[], reach: number): { point: Point; passed: number } | undefined {
  let left = reach;
  for (let i = 1; i < line.length; i++) {
    const length = distance(line[i - 1]!, line[i]!);
    if (length > left + SAME) return { point: along(line[i - 1]!, line[i]!, left / length), passed: i - 1 };
    left -= length;
    if (line[i + 1] && turn(line[i - 1]!, line[i]!, line[i + 1]!) > SHARP) return undefined;
  }
  return undefined;
}

function turn(a: Point, b: Point, c: Point): number {
  const lengths = distance(a, b) * distance(b, c);
  if (lengths === 0) return 0;
  return acos(((b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1])) / lengths);
}

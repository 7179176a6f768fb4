import { distance } from "../../geometry/distance.js";
import type { Point } from "../../geometry/types.js";
import { along, evenly, simplified } from "../polyline.js";
import { ontoBisector, stepToBisector } from "./bisector.js";
import { distanceTo, type Site } from "./sites.js";

/** Most that a line's straight parts leave the true middle, mm; with rounding to 1 µm the distances differ by < 0.01. */
const CHORD = 0.004;

/** Between points that show a line's shape, as a share of what the samples are apart: further on `bend` needs more (measured). */
const STEP = 0.6;

/**
 * The way through the circumcentres of samples `spacing` apart as a line on the true middle, with no more points than its
 * shape needs. `ends` are the third sites at its junctions: what lies nearer to them is past the junction.
 */
export function middleLine(
  way: readonly Point[],
  left: Site,
  right: Site,
  ends: readonly Site[],
  spacing: number,
): Point[] {
  const even = evenly(way, STEP * spacing);
  const exact = even.map((point, i) => (i === 0 || i === even.length - 1 ? point : ontoBisector(point, left, right)));
  const inside = exact.filter((point, i) => {
    if (i === 0 || i === exact.length - 1) return true;
    const own = distanceTo(left, point);
    return ends.every((site) => distanceTo(site, point) >= own);
  });
  const points = simplified(inside, CHORD);
  const whole: Point[] = [points[0]!];
  for (let i = 1; i < points.length; i++) bend(points[i - 1]!, points[i]!, left, right, whole);
  return whole;
}

/** Where between its ends a straight part is looked at, and how often it is parted at the most. */
const LOOKED = [0.5, 0.25, 0.75];
const DEEPEST = 12;

/** Appends the line from `from` to `to`, bent to the true middle where its straight part leaves it. */
function bend(from: Point, to: Point, left: Site, right: Site, out: Point[], depth = 0): void {
  for (let n = 0; n < LOOKED.length && depth <= DEEPEST; n++) {
    const straight = along(from, to, LOOKED[n]!);
    // Most are so near that the first step there tells: those after it are shorter by far.
    if (stepToBisector(straight, left, right) <= CHORD / 2) continue;
    const exact = ontoBisector(straight, left, right);
    if (distance(straight, exact) <= CHORD) continue;
    bend(from, exact, left, right, out, depth + 1);
    bend(exact, to, left, right, out, depth + 1);
    return;
  }
  out.push(to);
}

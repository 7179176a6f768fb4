import { distance, pointToSegment } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";

/** Length of the line through `points`, mm. */
export function lengthOf(points: readonly Point[]): number {
  let length = 0;
  for (let i = 1; i < points.length; i++) length += distance(points[i - 1]!, points[i]!);
  return length;
}

/** Point `share` of the way from a to b. */
export function along(a: Point, b: Point, share: number): Point {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}

/** First and last of `points`, and points between them along their line at equal steps of about `step`. */
export function evenly(points: readonly Point[], step: number): Point[] {
  const whole = lengthOf(points);
  const each = whole / Math.max(1, Math.round(whole / step));
  const placed: Point[] = [points[0]!];
  let gone = 0;
  for (let i = 1; i < points.length; i++) {
    const part = distance(points[i - 1]!, points[i]!);
    for (let at = placed.length * each; at <= gone + part && at < whole - each / 2; at += each) {
      placed.push(along(points[i - 1]!, points[i]!, (at - gone) / part));
    }
    gone += part;
  }
  placed.push(points[points.length - 1]!);
  return placed;
}

/** `point` rounded to whole micrometres, as it stands in the plan; never −0. */
export function rounded([x, y]: Point): Point {
  return [Math.round(x * 1000) / 1000 || 0, Math.round(y * 1000) / 1000 || 0];
}

/**
 * The fewest of `points`, first and last among them, whose line stays within `tolerance` of all the others
 * (Douglas and Peucker, 1973).
 */
export function simplified(points: readonly Point[], tolerance: number): Point[] {
  const kept = new Uint8Array(points.length);
  kept[0] = 1;
  kept[points.length - 1] = 1;
  const spans: [number, number][] = [[0, points.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    let most = tolerance;
    let at = -1;
    for (let i = from + 1; i < to; i++) {
      const off = pointToSegment(points[i]!, points[from]!, points[to]!);
      if (off > most) {
        most = off;
        at = i;
      }
    }
    if (at < 0) continue;
    kept[at] = 1;
    spans.push([from, at], [at, to]);
  }
  return points.filter((_, i) => kept[i] === 1);
}

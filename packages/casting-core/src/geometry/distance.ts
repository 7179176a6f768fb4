import { hypot } from "../trig.js";
import type { Outline, Point } from "./types.js";

/** Distance between two points, mm. */
export function distance(a: Point, b: Point): number {
  return hypot(b[0] - a[0], b[1] - a[1]);
}

/** Distance from `point` to the straight piece from `a` to `b`, mm. */
export function pointToSegment(point: Point, a: Point, b: Point): number {
  // By index: until it is compiled, taking points apart by brackets costs more than all the rest.
  const ax = a[0];
  const ay = a[1];
  const dx = b[0] - ax;
  const dy = b[1] - ay;
  const px = point[0] - ax;
  const py = point[1] - ay;
  const squared = dx * dx + dy * dy;
  const t = squared > 0 ? Math.max(0, Math.min(1, (px * dx + py * dy) / squared)) : 0;
  return hypot(px - t * dx, py - t * dy);
}

/** Distance from `point` to the boundary of `outline`, mm, whether inside or out. */
export function pointToOutline(point: Point, outline: Outline): number {
  let least = Infinity;
  let previous = outline[outline.length - 1]!;
  for (const corner of outline) {
    least = Math.min(least, pointToSegment(point, previous, corner));
    previous = corner;
  }
  return least;
}

/** Clear distance between two convex outlines, mm; 0 when they touch or overlap. */
export function clearDistance(a: Outline, b: Outline): number {
  if (convexOverlap(a, b)) return 0;
  let least = Infinity;
  for (const corner of a) least = Math.min(least, pointToOutline(corner, b));
  for (const corner of b) least = Math.min(least, pointToOutline(corner, a));
  return least;
}

/** Largest distance of a corner of `outline` from the origin, mm. */
export function farthest(outline: Outline): number {
  let most = 0;
  for (const [x, y] of outline) most = Math.max(most, x * x + y * y);
  return Math.sqrt(most);
}

/** Whether two convex outlines share a point: no edge of either separates them. */
function convexOverlap(a: Outline, b: Outline): boolean {
  return !separates(a, b) && !separates(b, a);
}

function separates(a: Outline, b: Outline): boolean {
  let [px, py] = a[a.length - 1]!;
  for (const [x, y] of a) {
    const ex = x - px;
    const ey = y - py;
    if (b.every(([bx, by]) => ex * (by - py) - ey * (bx - px) < 0)) return true;
    px = x;
    py = y;
  }
  return false;
}

import { enters, type Rect } from "../../packages/casting-core/src/drawing/ink.js";
import { pointToSegment } from "../../packages/casting-core/src/geometry/distance.js";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";

/** Distance of a point from a rectangle, mm; 0 inside. */
export function pointToRect([px, py]: Point, { x, y, width, height }: Rect): number {
  return Math.hypot(Math.max(x - px, 0, px - x - width), Math.max(y - py, 0, py - y - height));
}

/** Distance between a rectangle and the straight line from `a` to `b`, mm; 0 where they share a point. */
export function rectToSegment(rect: Rect, a: Point, b: Point): number {
  if (enters(a[0], a[1], b[0], b[1], rect)) return 0;
  const { x, y, width, height } = rect;
  const corners = [x, x + width].flatMap((cx) => [y, y + height].map((cy): Point => [cx, cy]));
  return Math.min(pointToRect(a, rect), pointToRect(b, rect), ...corners.map((corner) => pointToSegment(corner, a, b)));
}

import type { Outline, Point } from "./types.js";

/** Area enclosed by `outline`, mm²; positive when counter-clockwise (shoelace formula). */
export function signedArea(outline: Outline): number {
  let twice = 0;
  let [px, py] = outline[outline.length - 1]!;
  for (const [x, y] of outline) {
    twice += px * y - x * py;
    px = x;
    py = y;
  }
  return twice / 2;
}

/** Centroid of the area enclosed by `outline`. */
export function centroid(outline: Outline): Point {
  // About the first corner, so that far-away outlines lose no digits.
  const [ox, oy] = outline[0]!;
  let twice = 0;
  let sx = 0;
  let sy = 0;
  for (let i = 1; i + 1 < outline.length; i++) {
    const ax = outline[i]![0] - ox;
    const ay = outline[i]![1] - oy;
    const bx = outline[i + 1]![0] - ox;
    const by = outline[i + 1]![1] - oy;
    const cross = ax * by - bx * ay;
    twice += cross;
    sx += cross * (ax + bx);
    sy += cross * (ay + by);
  }
  return [ox + sx / (3 * twice), oy + sy / (3 * twice)];
}

/** `outline` moved by (x, y) after a turn about the origin whose sine and cosine are given. */
export function placed(outline: Outline, x: number, y: number, sine: number, cosine: number): Outline {
  return outline.map(([px, py]) => [x + cosine * px - sine * py, y + sine * px + cosine * py]);
}

/** Whether `point` lies inside or on the convex counter-clockwise `outline`. */
export function convexContains(outline: Outline, [x, y]: Point): boolean {
  let [px, py] = outline[outline.length - 1]!;
  for (const [cx, cy] of outline) {
    if ((cx - px) * (y - py) - (cy - py) * (x - px) < 0) return false;
    px = cx;
    py = cy;
  }
  return true;
}

/** Least x and y of all points, then most. */
export function boxOf(points: readonly Point[]): [number, number, number, number] {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const point of points) {
    left = Math.min(left, point[0]);
    bottom = Math.min(bottom, point[1]);
    right = Math.max(right, point[0]);
    top = Math.max(top, point[1]);
  }
  return [left, bottom, right, top];
}

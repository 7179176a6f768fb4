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

/** What adds less than this share of another adds plainly less. */
const ALIKE = 0.99;

/**
 * Area of a small hexagon round the convex counter-clockwise `outline`, mm²: side after side is left out, each time the one
 * whose neighbours, made longer, add least. An outline of up to six corners is its own.
 */
export function hexagonRound(outline: Outline): number {
  const corners = [...outline];
  while (corners.length > 6) {
    const tips = corners.map((_, i) => tipBeyond(corners, i));
    // The first of what is as good as equal: round a regular outline, corners rounded, every other side.
    const best = tips.reduce((least, { added }, i) => (added < ALIKE * tips[least]!.added ? i : least), 0);
    corners[best] = tips[best]!.tip;
    corners.splice((best + 1) % corners.length, 1);
  }
  return signedArea(corners);
}

/** Where the neighbours of side `i`, made longer, meet beyond it, and the area that adds; infinite where they do not. */
function tipBeyond(corners: readonly Point[], i: number): { tip: Point; added: number } {
  const n = corners.length;
  const [bx, by] = corners[(i + n - 1) % n]!;
  const [fx, fy] = corners[i]!;
  const [tx, ty] = corners[(i + 1) % n]!;
  const [ax, ay] = corners[(i + 2) % n]!;
  const [ux, uy] = [fx - bx, fy - by];
  const [vx, vy] = [tx - ax, ty - ay];
  const [dx, dy] = [tx - fx, ty - fy];
  const turn = ux * vy - uy * vx;
  if (turn >= 0) return { tip: [fx, fy], added: Infinity };
  const t = (dx * vy - dy * vx) / turn;
  return { tip: [fx + t * ux, fy + t * uy], added: (t * (ux * dy - uy * dx)) / 2 };
}

/** Least x and y, then most. */
export type Box = readonly [left: number, bottom: number, right: number, top: number];

/** The upright box round all points. */
export function boxOf(points: readonly Point[]): Box {
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const point of points) {
    left = Math.min(left, point[0]);
    bottom = Math.min(bottom, point[1]);
    right = Math.max(right, point[0]);
    top = Math.max(top, point[1]);
  }
  return [left, bottom, right, top];
}

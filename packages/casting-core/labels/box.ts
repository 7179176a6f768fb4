import { hypot } from "../src/arc";

/*
 * Upright boxes, by their upper left corner and size, beside points and straight lines. Lengths mm.
 */

/** Whether two boxes share a point. */
export function overlap(ax: f64, ay: f64, aw: f64, ah: f64, bx: f64, by: f64, bw: f64, bh: f64): bool {
  return ax <= bx + bw && bx <= ax + aw && ay <= by + bh && by <= ay + ah;
}

/** Whether the straight line from a to b has any part in a box (clipping by its four sides, Liang and Barsky 1984). */
export function enters(ax: f64, ay: f64, bx: f64, by: f64, x: f64, y: f64, width: f64, height: f64): bool {
  const right = x + width;
  const bottom = y + height;
  if ((ax < x && bx < x) || (ax > right && bx > right)) return false;
  if ((ay < y && by < y) || (ay > bottom && by > bottom)) return false;
  if (ax >= x && ax <= right && ay >= y && ay <= bottom) return true;
  // Shares of the way at which the line comes between the sides, and leaves.
  let from: f64 = 0;
  let to: f64 = 1;
  if (ax !== bx) {
    const first = (x - ax) / (bx - ax);
    const second = (right - ax) / (bx - ax);
    from = Math.max(from, Math.min(first, second));
    to = Math.min(to, Math.max(first, second));
  }
  if (ay !== by) {
    const first = (y - ay) / (by - ay);
    const second = (bottom - ay) / (by - ay);
    from = Math.max(from, Math.min(first, second));
    to = Math.min(to, Math.max(first, second));
  }
  return from <= to;
}

/** Whether the straight line from a to b crosses or touches that from c to d. */
export function cross(ax: f64, ay: f64, bx: f64, by: f64, cx: f64, cy: f64, dx: f64, dy: f64): bool {
  return (
    side(ax, ay, bx, by, cx, cy) * side(ax, ay, bx, by, dx, dy) <= 0 &&
    side(cx, cy, dx, dy, ax, ay) * side(cx, cy, dx, dy, bx, by) <= 0
  );
}

/** On which side of the line from p to q (x, y) lies, by the sign. */
function side(px: f64, py: f64, qx: f64, qy: f64, x: f64, y: f64): f64 {
  return (qx - px) * (y - py) - (qy - py) * (x - px);
}

/** Distance of (px, py) from the straight line from a to b. */
export function pointToLine(px: f64, py: f64, ax: f64, ay: f64, bx: f64, by: f64): f64 {
  const dx = bx - ax;
  const dy = by - ay;
  const x = px - ax;
  const y = py - ay;
  const squared = dx * dx + dy * dy;
  const t = squared > 0 ? Math.max(0, Math.min(1, (x * dx + y * dy) / squared)) : 0;
  return hypot(x - t * dx, y - t * dy);
}

/** Distance of (px, py) from a box, 0 inside. */
function pointToBox(px: f64, py: f64, x: f64, y: f64, width: f64, height: f64): f64 {
  const dx = Math.max(Math.max(x - px, 0), px - x - width);
  const dy = Math.max(Math.max(y - py, 0), py - y - height);
  return hypot(dx, dy);
}

/** Distance between the straight line from a to b and a box, 0 where they share a point. */
export function lineToBox(ax: f64, ay: f64, bx: f64, by: f64, x: f64, y: f64, width: f64, height: f64): f64 {
  if (enters(ax, ay, bx, by, x, y, width, height)) return 0;
  const ends = Math.min(pointToBox(ax, ay, x, y, width, height), pointToBox(bx, by, x, y, width, height));
  const left = Math.min(pointToLine(x, y, ax, ay, bx, by), pointToLine(x, y + height, ax, ay, bx, by));
  const right = Math.min(pointToLine(x + width, y, ax, ay, bx, by), pointToLine(x + width, y + height, ax, ay, bx, by));
  return Math.min(ends, Math.min(left, right));
}

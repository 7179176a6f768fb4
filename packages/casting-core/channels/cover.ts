import { acos, atan2, hypot, PI, TAU } from "../src/arc";
import { add, intervals, leaveFree } from "./intervals";
import { alongX, alongY, barX, barY, length } from "./strips";

/*
 * Which parts of circles and lines lie within discs and bars: each is appended to the intervals.
 */

/** What dips less into a circle than rounding can only touches it: share of its radius, or of that squared. */
const TOUCH: f64 = 1e-11;

/** From when to when a line is within what it is clipped to. */
let enters: f64 = 0;
let leaves: f64 = 0;

/** The parts of the circle of radius `r` about (x, y) that lie in the disc of radius `radius` about (ox, oy). */
export function arcInDisc(x: f64, y: f64, r: f64, ox: f64, oy: f64, radius: f64): void {
  const dx = ox - x;
  const dy = oy - y;
  const apart = hypot(dx, dy);
  if (apart + r <= radius) add(0, TAU);
  else if (apart < radius + r && r < radius + apart)
    addArc(atan2(dy, dx), acos((apart * apart + r * r - radius * radius) / (2 * apart * r)));
}

/** The parts of the circle of radius `r` about (x, y) that lie within `half` of bar `b` and beside it. */
export function arcInBar(x: f64, y: f64, r: f64, b: i32, half: f64): void {
  const along = (x - barX[b]) * alongX[b] + (y - barY[b]) * alongY[b];
  const off = (y - barY[b]) * alongX[b] - (x - barX[b]) * alongY[b];
  const direction = atan2(alongY[b], alongX[b]);
  const outside = intervals;
  addBeyond(direction, (length[b] - along) / r);
  addBeyond(direction + PI, along / r);
  addBeyond(direction + PI / 2, (half - off) / r);
  addBeyond(direction - PI / 2, (half + off) / r);
  leaveFree(outside, 0, TAU);
}

/** The arc whose cosine from `direction` is above `least`, which is above −1. */
function addBeyond(direction: f64, least: f64): void {
  if (least <= -1) add(0, TAU);
  else if (least < 1 - TOUCH) addArc(direction, acos(least));
}

function addArc(centre: f64, halfWidth: f64): void {
  let from = centre - halfWidth;
  while (from < 0) from += TAU;
  const to = from + 2 * halfWidth;
  if (to <= TAU) add(from, to);
  else {
    add(from, TAU);
    add(0, to - TAU);
  }
}

/** Part of the line from (x, y) along bar `b`'s direction that lies in the disc about (ox, oy). */
export function lineInDisc(x: f64, y: f64, b: i32, ox: f64, oy: f64, radius: f64): void {
  const along = (ox - x) * alongX[b] + (oy - y) * alongY[b];
  const off = (oy - y) * alongX[b] - (ox - x) * alongY[b];
  const squared = radius * radius - off * off;
  if (squared <= TOUCH * radius * radius) return;
  const reach = Math.sqrt(squared);
  add(along - reach, along + reach);
}

/** Part of the line from (x, y) along bar `b`'s direction that lies within `half` of bar `other` and beside it. */
export function lineInBar(x: f64, y: f64, b: i32, other: i32, half: f64): void {
  const cosine = alongX[b] * alongX[other] + alongY[b] * alongY[other];
  const sine = alongX[other] * alongY[b] - alongY[other] * alongX[b];
  const along = (x - barX[other]) * alongX[other] + (y - barY[other]) * alongY[other];
  const off = (y - barY[other]) * alongX[other] - (x - barX[other]) * alongY[other];
  enters = -Infinity;
  leaves = Infinity;
  clip(along, cosine, 0, length[other]);
  if (enters < leaves) clip(off, sine, -half, half);
  if (enters < leaves) add(enters, leaves);
}

/** Shortens `enters` and `leaves` to when what starts at `start` with `speed` is between `low` and `high`. */
function clip(start: f64, speed: f64, low: f64, high: f64): void {
  if (Math.abs(speed) < 1e-12) {
    if (start < low || start > high) leaves = -Infinity;
    return;
  }
  const first = (low - start) / speed;
  const second = (high - start) / speed;
  enters = Math.max(enters, Math.min(first, second));
  leaves = Math.min(leaves, Math.max(first, second));
}

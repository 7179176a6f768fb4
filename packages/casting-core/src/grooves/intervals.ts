import { acos, atan2, cos, hypot, PI, sin, TAU } from "../trig.js";

/** From, to: along a line in mm, or round a circle in radians (0 to 2π). */
export type Interval = [number, number];

/** What dips less into a circle than rounding can only touches it: share of its radius, or of that squared. */
const TOUCH = 1e-11;

/** A straight part of a channel: start, unit direction, length. */
export interface Bar {
  x: number;
  y: number;
  ux: number;
  uy: number;
  length: number;
}

/** What `covered` leaves free between `from` and `to`, in order. Sorts `covered`. */
export function free(covered: Interval[], from: number, to: number): Interval[] {
  // By insertion: there are a handful, and half the time of a whole tool's area went into sorting them.
  for (let i = 1; i < covered.length; i++) {
    const interval = covered[i]!;
    let j = i - 1;
    for (; j >= 0 && covered[j]![0] > interval[0]; j--) covered[j + 1] = covered[j]!;
    covered[j + 1] = interval;
  }
  const open: Interval[] = [];
  let at = from;
  for (const interval of covered) {
    const start = interval[0];
    const end = interval[1];
    if (start >= to) break;
    if (start > at) open.push([at, start]);
    if (end > at) at = end;
    if (at >= to) return open;
  }
  open.push([at, to]);
  return open;
}

/** Appends to `out` the parts of the circle about (x, y) that lie in the disc about (ox, oy). */
export function arcInDisc(
  x: number,
  y: number,
  r: number,
  ox: number,
  oy: number,
  radius: number,
  out: Interval[],
): void {
  const dx = ox - x;
  const dy = oy - y;
  const apart = hypot(dx, dy);
  if (apart + r <= radius) out.push([0, TAU]);
  else if (apart < radius + r && r < radius + apart)
    arc(atan2(dy, dx), acos((apart * apart + r * r - radius * radius) / (2 * apart * r)), out);
}

/** Appends to `out` the parts of the circle about (x, y) that lie within `half` of the bar and beside it. */
export function arcInBar(x: number, y: number, r: number, bar: Bar, half: number, out: Interval[]): void {
  const along = (x - bar.x) * bar.ux + (y - bar.y) * bar.uy;
  const off = (y - bar.y) * bar.ux - (x - bar.x) * bar.uy;
  const direction = atan2(bar.uy, bar.ux);
  const outside: Interval[] = [];
  beyond(direction, (bar.length - along) / r, outside);
  beyond(direction + PI, along / r, outside);
  beyond(direction + PI / 2, (half - off) / r, outside);
  beyond(direction - PI / 2, (half + off) / r, outside);
  for (const inside of free(outside, 0, TAU)) out.push(inside);
}

/** Appends the arc whose cosine from `direction` is above `least`, which is above −1. */
function beyond(direction: number, least: number, out: Interval[]): void {
  if (least <= -1) out.push([0, TAU]);
  else if (least < 1 - TOUCH) arc(direction, acos(least), out);
}

function arc(centre: number, halfWidth: number, out: Interval[]): void {
  let from = centre - halfWidth;
  while (from < 0) from += TAU;
  const to = from + 2 * halfWidth;
  if (to <= TAU) out.push([from, to]);
  else out.push([from, TAU], [0, to - TAU]);
}

/** Part of the line from (x, y) along the bar's direction that lies in the disc about (ox, oy). */
export function lineInDisc(
  x: number,
  y: number,
  bar: Bar,
  ox: number,
  oy: number,
  radius: number,
): Interval | undefined {
  const along = (ox - x) * bar.ux + (oy - y) * bar.uy;
  const off = (oy - y) * bar.ux - (ox - x) * bar.uy;
  const squared = radius * radius - off * off;
  if (squared <= TOUCH * radius * radius) return undefined;
  const reach = Math.sqrt(squared);
  return [along - reach, along + reach];
}

/** Part of the line from (x, y) along the bar's direction that lies within `half` of another bar and beside it. */
export function lineInBar(x: number, y: number, bar: Bar, other: Bar, half: number): Interval | undefined {
  const cosine = bar.ux * other.ux + bar.uy * other.uy;
  const sine = other.ux * bar.uy - other.uy * bar.ux;
  const along = (x - other.x) * other.ux + (y - other.y) * other.uy;
  const off = (y - other.y) * other.ux - (x - other.x) * other.uy;
  const inLength = within(along, cosine, 0, other.length);
  if (!inLength) return undefined;
  const inWidth = within(off, sine, -half, half);
  if (!inWidth) return undefined;
  const from = Math.max(inLength[0], inWidth[0]);
  const to = Math.min(inLength[1], inWidth[1]);
  return from < to ? [from, to] : undefined;
}

/** From when to when what starts at `start` with `speed` is between `low` and `high`. */
function within(start: number, speed: number, low: number, high: number): Interval | undefined {
  if (Math.abs(speed) < 1e-12) return start < low || start > high ? undefined : [-Infinity, Infinity];
  const first = (low - start) / speed;
  const second = (high - start) / speed;
  return first < second ? [first, second] : [second, first];
}

/** What the arc from `from` to `to` adds to the area it bounds (Green's theorem: half the integral of x dy − y dx). */
export function arcArea(x: number, y: number, r: number, from: number, to: number): number {
  return (r * (r * (to - from) + x * (sin(to) - sin(from)) - y * (cos(to) - cos(from)))) / 2;
}

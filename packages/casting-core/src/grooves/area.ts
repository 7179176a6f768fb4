import type { Point } from "../geometry/types.js";
import { hypot, TAU } from "../trig.js";
import { bendArea } from "./bend.js";
import { arcArea, arcInBar, arcInDisc, type Bar, free, type Interval, lineInBar, lineInDisc } from "./intervals.js";
import { type Disc, type Near, nearOf, type Strips, stripsOf } from "./strips.js";

/**
 * Area, mm², of everything within `width` / 2 of the lines and within `radius` of the origin, overlaps counted once.
 * Lines may cross and meet, but not run back along each other.
 *
 * The channels are a union of discs (round every point) and rectangles (along every straight part). What remains of
 * their outlines after the parts inside others are taken away bounds the union; the area follows from that boundary
 * (Green's theorem), exactly, from arcs and straight parts.
 */
export function channelArea(lines: readonly (readonly Point[])[], width: number, radius: number): number {
  const half = width / 2;
  const { discs, bars } = stripsOf(lines);
  if (discs.length === 0) return 0;
  const near = nearOf({ discs, bars }, half);
  let area = 0;
  for (const disc of discs) area += bendArea(disc, near, half, radius) ?? roundArea(disc, near, half, radius);
  for (const bar of bars) {
    const { x, y, ux, uy, length } = bar;
    area += sidesArea(bar, near(x + (ux * length) / 2, y + (uy * length) / 2, length / 2 + half), half, radius);
  }
  return area + edgeArea(discs, bars, half, radius);
}

/** What a bar's sides add to the area where nothing covers them. */
function sidesArea(bar: Bar, others: Strips, half: number, radius: number): number {
  const { ux, uy, length } = bar;
  let area = 0;
  for (const side of [-1, 1]) {
    const x = bar.x + side * half * uy;
    const y = bar.y - side * half * ux;
    const [enters, leaves] = lineInDisc(x, y, bar, 0, 0, radius) ?? [Infinity, Infinity];
    const covered: Interval[] = [
      [-Infinity, enters],
      [leaves, Infinity],
    ];
    // Most of what is near covers nothing of the side.
    const add = (hit: Interval | undefined) => {
      if (hit !== undefined && hit[0] < length && hit[1] > 0) covered.push(hit);
    };
    for (let n = 0; n < others.bars.length; n++) {
      const other = others.bars[n]!;
      if (other !== bar) add(lineInBar(x, y, bar, other, half));
    }
    for (let n = 0; n < others.discs.length; n++) {
      const disc = others.discs[n]!;
      add(lineInDisc(x, y, bar, disc.x, disc.y, half));
    }
    for (const open of free(covered, 0, length)) area += (side * (x * uy - y * ux) * (open[1] - open[0])) / 2;
  }
  return area;
}

/** What the circle of any disc adds to the area where nothing covers it. */
function roundArea(disc: Disc, near: Near, half: number, radius: number): number {
  const { x, y } = disc;
  const others = near(x, y, half);
  const inside: Interval[] = [];
  arcInDisc(x, y, half, 0, 0, radius, inside);
  const covered = free(inside, 0, TAU);
  for (const bar of others.bars) arcInBar(x, y, half, bar, half, covered);
  for (const other of others.discs) if (other !== disc) arcInDisc(x, y, half, other.x, other.y, half, covered);
  let area = 0;
  for (const [from, to] of free(covered, 0, TAU)) area += arcArea(x, y, half, from, to);
  return area;
}

/** The tool's own edge where channels run out over it. */
function edgeArea(discs: readonly Disc[], bars: readonly Bar[], half: number, radius: number): number {
  const covered: Interval[] = [];
  for (const { x, y } of discs) arcInDisc(0, 0, radius, x, y, half, covered);
  for (const bar of bars) {
    const far = Math.max(hypot(bar.x, bar.y), hypot(bar.x + bar.ux * bar.length, bar.y + bar.uy * bar.length));
    if (far > radius - half) arcInBar(0, 0, radius, bar, half, covered);
  }
  let open = TAU;
  for (const [from, to] of free(covered, 0, TAU)) open -= to - from;
  return (open * radius * radius) / 2;
}

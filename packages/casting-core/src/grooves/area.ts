import Flatbush from "flatbush";
import type { Point } from "../geometry/types.js";
import { hypot, TAU } from "../trig.js";
import { arcArea, arcInBar, arcInDisc, type Bar, free, type Interval, lineInBar, lineInDisc } from "./intervals.js";

/**
 * Area, mm², of everything within `width` / 2 of the lines and within `radius` of the origin, overlaps counted once.
 *
 * The channels are a union of discs (round every point) and rectangles (along every straight part). What remains of
 * their outlines after the parts inside others are taken away bounds the union; the area follows from that boundary
 * (Green's theorem), exactly, from arcs and straight parts.
 */
export function channelArea(lines: readonly (readonly Point[])[], width: number, radius: number): number {
  const half = width / 2;
  const discs = new Map<string, Point>();
  const bars: Bar[] = [];
  for (const points of lines) {
    for (const point of points) discs.set(`${point[0]},${point[1]}`, point);
    for (let i = 1; i < points.length; i++) {
      const bar = barOf(points[i - 1]!, points[i]!);
      if (bar) bars.push(bar);
    }
  }
  const centres = [...discs.values()];
  if (centres.length === 0) return 0;
  const near = indexOf(centres, bars, half);
  let area = 0;
  for (const [x, y] of centres) {
    const covered: Interval[] = [];
    // Outside the tool: beyond the crossing of the disc's circle with the tool's.
    covered.push(...free(arcInDisc(x, y, half, 0, 0, radius), 0, TAU));
    for (const other of near(x, y, half)) {
      if (other.bar) covered.push(...arcInBar(x, y, half, other.bar, half));
      else if (other.x !== x || other.y !== y) covered.push(...arcInDisc(x, y, half, other.x, other.y, half));
    }
    for (const [from, to] of free(covered, 0, TAU)) area += arcArea(x, y, half, from, to);
  }
  for (const bar of bars) {
    for (const side of [-1, 1]) {
      const x = bar.x + side * half * bar.uy;
      const y = bar.y - side * half * bar.ux;
      const covered: Interval[] = [];
      const inside = lineInDisc(x, y, bar, 0, 0, radius);
      covered.push([-Infinity, inside ? inside[0] : Infinity], [inside ? inside[1] : Infinity, Infinity]);
      for (const other of near(
        bar.x + (bar.ux * bar.length) / 2,
        bar.y + (bar.uy * bar.length) / 2,
        bar.length / 2 + half,
      )) {
        if (other.bar === bar) continue;
        const hit = other.bar ? lineInBar(x, y, bar, other.bar, half) : lineInDisc(x, y, bar, other.x, other.y, half);
        if (hit) covered.push(hit);
      }
      for (const [from, to] of free(covered, 0, bar.length))
        area += (side * (x * bar.uy - y * bar.ux) * (to - from)) / 2;
    }
  }
  return area + edgeArea(centres, bars, half, radius);
}

/** The tool's own edge where channels run out over it. */
function edgeArea(centres: readonly Point[], bars: readonly Bar[], half: number, radius: number): number {
  const covered: Interval[] = [];
  for (const [x, y] of centres) {
    if (hypot(x, y) > radius - half) covered.push(...arcInDisc(0, 0, radius, x, y, half));
  }
  for (const bar of bars) {
    const far = Math.max(hypot(bar.x, bar.y), hypot(bar.x + bar.ux * bar.length, bar.y + bar.uy * bar.length));
    if (far > radius - half) covered.push(...arcInBar(0, 0, radius, bar, half));
  }
  let open = TAU;
  for (const [from, to] of free(covered, 0, TAU)) open -= to - from;
  return (open * radius * radius) / 2;
}

function barOf([ax, ay]: Point, [bx, by]: Point): Bar | undefined {
  const length = hypot(bx - ax, by - ay);
  return length > 0 ? { x: ax, y: ay, ux: (bx - ax) / length, uy: (by - ay) / length, length } : undefined;
}

interface Neighbour {
  x: number;
  y: number;
  /** Absent for a disc. */
  bar?: Bar;
}

/** Finds the discs and bars that can touch anything within `reach` of a point; `half` is their half width. */
function indexOf(
  centres: readonly Point[],
  bars: readonly Bar[],
  half: number,
): (x: number, y: number, reach: number) => Neighbour[] {
  const index = new Flatbush(centres.length + bars.length);
  for (const [x, y] of centres) index.add(x, y);
  for (const { x, y, ux, uy, length } of bars) {
    const ex = x + ux * length;
    const ey = y + uy * length;
    index.add(Math.min(x, ex), Math.min(y, ey), Math.max(x, ex), Math.max(y, ey));
  }
  index.finish();
  const all: Neighbour[] = [
    ...centres.map(([x, y]) => ({ x, y })),
    ...bars.map((bar) => ({ x: bar.x, y: bar.y, bar })),
  ];
  return (x, y, reach) => {
    const far = reach + half;
    return index.search(x - far, y - far, x + far, y + far).map((found) => all[found]!);
  };
}

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
  const { discs, bars } = partsOf(lines);
  if (discs.length === 0) return 0;
  const near = indexOf(discs, bars, half);
  let area = 0;
  for (const disc of discs) {
    const { x, y } = disc;
    const covered: Interval[] = [];
    if (hypot(x, y) + half > radius) covered.push(...free(arcInDisc(x, y, half, 0, 0, radius), 0, TAU));
    for (const other of near(disc, x, y, half)) {
      if ("length" in other) covered.push(...arcInBar(x, y, half, other, half));
      else covered.push(...arcInDisc(x, y, half, other.x, other.y, half));
    }
    for (const [from, to] of free(covered, 0, TAU)) area += arcArea(x, y, half, from, to);
  }
  for (const bar of bars) {
    const { ux, uy, length } = bar;
    const others = near(bar, bar.x + (ux * length) / 2, bar.y + (uy * length) / 2, length / 2 + half);
    for (const side of [-1, 1]) {
      const x = bar.x + side * half * uy;
      const y = bar.y - side * half * ux;
      const covered: Interval[] = [];
      if (hypot(x, y) + length > radius) {
        const inside = lineInDisc(x, y, bar, 0, 0, radius) ?? [Infinity, Infinity];
        covered.push([-Infinity, inside[0]], [inside[1], Infinity]);
      }
      for (const other of others) {
        const hit =
          "length" in other ? lineInBar(x, y, bar, other, half) : lineInDisc(x, y, bar, other.x, other.y, half);
        if (hit) covered.push(hit);
      }
      for (const [from, to] of free(covered, 0, length)) area += (side * (x * uy - y * ux) * (to - from)) / 2;
    }
  }
  return area + edgeArea(discs, bars, half, radius);
}

/** The end or a corner of a line, or one of its straight parts, and where in which line; `line` −1 where lines meet. */
type Part = (Disc | Bar) & { line: number; at: number };

interface Disc {
  x: number;
  y: number;
}

function partsOf(lines: readonly (readonly Point[])[]): { discs: (Disc & Part)[]; bars: (Bar & Part)[] } {
  const ends = new Map<string, Disc & Part>();
  const discs: (Disc & Part)[] = [];
  const bars: (Bar & Part)[] = [];
  lines.forEach((points, line) => {
    points.forEach(([x, y], at) => {
      if (at > 0 && at < points.length - 1) discs.push({ x, y, line, at });
      else ends.set(`${x},${y}`, { x, y, line: -1, at });
      const [px, py] = points[at - 1] ?? [x, y];
      const length = hypot(x - px, y - py);
      if (length > 0)
        bars.push({ x: px, y: py, ux: (x - px) / length, uy: (y - py) / length, length, line, at: at - 0.5 });
    });
  });
  return { discs: [...discs, ...ends.values()], bars };
}

/** The tool's own edge where channels run out over it. */
function edgeArea(discs: readonly Disc[], bars: readonly Bar[], half: number, radius: number): number {
  const covered: Interval[] = [];
  for (const { x, y } of discs) {
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

/**
 * Finds the parts that can cover some of the outline of one whose middle is (x, y) and whose outline stays within
 * `reach` of it. Inside a line, far from all others, only its neighbours in the line can: the line bends less sharply
 * than the channel is wide.
 */
function indexOf(
  discs: readonly (Disc & Part)[],
  bars: readonly (Bar & Part)[],
  half: number,
): (of: Part, x: number, y: number, reach: number) => Part[] {
  const index = new Flatbush(discs.length + bars.length);
  for (const { x, y } of discs) index.add(x, y, x, y);
  for (const { x, y, ux, uy, length } of bars) {
    const ex = x + ux * length;
    const ey = y + uy * length;
    index.add(Math.min(x, ex), Math.min(y, ey), Math.max(x, ex), Math.max(y, ey));
  }
  index.finish();
  const all: Part[] = [...discs, ...bars];
  return (of, x, y, reach) => {
    const far = reach + half;
    const found = index.search(x - far, y - far, x + far, y + far);
    const alone = of.line >= 0 && found.every((i) => all[i]!.line === of.line);
    const parts: Part[] = [];
    for (const i of found) {
      const part = all[i]!;
      if (part !== of && (!alone || Math.abs(part.at - of.at) <= 1)) parts.push(part);
    }
    return parts;
  };
}

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
  const { discs, bars } = partsOf(lines, half);
  if (discs.length === 0) return 0;
  const near = indexOf(discs, bars, half);
  let area = 0;
  for (const disc of discs) area += roundArea(disc, near(disc, disc.x, disc.y, half), half, radius);
  for (const bar of bars) {
    const { x, y, ux, uy, length } = bar;
    area += sidesArea(bar, near(bar, x + (ux * length) / 2, y + (uy * length) / 2, length / 2 + half), half, radius);
  }
  return area + edgeArea(discs, bars, half, radius);
}

/** What a bar's sides add to the area where nothing covers them. */
function sidesArea(bar: Part, others: Near, half: number, radius: number): number {
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
    for (const other of others.bars) {
      const hit = other !== bar && lineInBar(x, y, bar, other, half);
      if (hit) covered.push(hit);
    }
    for (const disc of others.discs) {
      const hit = lineInDisc(x, y, bar, disc.x, disc.y, half);
      if (hit) covered.push(hit);
    }
    for (const [from, to] of free(covered, 0, length)) area += (side * (x * uy - y * ux) * (to - from)) / 2;
  }
  return area;
}

/** What a disc's circle adds to the area where nothing covers it. */
function roundArea(disc: Disc, others: Near, half: number, radius: number): number {
  const { x, y } = disc;
  const inside: Interval[] = [];
  arcInDisc(x, y, half, 0, 0, radius, inside);
  const covered = free(inside, 0, TAU);
  for (const bar of others.bars) arcInBar(x, y, half, bar, half, covered);
  for (const other of others.discs) if (other !== disc) arcInDisc(x, y, half, other.x, other.y, half, covered);
  let area = 0;
  for (const [from, to] of free(covered, 0, TAU)) area += arcArea(x, y, half, from, to);
  return area;
}

/** The end or a corner of a line, and where in which line; `line` −1 where lines meet. */
interface Disc {
  x: number;
  y: number;
  line: number;
  at: number;
}

/** One of a line's straight parts, and where in which line. */
interface Part extends Bar {
  line: number;
  at: number;
  /** Whether the inner side of the line's bend runs past the whole part: then others than its neighbours cover it. */
  tight: boolean;
}

function partsOf(lines: readonly (readonly Point[])[], half: number): { discs: Disc[]; bars: Part[] } {
  const ends = new Map<string, Disc>();
  const discs: Disc[] = [];
  const bars: Part[] = [];
  lines.forEach((points, line) => {
    let [px, py] = points[0]!;
    let before: Part | undefined;
    let lost = 0;
    for (let at = 0; at < points.length; at++) {
      const x = points[at]![0];
      const y = points[at]![1];
      const isEnd = at === 0 || at === points.length - 1;
      const disc: Disc = { x, y, line: isEnd ? -1 : line, at };
      const length = hypot(x - px, y - py);
      if (isEnd) ends.set(`${x},${y}`, disc);
      else discs.push(disc);
      if (length > 0) {
        const bar = {
          x: px,
          y: py,
          ux: (x - px) / length,
          uy: (y - py) / length,
          length,
          line,
          at: at - 0.5,
          tight: false,
        };
        const after = before ? half * bend(before, bar) : 0;
        if (before) before.tight = lost + after > before.length;
        lost = after;
        before = bar;
        bars.push(bar);
      }
      px = x;
      py = y;
    }
    if (before) before.tight = lost > before.length;
  });
  return { discs: [...discs, ...ends.values()], bars };
}

/** Tangent of half the turn from one bar to the next: what a side 1 mm off loses on each of them inside the bend, mm. */
function bend(one: Bar, next: Bar): number {
  const straight = 1 + one.ux * next.ux + one.uy * next.uy;
  return straight > 0 ? Math.abs(one.ux * next.uy - one.uy * next.ux) / straight : Infinity;
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

/** What can cover some of an outline. */
interface Near {
  discs: Disc[];
  bars: Part[];
}

/**
 * Finds what can cover some of the outline of a disc or bar whose middle is (x, y) and whose outline stays within
 * `reach` of it. Inside a line, far from all others, only its neighbours in the line can, unless the line bends tightly.
 */
function indexOf(
  discs: readonly Disc[],
  bars: readonly Part[],
  half: number,
): (of: Disc | Part, x: number, y: number, reach: number) => Near {
  const index = new Flatbush(discs.length + bars.length);
  // Line and place in it of every one, discs first: looked at far more often than the rest of it.
  const lines = new Int32Array(discs.length + bars.length);
  const ats = new Float64Array(discs.length + bars.length);
  let n = 0;
  for (const { x, y, line, at } of discs) {
    index.add(x, y, x, y);
    lines[n] = line;
    ats[n++] = at;
  }
  for (const { x, y, ux, uy, length, line, at, tight } of bars) {
    const ex = x + ux * length;
    const ey = y + uy * length;
    index.add(Math.min(x, ex), Math.min(y, ey), Math.max(x, ex), Math.max(y, ey));
    // As if of no line: then all near it are looked at.
    lines[n] = tight ? -1 : line;
    ats[n++] = at;
  }
  index.finish();
  return (of, x, y, reach) => {
    const far = reach + half;
    const found = index.search(x - far, y - far, x + far, y + far);
    let alone = of.line >= 0;
    for (const i of found) if (lines[i] !== of.line) alone = false;
    const near: Near = { discs: [], bars: [] };
    for (const i of found) {
      if (alone && Math.abs(ats[i]! - of.at) > 1) continue;
      if (i < discs.length) near.discs.push(discs[i]!);
      else near.bars.push(bars[i - discs.length]!);
    }
    return near;
  };
}

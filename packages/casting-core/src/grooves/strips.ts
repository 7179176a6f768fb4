import Flatbush from "flatbush";
import type { Point } from "../geometry/types.js";
import { hypot } from "../trig.js";
import type { Bar } from "./intervals.js";

/** A point of the channels' lines; at a corner inside a line the straight parts before and after it too. */
export interface Disc {
  x: number;
  y: number;
  before: Bar | undefined;
  after: Bar | undefined;
}

/**
 * The channels along `lines` as discs, one round every point, and bars, one along every straight part. Where several
 * lines end, one disc stands for all; a point that repeats the one before it is passed over.
 */
export function stripsOf(lines: readonly (readonly Point[])[]): { discs: Disc[]; bars: Bar[] } {
  const ends = new Map<string, Disc>();
  const discs: Disc[] = [];
  const bars: Bar[] = [];
  for (const points of lines) {
    let corner: Disc | undefined;
    for (let at = 0; at < points.length; at++) {
      const x = points[at]![0];
      const y = points[at]![1];
      const disc: Disc = { x, y, before: undefined, after: undefined };
      if (at === 0 || at === points.length - 1) ends.set(`${x},${y}`, disc);
      if (corner) {
        const length = hypot(x - corner.x, y - corner.y);
        if (length === 0) continue;
        const bar = { x: corner.x, y: corner.y, ux: (x - corner.x) / length, uy: (y - corner.y) / length, length };
        bars.push(bar);
        if (corner.before) {
          corner.after = bar;
          discs.push(corner);
        }
        disc.before = bar;
      }
      corner = disc;
    }
  }
  return { discs: [...discs, ...ends.values()], bars };
}

/** What can cover some of an outline. */
export interface Strips {
  discs: Disc[];
  bars: Bar[];
}

/** Finds the discs and bars that can cover anything within `reach` of (x, y). */
export type Near = (x: number, y: number, reach: number) => Strips;

export function nearOf({ discs, bars }: Strips, half: number): Near {
  const index = new Flatbush(discs.length + bars.length);
  for (const { x, y } of discs) index.add(x, y, x, y);
  for (const { x, y, ux, uy, length } of bars) {
    const ex = x + ux * length;
    const ey = y + uy * length;
    index.add(Math.min(x, ex), Math.min(y, ey), Math.max(x, ex), Math.max(y, ey));
  }
  index.finish();
  return (x, y, reach) => {
    const far = reach + half;
    const near: Strips = { discs: [], bars: [] };
    const found = index.search(x - far, y - far, x + far, y + far);
    for (let n = 0; n < found.length; n++) {
      const i = found[n]!;
      if (i < discs.length) near.discs.push(discs[i]!);
      else near.bars.push(bars[i - discs.length]!);
    }
    return near;
  };
}

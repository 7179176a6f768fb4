// The discs and bars that the channels' area is made up of, and which of them are found near a place.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { places } from "../support/arbitrary.js";
import { type Bar, drawn } from "../support/channels.js";

const lines = fc.array(fc.array(places(20), { minLength: 0, maxLength: 9 }), { minLength: 1, maxLength: 6 });
const sizes = fc.double({ min: 0.1, max: 15, noNaN: true });

const ends = ({ x, y, ux, uy, length }: Bar): [Point, Point] => [
  [x, y],
  [x + ux * length, y + uy * length],
];

function toBar(x: number, y: number, bar: Bar): number {
  const along = (x - bar.x) * bar.ux + (y - bar.y) * bar.uy;
  const t = Math.max(0, Math.min(bar.length, along));
  return Math.hypot(x - bar.x - t * bar.ux, y - bar.y - t * bar.uy);
}

describe("lines drawn as discs and bars", () => {
  it("have one disc at every place that a point has, and a bar along every part that has a length", () => {
    fc.assert(
      fc.property(lines, sizes, (list, width) => {
        const { discs, bars } = drawn(list, width);
        const text = ([x, y]: Point) => `${x + 0},${y + 0}`;
        expect(discs.map(text).sort()).toEqual([...new Set(list.flat().map(text))].sort());
        const parts = list.flatMap((line) =>
          line.slice(1).flatMap((to, n) => (text(line[n]!) === text(to) ? [] : [[line[n]!, to] as const])),
        );
        expect(bars).toHaveLength(parts.length);
        bars.forEach((bar, n) => {
          ends(bar).forEach((end, k) => {
            expect(Math.hypot(end[0] - parts[n]![k]![0], end[1] - parts[n]![k]![1])).toBeLessThan(1e-12);
          });
        });
      }),
      { numRuns: 300 },
    );
  });

  it("are found wherever they come near, each once, and none that is far", () => {
    fc.assert(
      fc.property(lines, sizes, places(30), sizes, (list, width, [x, y], far) => {
        if (list.flat().length === 0) return;
        const { discs, bars, near } = drawn(list, width);
        const found = near(x, y, far);
        const within = discs.flatMap(([px, py], d) => (Math.max(Math.abs(px - x), Math.abs(py - y)) <= far ? [d] : []));
        expect(found.discs.sort((a, b) => a - b)).toEqual(within);
        expect(new Set(found.bars).size).toBe(found.bars.length);
        bars.forEach((bar, b) => {
          const distance = toBar(x, y, bar);
          if (distance < far - 1e-9) expect(found.bars).toContain(b);
          const [from, to] = ends(bar);
          const off = ([p, q]: [number, number]) => Math.max(0, Math.min(p, q), -Math.max(p, q));
          const box = Math.max(off([from[0] - x, to[0] - x]), off([from[1] - y, to[1] - y]));
          if (box > far + 1e-9) expect(found.bars).not.toContain(b);
        });
      }),
      { numRuns: 500 },
    );
  });
});

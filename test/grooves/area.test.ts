import { describe, expect, test } from "vitest";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { channelArea } from "../../packages/casting-core/src/grooves/area/area.js";
import { planGrooves } from "../../packages/casting-core/src/grooves/plan.js";
import { exampleJob } from "../support/jobs.js";
import { jittered, toolOf } from "../support/layouts.js";

describe("the channels' area", () => {
  test("of one straight channel is its length times its width and its round ends", () => {
    expect(
      channelArea(
        [
          [
            [-10, 1],
            [10, 1],
          ],
        ],
        3,
        100,
      ),
    ).toBeCloseTo(60 + Math.PI * 2.25, 9);
  });

  test("counts a crossing once", () => {
    const cross: Point[][] = [
      [
        [-10, 0],
        [10, 0],
      ],
      [
        [0, -10],
        [0, 10],
      ],
    ];
    expect(channelArea(cross, 2, 100)).toBeCloseTo(2 * 40 + 2 * Math.PI - 4, 9);
  });

  test("does not change where a line names a point twice, or ends where another begins", () => {
    const [a, b, c]: Point[] = [
      [-10, 0],
      [10, 0],
      [12, 8],
    ];
    const once = channelArea([[a!, b!, c!]], 3, 100);
    expect(once).toBeGreaterThan(3 * (20 + Math.sqrt(68)));
    expect(channelArea([[a!, a!, b!, b!, c!, c!]], 3, 100)).toBeCloseTo(once, 9);
    expect(
      channelArea(
        [
          [a!, b!],
          [c!, b!],
        ],
        3,
        100,
      ),
    ).toBeCloseTo(once, 9);
  });

  test("stops at the tool's edge", () => {
    // A strip through the middle: 2 (h √(r² − h²) + r² asin(h / r)).
    expect(
      channelArea(
        [
          [
            [-12, 0],
            [12, 0],
          ],
        ],
        4,
        10,
      ),
    ).toBeCloseTo(2 * (2 * Math.sqrt(96) + 100 * Math.asin(0.2)), 9);
  });

  test("of a whole circle of short parts is the ring's", () => {
    const ring = Array.from({ length: 721 }, (_, i): Point => {
      const angle = (2 * Math.PI * (i % 720)) / 720;
      return [20 * Math.cos(angle), 20 * Math.sin(angle)];
    });
    expect(channelArea([ring], 3, 100) / (2 * Math.PI * 20 * 3)).toBeCloseTo(1, 4);
  });

  test("of lines that meet where another bends is theirs together, in whatever order they come", () => {
    const [left, top, right, over]: Point[] = [
      [-20, 0],
      [0, 20],
      [20, 5],
      [-20, 20],
    ];
    const middle: Point = [0, 0];
    const apart = (...ends: Point[]) =>
      channelArea(
        ends.map((end) => [middle, end]),
        3,
        100,
      );
    for (const [lines, wanted] of [
      [
        [
          [left, middle, top],
          [middle, over],
        ],
        apart(left!, top!, over!),
      ],
      [
        [
          [over, middle],
          [left, middle, top],
        ],
        apart(left!, top!, over!),
      ],
      [
        [
          [left, middle, top],
          [right, middle, over],
        ],
        apart(left!, top!, right!, over!),
      ],
    ] as [Point[][], number][])
      expect(channelArea(lines, 3, 100)).toBeCloseTo(wanted, 9);
  });

  test("of a lattice drawn in 32 000 parts is the lattice's, and the same again after others", () => {
    const lattice = (lines: number, length: number) =>
      Array.from({ length: 2 * lines }, (_, n) => {
        const off = 5 * ((n >> 1) - (lines - 1) / 2);
        return Array.from({ length: 401 }, (_, i): Point => {
          const at = length * (i / 400 - 0.5);
          return n % 2 === 0 ? [at, off] : [off, at];
        });
      });
    const area = () => channelArea(lattice(40, 220), 3, 200);
    const once = area();
    expect(once).toBeCloseTo(2 * 40 * (3 * 220 + Math.PI * 2.25) - 1600 * 9, 4);
    expect(channelArea([[[1, 2]]], 2, 100)).toBeCloseTo(Math.PI, 9);
    expect(area()).toBe(once);
  });

  test("of a real network agrees with counting a fine grid of points", () => {
    const grooves = planGrooves(exampleJob(), toolOf(120), jittered(2, 120, 26, 4));
    const parts = grooves.edges
      .filter((edge) => edge.cut)
      .flatMap(({ points }) => points.slice(1).map((point, i) => [points[i]!, point] as const));
    const step = 0.25;
    let inside = 0;
    for (let x = -60 + step / 2; x < 60; x += step) {
      for (let y = -60 + step / 2; y < 60; y += step) {
        if (x * x + y * y < 3600 && parts.some(([a, b]) => near(x, y, a, b))) inside++;
      }
    }
    expect(parts.length).toBeGreaterThan(50);
    expect((inside * step * step) / grooves.totals.area).toBeCloseTo(1, 2);
    expect(grooves.totals.volume).toBeCloseTo((grooves.totals.area * 2.5) / 1000, 9);
  });
});

function near(x: number, y: number, [ax, ay]: Point, [bx, by]: Point): boolean {
  const squared = (bx - ax) ** 2 + (by - ay) ** 2;
  const t = Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / squared));
  return (x - ax - t * (bx - ax)) ** 2 + (y - ay - t * (by - ay)) ** 2 < 2.25;
}

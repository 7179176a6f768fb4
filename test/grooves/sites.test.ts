// What the channels keep to the middle of: which circles belong together, distances, and the points that outlines are sampled by.
import Flatten from "@flatten-js/core";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Outline, Point } from "../../packages/casting-core/src/geometry/types.js";
import {
  distanceTo,
  type Measure,
  measure,
  type Site,
  sampleSite,
  sitesOf,
} from "../../packages/casting-core/src/grooves/network/sites.js";
import type { JobSocket } from "../../packages/casting-core/src/job/types.js";
import { exampleJob } from "../support/jobs.js";
import { layoutOf, regular } from "../support/layouts.js";

const outline = (points: Outline): Site => ({ kind: "piece", shapes: [{ form: "outline", outline: points }] });
const discs = (...circles: [number, number, number][]): Site => ({
  kind: "clear",
  shapes: circles.map(([x, y, radius]) => ({ form: "disc", x, y, radius })),
});
const EDGE: Site = { kind: "rim", shapes: [{ form: "hollow", radius: 40 }] };
const SQUARE = outline([
  [-5, -5],
  [5, -5],
  [5, 5],
  [-5, 5],
]);
const measured = (site: Site, x: number, y: number): Measure => {
  const out: Measure = { distance: 0, nx: 0, ny: 0 };
  measure(site, x, y, out);
  return out;
};
const sampled = (site: Site, spacing: number, inset: number): Point[] => {
  const out: number[] = [];
  sampleSite(site, spacing, inset, out);
  return Array.from({ length: out.length / 2 }, (_, i): Point => [out[2 * i]!, out[2 * i + 1]!]);
};

describe("the sites of a tool", () => {
  const pieces = layoutOf([regular(6, 5, 20, 0, 0), { x: -20, y: 0, radius: 4 }], 4);
  const socket: JobSocket = { diameter: 8, length: 40, foot: "glass", plugged: true };
  /** Kind of each site with the radii of its circles, the pieces left out. */
  const circles = (clear: [number, number, number][], changes = {}) => {
    const example = exampleJob(changes);
    const job = {
      ...example,
      layout: { ...example.layout, "keep-clear": clear.map(([x, y, diameter]) => ({ x, y, diameter })) },
    };
    return sitesOf(job, 100, pieces)
      .slice(2)
      .map(({ kind, piece, shapes }) => {
        expect(piece).toBeUndefined();
        return [
          kind,
          ...shapes.map((shape) => (shape.form === "outline" ? 0 : shape.radius)).sort((a, b) => a - b),
        ].join(" ");
      });
  };

  it("are its pieces in order, by their outlines or as discs, and its edge", () => {
    expect(sitesOf(exampleJob(), 100, pieces)).toEqual([
      { kind: "piece", piece: 0, shapes: [{ form: "outline", outline: pieces.pieces[0]!.outline }] },
      { kind: "piece", piece: 1, shapes: [{ form: "disc", x: -20, y: 0, radius: 4 }] },
      { kind: "rim", shapes: [{ form: "hollow", radius: 50 }] },
    ]);
  });

  it("are circles kept clear, a socket on the glass among them, each by itself where they stand apart", () => {
    expect(
      circles([
        [0, 9, 4],
        [0, -9, 6],
      ]),
    ).toEqual(["rim 50", "clear 2", "clear 3"]);
    expect(circles([[9, 0, 4]], { socket })).toEqual(["rim 50", "clear 2", "clear 4"]);
    expect(circles([], { socket: { ...socket, foot: "pieces" } })).toEqual(["rim 50"]);
  });

  it("are one where circles touch, one another or through a third one told later, or the tool's edge", () => {
    expect(
      circles([
        [0, 9, 4],
        [3, 5, 6],
      ]),
    ).toEqual(["rim 50", "clear 2 3"]);
    expect(
      circles([
        [0, 9, 4],
        [3, 4.999, 6],
      ]),
    ).toEqual(["rim 50", "clear 2", "clear 3"]);
    expect(
      circles([
        [0, 9, 4],
        [8, 9, 6],
        [0, -20, 1],
        [4, 9, 5],
      ]),
    ).toEqual(["rim 50", "clear 2 2.5 3", "clear 0.5"]);
    expect(
      circles([
        [0, 40, 20],
        [30, 0, 4],
      ]),
    ).toEqual(["rim 10 50", "clear 2"]);
    expect(circles([[0, 39.999, 20]])).toEqual(["rim 50", "clear 10"]);
    // In a row, each touches but the one before it.
    const row: [number, number, number][] = [0, 3, 6].map((x) => [x, 0, 4]);
    expect(circles(row)).toEqual(["rim 50", "clear 2 2 2"]);
    expect(circles(row.map(([x]) => [48 - x, 0, 4]))).toEqual(["rim 2 2 2 50"]);
    expect(
      circles([
        [30, 0, 10],
        [42, 0, 20],
      ]),
    ).toEqual(["rim 5 10 50"]);
  });
});

describe("the distance from a site", () => {
  const places = fc
    .tuple(fc.integer({ min: -200, max: 200 }), fc.integer({ min: -200, max: 200 }))
    .map(([x, y]) => [x / 10 + 0.013, y / 10 - 0.007] as const);
  const shapes = fc
    .tuple(fc.integer({ min: 3, max: 7 }), fc.integer({ min: 0, max: 62 }))
    .map(([corners, turn]) => outline(regular(corners, 9, 2, -3, turn / 10)));

  it("is that of another library, negative inside, and grows fastest along its direction", () => {
    fc.assert(
      fc.property(shapes, places, (site, [x, y]) => {
        const [shape] = site.shapes;
        if (shape?.form !== "outline") throw new Error("an outline");
        const { distance, nx, ny } = measured(site, x, y);
        const polygon = new Flatten.Polygon(shape.outline);
        const inside = polygon.contains(new Flatten.Point(x, y));
        const off = Math.min(...[...polygon.edges].map((edge) => edge.shape.distanceTo(new Flatten.Point(x, y))[0]));
        expect(distance).toBeCloseTo(inside ? -off : off, 9);
        expect(Math.hypot(nx, ny)).toBeCloseTo(1, 9);
        expect(distanceTo(site, [x + 1e-4 * nx, y + 1e-4 * ny])).toBeCloseTo(distance + 1e-4, 8);
      }),
      { numRuns: 300 },
    );
  });

  it("is that from the nearest of several circles; the tool's edge is measured from its inside", () => {
    const both = discs([10, 0, 4], [-10, 0, 2]);
    expect(measured(both, 0, 0)).toEqual({ distance: 6, nx: -1, ny: 0 });
    expect(measured(both, -9, 0)).toEqual({ distance: -1, nx: 1, ny: 0 });
    expect(measured(both, -10, -7)).toEqual({ distance: 5, nx: 0, ny: -1 });
    expect(measured(discs([-10, 0, 2], [10, 0, 4]), 0, 0)).toEqual({ distance: 6, nx: -1, ny: 0 });
    expect(measured(discs([3, 4, 2]), 6, 8)).toEqual({ distance: 3, nx: 0.6, ny: 0.8 });
    expect(measured(EDGE, 6, 8)).toEqual({ distance: 30, nx: -0.6, ny: -0.8 });
    expect(measured(EDGE, 30, 40)).toEqual({ distance: -10, nx: -0.6, ny: -0.8 });
  });

  it("has a direction at the very middle and on the very outline, outward there", () => {
    expect(measured(EDGE, 0, 0)).toEqual({ distance: 40, nx: -1, ny: 0 });
    expect(measured(discs([3, 4, 2]), 3, 4)).toEqual({ distance: -2, nx: 1, ny: 0 });
    for (const [x, y, nx, ny] of [
      [5, 1, 1, 0],
      [-5, 1, -1, 0],
      [1, 5, 0, 1],
      [1, -5, 0, -1],
    ] as const) {
      const at = measured(SQUARE, x, y);
      expect([at.nx, at.ny].map((part) => part + 0)).toEqual([nx, ny]);
      expect(Math.abs(at.distance)).toBe(0);
    }
  });
});

describe("the points a site is sampled by", () => {
  it("are each corner and as many between as the spacing asks for, all drawn in", () => {
    const points = sampled(SQUARE, 4, 1);
    const third = expect.closeTo(10 / 6, 9);
    const less = expect.closeTo(-10 / 6, 9);
    expect(points).toEqual([
      [less, -4],
      [third, -4],
      [4, -4],
      [4, less],
      [4, third],
      [4, 4],
      [third, 4],
      [less, 4],
      [-4, 4],
      [-4, third],
      [-4, less],
      [-4, -4],
    ]);
    expect(sampled(SQUARE, 10, 1)).toEqual([
      [4, -4],
      [4, 4],
      [-4, 4],
      [-4, -4],
    ]);
    expect(sampled(SQUARE, 9.99, 0)).toHaveLength(8);
    for (const corners of [3, 5, 6]) {
      const site = outline(regular(corners, 9, 2, -3, 0.3));
      for (const [x, y] of sampled(site, 1, 0.2)) expect(distanceTo(site, [x, y])).toBeCloseTo(-0.2, 9);
    }
  });

  it("stay within a piece that is sharper than its sides drawn in could meet", () => {
    const needle: Outline = [
      [0, -1],
      [30, 0],
      [0, 1],
    ];
    const tip = sampled(outline(needle), 100, 0.1)[0]!;
    // Five times as far in as both sides together go at the most; they would meet 3 mm from the tip.
    expect(tip).toEqual([expect.closeTo(30 - (2 * 0.1) / 0.2 / Math.hypot(1, 30), 9), expect.closeTo(0, 9)]);
  });

  it("of a circle are evenly round it, no farther apart than the spacing, a dozen at least, inside a disc and outside the edge", () => {
    for (const [site, spacing, radius, count] of [
      [discs([3, 4, 10]), 1, 9.5, 60],
      [discs([3, 4, 10]), 50, 9.5, 12],
      [EDGE, 1, 40.5, 255],
    ] as const) {
      const [cx, cy] = site === EDGE ? [0, 0] : [3, 4];
      const points = sampled(site, spacing, 0.5);
      expect(points).toHaveLength(count);
      points.forEach(([x, y], i) => {
        expect(Math.hypot(x - cx, y - cy)).toBeCloseTo(radius, 9);
        expect(Math.atan2(y - cy, x - cx)).toBeCloseTo(
          i <= count / 2 ? (2 * Math.PI * i) / count : (2 * Math.PI * i) / count - 2 * Math.PI,
          9,
        );
      });
    }
  });

  it("of circles that overlap are those of each that lie in no other", () => {
    const [one, other] = [discs([0, 0, 10]), discs([12, 0, 10])];
    const all = [...sampled(one, 1, 0.1), ...sampled(other, 1, 0.1)];
    const both = discs([0, 0, 10], [12, 0, 10]);
    const kept = sampled(both, 1, 0.1);
    expect(kept.length).toBeLessThan(all.length);
    expect(kept).toEqual(all.filter((point) => distanceTo(both, point) > -0.15));
    // The lens between them is empty: half of its 2 · 53° on each circle.
    expect(kept.length / all.length).toBeCloseTo(1 - (2 * Math.acos(0.6)) / (2 * Math.PI), 1);
  });
});

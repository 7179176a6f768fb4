// One line between two sites, drawn on the true middle.
import { describe, expect, it } from "vitest";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { middleLine } from "../../packages/casting-core/src/grooves/network/middle.js";
import { distanceTo, type Site } from "../../packages/casting-core/src/grooves/network/sites.js";
import { along } from "../../packages/casting-core/src/grooves/polyline.js";

const disc = (x: number, y: number, radius: number): Site => ({
  kind: "piece",
  shapes: [{ form: "disc", x, y, radius }],
});
const square = (x: number, y: number, half: number): Site => ({
  kind: "piece",
  shapes: [
    {
      form: "outline",
      outline: [
        [x - half, y - half],
        [x + half, y - half],
        [x + half, y + half],
        [x - half, y + half],
      ],
    },
  ],
});
const SLAB = square(0, -60, 50);
const ROUND = disc(0, 4, 6);

/** Farthest that a line's straight parts leave what is as far from both, by their distances, mm. */
const off = (line: readonly Point[], one: Site, other: Site) =>
  Math.max(
    ...line
      .slice(1)
      .flatMap((to, n) => [0, 1 / 3, 1 / 2, 2 / 3, 1].map((share) => along(line[n]!, to, share)))
      .map((point) => Math.abs(distanceTo(one, point) - distanceTo(other, point))),
  );

describe("a line between a slab's side and a disc", () => {
  // (x, y) is as far from y = -10 as from the disc: a parabola with its focus at the disc's middle.
  const parabola = (x: number): Point => [x, (x * x) / 40 - 6];

  it("bends with the middle, however far apart its samples are", () => {
    for (const spacing of [1, 10, 1000]) {
      const line = middleLine([parabola(-20), parabola(20)], SLAB, ROUND, [], spacing);
      expect(line.length).toBeGreaterThan(5);
      expect(line.length).toBeLessThan(80);
      // A straight part that is 4 µm off differs by twice as much from both.
      expect(off(line, SLAB, ROUND)).toBeLessThan(0.0081);
      for (const [x, y] of line) expect(y).toBeCloseTo(parabola(x)[1], 6);
      line.slice(1).forEach(([x], n) => void expect(x).toBeGreaterThan(line[n]![0]));
    }
  });

  it("goes from the first point that it is given to the last, be they off the middle", () => {
    const [from, to]: Point[] = [
      [-20, 1],
      [20, 2.5],
    ];
    for (const spacing of [1, 1000]) {
      const line = middleLine([from!, parabola(0), to!], SLAB, ROUND, [], spacing);
      expect([line[0], line.at(-1)]).toEqual([from, to]);
      expect(off(line.slice(1, -1), SLAB, ROUND)).toBeLessThan(0.0081);
    }
  });

  it("has no point that is nearer to the site beyond one of its ends", () => {
    const [first, last] = [disc(-30, 4, 12), disc(22, 4, 3)];
    // Samples that go 6 mm past the junctions, and back to them.
    const way = [-12, -18, -6, 0, 8, 16, 9].map(parabola);
    for (const ends of [
      [first, last],
      [last, first],
    ]) {
      const line = middleLine(way, SLAB, ROUND, ends, 1);
      const past = line.slice(1, -1).filter((point) => {
        const own = distanceTo(SLAB, point);
        return ends.some((site) => distanceTo(site, point) < own - 1e-9);
      });
      expect(past).toEqual([]);
      expect(line.length).toBeGreaterThan(4);
    }
  });
});

it("a line between two parallel sides is its two ends alone", () => {
  const line = middleLine(
    [
      [0, -5],
      [0.4, 0],
      [0, 5],
    ],
    square(-12, 0, 10),
    square(12, 0, 10),
    [],
    0.5,
  );
  expect(line).toEqual([
    [0, -5],
    [0, 5],
  ]);
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Outline, Point } from "../../packages/casting-core/src/geometry/types.js";
import {
  ontoBisector,
  ontoJunction,
  stepToBisector,
} from "../../packages/casting-core/src/grooves/network/bisector.js";
import { distanceTo, type Site } from "../../packages/casting-core/src/grooves/network/sites.js";

const piece = (outline: Outline): Site => ({ kind: "piece", shapes: [{ form: "outline", outline }] });
const EDGE: Site = { kind: "rim", shapes: [{ form: "hollow", radius: 67.9109125 }] };

// Two triangles whose corners stand 5 µm apart near the tool's edge: from seed 2100 of the random jobs.
const ONE = piece([
  [-0.092, 64.51],
  [-26.606, 58.763],
  [-8.372, 38.676],
]);
const OTHER = piece([
  [-26.61, 58.766],
  [-48.416, 42.628],
  [-23.536, 31.812],
]);

const disc = (x: number, y: number, radius: number): Site => ({
  kind: "piece",
  shapes: [{ form: "disc", x, y, radius }],
});
/** Places within 2 mm of the middle, in tenths. */
const beside = fc
  .tuple(fc.integer({ min: -20, max: 20 }), fc.integer({ min: -20, max: 20 }))
  .map(([x, y]): Point => [x / 10, y / 10]);

describe("The point equally far from three sites", () => {
  it("of discs round the middle is the middle, from wherever near it", () => {
    // Each touches the circle of 7 mm about (1, -2).
    const sites = [
      [0, 3],
      [2.2, 5],
      [4, 1],
    ].map(([turn, radius]) =>
      disc(1 + (7 + radius!) * Math.cos(turn!), -2 + (7 + radius!) * Math.sin(turn!), radius!),
    ) as [Site, Site, Site];
    fc.assert(
      fc.property(beside, ([x, y]) => {
        const found = ontoJunction([1 + x, y - 2], ...sites, 4);
        expect(found).toEqual([expect.closeTo(1, 8), expect.closeTo(-2, 8)]);
      }),
    );
    // Within reach to the hair; else the start itself.
    const start: Point = [1, -4];
    expect(ontoJunction(start, ...sites, 2.001)).not.toEqual(start);
    expect(ontoJunction(start, ...sites, 1.999)).toEqual(start);
  });

  it("is not yet found where only two of them are equally far", () => {
    const sites = [disc(-6, 0, 3), disc(6, 0, 3), disc(0, 9, 3)] as const;
    const order = [
      [0, 1, 2],
      [0, 2, 1],
      [2, 1, 0],
    ];
    for (const [a, b, c] of order) {
      // (0, -1) is as far from the first two, and nearer to them than to the third.
      const [x, y] = ontoJunction([0, -1], sites[a!]!, sites[b!]!, sites[c!]!, 4);
      expect(x).toBeCloseTo(0, 9);
      // sqrt(36 + y²) = 9 - y
      expect(y).toBeCloseTo(2.5, 9);
    }
  });

  it("is the start where all lie in one direction, or two of them are one", () => {
    const row = [disc(0, 0, 1), disc(-5, 0, 1), disc(-9, 0, 2)] as const;
    expect(ontoJunction([10, 0], ...row, 5)).toEqual([10, 0]);
    expect(ontoJunction([10, 2], row[0], row[0], row[1], 50)).toEqual([10, 2]);
  });

  it("is found between corners that all but touch, where a whole step of Newton's goes far beyond it", () => {
    const found = ontoJunction([-27.177, 60.368], ONE, OTHER, EDGE, 1.7);
    const [a, b, c] = [ONE, OTHER, EDGE].map((site) => distanceTo(site, found));
    expect(a).toBeCloseTo(b!, 9);
    expect(a).toBeCloseTo(c!, 9);
    expect(found[0]).toBeCloseTo(-26.8645, 3);
    expect(found[1]).toBeCloseTo(60.4801, 3);
  });

  it("is the start where there is none within reach", () => {
    const start: Point = [-27.177, 60.368];
    expect(ontoJunction(start, ONE, OTHER, EDGE, 0.1)).toEqual(start);
  });
});

describe("The point equally far from two sites", () => {
  it("lies straight beside the start", () => {
    const left = piece([
      [-3, -5],
      [-1, -5],
      [-1, 5],
      [-3, 5],
    ]);
    const right = piece([
      [2, -5],
      [4, -5],
      [4, 5],
      [2, 5],
    ]);
    const [x, y] = ontoBisector([0.1, 1], left, right);
    expect(x).toBeCloseTo(0.5, 9);
    expect(y).toBeCloseTo(1, 9);
  });

  it("is as far from each, and hardly farther from the start than it must be", () => {
    const sites = [disc(-6, 0, 3), disc(5, 1, 2), disc(1, -40, 37)];
    fc.assert(
      fc.property(fc.shuffledSubarray(sites, { minLength: 2, maxLength: 2 }), beside, ([one, other], start) => {
        const found = ontoBisector(start, one!, other!);
        expect(distanceTo(one!, found)).toBeCloseTo(distanceTo(other!, found), 9);
        // A millimetre towards the middle takes at most 2 mm off the difference, and here no less than one.
        const off = Math.abs(distanceTo(one!, start) - distanceTo(other!, start));
        const moved = Math.hypot(found[0] - start[0], found[1] - start[1]);
        expect(moved).toBeGreaterThanOrEqual(off / 2 - 1e-9);
        expect(moved).toBeLessThanOrEqual(off + 1e-9);
      }),
    );
  });

  it("is the start where both lie in one direction", () => {
    expect(ontoBisector([10, 0], disc(0, 0, 1), disc(-5, 0, 1))).toEqual([10, 0]);
  });
});

it("the first step tells how far off the middle a point is, between a corner and a side or a disc", () => {
  const corner = piece([
    [5, 0],
    [15, -10],
    [15, 10],
  ]);
  const side = piece([
    [-15, -10],
    [-5, -10],
    [-5, 10],
    [-15, 10],
  ]);
  const off = fc.tuple(fc.integer({ min: -4, max: 4 }), fc.integer({ min: -4, max: 4 }));
  fc.assert(
    fc.property(beside, off, fc.constantFrom(side, disc(-9, 0, 4)), (from, [dx, dy], other) => {
      const [x, y] = ontoBisector(from, corner, other);
      const start: Point = [x + dx / 1000, y + dy / 1000];
      const [toX, toY] = ontoBisector(start, corner, other);
      expect(stepToBisector(start, corner, other)).toBeCloseTo(Math.hypot(toX - start[0], toY - start[1]), 5);
    }),
  );
});

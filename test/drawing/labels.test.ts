// What the places of numbers and arrows are decided by, beside the core's own geometry.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as ink from "../../packages/casting-core/src/drawing/ink.js";
import { openLabels } from "../../packages/casting-core/src/drawing/labels.js";
import { pointToSegment } from "../../packages/casting-core/src/geometry/distance.js";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { places } from "../support/arbitrary.js";
import { cross, enters, lineToBox, overlap } from "../support/labels.js";
import { rectToSegment } from "../support/rects.js";

const RUNS = { numRuns: 1000 };
const rects = fc
  .tuple(places(8), fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }))
  .map(([[x, y], width, height]): ink.Rect => ({ x, y, width, height }));
// Whole lengths touch corners and sides, others do not.
const some = fc.oneof(
  places(8),
  places(8000).map(([x, y]): Point => [x / 999, y / 999]),
);

describe("a box", () => {
  it("overlaps others and is entered by lines as on the pages", () => {
    fc.assert(
      fc.property(rects, rects, some, some, (a, b, from, to) => {
        expect(overlap(a, b)).toBe(ink.overlap(a, b));
        expect(enters(from, to, a)).toBe(ink.enters(from[0], from[1], to[0], to[1], a));
      }),
      RUNS,
    );
  });

  it("is as far from a line as its nearest side or corner, 0 where that enters", () => {
    fc.assert(
      fc.property(rects, some, some, (rect, from, to) => {
        expect(lineToBox(from, to, rect)).toBeCloseTo(rectToSegment(rect, from, to), 12);
      }),
      RUNS,
    );
  });
});

describe("two lines", () => {
  it("cross where a point of one lies on the other", () => {
    expect(cross([0, 0], [4, 4], [0, 4], [4, 0])).toBe(true);
    expect(cross([0, 0], [4, 4], [2, 2], [9, 0])).toBe(true);
    expect(cross([0, 0], [4, 4], [3, 2], [9, 0])).toBe(false);
    expect(cross([0, 0], [1, 1], [0, 4], [4, 0])).toBe(false);
    expect(cross([0, 4], [4, 0], [0, 0], [1, 1])).toBe(false);
  });
});

describe("other lines", () => {
  const lines = fc.array(fc.array(places(20), { minLength: 1, maxLength: 5 }), { minLength: 2, maxLength: 6 });

  it("are as far from a point as the nearest of their parts, by whole nm, up to what was asked", () => {
    fc.assert(
      fc.property(lines, places(20), fc.double({ min: 0.5, max: 9, noNaN: true }), (list, at, far) => {
        const others = list.slice(1).flatMap((line) => line.slice(1).map((to, n) => pointToSegment(at, line[n]!, to)));
        const labels = openLabels(list);
        labels.drawStrokes();
        const clear = labels.clearOf(...at, 0, far);
        const least = Math.min(far, ...others);
        expect(clear).toBeLessThanOrEqual(least);
        expect(clear).toBeGreaterThan(least - 1.000001e-6);
      }),
      { numRuns: 200 },
    );
  });
});

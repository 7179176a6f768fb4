import { describe, expect, it } from "vitest";
import { clearDistance, pointToSegment } from "../../packages/casting-core/src/geometry/distance.js";
import { convexContains, placed } from "../../packages/casting-core/src/geometry/polygon.js";
import type { Outline } from "../../packages/casting-core/src/geometry/types.js";

const square: Outline = [
  [100, 50],
  [110, 50],
  [110, 60],
  [100, 60],
];

describe("the clear distance of two outlines", () => {
  it("of a corner before an edge: only the other outline's edge parts them", () => {
    const pointing: Outline = [
      [113, 55],
      [120, 50],
      [120, 60],
    ];
    expect(clearDistance(square, pointing)).toBeCloseTo(3, 12);
    expect(clearDistance(pointing, square)).toBeCloseTo(3, 12);
  });

  it("is 0 where they cross, though neither holds a corner of the other", () => {
    const across: Outline = [
      [95, 54],
      [115, 54],
      [115, 56],
      [95, 56],
    ];
    expect(clearDistance(square, across)).toBe(0);
  });

  it("is 0 where one lies in the other, and where they touch", () => {
    const inside: Outline = [
      [104, 54],
      [106, 54],
      [105, 56],
    ];
    const touching: Outline = [
      [110, 52],
      [115, 52],
      [115, 58],
      [110, 58],
    ];
    expect([clearDistance(square, inside), clearDistance(inside, square)]).toEqual([0, 0]);
    expect([clearDistance(square, touching), clearDistance(touching, square)]).toEqual([0, 0]);
  });

  it("is that of two corners where those are nearest", () => {
    const beyond: Outline = [
      [113, 64],
      [120, 64],
      [120, 70],
    ];
    expect(clearDistance(square, beyond)).toBeCloseTo(5, 12);
  });
});

describe("points and outlines", () => {
  it("measures to a segment of no length as to its point", () => {
    expect(pointToSegment([3, 4], [0, 0], [0, 0])).toBe(5);
  });

  it("turns counter-clockwise, then moves", () => {
    const outline: Outline = [[2, 1]];
    expect(placed(outline, 10, 20, 0.6, 0.8)).toEqual([[10 + 1.6 - 0.6, 20 + 1.2 + 0.8]]);
  });

  it("holds what lies on the edge", () => {
    expect([convexContains(square, [110, 55]), convexContains(square, [110.001, 55])]).toEqual([true, false]);
  });
});

// The hexagon round an outline, which tells how densely the shape can lie.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hexagonRound, signedArea } from "../../packages/casting-core/src/geometry/polygon.js";
import type { Outline, Point } from "../../packages/casting-core/src/geometry/types.js";
import { regular } from "../support/layouts.js";

const share = (outline: Outline) => signedArea(outline) / hexagonRound(outline);

describe("the hexagon round an outline", () => {
  it("of up to six corners is the outline itself", () => {
    for (const corners of [3, 4, 5, 6]) expect(share(regular(corners, 20, 7, -3, 0.3))).toBeCloseTo(1, 12);
  });

  // A regular octagon of side 1 gets two of its corners back, each a right angle over a side: 1/4 more.
  it.each([
    ["octagon", 8, (2 + 2 * Math.SQRT2) / (2 + 2 * Math.SQRT2 + 0.5)],
    // Every other side of a dodecagon is one of a hexagon round the same circle.
    ["dodecagon", 12, (12 * Math.tan(Math.PI / 12)) / (6 * Math.tan(Math.PI / 6))],
  ])("leaves of a regular %s as much as it must", (_, corners, known) => {
    expect(share(regular(corners, 20, 0, 0, 0))).toBeCloseTo(known, 3);
  });

  it("takes the least sides away: a rectangle's cut corners", () => {
    const cut: Outline = [
      [-10, -12],
      [10, -12],
      [12, -10],
      [12, 10],
      [10, 12],
      [-10, 12],
      [-12, 10],
      [-12, -10],
    ];
    // Two of four corners of 2 mm are given back.
    expect(hexagonRound(cut)).toBeCloseTo(24 * 24 - 2 * 2, 9);
  });

  it("is no smaller than the outline, the same from whichever corner and wherever it lies, and grows by its square", () => {
    const shapes = fc
      .uniqueArray(fc.integer({ min: 0, max: 359 }), { minLength: 7, maxLength: 20 })
      .filter((turns) =>
        turns.sort((a, b) => a - b).every((turn, n) => (turns[n + 1] ?? turns[0]! + 360) - turn < 150),
      );
    fc.assert(
      fc.property(shapes, fc.nat(19), (turns, first) => {
        const at = (reach: number, x: number): Point[] =>
          turns.map((turn) => [
            x + reach * Math.cos((turn * Math.PI) / 180),
            0.7 * reach * Math.sin((turn * Math.PI) / 180),
          ]);
        const own = hexagonRound(at(10, 0));
        expect(own).toBeGreaterThan(signedArea(at(10, 0)));
        expect(own).toBeLessThan(2 * signedArea(at(10, 0)));
        expect(hexagonRound(at(30, 500)) / own).toBeCloseTo(9, 6);
        const n = first % turns.length;
        const from = at(10, 0);
        // Equals are taken in order, so another corner may lead to another hexagon, hardly larger.
        expect(hexagonRound([...from.slice(n), ...from.slice(0, n)]) / own).toBeGreaterThan(0.9);
      }),
    );
  });
});

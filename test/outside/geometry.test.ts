// Distances and areas of polygons against a general-purpose geometry library, @flatten-js/core.
import Flatten from "@flatten-js/core";
import fc from "fast-check";
import { expect, test } from "vitest";
import { clearDistance, pointToOutline } from "../../packages/casting-core/src/geometry/distance.js";
import { placed, signedArea } from "../../packages/casting-core/src/geometry/polygon.js";
import type { Outline } from "../../packages/casting-core/src/geometry/types.js";
import { shaped } from "../../packages/casting-core/src/pieces/shapes.js";
import { sinCos } from "../../packages/casting-core/src/trig.js";

const own = { thickness: 6, density: 2.35 };
const size = fc.double({ min: 5, max: 60, noNaN: true });
const outline = fc.oneof(
  fc.record({ shape: fc.constantFrom("hexagon" as const, "square" as const, "triangle" as const), across: size }),
  fc.record({ shape: fc.constant("rectangle" as const), length: size, width: size }),
  fc.record({ shape: fc.constant("round" as const), diameter: size }),
);
const place = fc.record({
  x: fc.double({ min: -80, max: 80, noNaN: true }),
  y: fc.double({ min: -80, max: 80, noNaN: true }),
  turn: fc.double({ min: -7, max: 7, noNaN: true }),
});
const lying: fc.Arbitrary<Outline> = fc.tuple(outline, place).map(([piece, { x, y, turn }]) => {
  const shape = shaped({ ...piece, ...own }, "mm");
  if (typeof shape === "string") throw new Error(shape);
  return placed(shape.outline, x, y, ...sinCos(turn));
});

test("clear distances of pieces agree to 1e-6 mm, the other library's own tolerance", () => {
  fc.assert(
    fc.property(lying, lying, (a, b) => {
      const [distance] = new Flatten.Polygon(a).distanceTo(new Flatten.Polygon(b));
      const ours = clearDistance(a, b);
      // The library measures boundaries: it sees 0 where they cross, and a distance where one lies within the other.
      const inside = new Flatten.Polygon(a).contains(Flatten.point(...b[0]!)) || new Flatten.Polygon(b).contains(Flatten.point(...a[0]!)); // biome-ignore format: reads as one
      expect(Math.abs(ours - (inside ? 0 : distance))).toBeLessThan(1e-6);
    }),
    { numRuns: 150 },
  );
});

test("distances of points from an outline agree to 1e-9 mm", () => {
  fc.assert(
    fc.property(lying, place, (a, { x, y }) => {
      const distances = [...new Flatten.Polygon(a).edges].map((edge) => Flatten.point(x, y).distanceTo(edge.shape)[0]);
      expect(Math.abs(pointToOutline([x, y], a) - Math.min(...distances))).toBeLessThan(1e-9);
    }),
    { numRuns: 150 },
  );
});

test("areas agree to 1e-9 of themselves", () => {
  fc.assert(
    fc.property(lying, (a) => {
      expect(Math.abs(signedArea(a) / new Flatten.Polygon(a).area() - 1)).toBeLessThan(1e-9);
    }),
    { numRuns: 150 },
  );
});

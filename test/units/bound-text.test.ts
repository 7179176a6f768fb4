// A length that a maker is told to reach or to keep below holds as it is written.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  atLeast,
  atMost,
  massBound,
  rangeText,
  volumeBound,
} from "../../packages/casting-core/src/units/bound-text.js";
import { parseLength, parseMass, parseVolume } from "../../packages/casting-core/src/units/parse.js";

test.each([
  [4, "4 mm", "4 mm", "0.158 in", "0.157 in"],
  [5.739, "5.74 mm", "5.73 mm", "0.226 in", "0.225 in"],
  [15.24, "15.24 mm", "15.24 mm", "0.6 in", "0.6 in"],
  // A 64th stays one; from an inch on there are no others.
  [3.96875, "3.97 mm", "3.96 mm", "5/32 in", "5/32 in"],
  [40, "40 mm", "40 mm", "1 37/64 in", "1 9/16 in"],
  // What is less than a hundredth or a thousandth keeps a digit.
  [0.001, "0.001 mm", "0.001 mm", "0.00004 in", "0.00003 in"],
  [0, "0 mm", "0 mm", "0 in", "0 in"],
])("%d mm", (mm, most, least, mostInch, leastInch) => {
  expect([atLeast(mm, "mm"), atMost(mm, "mm"), atLeast(mm, "in"), atMost(mm, "in")]).toEqual([
    most,
    least,
    mostInch,
    leastInch,
  ]);
});

test("a range is in one form", () => {
  expect(rangeText(5, 80, "mm")).toBe("5 mm to 80 mm");
  expect(rangeText(5, 80, "in")).toBe("0.197 in to 3.149 in");
  expect(rangeText(5.1, 5.2, "in")).toBe("0.201 in to 0.204 in");
  expect(rangeText(50, 80, "in")).toBe("1 31/32 in to 3 9/64 in");
});

test("following it suffices, and it asks for no more than a step beyond", () => {
  const length = fc.oneof(fc.double({ min: 0.02, max: 500, noNaN: true }), fc.integer({ min: 1, max: 2000 }).map((n) => (n / 64) * 25.4)); // biome-ignore format: one thought
  fc.assert(
    fc.property(length, fc.constantFrom("mm" as const, "in" as const), (mm, units) => {
      const step = units === "mm" ? 0.01 : mm < 25.4 ? 0.0254 : 25.4 / 64;
      const [over, under] = [parseLength(atLeast(mm, units), "mm"), parseLength(atMost(mm, units), "mm")];
      expect(over).toBeGreaterThanOrEqual(mm - 1e-9);
      expect(over - mm).toBeLessThan(step + 1e-9);
      expect(under).toBeLessThanOrEqual(mm + 1e-9);
      expect(mm - under).toBeLessThan(step + 1e-9);
    }),
  );
});

test("volumes and masses hold as they are written, in each unit", () => {
  expect([volumeBound(2_000_000, "in", "most"), volumeBound(50, "in", "least"), volumeBound(0, "in", "least")]).toEqual(
    ["2113.37 US qt", "1.7 US fl oz", "0 US fl oz"],
  );
  expect([massBound(1000, "in", "most"), massBound(0.01, "in", "least"), massBound(0, "in", "least")]).toEqual([
    "2204.62 lb",
    "0.36 oz",
    "0 lb",
  ]);
  expect([volumeBound(50, "mm", "least"), massBound(40, "mm", "most")]).toEqual(["0.05 L", "40 kg"]);
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 5000, noNaN: true }), (amount) => {
      expect(parseVolume(volumeBound(amount, "in", "least"))).toBeGreaterThanOrEqual(amount * (1 - 1e-6));
      expect(parseVolume(volumeBound(amount, "in", "most"))).toBeLessThanOrEqual(amount * (1 + 1e-6));
      expect(parseMass(massBound(amount, "in", "least"))).toBeGreaterThanOrEqual(amount * (1 - 1e-6));
      expect(parseMass(massBound(amount, "in", "most"))).toBeLessThanOrEqual(amount * (1 + 1e-6));
    }),
  );
});

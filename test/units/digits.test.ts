import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { thousandths } from "../../packages/casting-core/src/units/digits.js";

describe("a number of thousandths", () => {
  it("is written as the number itself would be", () => {
    const counts = fc.oneof(fc.integer({ min: -2_000_000, max: 2_000_000 }), fc.maxSafeInteger());
    fc.assert(fc.property(counts, (count) => thousandths(count) === String(count / 1000)));
    const told = [0, -0, 1, -1, 10, 100, -1500, 344_000, 2 ** 31, -(2 ** 31)];
    expect(told.map(thousandths)).toEqual([
      "0",
      "0",
      "0.001",
      "-0.001",
      "0.01",
      "0.1",
      "-1.5",
      "344",
      "2147483.648",
      "-2147483.648",
    ]);
  });
});

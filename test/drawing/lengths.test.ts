import { expect, it } from "vitest";
import { inkOf } from "../../packages/casting-core/src/drawing/ink.js";
import { lengthsIn } from "../../packages/casting-core/src/drawing/lengths.js";
import { circle, line, text } from "../../packages/casting-core/src/drawing/sheet.js";

const lengths = lengthsIn([line([2, 5.5], [98, 5.5]), circle([50.5, 50.5], 20), text([70, 70], "words", 4)].map(inkOf));

it("counts lines within a rectangle, to whole cells, and no words", () => {
  const within = lengths({ x: 0, y: 0, width: 100, height: 100 });
  expect(within(0, 0, 100, 20)).toBeCloseTo(96, 3);
  expect(within(10, 0, 9.9, 20)).toBeCloseTo(10, 3);
  expect(within(20, 20, 60, 60)).toBeCloseTo(40 * Math.PI, 0);
  // No trace of a line is left where there is none, whatever stands above and beside.
  expect(within(74, 60, 20, 20)).toBe(0);
  expect(within(45, 45, 10, 10)).toBe(0);
});

it("counts in each window anew, whatever the size of the one before", () => {
  lengths({ x: 0, y: 0, width: 100, height: 100 });
  const small = lengths({ x: 40, y: 0, width: 10, height: 10 });
  expect(small(40, 0, 10, 10)).toBeCloseTo(10, 3);
  const large = lengths({ x: -50, y: -50, width: 200, height: 200 });
  expect(large(-50, -50, 200, 200)).toBeCloseTo(96 + 40 * Math.PI, 0);
});

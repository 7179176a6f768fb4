// How truly the way to the target is known, where the curve was measured.
import fc from "fast-check";
import { expect, it } from "vitest";
import { sagittaOf, sagittaOff } from "../../packages/casting-core/src/blank/sphere.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { makePart, makePlan } from "../../packages/casting-core/src/plan/make.js";

const job = (target: string, units = "mm", size = "0.1 mm") =>
  readJob(
    `units: ${units}
blank:
  diameter: 120 mm
  readings: {instrument: {ring: 80 mm, size-error: ${size}}, zones: [{at: 0, reading: 0.5 mm}]}
  target: {radius: ${target}}
pieces: {shape: square, across: 12 mm, thickness: 4 mm, density: 2.4}
layout: {count: 3}
`,
  );
const doubted = (...of: Parameters<typeof job>) =>
  makePart(job(...of), "blank").notes.filter(({ code }) => code === "target-in-doubt");

it("a sagitta is off as the radius is, by the sphere", () => {
  const sizes = fc.record({
    radius: fc.double({ min: 500, max: 20_000, noNaN: true }),
    share: fc.double({ min: 0.01, max: 0.9, noNaN: true }),
  });
  fc.assert(
    fc.property(sizes, ({ radius, share }) => {
      const off = radius * 1e-5;
      const [r, around] = [share * radius, off / 2];
      const apart = sagittaOf(radius - around, r) - sagittaOf(radius + around, r);
      expect(sagittaOff(radius, r, off) / apart).toBeCloseTo(1, 6);
    }),
  );
  // A hemisphere's depth is its radius: no more than all of it is in doubt.
  expect(sagittaOff(200, 200, 1)).toBe(200);
});

it("a way to the target that is half in doubt or more asks for better measures first", () => {
  // A radius of 1600 mm give or take 7.7 mm: 1.125 mm of sagitta give or take 5 µm.
  expect(doubted("1500 mm")).toEqual([]);
  expect(doubted("1590 mm")).toEqual([
    {
      code: "target-in-doubt",
      level: "warning",
      text: "The sagitta still to go, 0.007 mm, is known only give or take 0.005 mm, as the radius is give or take 7.7 mm: measure better before grinding on it, with more readings, a finer dial, or a wider instrument whose size is well known.",
    },
  ]);
  expect(doubted("1590 mm", "in")[0]?.text).toContain("0.0003 in, is known only give or take 0.0002 in");
  expect(makePlan(job("1590 mm")).notes.map(({ code }) => code)).toContain("target-in-doubt");
});

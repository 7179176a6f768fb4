import fc from "fast-check";
import { expect, test } from "vitest";
import { blankOf, toolOf } from "../../packages/casting-core/src/blank/blank.js";
import { radiusFromSagitta, sagittaOf } from "../../packages/casting-core/src/blank/sphere.js";
import type { JobBlank } from "../../packages/casting-core/src/job/types.js";
import { exampleJob } from "../support/jobs.js";

function blank(changes: Partial<JobBlank>) {
  return blankOf(exampleJob({ blank: { diameter: 400, curve: "concave", ...changes } }));
}

test("radius, focal ratio and sagitta say the same curve", () => {
  const byRadius = blank({ radius: 3040 });
  expect(byRadius.curveRadius).toBe(3040);
  expect(blank({ "focal-ratio": 3.8 }).curveRadius).toBeCloseTo(3040, 9);
  expect(blank({ sagitta: byRadius.sagitta }).curveRadius).toBeCloseTo(3040, 8);
  expect(blank({ sagitta: sagittaOf(3040, 198), "sagitta-over": 396 }).curveRadius).toBeCloseTo(3040, 8);
});

test("the sample's figures: 400 mm, R 3060 to 3200, a 300 mm tool", () => {
  const job = exampleJob({ blank: { diameter: 400, curve: "concave", radius: 3060, target: { radius: 3200 } } });
  const glass = blankOf(job);
  expect(glass.sagitta).toBeCloseTo(6.543, 3);
  expect(glass.target!.sagitta).toBeCloseTo(6.256, 3);
  expect(toolOf(job, glass).sagitta).toBeCloseTo(3.679, 3);
});

test("a flat has no radius and no depth", () => {
  const job = exampleJob({ blank: { diameter: 400, curve: "flat" } });
  expect(blankOf(job)).toEqual({ diameter: 400, curve: "flat", sagitta: 0 });
  expect(toolOf(job, blankOf(job))).toEqual({ diameter: 300, rim: 3, sagitta: 0 });
});

test("sagitta and radius undo each other, for long radii too", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 1000, noNaN: true }),
      fc.double({ min: 1.001, max: 1e6, noNaN: true }),
      (r, ratio) => {
        const radius = r * ratio;
        expect(radiusFromSagitta(sagittaOf(radius, r), r) / radius).toBeCloseTo(1, 10);
      },
    ),
  );
});

test("a radius shorter than half the blank is refused by its key", () => {
  expect(() => blank({ radius: 199 })).toThrow(/blank\.radius: .*at least 200 mm/);
  expect(() => blank({ "focal-ratio": 0.2 })).toThrow(/blank\.focal-ratio/);
  expect(() => blank({ radius: 3060, target: { radius: 100 } })).toThrow(/blank\.target\.radius/);
  expect(() => blank({})).toThrow(/not given/);
});

test("a blank of a known glass has the mass of a disc less its hollow, or with its dome", () => {
  const solid = { thickness: 45, material: "borosilicate" };
  const disc = (2.23 * Math.PI * 200 * 200 * 45) / 1e6;
  // The cap of 6.543 mm over 400 mm, by another formula: π s² (3 R − s) / 3.
  const { sagitta: s } = blank({ radius: 3060 });
  const cap = (2.23 * Math.PI * s * s * (3 * 3060 - s)) / 3 / 1e6;
  expect(blank({ radius: 3060, ...solid }).mass).toBeCloseTo(disc - cap, 9);
  expect(blank({ radius: 3060, ...solid, curve: "convex" }).mass).toBeCloseTo(disc + cap, 9);
  expect(blank({ ...solid, curve: "flat" }).mass).toBeCloseTo(disc, 9);
  expect(blank({ radius: 3060, ...solid, material: "quartz" })).not.toHaveProperty("mass");
  expect(blank({ radius: 3060, material: "borosilicate" })).not.toHaveProperty("mass");
  expect(blank({ radius: 3060, ...solid, thickness: 3 })).not.toHaveProperty("mass");
});

import { expect, test } from "vitest";
import { mixFromOptions } from "../../packages/casting-core/src/pour/without-job.js";

const INCH = 25.4;

test("a 15 in tool poured 1 1/4 in deep fills a 9.3 in bucket to between 3 and 3 1/2 in (common practice)", () => {
  const container = { shape: "round", diameter: 9.3 * INCH, height: 12 * INCH, headroom: INCH } as const;
  const { pour } = mixFromOptions({ tool: 15 * INCH, fill: 1.25 * INCH, spare: 0, container });
  const mark = pour.batches[0]!.mixMark! / INCH;
  expect(mark).toBeGreaterThan(3);
  expect(mark).toBeLessThan(3.5);
  // (15 / 9.3)² × 1.25 in, by hand.
  expect(mark).toBeCloseTo(3.252, 3);
});

test("the dam of a 300 mm former is π d long, with the sheet and the overlap", () => {
  const { dam } = mixFromOptions({ tool: 300, fill: 32 }).pour;
  expect(dam.length).toBeCloseTo(945.6194 + 40, 3);
});

test("dental plaster stays in the mold about 45 minutes (common practice)", () => {
  expect(mixFromOptions({ tool: 300, fill: 32, plaster: "type-3" }).pour.schedule.openAfter).toBe(45);
});

test("1 quart of water with 2.75 lb of plaster makes a slab of about 81 in³ (potters' practice)", () => {
  // 0.946 kg of water on 1.247 kg of powder is a ratio of 0.757; the published figure is rounded: within a tenth.
  const { pour } = mixFromOptions({ tool: 300, powder: 1.247, plaster: "pottery-74", water: 0.757, spare: 0 });
  expect(Math.abs(pour.mixVolume / (81 * 16.387064) - 1)).toBeLessThan(0.1);
});

test("one person lifts at most 23 kg held close (NIOSH 94-110)", () => {
  expect(mixFromOptions({ tool: 100, fill: 20 }).pour.lift).toEqual({ guideline: 23, people: 1 });
  expect(mixFromOptions({ tool: 600, fill: 40 }).pour.lift.people).toBeGreaterThan(1);
});

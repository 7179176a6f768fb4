import fc from "fast-check";
import { expect, test } from "vitest";
import type { JobContainer } from "../../packages/casting-core/src/job/types.js";
import { alongWall, heightOf, sectionsOf, volumeAt } from "../../packages/casting-core/src/pour/container.js";
import { poured } from "../support/poured.js";

const size = fc.double({ min: 20, max: 600, noNaN: true });
const steps = fc.array(
  fc.record({ rise: fc.double({ min: 1, max: 80, noNaN: true }), more: fc.double({ min: 5, max: 4000, noNaN: true }) }),
  { minLength: 1, maxLength: 8 },
);

const containers: fc.Arbitrary<JobContainer> = fc.oneof(
  fc.record({ shape: fc.constant("round" as const), diameter: size, height: size, headroom: fc.constant(0) }),
  fc.record({
    shape: fc.constant("tapered" as const),
    bottom: size,
    top: size,
    height: size,
    headroom: fc.constant(0),
  }),
  fc.record({ shape: fc.constant("box" as const), length: size, width: size, height: size, headroom: fc.constant(0) }),
  steps.map((list) => {
    let height = 0;
    let volume = 0;
    const marks = list.map(({ rise, more }) => {
      height += rise;
      volume += more;
      return { height, volume };
    });
    return { shape: "marks" as const, marks, height, headroom: 0 };
  }),
  fc.array(fc.record({ bottom: size, top: size, height: size }), { minLength: 1, maxLength: 5 }).map((sections) => ({
    shape: "stacked" as const,
    sections,
    height: sections.reduce((sum, { height }) => sum + height, 0),
    headroom: 0,
  })),
);

test("height and volume undo each other", () => {
  fc.assert(
    fc.property(containers, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (container, share) => {
      const sections = sectionsOf(container);
      const height = container.height * share;
      expect(heightOf(sections, volumeAt(sections, height))).toBeCloseTo(height, 7);
    }),
    { numRuns: 200 },
  );
});

test("a tapered bucket's marks agree with slices of 1/100 mm to 0.05 mm", () => {
  const bucket: JobContainer = { shape: "tapered", bottom: 200, top: 290, height: 300, headroom: 0 };
  const sections = sectionsOf(bucket);
  for (const wanted of [500, 3000, 9000]) {
    let volume = 0;
    let height = 0;
    while (volume < wanted) {
      const r = 100 + (45 * (height + 0.005)) / 300;
      volume += (Math.PI * r * r * 0.01) / 1000;
      height += 0.01;
    }
    expect(Math.abs(heightOf(sections, wanted)! - height)).toBeLessThan(0.05);
  }
  expect(alongWall(sections, 300)).toBeCloseTo(Math.hypot(300, 45), 10);
});

test("sections stack: a cylinder on a cone's frustum fills as the two in turn", () => {
  const stack = [
    { shape: "round", height: 100, bottom: 50, top: 80 },
    { shape: "round", height: 100, bottom: 80, top: 80 },
  ] as const;
  const lower = (Math.PI * 100 * (2500 + 4000 + 6400)) / 3000;
  expect(volumeAt(stack, 100)).toBeCloseTo(lower, 9);
  expect(heightOf(stack, lower + (Math.PI * 6400 * 30) / 1000)).toBeCloseTo(130, 9);
  expect(heightOf(stack, 1e6)).toBeUndefined();
});

test("measured marks: straight lines between them, nothing above the last", () => {
  const jug: JobContainer = {
    shape: "marks",
    marks: [
      { height: 50, volume: 1000 },
      { height: 120, volume: 3000 },
    ],
    height: 200,
    headroom: 0,
  };
  const sections = sectionsOf(jug);
  expect(heightOf(sections, 500)).toBeCloseTo(25, 12);
  expect(heightOf(sections, 2000)).toBeCloseTo(85, 12);
  expect(heightOf(sections, 3000.1)).toBeUndefined();
  expect(volumeAt(sections, 200)).toBeCloseTo(3000, 9);
});

test("batches are equal, keep the headroom, and add up to the mix", () => {
  const container: JobContainer = { shape: "round", diameter: 120, height: 120, headroom: 20 };
  const { pour, codes } = poured({ container });
  expect(pour.batches.length).toBe(Math.ceil(pour.mixVolume / (Math.PI * 3.6 * 100)));
  expect(pour.batches.reduce((sum, batch) => sum + batch.mix, 0)).toBeCloseTo(pour.mixVolume, 8);
  for (const batch of pour.batches) {
    expect(batch).toEqual(pour.batches[0]);
    expect(batch.mixMark!).toBeLessThanOrEqual(100);
    // The water alone, then water and the powder it swallows.
    expect(batch.waterMark! * Math.PI * 3.6).toBeCloseTo((batch.water / 0.998) * 1000, 8);
    expect(batch.mixMark! * Math.PI * 3.6).toBeCloseTo(batch.mix, 8);
  }
  expect(codes).toContain("several-batches");
  expect(pour.schedule.betweenBatches).toBeGreaterThan(0);
});

test("a thimble is refused by key", () => {
  expect(() => poured({ container: { shape: "round", diameter: 20, height: 30, headroom: 5 } })).toThrow(
    /^container: /,
  );
});

test("without a container there are no marks, and the plan says so", () => {
  const { pour, codes } = poured();
  expect(pour.batches).toHaveLength(1);
  expect(pour.batches[0]).not.toHaveProperty("waterMark");
  expect(pour).not.toHaveProperty("container");
  expect(codes).toContain("no-container");
});

test("a stack of sections holds what its frustums hold, and its marks follow", () => {
  const container: JobContainer = {
    shape: "stacked",
    sections: [
      { bottom: 200, top: 220, height: 60 },
      { bottom: 240, top: 260, height: 180 },
    ],
    height: 240,
    headroom: 0,
  };
  const frustum = (a: number, b: number, h: number) => (Math.PI * h * (a * a + a * b + b * b)) / 12 / 1000;
  const sections = sectionsOf(container);
  expect(volumeAt(sections, 60)).toBeCloseTo(frustum(200, 220, 60), 9);
  expect(volumeAt(sections, 150)).toBeCloseTo(frustum(200, 220, 60) + frustum(240, 250, 90), 9);
});

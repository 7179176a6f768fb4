import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { radiusFromReadings } from "../../packages/casting-core/src/blank/readings.js";
import type { Curve, JobReadings } from "../../packages/casting-core/src/job/types.js";

function measured(readings: JobReadings, curve: Curve = "concave") {
  return radiusFromReadings({ units: "mm", blank: { diameter: 400, curve, readings } });
}

describe("readings", () => {
  it("give back the sphere that made them, at any size", () => {
    const arbitrary = fc.record({
      radius: fc.double({ min: 300, max: 20_000, noNaN: true }),
      ring: fc.double({ min: 20, max: 200, noNaN: true }),
      ball: fc.double({ min: 0, max: 12, noNaN: true }),
      convex: fc.boolean(),
      scale: fc.constantFrom(0.1, 1, 3),
    });
    fc.assert(
      fc.property(arbitrary, ({ radius, ring, ball, convex, scale }) => {
        const inner = scale * (radius + (convex ? ball / 2 : -ball / 2));
        const a = (scale * ring) / 2;
        const reading = (a * a) / (inner + Math.sqrt(inner * inner - a * a));
        const instrument = { ring: scale * ring, ...(ball > 0 ? { ball: scale * ball } : {}) };
        const found = measured({ instrument, zones: [{ at: 0, reading }] }, convex ? "convex" : "concave");
        expect(found.radius / (scale * radius)).toBeCloseTo(1, 9);
      }),
      { numRuns: 200 },
    );
  });

  it("say how far each is off, and how sure the radius is", () => {
    const found = measured({
      instrument: { ring: 125, ball: 6.35, resolution: 0.001 },
      zones: [0.642, 0.645, 0.639].map((reading) => ({ at: 0, reading })),
    });
    expect(found.zones.map((zone) => Math.round(zone.off))).toEqual([0, 3, -3]);
    expect(found.spread).toBeCloseTo(3, 9);
    expect(found.radius).toBeCloseTo((62.5 * 62.5) / (2 * 0.642) + 0.321 + 3.175, 9);
    // 3 µm of spread over three readings, 2 µm of the flat, and a fifth of a percent of the ring.
    expect(found.uncertainty).toBeGreaterThan(10);
    expect(found.uncertainty).toBeLessThan(25);
  });

  it("find astigmatism with a bar only, and its direction", () => {
    const swing = (turn: number) => 0.5 + 0.02 * Math.cos((2 * (turn - 30) * Math.PI) / 180);
    const zones = [0, 45, 90, 135].map((along) => ({ at: 0, along, reading: swing(along) }));
    const found = measured({ instrument: { bar: 100 }, zones });
    expect(found.astigmatism?.amount).toBeCloseTo(20, 6);
    expect(found.astigmatism?.deepest).toBeCloseTo(30, 6);
    expect(found.astigmatism?.uncertainty).toBeCloseTo((1 / Math.sqrt(12)) * Math.sqrt(2 / 4), 6); // the dial's step alone
    expect(measured({ instrument: { ring: 100 }, zones }).astigmatism).toBeUndefined();
    expect(measured({ instrument: { bar: 100 }, zones: zones.slice(0, 2) }).astigmatism).toBeUndefined();
  });

  it("call a swing astigmatism only beyond twice its own uncertainty", () => {
    // The same swing of 3 µm, once laid twice in agreement, once with 6 µm of scatter between the two rounds.
    const laid = (scatter: number) =>
      [0, 45, 90, 135, 0, 45, 90, 135].map((along, n) => {
        const off = (n < 4 ? 1 : -1) * (n % 2 === 0 ? 1 : -1) * scatter;
        return { at: 0, along, reading: 0.5 + 0.003 * Math.cos((2 * along * Math.PI) / 180) + off };
      });
    const swing = (scatter: number) => measured({ instrument: { bar: 100 }, zones: laid(scatter) }).astigmatism;
    expect(swing(0)?.amount).toBeCloseTo(3, 6);
    expect(swing(0.006)).toBeUndefined();
  });

  it("take the zero plate's and the ring's error from the job", () => {
    const zones = [{ at: 0, reading: 0.64 }];
    const sure = (errors: object) => measured({ instrument: { ring: 125, ...errors }, zones }).uncertainty;
    const slope = (62.5 * 62.5 - 0.64 * 0.64) / (2 * 0.64 * 0.64);
    const step = 0.001 / Math.sqrt(12);
    expect(sure({ "zero-error": 0.01, "size-error": 0 })).toBeCloseTo(slope * Math.sqrt(2 * step * step + 0.0001), 9);
    // R follows the square of the ring: 0.1 mm of 125 mm is 0.16 % of the radius.
    expect(sure({ "zero-error": 0, "size-error": 0.1 })).toBeCloseTo(
      Math.hypot((62.5 / 0.64) * 0.05, slope * step * Math.SQRT2),
      9,
    );
  });

  it.each([
    ["deeper than a hemisphere", [70], "concave", /deeper than a hemisphere/],
    ["of both signs", [0.5, -0.5], "concave", /both signs/],
    ["below zero on concave glass", [-0.5], "concave", /set curve to convex/],
    ["of nothing", [0], "concave", /is a flat/],
  ] as const)("are refused %s", (_, readings, curve, words) => {
    const zones = readings.map((reading) => ({ at: 0, reading }));
    expect(() => measured({ instrument: { ring: 125 }, zones }, curve)).toThrow(words);
  });

  it("of convex glass may carry a minus", () => {
    const at = (reading: number) =>
      measured({ instrument: { ring: 125 }, zones: [{ at: 0, reading }] }, "convex").radius;
    expect(at(-0.5)).toBe(at(0.5));
  });
});

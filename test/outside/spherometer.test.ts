import { describe, expect, it } from "vitest";
import { radiusFromReadings } from "../../packages/casting-core/src/blank/readings.js";
import type { Curve, JobReadings } from "../../packages/casting-core/src/job/types.js";

function radius(instrument: JobReadings["instrument"], reading: number, curve: Curve = "concave"): number {
  const readings = { instrument, zones: [{ at: 0, reading }] };
  return radiusFromReadings({ units: "mm", blank: { diameter: 600, curve, readings } }).radius;
}

describe("the spherometer", () => {
  it("gives the radius of a school's lab sheet: legs 4.5 cm apart, 0.285 cm deep, 11.98 cm", () => {
    expect(radius({ legs: 45 }, 2.85)).toBeCloseTo(119.846, 3);
  });

  it("gives the radii of two mirrors measured by ruler: 56 cm over 14.5 and 12 cm deep (published worked example)", () => {
    expect(radius({ ring: 560 }, 145)).toBeCloseTo(342.84, 1);
    expect(radius({ ring: 560 }, 120)).toBeCloseTo(386.67, 1);
  });

  it("adds the ball's radius on concave glass and takes it off on convex (Malacara, Optical Shop Testing; value from memory)", () => {
    const balls = { ring: 100, ball: 6.35 };
    expect(radius(balls, 0.6260919)).toBeCloseTo(2000, 2);
    expect(radius(balls, 0.6241066, "convex")).toBeCloseTo(2000, 2);
  });

  it("touches with a ring's outer edge on concave glass and with its inner one on convex (geometry)", () => {
    const ring = { ring: 120, wall: 4 };
    expect(radius(ring, 1)).toBeCloseTo(60 * 30 + 0.5, 9);
    expect(radius(ring, 1, "convex")).toBeCloseTo((56 * 56) / 2 + 0.5, 9);
  });
});

import { describe, expect, it } from "vitest";
import { wearOf } from "../../packages/casting-core/src/layout/quality/wear.js";
import { passOf } from "../../packages/casting-core/src/setup/pass.js";
import type { Removal } from "../../packages/casting-core/src/setup/types.js";

/**
 * At equal turns tool and glass slide past each other at one speed, so that by F. W. Preston's relation (J. Soc. Glass
 * Technology 11, 1927) an even tool without overhang wears each zone as long as it covers it: by the half angle of the arc
 * (law of cosines), and by nothing where it does not come.
 */
function arc(rho: number, offset: number, reach: number): number {
  const cosine = (rho * rho + offset * offset - reach * reach) / (2 * rho * offset);
  return Math.acos(Math.max(-1, Math.min(1, cosine)));
}

/** Mean over the area of the mirror between two radii, by fine midpoints. */
function mean(from: number, to: number, value: (rho: number) => number): number {
  const count = 20_000;
  let [sum, area] = [0, 0];
  for (let n = 0; n < count; n++) {
    const rho = from + ((to - from) * (n + 0.5)) / count;
    sum += rho * value(rho);
    area += rho;
  }
  return sum / area;
}

const HALF = 200;
const blank = { diameter: 2 * HALF, curve: "concave", curveRadius: 3000, sagitta: 6.674 } as const;
/** What is wanted grows with the square of the radius: a shallower curve. */
const removal: Removal = {
  first: "edge",
  zones: Array.from({ length: 25 }, (_, n) => ({ at: (HALF * n) / 24, depth: (300 * n * n) / (24 * 24) })),
  deepest: 300,
  volume: 18.8,
  overTool: 168,
};

describe("a pass over the whole mirror", () => {
  it.each([
    [50, 147],
    [25, 147],
    [30, 100],
    [10, 60],
  ])("is judged with the glass that no piece comes to: offset %i mm, pieces to %i mm", (offset, reach) => {
    const run = { mirror: HALF, offset, stroke: 0, turns: 1 };
    const wear = passOf(blank, { reach, rings: new Float64Array(240).fill(0.5) }, run, removal);
    const worn = (rho: number) => arc(rho, offset, reach);
    const whole = mean(0, HALF, worn);
    const bend = (mean(0, HALF / 3, worn) - mean((2 * HALF) / 3, HALF, worn)) / whole;
    expect(Math.abs(wear.bend / bend - 1)).toBeLessThan(0.01);
    for (const { at, removal: found } of wear.zones)
      if (Math.abs(at - (offset + reach)) > 2) expect(Math.abs(found - worn(at) / whole)).toBeLessThan(0.03);
    // The correlation of both over the mirror's area (statistics).
    const wanted = (rho: number) => (rho * rho) / (HALF * HALF);
    const [a, b] = [whole, mean(0, HALF, wanted)];
    const both = (one: typeof worn, am: number, other: typeof worn, bm: number) =>
      mean(0, HALF, (rho) => (one(rho) - am) * (other(rho) - bm));
    const match = both(worn, a, wanted, b) / Math.sqrt(both(worn, a, worn, a) * both(wanted, b, wanted, b));
    expect(Math.abs(wear.match! - match)).toBeLessThan(0.005);
    // What is wanted has a mean of 1 as well.
    for (const { at, wanted: found } of wear.zones) expect(Math.abs(found! - wanted(at) / b)).toBeLessThan(0.01);
  });
});

describe("zoning", () => {
  it("does not hang on how many positions of a stroke stand for it", () => {
    const coverage = { reach: 47, rings: Float64Array.from({ length: 240 }, (_, n) => 0.4 + 0.3 * Math.cos(n / 6)) };
    const run = { mirror: 125, offset: 50, stroke: 70, turns: 0 };
    const { zoning } = wearOf(coverage, run);
    const many = wearOf(coverage, run, { from: 0.05, to: 0.95, zones: 200, angles: 720, phases: 400 });
    expect(Math.abs(zoning / many.zoning - 1)).toBeLessThan(0.05);
  });
});

import { describe, expect, it } from "vitest";
import { GRAINS, grainNamed } from "../../packages/casting-core/src/grains.js";

const size = (name: string) => grainNamed(name)!.size;

describe("grains against published sizes", () => {
  it("F230 lies in the median window of 50.0 to 56.0 µm (a maker's reference page for FEPA 42-2)", () => {
    const { size: median, spread } = grainNamed("F230")!;
    expect([median - spread!, median + spread!]).toEqual([50, 56]);
  });

  it("F80 is about 180 µm, nearly all of it below 212 µm (a maker's reference page for FEPA 42-1)", () => {
    expect(size("F80")).toBeGreaterThan(175);
    expect(size("F80")).toBeLessThan(190);
  });

  it("macrogrits fall by about the step of the sieve series, the fourth root of 2 (ISO 565, R 40/3)", () => {
    const macro = GRAINS.filter(({ spread }) => spread === undefined).map((grain) => grain.size);
    const steps = macro.slice(1).map((next, n) => macro[n]! / next);
    for (const step of steps) {
      expect(step).toBeGreaterThan(1.1);
      expect(step).toBeLessThan(1.36);
    }
    expect((macro[0]! / macro.at(-1)!) ** (1 / steps.length)).toBeCloseTo(2 ** 0.25, 1);
  });

  it("microgrits and windows do not run into each other (FEPA 42-2; value from memory)", () => {
    const micro = GRAINS.filter(({ spread }) => spread !== undefined);
    for (const [n, grain] of micro.slice(1).entries()) {
      expect(micro[n]!.size - micro[n]!.spread!).toBeGreaterThanOrEqual(grain.size + grain.spread!);
    }
  });

  it("are not the P grades of coated paper: P60 269, P80 201, P100 162, P120 125 µm (FEPA 43-1 as published by makers)", () => {
    for (const [grit, paper] of [
      [60, 269],
      [80, 201],
      [100, 162],
      [120, 125],
    ] as const) {
      expect(size(`F${grit}`)).toBeLessThan(paper);
    }
  });
});

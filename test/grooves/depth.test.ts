import { describe, expect, test } from "vitest";
import { grooveNotes } from "../../packages/casting-core/src/grooves/notes.js";
import { planGrooves } from "../../packages/casting-core/src/grooves/plan.js";
import { lengthOf } from "../../packages/casting-core/src/grooves/polyline.js";
import type { Job } from "../../packages/casting-core/src/job/types.js";
import { pieceKinds } from "../../packages/casting-core/src/pieces/kinds.js";
import { measuredTo } from "../support/grooves.js";
import { exampleJob } from "../support/jobs.js";
import { jittered, layoutOf, regular, toolOf } from "../support/layouts.js";

const layout = jittered(1, 200, 26, 4);
const curved = { ...toolOf(200), curveRadius: 1000, sagitta: 1000 - Math.sqrt(1000 * 1000 - 100 * 100) };

function codes(changes: Partial<Job["grooves"]>, tool = toolOf(200), rimGrowth?: number): string[] {
  const example = exampleJob();
  const job = { ...example, grooves: { ...example.grooves, ...changes } };
  const grooves = planGrooves(job, tool, layout);
  return grooveNotes(job, tool, pieceKinds(job), layout, grooves, rimGrowth).map(({ code }) => code);
}

describe("the channels' floor", () => {
  test.each([
    ["concave", 1],
    ["convex", -1],
    ["flat", 0],
  ] as const)("follows the glass (%s)", (curve, sign) => {
    const job = exampleJob({ blank: { diameter: 300, curve, radius: 1000 } });
    const grooves = planGrooves(job, curve === "flat" ? toolOf(200) : curved, layout);
    for (const { points, z } of grooves.edges) {
      expect(z.length).toBe(points.length);
      points.forEach(([x, y], i) => {
        const above = Math.sqrt(1e6 - x * x - y * y) - Math.sqrt(1e6 - 1e4);
        expect(z[i]!).toBeCloseTo(sign * above - 2.5, 2);
      });
    }
  });
});

describe("rounded ways", () => {
  test("keep the clearance and are a little shorter than the cuts", () => {
    const job = exampleJob();
    const grooves = planGrooves(job, toolOf(200), layout);
    const far = layout.pieces.map(measuredTo);
    expect(grooves.toolpath!.length).toBe(grooves.cuts.length);
    const total = (ways: [number, number][][]): number => ways.reduce((sum, way) => sum + lengthOf(way), 0);
    expect(total(grooves.toolpath!)).toBeLessThan(total(grooves.cuts) - 1);
    expect(total(grooves.toolpath!)).toBeGreaterThan(0.95 * total(grooves.cuts));
    grooves.toolpath!.forEach((way, i) => {
      expect(way[0]).toEqual(grooves.cuts[i]![0]);
      expect(way.at(-1)).toEqual(grooves.cuts[i]!.at(-1));
      for (const point of way) {
        const nearest = Math.min(...far.map((to) => to(point)));
        expect(nearest).toBeGreaterThan(1.5 + 0.5 - 0.011);
      }
    });
  });
});

describe("notes", () => {
  test("say nothing about a sound job", () => {
    expect(codes({ cutter: 2 })).toEqual([]);
  });

  test.each([
    [{ cutter: 40 }, "no-channels"],
    [{ cutter: 4.5 }, "gap-too-small"],
    [{ depth: 6 }, "groove-as-deep-as-piece"],
    [{ depth: 3.5 }, "pieces-held-shallow"],
    [{ cutter: 2, "rim-loop": true }, "rim-loop-wall"],
  ] as const)("%j: %s", (changes, code) => {
    expect(codes(changes)).toContain(code);
  });

  test("depth of exactly half the thinnest piece is sound", () => {
    expect(codes({ cutter: 2, depth: 3 })).toEqual([]);
  });

  test("say what changes at the floor of a curved tool, and how the cast's growth shifts the map", () => {
    expect(codes({ cutter: 2 }, curved, 0.2)).toEqual(["channel-floor", "map-growth"]);
  });

  test("are one sentence each, without NaN", () => {
    const job = exampleJob({ units: "in" });
    const grooves = planGrooves(job, curved, layout);
    for (const { text } of grooveNotes(job, curved, pieceKinds(job), layout, grooves, 0.2)) {
      expect(text).toMatch(/^[A-Z].*[^.]\.$/);
      expect(text).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  test("a layout without pieces has none", () => {
    const empty = layoutOf([], 4);
    const job = exampleJob();
    expect(grooveNotes(job, toolOf(200), [], empty, planGrooves(job, toolOf(200), empty))).toEqual([]);
  });

  test("a blind channel is said", () => {
    // A third hexagon so near to one of two that only the channel between those two can be cut.
    const shapes = [regular(6, 10, -12, 0, 0), regular(6, 10, 12, 0, 0), regular(6, 10, 0, 17.5, Math.PI / 6)];
    const near = layoutOf(shapes, 0.1);
    const job = exampleJob();
    const grooves = planGrooves(job, toolOf(100), near);
    const found = grooveNotes(job, toolOf(100), pieceKinds(job), near, grooves).map(({ code }) => code);
    expect(found).toContain("blind-channels");
  });
});

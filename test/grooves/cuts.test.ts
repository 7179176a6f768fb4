import { describe, expect, test } from "vitest";
import { planGrooves } from "../../packages/casting-core/src/grooves/plan.js";
import { lengthOf } from "../../packages/casting-core/src/grooves/polyline.js";
import type { Grooves } from "../../packages/casting-core/src/grooves/types.js";
import { cutParts, fewestCuts, oddJunctions, stretches } from "../support/grooves.js";
import { exampleJob } from "../support/jobs.js";
import { jittered, toolOf } from "../support/layouts.js";

const layout = jittered(1, 220, 26, 4);

function grooved(changes: Partial<ReturnType<typeof exampleJob>["grooves"]>): Grooves {
  const job = exampleJob();
  return planGrooves({ ...job, grooves: { ...job.grooves, ...changes } }, toolOf(220), layout);
}

function cutLines(grooves: Grooves): Map<string, number> {
  return stretches(grooves.edges.filter((edge) => edge.cut).map((edge) => edge.points));
}

describe("fewest cuts", () => {
  test.each(["all", "mains"] as const)("go along each cut edge once, in the fewest ways (%s)", (pattern) => {
    const grooves = grooved({ pattern });
    expect(stretches(grooves.cuts)).toEqual(cutLines(grooves));
    expect(grooves.cuts.length).toBe(fewestCuts(grooves));
    expect(grooves.totals.retraced).toBe(0);
  });

  test("are one less than the pieces where every channel fits", () => {
    const grooves = grooved({ cutter: 1 });
    expect(grooves.totals.cuts).toBe(layout.pieces.length - 1);
  });
});

describe("one cut", () => {
  test("covers every cut edge, and what it goes along again is counted", () => {
    const grooves = grooved({ order: "one" });
    expect(grooves.cuts.length).toBe(cutParts(grooves).length);
    const lines = cutLines(grooves);
    const times = stretches(grooves.cuts);
    expect([...times.keys()].sort()).toEqual([...lines.keys()].sort());
    expect(Math.max(...times.values())).toBeLessThanOrEqual(2);
    const whole = grooves.cuts.reduce((sum, way) => sum + lengthOf(way), 0);
    expect(whole - grooves.totals.length).toBeCloseTo(grooves.totals.retraced, 6);
  });
});

describe("the wider pattern", () => {
  test("touches every piece, stays connected, ends blind nowhere, and has fewer channels", () => {
    const all = grooved({ cutter: 1, clearance: 0.2 });
    const mains = grooved({ cutter: 1, clearance: 0.2, pattern: "mains" });
    expect(cutParts(mains).length).toBe(1);
    expect(mains.totals.length).toBeLessThan(0.85 * all.totals.length);
    const degree = mains.nodes.map(() => 0);
    for (const { a, b, cut } of mains.edges) if (cut) for (const node of [a, b]) degree[node]!++;
    for (const node of oddJunctions(mains)) {
      if (degree[node] === 1) expect(Math.hypot(...mains.nodes[node]!)).toBeCloseTo(110, 2);
    }
    const cut = mains.edges.filter((edge) => edge.cut);
    for (const piece of layout.pieces) {
      const touched = cut.some((edge) => edge.points.some(([x, y]) => Math.hypot(x - piece.x, y - piece.y) < 26));
      expect(touched).toBe(true);
    }
  });
});

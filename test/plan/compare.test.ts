import { expect, test } from "vitest";
import { blankOf, toolOf } from "../../packages/casting-core/src/blank/blank.js";
import { planGrooves } from "../../packages/casting-core/src/grooves/plan.js";
import { layOut } from "../../packages/casting-core/src/layout/layout.js";
import { pieceKinds } from "../../packages/casting-core/src/pieces/kinds.js";
import { comparePlans } from "../../packages/casting-core/src/plan/compare.js";
import type { Plan } from "../../packages/casting-core/src/plan/types.js";
import { planPour } from "../../packages/casting-core/src/pour/pour.js";
import { exampleJob } from "../support/jobs.js";

function planned(diameter: number): Plan {
  const job = exampleJob({ tool: { diameter, rim: 3 } });
  const blank = blankOf(job);
  const tool = toolOf(job, blank);
  const kinds = pieceKinds(job);
  const layout = layOut(job, tool, kinds);
  const grooves = planGrooves(job, tool, layout);
  const pour = planPour(job, blank, tool, kinds, layout);
  return { job, blank, tool, layout, grooves, pour } as Plan;
}

test("a smaller tool has less of everything, each figure the plan's own", () => {
  const before = planned(160);
  const after = planned(110);
  const rows = comparePlans(before, after);
  const row = (what: string): { before: number; after: number } => rows.find((found) => found.what === what)!;
  expect(row("pieces")).toMatchObject({ before: before.layout.pieces.length, after: after.layout.pieces.length });
  expect(row("channels").after).toBe(after.grooves.totals.length);
  expect(row("cast volume").before).toBe(before.pour.castVolume);
  for (const { what, before: was, after: is } of rows) {
    expect(Number.isFinite(was) && Number.isFinite(is)).toBe(true);
    if (!["coverage", "batches"].includes(what)) expect(is).toBeLessThan(was);
  }
});

import { expect, test } from "vitest";
import { leaveUncut, uncutEdges } from "../../packages/casting-core/src/grooves/cuts/uncut.js";
import { planGrooves } from "../../packages/casting-core/src/grooves/plan.js";
import { exampleJob } from "../support/jobs.js";
import { jittered, toolOf } from "../support/layouts.js";

const layout = jittered(1, 150, 26, 4);

function uncut(grooves: Parameters<typeof exampleJob>[0] = {}) {
  const job = exampleJob(grooves);
  const { edges, totals } = planGrooves(job, toolOf(150), layout);
  const counts = uncutEdges(edges, job);
  expect(counts.rim + counts.narrow + counts.chosen).toBe(totals.uncut);
  return { ...counts, words: leaveUncut(edges, job), edges };
}

test("tells what is too narrow from what the job leaves out", () => {
  const { grooves } = exampleJob();
  const all = uncut({ grooves: { ...grooves, "rim-loop": true } });
  const withoutLoop = uncut({ grooves: { ...grooves, "rim-loop": false } });
  const mains = uncut({ grooves: { ...grooves, "rim-loop": false, pattern: "mains" } });
  expect(all.chosen).toBe(0);
  const loop = all.edges.filter(({ between }) => between === "rim");
  expect(all.rim).toBe(0);
  expect(withoutLoop.rim).toBe(loop.length);
  expect(withoutLoop.chosen).toBe(0);
  expect(withoutLoop.narrow).toBe(all.edges.filter(({ between, cut }) => between !== "rim" && !cut).length);
  expect(mains.chosen).toBeGreaterThan(0);
  expect(mains.narrow).toBe(withoutLoop.narrow);
  expect(mains.words).toContain(`${mains.chosen} left out by choice`);
  expect(withoutLoop.words).not.toContain("by choice");
});

test("says nothing where all is cut, and never that a way left out is too narrow", () => {
  expect(leaveUncut([], exampleJob())).toBeUndefined();
  const { narrow, rim, words } = uncut();
  expect(rim).toBeGreaterThan(0);
  expect(words?.includes("too narrow")).toBe(narrow > 0);
});

// A plan to print, and its pages read back as they are drawn.
import { expect } from "vitest";
import { openDocument } from "../../packages/casting-cli/src/pdf/document.js";
import type { Press } from "../../packages/casting-cli/src/pdf/page.js";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";
import type { Plan } from "../../packages/casting-core/src/plan/types.js";
import { type DrawnPage, pagesOf } from "./pdf.js";

export const plan = makePlan(
  readJob(
    "title: Größe 日本\nblank: {diameter: 360, radius: 3000}\ntool: {diameter: 300}\npieces: {shape: hexagon, across: 30, thickness: 5, density: 2.35}\nlayout: {count: 4}\n",
  ),
);
/** The plan on another paper, with what was measured of an earlier print. */
export const on = (paper: string, measured?: { x: number; y: number }): Plan => ({
  ...plan,
  job: { ...plan.job, print: { ...plan.job.print, paper, ...(measured ? { measured } : {}) } },
});

/** The pages that `act` draws. */
export async function drawn(
  act: (press: Press) => void,
  correction?: Press["correction"],
  of = plan,
): Promise<DrawnPage[]> {
  const { pdf, bytes } = await openDocument("");
  act({ pdf, plan: of, count: 7, correction });
  pdf.end();
  return pagesOf(await bytes);
}

export const near = (points: readonly Point[]) => points.map(([x, y]) => [expect.closeTo(x, 4), expect.closeTo(y, 4)]);

export const words = (page: DrawnPage) => page.items.flatMap(({ text }) => text ?? []);
export const paths = (page: DrawnPage) => page.items.filter(({ kind, clips }) => kind === "path" && !clips);

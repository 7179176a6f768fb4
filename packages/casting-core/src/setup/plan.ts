import type { Blank, Tool } from "../blank/types.js";
import { impossible } from "../errors.js";
import { grainNamed } from "../grains.js";
import type { Job } from "../job/types.js";
import { liftsAt, loadPressure } from "../layout/pressure.js";
import type { Layout } from "../layout/types.js";
import { hardCoverage, runOf } from "../layout/wear.js";
import type { PieceKind } from "../pieces/types.js";
import type { Pour } from "../pour/types.js";
import { atLeast, atMost } from "../units/bound-text.js";
import { lengthText } from "../units/length-text.js";
import { driveOf, ladderOf, loadsOf, speedsOf } from "./first-pass.js";
import { bevelOf, gradesFrom } from "./grades.js";
import { closestOf, passOf, sweepOf } from "./pass.js";
import { removalOf } from "./removal.js";
import { retainerOf } from "./retainer.js";
import { sizesOf } from "./sizes.js";
import { timeTo } from "./time.js";
import type { Setup, SweepRow } from "./types.js";

/**
 * The first pass of `job`: where the tool runs, how hard it presses, what it does to the curve, which grains follow, and
 * what holds the blank. Whether it can run at all is told by setupFault.
 */
export function planSetup(
  job: Job,
  blank: Blank,
  tool: Tool,
  kinds: readonly PieceKind[],
  layout: Layout,
  pour: Pour,
): Setup {
  const run = runOf(job);
  const half = blank.diameter / 2;
  const reach = tool.diameter / 2;
  const farthest = run.offset + run.stroke / 2;
  const overhang = farthest + reach - half;
  const reachesCentre = run.offset - run.stroke / 2 < reach;
  const edgePressure = loadPressure(half, reach, farthest).edge;
  const removal = removalOf(job, blank, tool);
  const grains = gradesFrom(job.setup);
  const loads = loadsOf(job, tool, kinds, layout, pour, edgePressure);
  const speeds = speedsOf(job);
  const bevel = bevelOf(job, removal, grains);
  const coverage = hardCoverage(kinds, layout.pieces);
  const wear = passOf(blank, coverage, run, removal);
  const sweep = sweepOf(blank, tool, coverage, layout, run, removal, wear);
  // A run that a set-up would be refused for is compared, but never recommended.
  const closest = closestOf(sweep.filter((row) => !runFault(job, row)));
  const time = timeTo(job, blank, wear);
  const grain = grainNamed(job.setup.grain)!;
  const mismatch = pour.fit.mismatch.most;
  return {
    offset: run.offset,
    stroke: run.stroke,
    overhang,
    edgePressure,
    liftsAt: liftsAt(half, reach),
    reachesCentre,
    reachesEdge: overhang >= 0,
    loads,
    speeds,
    drive: driveOf(tool, pour),
    ladder: ladderOf(loads, speeds),
    wear,
    sweep,
    ...(closest ? { closest } : {}),
    ...(removal ? { removal } : {}),
    ...(time ? { time } : {}),
    bevel,
    grains,
    grain: { name: grain.name, size: grain.size, mismatch, bridges: Math.abs(mismatch) <= grain.size },
    sizes: sizesOf(job, blank, tool, kinds, layout, pour),
    retainer: retainerOf(job, bevel),
  };
}

/** What the arithmetic of units may be off, mm. */
const HAIR = 1e-6;

/** Throws `impossible` for a set-up that cannot run, see setupFault. */
export function mustRun(job: Pick<Job, "blank" | "tool" | "setup" | "units">): void {
  const fault = setupFault(job);
  if (fault) throw impossible(["setup", fault.key], fault.text);
}

/** The same of `job` with another offset and stroke. */
export function runFault(job: Job, { offset, stroke }: Pick<SweepRow, "offset" | "stroke">) {
  return setupFault({ ...job, setup: { ...job.setup, offset, stroke } });
}

/** What keeps a set-up from running, as the key to change and one sentence; nothing where it can. */
export function setupFault(
  job: Pick<Job, "blank" | "tool" | "setup" | "units">,
): { key: string; text: string } | undefined {
  const { setup, tool, blank, units } = job;
  const { offset, stroke } = runOf(job);
  const key = setup.offset === "tangent" ? "stroke" : "offset";
  const overhang = offset + stroke / 2 + tool.diameter / 2 - blank.diameter / 2;
  if (overhang >= tool.diameter / 2 - HAIR) {
    const lifts = atMost(liftsAt(blank.diameter / 2, tool.diameter / 2), units);
    const text = `the tool hangs over by ${atLeast(overhang, units)}, half of its ${lengthText(tool.diameter, units)} or more, and falls off; write a smaller offset or stroke, for an overhang well below ${lifts}, from where on its far side lifts`;
    return { key, text };
  }
  if (offset === 0 && stroke === 0) {
    const text =
      "a tool on the mirror's own axis without a stroke does not cut there and prints rings; write a stroke, or an offset";
    return { key: "stroke", text };
  }
  if (offset - stroke / 2 >= tool.diameter / 2) {
    const text = `a tool of ${lengthText(tool.diameter, units)} whose axis stays ${atLeast(offset - stroke / 2, units)} from the mirror's never reaches the centre and leaves a button; write ${reachingBoth(job, stroke) ?? "a longer stroke, or a smaller offset"}`;
    return { key, text };
  }
  return undefined;
}

/**
 * What brings a tool to the mirror's centre and to its edge where its stroke is too short for both, whatever the offset:
 * half the blank less the tool; nothing where an offset does.
 */
export function reachingBoth(
  { blank, tool, units }: Pick<Job, "blank" | "tool" | "units">,
  stroke: number,
): string | undefined {
  const half = blank.diameter / 2;
  if (stroke > half - tool.diameter) return undefined;
  return `a stroke of more than ${atLeast(half - tool.diameter, units)} with an offset of ${lengthText(half / 2, units)}, which comes to the centre and to the edge`;
}

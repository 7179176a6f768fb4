import { blankOf, toolOf } from "../blank/blank.js";
import { blankNotes } from "../blank/notes.js";
import { grooveNotes } from "../grooves/notes.js";
import { patternTotals, planGrooves } from "../grooves/plan.js";
import { jobNotes } from "../job/notes.js";
import type { Job } from "../job/types.js";
import { layOut } from "../layout/layout.js";
import { layoutNotes } from "../layout/notes/notes.js";
import type { Layout } from "../layout/types.js";
import type { Note } from "../notes.js";
import { pourNotes } from "../pour/notes.js";
import { planPour } from "../pour/pour.js";
import { setupNotes } from "../setup/notes.js";
import { planSetup } from "../setup/plan.js";
import { VERSION } from "../version.js";
import { groundsOf } from "./grounds.js";
import type { Plan } from "./types.js";

/** What working out a plan takes besides the job. */
export interface MakeOptions {
  /** Called now and then with the stage at work and the share of it done, 0 to 1. */
  progress?: (stage: Part, share: number) => void;
}

/** A stage of the work, by its key in the plan. */
export type Part = "blank" | "layout" | "grooves" | "pour" | "setup";

/** The plan as far as it was asked for. */
export type PartialPlan = Pick<Plan, "format" | "generator" | "job" | "notes"> & Partial<Plan>;

/**
 * Everything worked out for `job`, stage by stage. The same job gives the same plan on every machine.
 *
 * @throws CastingError `impossible` where the job is valid but cannot be done
 */
export function makePlan(job: Job, options: MakeOptions = {}): Plan {
  return work(job, () => true, options) as Plan;
}

/**
 * One part of the plan of `job`, with no more worked out than it takes: `blank` brings the tool along.
 *
 * @throws CastingError as makePlan
 */
export function makePart(job: Job, part: Part, options: MakeOptions = {}): PartialPlan {
  return work(job, (stage) => stage === part, options);
}

/** Everything else that makePlan works out for `job`, round a layout that is already there. Throws as makePlan does. */
export function planAround(job: Job, layout: Layout): Plan {
  return work(job, () => true, {}, layout) as Plan;
}

function work(job: Job, wanted: (part: Part) => boolean, options: MakeOptions, layout?: Layout): PartialPlan {
  const notes = jobNotes(job);
  const head = { format: "casting-plan/1", generator: { name: "casting", version: VERSION }, job } as const;
  return { ...head, ...parts(job, wanted, options, notes, layout), notes };
}

/** The stages in order, as far as they are wanted; what they have to say is added to `notes`. */
function parts(
  job: Job,
  wanted: (part: Part) => boolean,
  { progress }: MakeOptions,
  notes: Note[],
  laid?: Layout,
): Partial<Plan> {
  const plan: Partial<Plan> = {};
  if (!(["layout", "grooves", "pour", "setup"] as const).some(wanted)) {
    const blank = blankOf(job);
    notes.push(...blankNotes(blank, job.units));
    return { blank, tool: toolOf(job, blank) };
  }
  const { blank, tool, kinds } = groundsOf(job, {
    pour: (["grooves", "pour", "setup"] as const).some(wanted),
    // Asked for by itself, a set-up must run even where the job leaves it to the usual one.
    run: ({ setup }) => wanted("setup") && (setup.given || !wanted("pour")),
  });
  if (wanted("blank")) {
    Object.assign(plan, { blank, tool });
    notes.push(...blankNotes(blank, job.units));
  }
  const layout = laid ?? layOut(job, tool, kinds, progress ? { progress: (share) => progress("layout", share) } : {});
  if (wanted("layout")) {
    plan.layout = layout;
    notes.push(...layoutNotes(job, blank, tool, kinds, layout));
  }
  if (!(["grooves", "pour", "setup"] as const).some(wanted)) return plan;

  const pour = planPour(job, blank, tool, kinds, layout);
  if (wanted("grooves")) {
    progress?.("grooves", 0);
    plan.grooves = planGrooves(job, tool, layout);
    // Asked for by themselves, the channels come beside the other pattern, to choose by.
    if (!wanted("pour")) plan.grooves.patterns = patternTotals(job, tool, layout, plan.grooves.totals);
    notes.push(...grooveNotes(job, tool, kinds, layout, plan.grooves, pour.fit.rimGrowth.most));
  }
  if (wanted("pour")) {
    plan.pour = pour;
    notes.push(...pourNotes(job, blank, tool, kinds, pour));
  }
  if (wanted("setup")) {
    plan.setup = planSetup(job, blank, tool, kinds, layout, pour);
    notes.push(...setupNotes(job, blank, tool, plan.setup, kinds, layout.pieces));
  }
  return plan;
}

import { makePart, type Part, type PartialPlan, planJson } from "casting-core";
import type { JobOptions } from "../commands.js";
import { planRows, table } from "../report/figures.js";
import { printNotes } from "../report/notes.js";
import { progressLine } from "../report/progress.js";
import type { Terminal } from "../terminal.js";
import { loadJob } from "./job.js";

/** A command that works out one part of a job's plan and prints it. Returns the exit code. */
export function part(name: Part, file: string, options: JobOptions, terminal: Terminal): number {
  const { job, about } = loadJob(file, options);
  const progress = progressLine(terminal, options.quiet);
  let plan: PartialPlan;
  try {
    plan = about(() => makePart(job, name, progress.at ? { progress: progress.at } : {}));
  } finally {
    progress.end();
  }
  if (!options.quiet) printNotes(plan.notes, terminal);
  terminal.out(options.json ? planJson(plan) : table(planRows(plan)));
  return 0;
}

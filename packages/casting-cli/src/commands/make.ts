import { countText, makePlan, type Plan, planJson } from "casting-core";
import type { MakeOptions } from "../commands.js";
import { keptOf } from "../files/manifest.js";
import { defaultOut, type OutFile, writeSet } from "../files/write.js";
import { chosenOutputs, drawAll, type Output } from "../outputs.js";
import { planRows, table } from "../report/figures.js";
import { printNotes } from "../report/notes.js";
import { progressLine } from "../report/progress.js";
import { safe, type Terminal } from "../terminal.js";
import { usage } from "../usage.js";
import { loadJob } from "./job.js";

/** `casting make`: the whole plan of a job, verified, and all its files. Returns the exit code. */
export async function make(file: string, options: MakeOptions, terminal: Terminal): Promise<number> {
  const out = outFolder(file, options);
  const outputs = await chosenOutputs(options.only);
  const { job, about } = loadJob(file, options);
  const progress = progressLine(terminal, options.quiet);
  let plan: Plan;
  try {
    plan = about(() => makePlan(job, progress.at ? { progress: progress.at } : {}));
  } finally {
    progress.end();
  }
  if (!options.quiet) printNotes(plan.notes, terminal);
  const files = await drawn(plan, outputs, options).catch((error: unknown) =>
    about(() => {
      throw error;
    }),
  );
  if (!options.dryRun && files.length === 0) {
    throw usage(
      `--only ${options.only?.join(",")} leaves nothing to write: this job has no such file; leave --only out`,
    );
  }
  if (!options.dryRun) writeSet(out, files, { force: options.force === true, keep: kept(out, plan, options) });
  if (options.json) terminal.out(planJson(plan));
  else if (!options.quiet) terminal.out(summary(plan, out, files, options));
  return 0;
}

/** All files of the plan; with `--dry-run` none, but what would keep them from being drawn is found out. */
async function drawn(plan: Plan, outputs: readonly Output[], { dryRun, force }: MakeOptions): Promise<OutFile[]> {
  if (!dryRun) return await drawAll(plan, outputs, force === true);
  if (outputs.some(({ kind }) => kind === "pdf")) (await import("../pdf/templates.js")).tilingsOf(plan, force === true);
  return [];
}

function outFolder(file: string, { out, dryRun }: MakeOptions): string {
  if (out !== undefined && out.trim() !== "") return out;
  if (out !== undefined) throw usage("--out is empty; name the folder to write into");
  if (file !== "-") return defaultOut(file);
  if (dryRun) return "";
  throw usage("a job from standard input has no name to call the folder by; give --out DIR");
}

/** With `--only`, the other files of the earlier set stay where they belong to the very same plan. */
function kept(out: string, plan: Plan, { only, force }: MakeOptions): string[] {
  return only && force ? keptOf(out, new TextEncoder().encode(planJson(plan))) : [];
}

function summary(plan: Plan, out: string, files: readonly OutFile[], { dryRun }: MakeOptions): string {
  const title = plan.job.title === "" ? "" : `${safe(plan.job.title).slice(0, 100)}\n\n`;
  const end = dryRun ? "Nothing was written (--dry-run)." : written(files, out);
  return `${title}${table(planRows(plan))}\n${end}\n`;
}

/** What was written, and what to begin with. */
function written(files: readonly OutFile[], out: string): string {
  const has = (name: string, words: string) => (files.some((file) => file.name === name) ? [words] : []);
  const next = [
    ...has("job-sheet.html", "start with job-sheet.html"),
    ...has("templates.pdf", "print templates.pdf at 100 %"),
  ].join(", ");
  const be = files.length === 1 ? "its manifest are" : "their manifest are";
  return `${countText(files.length, "file")} and ${be} in ${safe(out)}${next === "" ? "" : `: ${next}`}.`;
}

import { countText, makePlan, type Plan, planJson } from "casting-core";
import type { MakeOptions } from "../commands.js";
import { keptOf } from "../files/manifest.js";
import { defaultOut, type OutFile, writeSet } from "../files/write.js";
import { chosenOutputs, drawAll, lacking, type Output } from "../outputs.js";
import { planRows, table } from "../report/figures.js";
import { printNotes } from "../report/notes.js";
import { progressLine } from "../report/progress.js";
import { safe, shortened, type Terminal } from "../terminal.js";
import { usage } from "../usage.js";
import { loadJob } from "./job.js";

/** A title no longer than a line bears. */
const TITLE = 100;

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
  const say = (level: "info" | "warning", text: string) => {
    if (!options.quiet) printNotes([{ code: "files", level, text }], terminal);
  };
  const absent = leftOut(plan, outputs, options);
  if (!options.quiet) printNotes(plan.notes, terminal);
  for (const text of absent) say("info", text);
  const files = await drawn(plan, outputs, options).catch((error: unknown) =>
    about(() => {
      throw error;
    }),
  );
  if (!options.dryRun) {
    const gone = writeSet(out, files, { force: options.force === true, keep: kept(out, plan, options) });
    if (gone.length > 0) say("warning", removed(gone));
  }
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

/**
 * What is said of files that were asked for by name and that this job does not have.
 *
 * @throws UsageError where nothing else was asked for
 */
function leftOut(plan: Plan, outputs: readonly Output[], { only }: MakeOptions): string[] {
  const missing = lacking(plan, outputs);
  if (missing.length === outputs.length) {
    const needs = missing.map(({ name, needs }) => `${name} needs ${needs}`).join(", ");
    throw usage(`--only ${only?.join(",")} leaves nothing to write: ${needs}; write it there, or leave --only out`);
  }
  const named = missing.filter(({ name }) => only?.includes(name));
  return named.map(({ name, needs }) => `${name} is left out: it needs ${needs}.`);
}

/** What became of the earlier set's files that are neither written again nor of this plan. */
function removed(names: readonly string[]): string {
  const are = names.length === 1 ? "is removed: it is" : "are removed: they are";
  return `${names.join(", ")} of the earlier set ${are} not known to be of this plan.`;
}

/** With `--only`, the other files of the earlier set stay where they belong to the very same plan. */
function kept(out: string, plan: Plan, { only, force }: MakeOptions): string[] {
  return only && force ? keptOf(out, new TextEncoder().encode(planJson(plan))) : [];
}

function summary(plan: Plan, out: string, files: readonly OutFile[], { dryRun }: MakeOptions): string {
  const title = plan.job.title === "" ? "" : `${shortened(safe(plan.job.title), TITLE)}\n\n`;
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

import { dirname, extname, join } from "node:path";
import {
  CastingError,
  type Comparison,
  closeLengths,
  comparePlans,
  fineLength,
  fixed,
  type Job,
  makePlan,
  massText,
  type Note,
  parseLength,
  planJson,
  readJob,
  scaleJob,
  scaleNotes,
  setupFault,
  shareText,
  type Units,
  volumeText,
} from "casting-core";
import { jobName } from "../files/read.js";
import { writeNew } from "../files/write-one.js";
import { JobError } from "../report/faults.js";
import { printNotes } from "../report/notes.js";
import { safe, type Terminal } from "../terminal.js";
import { loadJob } from "./job.js";

interface ScaleOptions {
  tool: string;
  out?: string;
  force?: boolean;
  json?: boolean;
  quiet?: boolean;
}

/** `casting scale`: the same job for another tool, written beside it, and what changes. */
export function scale(file: string, options: ScaleOptions, terminal: Terminal): number {
  const { text, job, about } = loadJob(file, {});
  const scaled = about(() => scaleJob(text, options.tool));
  const other = asOption(() => readJob(scaled));
  const plan = asOption(() => makePlan(unhurried(other)));
  const rows = comparePlans(
    about(() => makePlan(unhurried(job))),
    plan,
  );
  const out =
    options.out ??
    join(file === "-" ? "." : dirname(file), `${nameOf(file)}-${sizeName(options.tool, job.units)}${ending(file)}`);
  writeNew(out, scaled, options.force === true);
  if (!options.quiet) printNotes([...scaleNotes(job, other), ...warningsOf(other, plan.notes)], terminal);
  if (options.json) terminal.out(planJson({ file: out, rows }));
  else if (!options.quiet) terminal.out(`${compared(rows, job.units)}\n${safe(out)} is written.\n`);
  return 0;
}

/** The job with its set-up noted, not refused: the size is compared first, the first pass comes later. */
function unhurried(job: Job): Job {
  return { ...job, setup: { ...job.setup, given: false } };
}

/** What to look at; the job's own set-up, where the new tool cannot run with it, is one that make refuses. */
function warningsOf(job: Job, notes: readonly Note[]): Note[] {
  const warnings = notes.filter(({ level }) => level === "warning");
  const fault = job.setup.given ? setupFault(job) : undefined;
  if (!fault) return warnings;
  const text = `The job's set-up does not fit this tool, and casting make refuses the new job until it does (setup.${fault.key}): ${fault.text}.`;
  return [
    ...warnings.filter(({ code }) => code !== "setup-cannot-run"),
    { code: "setup-cannot-run", level: "warning", text },
  ];
}

/** A fault of the scaled job comes from the size asked for. */
function asOption<T>(act: () => T): T {
  try {
    return act();
  } catch (error) {
    if (!(error instanceof CastingError) || error instanceof JobError) throw error;
    throw new CastingError(
      error.kind,
      error.faults.map(({ path, text }) => ({ path: [], text: `--tool (${path.join(".")}): ${text}` })),
    );
  }
}

/** A job in JSON stays one, which its name says. */
function ending(file: string): string {
  return extname(file).toLowerCase() === ".json" ? ".json" : ".yaml";
}

function nameOf(file: string): string {
  return file === "-" ? "job" : jobName(file);
}

/**
 * A length as a part of a file name, the same however it was written: `200mm`, or `7.5in` where it was in inches or feet.
 * Six decimals tell 64ths of an inch apart.
 */
function sizeName(text: string, units: Units): string {
  const bare = parseLength(text, "mm") !== parseLength(text, "in");
  // Every metric unit has an m in it, and no other has.
  const unit = bare ? units : /m/i.test(text) ? "mm" : "in";
  const mm = parseLength(text, units);
  return `${Number((unit === "in" ? mm / 25.4 : mm).toFixed(6))}${unit}`;
}

function compared(rows: readonly Comparison[], units: Units): string {
  const texts = rows.map((row) => [row.what, ...figures(row, units)]);
  const width = (column: number) => Math.max(...texts.map((row) => row[column]!.length));
  return texts
    .map(([what, a, b]) => `${what!.padEnd(width(0))}  ${a!.padStart(width(1))}  ->  ${b!.padStart(width(2))}\n`)
    .join("");
}

function figures({ what, unit, before, after }: Comparison, units: Units): string[] {
  const values = [before, after];
  // Told as finely as every report tells it: in 64ths of an inch two of them look alike.
  if (what.startsWith("sagitta")) return values.map((value) => fineLength(value, units));
  if (unit === "mm") return closeLengths(values, units);
  const larger = Math.max(before, after);
  if (unit === "mL") return values.map((value) => volumeText(value, units, larger));
  if (unit === "kg") return values.map((value) => massText(value, units, larger));
  return values.map((value) => (unit === "share" ? shareText(value) : fixed(value, 0)));
}

import type { z } from "zod";
import { CastingError, type Fault } from "../errors.js";
import { kept } from "../units/digits.js";
import { ruleFaults } from "./rules.js";
import { jobSchema } from "./schema.js";
import { type JobTree, readTree } from "./text.js";
import type { Raw } from "./tree.js";
import type { Job, Units } from "./types.js";

/** What takes the place of the job's own values. */
export interface ReadOptions {
  seed?: number;
  paper?: string;
}

/** A job as the schema reads it, before what follows from other keys is filled in. */
type WrittenJob = z.output<ReturnType<typeof jobSchema>>;

/**
 * The job that `text` (YAML 1.2 or JSON) says: every figure in mm, mL, kg and plain numbers, every default filled in.
 * Throws one `invalid` error with every fault found, each with key, line and column.
 */
export function readJob(text: string, options: ReadOptions = {}): Job {
  const { raw: tree, faults: unread, ...where } = readTree(text);
  if (options.seed !== undefined) tree["layout"] = withKey(tree["layout"], "seed", String(options.seed));
  if (options.paper !== undefined) tree["print"] = withKey(tree["print"], "paper", options.paper);
  const units: Units = tree["units"] === "in" ? "in" : "mm";
  const read = jobSchema(units).safeParse(tree);
  const wrong = read.success ? ruleFaults(filled(read.data, tree)) : faultsOf(read.error.issues);
  const said = [...unread, ...wrong.filter((fault) => !unread.some(({ path }) => isAbove(path, fault.path)))];
  const faults = said.filter((fault) => !isMistyped(fault, said));
  if (faults.length > 0 || !read.success) throw new CastingError("invalid", placed(faults, where));
  return asWritten(filled(read.data, tree));
}

/** `value` with every figure as a plan writes it: a plan read again is worked out from the very same job. */
function asWritten<T>(value: T): T {
  if (typeof value === "number") return kept(value) as T;
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return value.map(asWritten) as T;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, asWritten(item)])) as T;
}

/**
 * A fault found after reading, with the line and column of its key in the job's text, counted from 1, or of the nearest
 * thing above it; as it is where the text is no job.
 */
export function placeInJob(text: string, fault: Fault): Fault {
  try {
    return placed([fault], readTree(text))[0] ?? fault;
  } catch {
    return fault;
  }
}

function withKey(map: Raw | undefined, key: string, value: string): Raw {
  if (map !== undefined && (typeof map !== "object" || Array.isArray(map))) return map;
  return Object.assign(Object.create(null), map, { [key]: value });
}

/** Whether a key is missing only because another fault beside it says that it was mistyped. */
function isMistyped({ path, text }: Fault, faults: readonly Fault[]): boolean {
  return (
    text.startsWith("it is missing") &&
    faults.some(
      (other) =>
        other.path.length === path.length &&
        isAbove(path.slice(0, -1), other.path) &&
        other.text.endsWith(`did you mean "${path.at(-1)}"?`),
    )
  );
}

/** Whether `above` is `path` itself or holds it. */
function isAbove(above: Fault["path"], path: Fault["path"]): boolean {
  return above.every((part, index) => part === path[index]);
}

/** One fault a sentence; a record's unknown keys come as one issue with a sentence each (see `record`). */
function faultsOf(issues: readonly z.core.$ZodIssue[]): Fault[] {
  return issues.flatMap(({ path, message }): Fault[] => {
    const keys = path.filter((part) => typeof part !== "symbol");
    if (!message.includes("\u0000")) return [{ path: keys, text: message }];
    return message.split("\u0001").map((part) => {
      const [key = "", text = ""] = part.split("\u0000");
      return { path: [...keys, key], text };
    });
  });
}

function placed(faults: readonly Fault[], { place, written }: Pick<JobTree, "place" | "written">): Fault[] {
  const found = faults.map((fault) => ({ ...place(fault.path), ...fault, path: written(fault.path) }));
  return found.sort((a, b) => a.line - b.line || a.column - b.column);
}

/** Fills in what follows from other keys, and from which blocks were written. */
function filled(written: WrittenJob, tree: { [key: string]: Raw }): Job {
  const job = absentNotUndefined(written);
  const { cutter, clearance } = job.grooves;
  return {
    ...job,
    tool: { ...job.tool, diameter: job.tool.diameter ?? 0.75 * job.blank.diameter },
    layout: { ...job.layout, gap: job.layout.gap ?? cutter + 2 * clearance },
    setup: { given: tree["setup"] !== undefined, ...job.setup },
  };
}

/** Keys that may be absent, without `undefined` as a value: the schema leaves them out, its types cannot say so. */
type Absent<T> = T extends readonly unknown[]
  ? { [K in keyof T]: Absent<T[K]> }
  : T extends object
    ? { [K in keyof T]: undefined extends T[K] ? Absent<Exclude<T[K], undefined>> : Absent<T[K]> }
    : T;

/** The job itself, its type told apart by absence: beyond that the compiler holds schema and Job together. */
function absentNotUndefined(job: WrittenJob): Absent<WrittenJob> {
  return job as Absent<WrittenJob>;
}

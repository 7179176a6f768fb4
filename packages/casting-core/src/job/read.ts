import type { z } from "zod";
import { CastingError, type Fault } from "../errors.js";
import { nearest } from "../nearest.js";
import { plasterNamed } from "../pour/gypsum.js";
import { kept } from "../units/digits.js";
import { SPHEROMETER, USUAL_TOOL } from "./limits.js";
import { type Partly, readPartly } from "./partly.js";
import { ruleFaults } from "./rules.js";
import { jobSchema } from "./schema.js";
import { type JobTree, readTree } from "./text.js";
import { isAbove, type Path, type Raw } from "./tree.js";
import type { Job, JobPlaster, JobReadings, Units } from "./types.js";
import { guardUnread } from "./unread.js";

/** What takes the place of the job's own values. */
export interface ReadOptions {
  seed?: number;
  paper?: string;
}

/** A job as the schema reads it, before what follows from other keys is filled in. */
type WrittenJob = z.output<ReturnType<typeof jobSchema>>;
type Tree = { [key: string]: Raw };

/**
 * The job that `text` (YAML 1.2 or JSON) says: every figure in mm, mL, kg and plain numbers, every default filled in.
 * Throws one `invalid` error with every fault found, each with key, line and column.
 */
export function readJob(text: string, options: ReadOptions = {}): Job {
  return readJobWith(text, options, () => []);
}

/**
 * The same; where the job is wrong, `later` is asked what a stage after this one says of the rest. It is given a job
 * that throws a CastingError without faults where it looks at what a fault is about already.
 */
export function readJobWith(text: string, options: ReadOptions, later: (job: Job) => readonly Fault[]): Job {
  const { raw: tree, faults: unreadable, ...where } = readTree(text);
  if (options.seed !== undefined) tree["layout"] = withKey(tree["layout"], "seed", String(options.seed));
  if (options.paper !== undefined) tree["print"] = withKey(tree["print"], "paper", options.paper);
  // Units that are not known are taken for those that their fault names as meant.
  const written = tree["units"];
  const meant = typeof written === "string" ? nearest(written, UNITS) : undefined;
  const units = UNITS.find((unit) => unit === meant) ?? "mm";
  const schema = jobSchema(units, tree["bare"] === "mm" ? "mm" : "units");
  // A job is read once: code made for it would take longer to compile than it saves.
  const read = schema.safeParse(tree, { jitless: true });
  const misread = read.success ? [] : faultsOf(read.error.issues);
  const { job, unread } =
    read.success && unreadable.length === 0
      ? { job: filled(read.data, tree), unread: [] }
      : filledPartly(readPartly(schema, tree, [], [...unreadable, ...misread]), units, tree);
  const wrong = [...misread, ...ruleFaults(job, unread)];
  const said = [...unreadable, ...wrong.filter((fault) => !unreadable.some(({ path }) => isAbove(path, fault.path)))];
  const faults = said.filter((fault) => !isMistyped(fault, said));
  if (faults.length > 0) {
    const rest = guardUnread(job as Job, [...unread, ...faults.map(({ path }) => path).filter(isTelling)]);
    throw new CastingError("invalid", placed([...faults, ...later(rest)], where));
  }
  // Nothing is missing where nothing is wrong.
  return asWritten(job as Job);
}

/** Whether what a fault is about is left alone by later stages: units are taken as meant, and shares are no one piece's. */
function isTelling(path: Path): boolean {
  return path.length > 1 || (path[0] !== "units" && path[0] !== "pieces");
}

const UNITS: readonly Units[] = ["mm", "in"];

/** The same as `filled` of a job that was read in part, and what of it was not. */
function filledPartly({ value, unread }: Partly, units: Units, tree: Tree): { job: Partial<Job>; unread: Path[] } {
  const written = { ...(value as Partial<WrittenJob> | undefined), units };
  const told = unread.filter(([key]) => key !== "units");
  // Three quarters of a blank that was not read.
  if ((written.tool?.diameter ?? written.blank?.diameter) === undefined) told.push(["tool", "diameter"]);
  return { job: filled(written, tree), unread: told };
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

/** Fills in what follows from other keys, and from which blocks were written, in the parts of a job that are there. */
function filled(written: WrittenJob, tree: Tree): Job;
function filled(written: Partial<WrittenJob>, tree: Tree): Partial<Job>;
function filled(written: Partial<WrittenJob>, tree: Tree): Partial<Job> {
  const parts = written as Partial<Absent<WrittenJob>>;
  const { blank, tool, layout, grooves, plaster, setup } = parts;
  // Keys stay in the schema's order, as plans list them.
  return {
    ...(parts as Omit<typeof parts, "blank" | "tool" | "layout" | "plaster" | "setup">),
    ...(blank && { blank: measured(blank) }),
    ...(tool && { tool: { diameter: tool.diameter ?? USUAL_TOOL * (blank?.diameter ?? 0), rim: tool.rim } }),
    ...(layout && { layout: { gap: gapFor(grooves), ...layout } }),
    ...(plaster && { plaster: watered(plaster) }),
    ...(setup && { setup: setUp(setup, tree["setup"] !== undefined) }),
  };
}

/** A blank with the chord that its sagitta is of, and how truly its instrument's size is known, in the schema's order. */
function measured(blank: Job["blank"]): Job["blank"] {
  const { readings, diameter, "sagitta-over": chord = diameter } = blank;
  const chorded = Object.entries(blank).flatMap(([key, value]) =>
    key === "sagitta" && chord !== undefined
      ? Object.entries({ sagitta: value, "sagitta-over": chord })
      : [[key, value]],
  );
  const known = readings?.instrument && { ...readings, instrument: sized(readings.instrument) };
  return { ...Object.fromEntries(chorded), ...(known && { readings: known }) };
}

/** An instrument with the error of its size: a share of it where none was written. */
function sized(instrument: JobReadings["instrument"]): JobReadings["instrument"] {
  const size = instrument.ring ?? instrument.legs ?? instrument.bar;
  return size === undefined
    ? instrument
    : { ...instrument, "size-error": instrument["size-error"] ?? SPHEROMETER.size * size };
}

/** A plaster with the water of the table where none was written, in the schema's order. */
function watered({ kind, water = plasterNamed(kind)?.water, ...rest }: JobPlaster): JobPlaster {
  return { kind, ...(water !== undefined && { water }), ...rest };
}

/** A set-up, and whether it is the job's own: one that a plan filled in is so once a value of it was changed. */
function setUp({ given, ...rest }: WrittenJob["setup"], written: boolean): Job["setup"] {
  const usual = () => JSON.stringify(rest) === JSON.stringify(jobSchema("mm").shape.setup.parse(undefined));
  return { given: given === false ? !usual() : written, ...rest } as Job["setup"];
}

/** The gap that the cutter needs; no rule looks at it where the channels were not read. */
function gapFor(grooves: WrittenJob["grooves"] | undefined): number {
  return grooves ? grooves.cutter + 2 * grooves.clearance : 0;
}

/** Keys that may be absent, without `undefined` as a value: the schema leaves them out, its types cannot say so. Beyond that the compiler holds schema and Job together. */
type Absent<T> = T extends readonly unknown[]
  ? { [K in keyof T]: Absent<T[K]> }
  : T extends object
    ? { [K in keyof T]: undefined extends T[K] ? Absent<Exclude<T[K], undefined>> : Absent<T[K]> }
    : T;

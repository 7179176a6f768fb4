import { CastingError, type Units } from "casting-core";
import { BesideJob, usage } from "../usage.js";

/** Units of bare numbers in options; mm if not given. */
export function unitsOf(text: string | undefined): Units {
  if (text === undefined || text === "mm" || text === "in") return text ?? "mm";
  throw usage(`--units ${text.slice(0, 40)} is not known; write mm or in`);
}

/**
 * Runs the core on options instead of a job: what it refuses names the option, which `name` tells from the fault's path.
 */
export function fromOption<T>(act: () => T, name: (path: readonly (string | number)[]) => string | undefined): T {
  try {
    return act();
  } catch (error) {
    if (!(error instanceof CastingError)) throw error;
    const faults = error.faults.map(({ path, text }) => {
      const option = name(path);
      return { path: [], text: option === undefined ? text : `--${option}: ${text}` };
    });
    throw new CastingError(error.kind, faults);
  }
}

/**
 * Whether a command is to work on the job `file`; else on its own options, of which `given` were written. Throws
 * UsageError where both are there, or neither; `wanted` says what to write then.
 */
export function onJob(file: string | undefined, given: readonly string[], wanted: string): file is string {
  if (file !== undefined && given.length > 0) {
    throw new BesideJob(`--${given[0]} stands beside a job; change the job, or leave the job out`);
  }
  if (file === undefined && given.length === 0) throw usage(wanted);
  return file !== undefined;
}

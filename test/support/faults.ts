import { CastingError } from "../../packages/casting-core/src/errors.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";

/** The faults of a job, one line each: place, key, sentence. */
export function faults(text: string): string[] {
  try {
    readJob(text);
  } catch (error) {
    if (!(error instanceof CastingError) || error.kind !== "invalid") throw error;
    return error.faults.map(({ path, text, line, column }) => `${line}:${column} ${path.join(".")}: ${text}`);
  }
  return [];
}

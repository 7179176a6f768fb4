import { CastingError, type Job, readJob } from "casting-core";
import type { JobOptions } from "../commands.js";
import { readJobText } from "../files/read.js";
import { inJob, JobError } from "../report/faults.js";
import { shortened } from "../terminal.js";

/** A job read and understood, and a way to run the core on it so that its errors name the file and the line. */
export interface LoadedJob {
  file: string;
  text: string;
  job: Job;
  /** Runs `act`; a fault in the job it throws carries the job's file, line and column. */
  about<T>(act: () => T): T;
}

/** Reads the job `file`, or standard input for `-`. Throws UsageError or JobError. */
export function loadJob(file: string, { seed, paper }: JobOptions & { paper?: string }): LoadedJob {
  const { text } = readJobText(file);
  const about = <T>(act: () => T): T => {
    try {
      return act();
    } catch (error) {
      if (!(error instanceof CastingError) || error instanceof JobError) throw error;
      refusePaper(error, paper);
      throw inJob(error, text, file);
    }
  };
  const read = { ...(seed === undefined ? {} : { seed }), ...(paper === undefined ? {} : { paper }) };
  return { file, text, job: about(() => readJob(text, read)), about };
}

/** Throws the fault of the paper where an option gave it: nothing is wrong in the job's file then. */
function refusePaper({ kind, faults }: CastingError, paper: string | undefined): void {
  const fault = faults.find(({ path }) => path.join(".") === "print.paper");
  if (paper === undefined || !fault) return;
  throw new CastingError(kind, [{ path: [], text: `--paper ${shortened(paper, 40)}: ${fault.text}` }]);
}

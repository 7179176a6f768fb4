import { mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { isRunning, thisRun } from "../terminal.js";
import { FileError, reason } from "./errors.js";
import { hiddenName } from "./whole.js";

/** A staging folder without a run's number in it is given up after so many milliseconds. */
const PATIENCE = 10_000;
const RUN = ".run";

/**
 * Makes the hidden folder beside `out` in which a set is prepared, `.NAME.tmp-stage`. It is the lock as well: two runs
 * into one folder would mix their files. One that a killed run left behind is cleared away.
 *
 * @throws FileError where another run is at work or the folder cannot be made
 */
export function lockStage(out: string): string {
  const stage = join(dirname(out), hiddenName(out, "stage"));
  for (let turn = 0; turn < 2; turn++) {
    try {
      mkdirSync(dirname(out), { recursive: true });
      mkdirSync(stage);
      writeFileSync(join(stage, RUN), String(thisRun));
      return stage;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EEXIST") {
        releaseStage(stage);
        throw new FileError(`${out} could not be written: ${reason(error)}; name another folder with --out`);
      }
    }
    if (isAtWork(stage)) break;
    releaseStage(stage);
  }
  throw new FileError(`another run is writing ${out}; wait for it, or remove ${stage} if there is none`);
}

/** Clears the staging folder away. */
export function releaseStage(stage: string): void {
  try {
    rmSync(stage, { recursive: true, force: true });
  } catch {
    // The set itself is whole; the next run clears the folder.
  }
}

function isAtWork(stage: string): boolean {
  try {
    const run = readFileSync(join(stage, RUN), "latin1");
    if (/^[1-9]\d{0,9}$/.test(run)) return isRunning(Number(run));
    return Date.now() - statSync(stage).mtimeMs < PATIENCE;
  } catch {
    return false;
  }
}

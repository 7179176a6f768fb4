import { lstatSync, renameSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { isRunning, thisRun } from "../terminal.js";
import { usage } from "../usage.js";
import { FileError, reason } from "./errors.js";
import { hiddenName, namesIn, writeWhole } from "./whole.js";

/**
 * Writes one text file: whole or not at all, an earlier one replaced only with `force`. What killed runs left beside it
 * is cleared away.
 *
 * @throws UsageError for `-`, which a job is read from; FileError where something stands in the way or the disk refuses
 */
export function writeNew(file: string, text: string, force: boolean): void {
  if (file === "-") throw usage("- means standard input and is no name for a file; give another, such as job.yaml");
  const found = lstatOf(file);
  if (found && !found.isFile()) throw new FileError(`${file} is not a plain file; choose another name`);
  if (found && !force)
    throw new FileError(`${file} is already there; choose another name, or give --force to replace it`);
  const folder = dirname(file);
  if (!found && !lstatOf(folder))
    throw new FileError(`${file} could not be written: there is no folder ${folder}; make it, or choose another name`);
  clearLeftovers(file);
  const beside = join(folder, hiddenName(file, thisRun));
  try {
    writeWhole(beside, new TextEncoder().encode(text));
    renameSync(beside, file);
  } catch (error) {
    rmSync(beside, { force: true });
    const why = error instanceof FileError ? error.message : `${file} could not be written: ${reason(error)}`;
    throw new FileError(why.replace(beside, file));
  }
}

/** Removes unfinished files of runs that are over: plain ones of that very name. This run has none of its own yet. */
function clearLeftovers(file: string): void {
  const start = hiddenName(file, "");
  for (const name of namesIn(dirname(file))) {
    const run = name.startsWith(start) ? name.slice(start.length) : "";
    if (!/^[1-9]\d{0,9}$/.test(run) || (Number(run) !== thisRun && isRunning(Number(run)))) continue;
    const path = join(dirname(file), name);
    try {
      if (lstatSync(path).isFile()) rmSync(path);
    } catch {
      // It harms nothing where it is; the next run tries again.
    }
  }
}

function lstatOf(file: string) {
  try {
    return lstatSync(file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw new FileError(`${file} could not be written: ${reason(error)}; choose another name`);
  }
}

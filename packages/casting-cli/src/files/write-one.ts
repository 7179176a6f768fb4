import { lstatSync, renameSync, rmSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { thisRun } from "../terminal.js";
import { FileError, reason } from "./errors.js";
import { writeWhole } from "./whole.js";

/**
 * Writes one text file: whole or not at all, an earlier one replaced only with `force`.
 *
 * @throws FileError where something stands in the way or the disk refuses
 */
export function writeNew(file: string, text: string, force: boolean): void {
  const found = lstatOf(file);
  if (found && !found.isFile()) throw new FileError(`${file} is not a plain file; choose another name`);
  if (found && !force)
    throw new FileError(`${file} is already there; choose another name, or give --force to replace it`);
  const beside = join(dirname(file), `.${basename(file)}.tmp-${thisRun}`);
  try {
    writeWhole(beside, new TextEncoder().encode(text));
    renameSync(beside, file);
  } catch (error) {
    rmSync(beside, { force: true });
    const why = error instanceof FileError ? error.message : `${file} could not be written: ${reason(error)}`;
    throw new FileError(why.replace(beside, file));
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

import { closeSync, fsyncSync, openSync, readdirSync, statSync, writeSync } from "node:fs";
import { basename } from "node:path";
import { FileError, reason } from "./errors.js";

/** One file, every byte of it, on the disk: a single write may be cut short without an error. */
export function writeWhole(path: string, bytes: Uint8Array): void {
  attempt(path, () => {
    const file = openSync(path, "wx", 0o644);
    try {
      for (let done = 0; done < bytes.length; ) {
        const written = writeSync(file, bytes, done, bytes.length - done);
        if (written <= 0) throw Object.assign(new Error(), { code: "ENOSPC" });
        done += written;
      }
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    if (statSync(path).size !== bytes.length) throw Object.assign(new Error(), { code: "EIO" });
  });
}

/** Runs one step on the file `path`; what the system refuses becomes one sentence. */
export function attempt(path: string, act: () => void): void {
  try {
    act();
  } catch (error) {
    if (error instanceof FileError) throw error;
    throw new FileError(`${path} could not be written: ${reason(error)}; what stood there before is as it was`);
  }
}

/** How a file or a set `path` is called while it is being written, beside it: `end` is the run's number, or `stage`. */
export function hiddenName(path: string, end: number | "stage" | ""): string {
  return `.${basename(path)}.tmp-${end}`;
}

/** Whether `name` is one of those: what a killed run may have left. */
export function isHiddenName(name: string): boolean {
  return /^\..+\.tmp-(stage|[1-9]\d{0,9})$/s.test(name);
}

/** Names in a folder, sorted, so that every machine sees the same; none where it is not there. */
export function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder).sort();
  } catch {
    return [];
  }
}

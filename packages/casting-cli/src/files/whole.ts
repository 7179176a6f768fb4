import { closeSync, fsyncSync, openSync, readdirSync, statSync, writeSync } from "node:fs";
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

/** Names in a folder, sorted, so that every machine sees the same; none where it is not there. */
export function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder).sort();
  } catch {
    return [];
  }
}

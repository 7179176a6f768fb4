import { closeSync, openSync, readSync } from "node:fs";
import { basename } from "node:path";
import { usage } from "../usage.js";
import { reason } from "./errors.js";

/** A job as it was read: its text, and how messages name it. */
export interface JobText {
  text: string;
  /** `-` for standard input. */
  file: string;
}

/** One byte more than a job may have, so that a longer one is seen to be longer. */
const JOB_LIMIT = 64 * 1024 + 1;
const PLAN_LIMIT = 256 * 1024 * 1024;

/**
 * The text of a job file, or of standard input for `-`; of a longer one only as much as shows that it is too long.
 *
 * @throws UsageError where it cannot be read or is not UTF-8
 */
export function readJobText(file: string): JobText {
  const bytes = readUpTo(file, JOB_LIMIT, "a job file such as job.yaml (casting new writes one)");
  try {
    const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
    return { text, file };
  } catch {
    if (bytes.length < JOB_LIMIT) throw usage(`${file} is not UTF-8 text; save it as UTF-8 and try again`);
    // A long text may have been cut inside a letter; what is left still shows that it is too long.
    return { text: new TextDecoder("latin1").decode(bytes), file };
  }
}

/** The text of a saved plan. */
export function readPlanText(file: string): string {
  return new TextDecoder().decode(readUpTo(file, PLAN_LIMIT, "a plan.json or a folder that casting make wrote"));
}

function readUpTo(file: string, limit: number, wanted: string): Uint8Array {
  const name = file === "-" ? "standard input" : file;
  try {
    const handle = file === "-" ? 0 : openSync(file, "r");
    try {
      return allOf(handle, limit);
    } finally {
      if (handle !== 0) closeSync(handle);
    }
  } catch (error) {
    throw usage(`${name} could not be read: ${reason(error)}; name ${wanted}`);
  }
}

function allOf(handle: number, limit: number): Uint8Array {
  const parts: Uint8Array[] = [];
  for (let left = limit; left > 0; ) {
    const part = new Uint8Array(Math.min(left, 1 << 16));
    const count = readOnce(handle, part);
    if (count === 0) break;
    parts.push(part.subarray(0, count));
    left -= count;
  }
  return Buffer.concat(parts);
}

/** Standard input may be a pipe whose other end is not ready yet. */
function readOnce(handle: number, part: Uint8Array): number {
  for (;;) {
    try {
      return readSync(handle, part);
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code;
      if (code === "EOF") return 0;
      if (code !== "EAGAIN") throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 10);
    }
  }
}

/** How a job is named in the files made beside it: its file name without the ending. */
export function jobName(file: string): string {
  return basename(file).replace(/\.[^.]+$/, "");
}

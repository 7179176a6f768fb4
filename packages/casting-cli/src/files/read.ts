import { closeSync, constants, fstatSync, openSync, readSync } from "node:fs";
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
/** A pipe by name that nothing comes out of is looked at so often, a moment apart: its writer may start a second late. */
const LOOKS = 100;
const MOMENT_MS = 10;

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
  const name = file === "-" ? "standard input" : file || '""';
  try {
    if (file === "-") return allOf(0, limit);
    // Opening a pipe that nothing writes into would otherwise wait for ever.
    const handle = openSync(file, constants.O_RDONLY | constants.O_NONBLOCK);
    try {
      return fstatSync(handle).isFIFO() ? throughPipe(handle, limit) : allOf(handle, limit);
    } finally {
      closeSync(handle);
    }
  } catch (error) {
    throw usage(`${name} could not be read: ${reason(error)}; name ${wanted}`);
  }
}

function throughPipe(handle: number, limit: number): Uint8Array {
  for (let look = 0; look < LOOKS; look++) {
    const bytes = allOf(handle, limit);
    if (bytes.length > 0) return bytes;
    pause();
  }
  throw Object.assign(new Error(), { code: "ENXIO" });
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

/** A pipe may be one whose other end is not ready yet. */
function readOnce(handle: number, part: Uint8Array): number {
  for (;;) {
    try {
      return readSync(handle, part);
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code;
      if (code === "EOF") return 0;
      if (code !== "EAGAIN") throw error;
      pause();
    }
  }
}

function pause(): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, MOMENT_MS);
}

/** How a job is named in the files made beside it: its file name without the ending. */
export function jobName(file: string): string {
  return basename(file).replace(/\.[^.]+$/, "");
}

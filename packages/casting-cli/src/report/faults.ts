import { CastingError, pathText, placeInJob } from "casting-core";
import { safe, shortened } from "../terminal.js";

/** A key no longer than a line bears. */
const KEY = 60;

/** Whether the core threw this on purpose. */
export function isCastingError(error: unknown): error is CastingError {
  return error instanceof CastingError;
}

/** A job's error with the name of the file it is about, for messages. */
export class JobError extends CastingError {
  constructor(
    error: CastingError,
    readonly file: string,
  ) {
    super(error.kind, error.faults);
  }
}

/** `error` as one of the job `file`, each fault with its line and column in the job's `text` where they are known, in their order. */
export function inJob(error: CastingError, text: string, file: string): JobError {
  const faults = error.faults.map((fault) => (fault.line === undefined ? placeInJob(text, fault) : fault));
  const inOrder = faults.sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
  return new JobError(new CastingError(error.kind, inOrder), file);
}

/** One line a fault: `FILE:LINE:COLUMN: path.to.key: sentence`, or `casting: sentence` where no file is the cause. */
export function faultText(error: CastingError): string {
  const file = error instanceof JobError ? (error.file === "-" ? "standard input" : error.file) : undefined;
  return error.faults
    .map(({ path, text, line, column }) => {
      const place = line === undefined ? "" : `:${line}:${column ?? 1}`;
      const key =
        path.length > 0
          ? `${pathText(path.map((part) => (typeof part === "string" ? shortened(part, KEY) : part)))}: `
          : "";
      const from = file === undefined ? "casting: " : `${file}${place}: `;
      return `${safe(`${from}${key}${text}`).replaceAll("\n", "?")}\n`;
    })
    .join("");
}

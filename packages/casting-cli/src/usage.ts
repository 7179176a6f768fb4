/** A wrong argument: one sentence, exit 2. */
export class UsageError extends Error {
  constructor(text: string) {
    super(text);
    this.name = "UsageError";
  }
}

/** Options stand beside what was read as a job file: it may be a part of a value that the shell parted. */
export class BesideJob extends UsageError {}

/** The error for a wrong argument; `text` names it and the remedy. */
export function usage(text: string): UsageError {
  return new UsageError(text);
}

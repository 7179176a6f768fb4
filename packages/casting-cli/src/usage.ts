/** A wrong argument: one sentence, exit 2. */
export class UsageError extends Error {
  constructor(text: string) {
    super(text);
    this.name = "UsageError";
  }
}

/** The error for a wrong argument; `text` names it and the remedy. */
export function usage(text: string): UsageError {
  return new UsageError(text);
}

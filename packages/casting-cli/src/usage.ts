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

/** The seed that an option gives. Throws UsageError where it is none. */
export function wholeNumber(text: string): number {
  if (!/^\d{1,10}$/.test(text) || Number(text) > 0xffffffff) {
    throw usage(`--seed ${text.slice(0, 40)} is not a whole number from 0 to 4294967295; write for example --seed 7`);
  }
  return Number(text);
}

/** The names of an option with commas between. */
export function list(text: string): string[] {
  return text.split(",").map((item) => item.trim());
}

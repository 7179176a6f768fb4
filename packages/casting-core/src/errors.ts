/** One thing wrong with a job or an argument: which key, and one sentence with the fact, the value and the remedy. */
export interface Fault {
  /** Keys and list indices from the root of the job, e.g. `["pieces", 0, "across"]`; empty for the job as a whole. */
  path: readonly (string | number)[];
  text: string;
  /** Place in the job's text, counted from 1, when the text is known. */
  line?: number;
  column?: number;
}

/**
 * The only error the core throws on purpose.
 * `invalid`: the job or an argument is wrong (exit 2). `impossible`: the job is valid but cannot be done (exit 1).
 */
export class CastingError extends Error {
  readonly kind: "invalid" | "impossible";
  readonly faults: readonly Fault[];

  constructor(kind: "invalid" | "impossible", faults: readonly Fault[]) {
    super(
      faults.map((fault) => (fault.path.length > 0 ? `${pathText(fault.path)}: ${fault.text}` : fault.text)).join("\n"),
    );
    this.name = "CastingError";
    this.kind = kind;
    this.faults = faults;
  }
}

/** An error for a valid job that cannot be done: one key, one sentence. */
export function impossible(path: readonly (string | number)[], text: string): CastingError {
  return new CastingError("impossible", [{ path, text }]);
}

/** `pieces[0].across` from `["pieces", 0, "across"]`. */
export function pathText(path: readonly (string | number)[]): string {
  let text = "";
  for (const key of path) text += typeof key === "number" ? `[${key}]` : text === "" ? key : `.${key}`;
  return text;
}

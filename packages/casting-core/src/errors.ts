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

/** Faults of several looks at a job, told at once: each look is taken whatever the others found. */
export class Gathered {
  private readonly errors: CastingError[] = [];

  /** What `look` comes back with; nothing where it throws a CastingError, which is kept. */
  of<T>(look: () => T): T | undefined {
    try {
      return look();
    } catch (error) {
      if (!(error instanceof CastingError)) throw error;
      this.errors.push(error);
      return undefined;
    }
  }

  /** Throws all that was kept as one error, `invalid` where any of it is; nothing where all looks came back. */
  tell(): void {
    if (this.errors.length === 0) return;
    const kind = this.errors.some((error) => error.kind === "invalid") ? "invalid" : "impossible";
    throw new CastingError(
      kind,
      this.errors.flatMap(({ faults }) => faults),
    );
  }
}

/** `pieces[0].across` from `["pieces", 0, "across"]`. */
export function pathText(path: readonly (string | number)[]): string {
  let text = "";
  for (const key of path) text += typeof key === "number" ? `[${key}]` : text === "" ? key : `.${key}`;
  return text;
}

/** Something the maker should know about this job. It stands in the plan and on the job sheet. */
export interface Note {
  /** Stable name for programs, e.g. `gap-too-small`. */
  code: string;
  /** `caution`: can hurt a person. `warning`: can spoil the tool or the glass. `info`: good to know. */
  level: "caution" | "warning" | "info";
  /** One sentence, lengths in the job's own units. */
  text: string;
}

/** A note of `level`. */
export function note(level: Note["level"], code: string, text: string): Note {
  return { code, level, text };
}

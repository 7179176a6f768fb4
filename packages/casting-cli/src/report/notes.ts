import type { Note } from "casting-core";
import { safe, type Terminal } from "../terminal.js";

const COLOURS: Record<Note["level"], string> = { caution: "\x1b[31m", warning: "\x1b[33m", info: "\x1b[2m" };

/** Prints a plan's notes to standard error, cautions first, each once. */
export function printNotes(notes: readonly Note[], terminal: Terminal): void {
  for (const level of ["caution", "warning", "info"] as const) {
    for (const note of notes) {
      if (note.level !== level) continue;
      const label = terminal.colour ? `${COLOURS[level]}${level}\x1b[0m` : level;
      terminal.err(`${label}: ${safe(note.text)}\n`);
    }
  }
}

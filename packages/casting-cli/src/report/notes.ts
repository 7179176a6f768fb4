import { broken, type Note } from "casting-core";
import { safe, type Terminal } from "../terminal.js";

const COLOURS: Record<Note["level"], string> = { caution: "\x1b[31m", warning: "\x1b[33m", info: "\x1b[2m" };

/** Prints a plan's notes to standard error, cautions first, each once. */
export function printNotes(notes: readonly Note[], terminal: Terminal): void {
  for (const level of ["caution", "warning", "info"] as const) {
    for (const note of notes) {
      if (note.level !== level) continue;
      const label = terminal.colour ? `${COLOURS[level]}${level}\x1b[0m` : level;
      const lines = folded(safe(note.text), terminal.width, level.length + 2);
      terminal.err(`${label}: ${lines.join(`\n${INDENT}`)}\n`);
    }
  }
}

/** What lines after a note's first are indented by. */
const INDENT = "  ";

/** Terminals narrower than this break lines as they like: next to nothing would stand in one. */
const NARROWEST = 30;

/** `text` in lines that a terminal of `width` letters holds, broken between words; the first follows `begun` letters. */
function folded(text: string, width: number | undefined, begun: number): string[] {
  if (width === undefined || width < NARROWEST) return [text];
  return broken(text, (line, n) => line.length <= width - (n === 0 ? begun : INDENT.length));
}

import type { Terminal } from "../terminal.js";

const NAMES: Record<string, string> = {
  layout: "laying out the pieces",
  grooves: "routing the channels",
};
/** A run shorter than this shows nothing, ms; then a new line of progress at most this often. */
const FIRST = 400;
const EVERY = 100;

/** Draws how far the work is, on one line of a terminal, and wipes it in the end. Silent where there is no terminal. */
export function progressLine(terminal: Terminal, quiet = false) {
  if (!terminal.drawsProgress || quiet) return { at: undefined, end: () => {} };
  let next = Date.now() + FIRST;
  let drawn = false;
  return {
    at(stage: string, share: number): void {
      if (Date.now() < next) return;
      next = Date.now() + EVERY;
      drawn = true;
      terminal.err(`\r\x1b[K${NAMES[stage] ?? stage} … ${Math.floor(share * 100)} %`);
    },
    end(): void {
      if (drawn) terminal.err("\r\x1b[K");
    },
  };
}

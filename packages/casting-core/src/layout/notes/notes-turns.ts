import type { Job } from "../../job/types.js";
import { type Note, note } from "../../notes.js";

/** Ratios with up to this many turns of the mirror close within a few strokes. */
const CLOSES = 6;
/** As near as a ratio is written or a drive keeps it: 0.667 is meant for 2/3. */
const NEAR = 0.0005;
/** How far from the ratio given another is looked for at first, and the steps on from there. */
const AWAY = 7;
const STEP = 0.01;

/** Ratios of small whole numbers bring the same pieces over the same glass again and again. */
export function turnNotes({ setup }: Job): Note[] {
  const turns = Math.abs(setup["tool-turns"]);
  const ratio = closing(turns);
  if (ratio === undefined) return [];
  const often =
    ratio === "0" ? "does not turn" : `turns ${ratio === "1" ? "once" : `${ratio} times`} per turn of the mirror`;
  const text = `A tool that ${often} repeats its track, and the figure for zoning, a mean over rings, does not hold: take a ratio that does not close, such as ${setup["tool-turns"] < 0 ? "-" : ""}${openRatio(turns)}.`;
  return [note(setup.given ? "warning" : "info", "repeated-track", text)];
}

/** The ratio of small whole numbers that `turns` is, such as `2/3`; nothing where there is none. */
function closing(turns: number): string | undefined {
  for (let under = 1; under <= CLOSES; under++) {
    const over = Math.round(turns * under);
    if (Math.abs(turns - over / under) <= NEAR) return under === 1 ? String(over) : `${over}/${under}`;
  }
  return undefined;
}

/** The nearest slower ratio that stays open; from below a tenth on one below 1. */
function openRatio(turns: number): string {
  const from = turns > 2 * AWAY * STEP ? turns : 1;
  for (let n = AWAY; ; n++) {
    const text = (from - n * STEP).toFixed(2);
    if (closing(Number(text)) === undefined) return text;
  }
}

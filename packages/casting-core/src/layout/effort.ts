/** Piece-sweeps (pieces times sweeps) that a layout takes in all: a third of a second on one core, settling and proving included. */
const WORK = 600_000;

/** Sweeps of one start: below the first the pieces freeze in disorder, above the second nothing is gained (measured). */
const FEWEST = 900;
const MOST = 2600;

const MOST_STARTS = 4;

/** How many starts of how many sweeps a layout of `count` pieces gets: fixed by the count alone, so that runs repeat. */
export function effortFor(count: number): { starts: number; sweeps: number } {
  const total = Math.max(FEWEST, WORK / Math.max(1, count));
  const starts = Math.max(1, Math.min(MOST_STARTS, Math.floor(total / MOST)));
  return { starts, sweeps: Math.round(Math.min(MOST, total / starts)) };
}

/** A short run jams less: pieces to begin with, as a share of what a long one holds, up to LONG sweeps (measured on hexagons). */
const HASTE = 0.94;
const LONG = 2500;

export function hasteOf(sweeps: number): number {
  return Math.min(1, HASTE + ((1 - HASTE) * (sweeps - FEWEST)) / (LONG - FEWEST));
}

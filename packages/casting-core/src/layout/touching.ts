import type { PieceKind } from "../pieces/types.js";

/** Rounds that an ordered lattice guesses too few by, where they may touch: fits the best-known packings of 37 to 200 circles (measured). */
const BEYOND = 5;

/** Sweeps of a start, for each piece and at least: fewer pack less, more gain nothing (measured). */
const SWEEPS = 50;
const FEWEST = 5000;

/** Piece-sweeps of all starts together, up to three seconds, and starts at most: of 90 rounds four starts in ten keep all. */
const WORK = 16_000_000;
const MOST_STARTS = 12;

/** More rounds than these would need longer to pack so tightly than a person waits. */
const MOST = 400;

/**
 * Whether pieces are packed for their number alone: rounds that may touch, so that no channel will run between them and
 * nothing else is to be won. Rounds with a gap and all other shapes are laid evenly instead.
 */
export function mayTouch(kinds: readonly PieceKind[], gap: number, room: number): boolean {
  return gap === 0 && room <= MOST && kinds.every(({ radius }) => radius !== undefined);
}

/**
 * The most pieces that a few starts pack. The first begins with as many as the best packings known of a circle hold;
 * after one that held all the next begins with one more, after one that lost some with fewer, but more than the best.
 *
 * @param room pieces that an ordered lattice would hold, about
 * @param limit pieces that there are
 * @param start the start `n` of `of`: lays so many pieces in so many sweeps; what found no place is missing
 */
export function packMost<T extends { pieces: readonly unknown[] }>(
  room: number,
  limit: number,
  start: (count: number, sweeps: number, n: number, of: number) => T,
): T {
  const first = Math.max(1, Math.min(limit, Math.floor(room + BEYOND)));
  const sweeps = Math.max(FEWEST, SWEEPS * first);
  const starts = Math.max(1, Math.min(MOST_STARTS, Math.floor(WORK / (first * sweeps))));
  let best: T | undefined;
  let aim = first;
  for (let n = 0; n < starts && aim <= limit; n++) {
    const laid = start(aim, sweeps, n, starts);
    if (!best || laid.pieces.length > best.pieces.length) best = laid;
    else if (aim > first) break;
    // Most starts that fall short do so by chance, and not because the aim was too high.
    aim = Math.max(best.pieces.length + 1, Math.ceil((3 * aim + laid.pieces.length) / 4));
  }
  return best!;
}

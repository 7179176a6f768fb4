import { check } from "../check.js";
import type { Field } from "../field.js";
import type { PlacedPiece } from "../types.js";
import { type Bed, remove } from "./bed.js";
import { settle } from "./settle.js";
import { MARGIN, snap } from "./snap.js";

/** Wider margins to try, in steps of half a margin, before a piece that breaks a rule is taken out. */
const TRIES = 6;

/** Pieces that the exact check found no fault with, and the least clear distances that it found, mm. */
export interface Proved {
  pieces: PlacedPiece[];
  gapMin: number;
  rimMin: number;
}

/**
 * Snaps the pieces of `bed` to the grid that is written out and checks them there; settles them again with a wider
 * margin while the check finds fault. Pieces that cannot be cured are taken out, so that every piece returned is proved.
 */
export function prove(bed: Bed, field: Field, gap: number): Proved {
  const skin = 0.1 * Math.min(...bed.shapes.reach);
  bed.engine.forgetNeighbours();
  for (let n = 1; ; n++) {
    const pieces = snap(bed);
    const { misplaced, pairs, gapMin, rimMin } = check(pieces, field, gap);
    const wrong = new Set([...misplaced, ...pairs.map(([, second]) => second)]);
    if (wrong.size === 0) return { pieces, gapMin, rimMin };
    if (n <= TRIES) settle(bed, gap + MARGIN + (n * MARGIN) / 2, skin);
    else for (const i of [...wrong].sort((a, b) => b - a)) remove(bed, i);
  }
}

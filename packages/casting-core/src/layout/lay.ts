import type { Random } from "../random.js";
import { type Bed, emptyBed, type Field, remove } from "./bed.js";
import { check } from "./check.js";
import { evenOut, newEvenness } from "./even.js";
import { newNeighbours } from "./neighbours.js";
import { sweep } from "./relax.js";
import { seedBed } from "./seeds.js";
import { settle, settleOrThin } from "./settle.js";
import { disalign, shake } from "./shake.js";
import type { Shapes } from "./shapes.js";
import { snap } from "./snap.js";
import type { PlacedPiece } from "./types.js";

/** One start: what is laid, where, and how long it may take. */
export interface Start {
  shapes: Shapes;
  field: Field;
  /** Least clear distance between outlines, hand included, mm. */
  gap: number;
  /** Distance to spread to where there is room to spare; at least the gap. */
  spread: number;
  /** Kinds of the pieces, see mixOf. */
  mix: Int32Array;
  sweeps: number;
  /** Called now and then with the share done, 0 to 1. */
  progress?: ((share: number) => void) | undefined;
}

/** Kicks begin at a sixth of the reach and shrink to nothing at 70 % of the run (measured: weaker ones pack less in the same time). */
const FIRST_KICK = 1 / 6;
const CALM = 0.7;
/** The body force ends here, so that the contacts alone have the last word. */
const EVEN_UNTIL = 0.9;
const EVEN_GAIN = 0.1;
const EVEN_BUILD = 0.02;
const DISALIGN = 0.05;

/** What the grid of micrometres can take from a gap: each outline's corners move by up to 1.4 µm. */
const MARGIN = 0.0032;

/** Lays the pieces of one start and proves them; what found no place is missing from the result. */
export function lay(start: Start, source: Random): PlacedPiece[] {
  const { shapes, mix } = start;
  const field = { ...start.field, radius: start.field.radius - MARGIN / 2 };
  const bed = emptyBed(shapes, field, mix.length);
  seedBed(bed, mix, source);
  anneal(bed, start, source);
  return prove(bed, start);
}

/** Shakes the bed until the pieces lie dense and even, with a little overlap left. */
function anneal(bed: Bed, { spread, sweeps, progress }: Start, source: Random): void {
  const list = newNeighbours(bed.count);
  const rings = newEvenness();
  const gap = spread + MARGIN;
  const skin = skinOf(bed, 0.4);
  for (let n = 0; n < sweeps; n++) {
    const done = n / sweeps;
    if (done < CALM) shake(bed, source, FIRST_KICK * (1 - done / CALM));
    if (done < EVEN_UNTIL) {
      disalign(bed, DISALIGN);
      if (n % 2 === 0) evenOut(bed, rings, EVEN_GAIN, EVEN_BUILD);
    }
    sweep(bed, list, gap, skin);
    if (n % 64 === 0) progress?.(0.8 * done);
  }
}

/** Settles, snaps and checks, taking out what cannot stay, until the exact check finds nothing. */
function prove(bed: Bed, { field, gap, spread, mix, progress }: Start): PlacedPiece[] {
  const list = newNeighbours(bed.count);
  const skin = skinOf(bed, 0.1);
  if (spread > gap) settle(bed, list, spread + MARGIN, skin);
  for (let margin = MARGIN; ; margin += MARGIN / 2) {
    settleOrThin(bed, list, gap + margin, skin, mix);
    progress?.(0.95);
    const pieces = snap(bed);
    const verdict = check(pieces, field, gap);
    const wrong = new Set([...verdict.misplaced, ...verdict.pairs.map(([, j]) => j)]);
    if (wrong.size === 0) return pieces;
    // Once the margin has been widened in vain the offenders go; each is counted as unplaced by the caller.
    if (margin > 4 * MARGIN) for (const i of [...wrong].sort((a, b) => b - a)) remove(bed, i);
  }
}

function skinOf({ shapes }: Bed, share: number): number {
  return share * Math.min(...shapes.reach);
}

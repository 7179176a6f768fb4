import type { Random } from "../random.js";
import { type Bed, emptyBed, restore, snapshot } from "./bed.js";
import { evenOut, newEvenness, unevenness } from "./even.js";
import type { Field } from "./field.js";
import { fill } from "./fill.js";
import { type Neighbours, newNeighbours } from "./neighbours.js";
import { prove } from "./prove.js";
import { sweep } from "./relax.js";
import { seedBed } from "./seeds.js";
import { settle, settleOrThin } from "./settle.js";
import { disalign, shake } from "./shake.js";
import type { Shapes } from "./shapes.js";
import { MARGIN } from "./snap.js";
import type { PlacedPiece } from "./types.js";

/** One start: what is laid, where, and how long it may take. */
export interface Start {
  shapes: Shapes;
  field: Field;
  /** Least clear distance between outlines, hand included, mm. */
  gap: number;
  /** Distance to spread to, at least the gap: more where fewer pieces are asked for than fit. */
  spread: number;
  /** Kinds of the pieces, see mixOf: at most this many are laid. */
  mix: Int32Array;
  /** How many of them to begin with; what fits beyond is filled in afterwards. */
  count: number;
  sweeps: number;
  /** Called now and then with the share done, 0 to 1. */
  progress?: ((share: number) => void) | undefined;
}

/** Kicks begin at a quarter of the reach and shrink to nothing at 70 % of the run (measured: weaker ones pack less in the same time). */
const FIRST_KICK = 0.25;
const CALM = 0.7;

/** Kicks, length as a share of the whole run, and number of the runs that even a settled bed again. */
const TOUCH_UP_KICK = 0.04;
const TOUCH_UP = 0.08;
const TOUCH_UPS = 5;

/** Larger beds are neither filled nor touched up: they are even to a hundredth already, and each try moves the whole bed. */
const FINISHED = 2000;

/**
 * Share of the slope that the body force moves a piece by. From 30 % of the run on it fades to nearly nothing, so that
 * the pieces come to rest on each other with little overlap: let go at once, they would spring back into uneven rings.
 */
const EVEN_GAIN = 0.4;
const FADE_FROM = 0.3;
const FADE_TO = 0.005;

/** Most a piece is turned away from the common orientation at a time, radians. */
const DISALIGN = 0.2;

/** Sweeps from one push toward evenness and disorder to the next. */
const PUSH_EVERY = 4;

/** Lays the pieces of one start and proves them; what found no place is missing from the result. */
export function lay(start: Start, source: Random): PlacedPiece[] {
  const { shapes, field, gap, spread, mix, count, sweeps, progress } = start;
  // Where pieces stand farther apart than the gap, the rim gets its half of the distance too.
  const bed = emptyBed(shapes, shrunk(field, (spread - gap + MARGIN) / 2), mix.length);
  seedBed(bed, mix.subarray(0, count), source);
  const list = newNeighbours(mix.length);
  anneal(bed, list, { gap: spread + MARGIN, sweeps, kick: FIRST_KICK, progress }, source);
  const skin = skinOf(bed, 0.1);
  if (spread > gap) settle(bed, list, spread + MARGIN, skin);
  bed.field = shrunk(field, MARGIN / 2);
  const near = gap + MARGIN;
  settleOrThin(bed, list, near, skin, mix);
  progress?.(0.85);
  if (spread === gap && bed.count <= FINISHED) fill(bed, list, near, skin, mix, source);
  if (bed.count <= FINISHED) touchUp(bed, list, near, start, source);
  progress?.(0.95);
  return prove(bed, field, gap, mix);
}

/**
 * Presses the settled bed toward evenness again and lets it settle, as long as that helps; with small kicks where pieces
 * came or went since the run.
 */
function touchUp(bed: Bed, list: Neighbours, gap: number, { count, sweeps }: Start, source: Random): void {
  let kick = bed.count === count ? 0 : TOUCH_UP_KICK;
  let variation = unevenness(bed);
  for (let n = 0; n < TOUCH_UPS; n++) {
    const before = snapshot(bed);
    anneal(bed, list, { gap, sweeps: TOUCH_UP * sweeps, kick }, source);
    const settled = settle(bed, list, gap, skinOf(bed, 0.1));
    const reached = unevenness(bed);
    if (!settled || reached >= variation) {
      restore(bed, before);
      list.count = -1;
      if (kick === 0) return;
    } else variation = reached;
    kick = 0;
  }
}

interface Run {
  gap: number;
  sweeps: number;
  kick: number;
  progress?: ((share: number) => void) | undefined;
}

/** Shakes the bed until the pieces lie dense and even, with a little overlap left. */
function anneal(bed: Bed, list: Neighbours, { gap, sweeps, kick, progress }: Run, source: Random): void {
  const rings = newEvenness();
  for (let n = 0; n < sweeps; n++) {
    const done = n / sweeps;
    if (done < CALM) shake(bed, source, kick * (1 - done / CALM));
    if (n % PUSH_EVERY === 0) {
      // At full strength to the end: let go sooner, one crystal spans the tool.
      disalign(bed, DISALIGN);
      evenOut(bed, rings, EVEN_GAIN * fade(done));
    }
    // A wide skin while pieces jump about, a narrow one when they hardly move.
    sweep(bed, list, gap, skinOf(bed, done < CALM ? 0.4 : 0.1));
    if (n % 64 === 0) progress?.(0.8 * done);
  }
}

function fade(done: number): number {
  const left = done < FADE_FROM ? 1 : (1 - done) / (1 - FADE_FROM);
  return FADE_TO + (1 - FADE_TO) * left * left * left;
}

function shrunk(field: Field, by: number): Field {
  return { ...field, radius: field.radius - by };
}

function skinOf({ shapes }: Bed, share: number): number {
  return share * Math.min(...shapes.reach);
}

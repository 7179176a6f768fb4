import type { Random } from "../../random.js";
import type { Field } from "../field.js";
import { type Bed, countOf, emptyBed, inField, restore, snapshot } from "./bed.js";
import { fill } from "./fill.js";
import { polish } from "./polish.js";
import { type Proved, prove } from "./prove.js";
import { seedBed } from "./seeds.js";
import { settle, settleOrThin } from "./settle.js";
import { shake } from "./shake.js";
import type { Shapes } from "./shapes.js";
import { MARGIN } from "./snap.js";

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
  /** Whether the number of pieces is all that counts, and their rings may come out as they like (see mayTouch). */
  tight?: boolean;
  /** Called now and then with the share done, 0 to 1. */
  progress?: ((share: number) => void) | undefined;
}

/** Kicks begin at a quarter of the reach and shrink to nothing at 70 % of the run (measured: weaker ones pack less in the same time). */
const FIRST_KICK = 0.25;
const CALM = 0.7;

/** The same where the number of pieces is all that counts: longer runs, which stronger kicks and less calm serve better. */
const TIGHT_KICK = 0.4;
const TIGHT_CALM = 0.9;

/** Light shakes of the finished bed: how many at most, their kicks, and their length as a share of the whole run. */
const HOPS = 3;
const HOP_KICK = 0.06;
const HOP = 0.08;

/** Variation times √count from which on no shake is worth its time (0.0033 for 225 pieces), and the gain from which on the next is. */
const EVEN_ENOUGH = 0.05;
const LITTLE = 0.05;

/** Larger beds are neither filled nor polished: they are even to a hundredth already, and each try moves the whole bed. */
const FINISHED = 2000;

/**
 * Share of the slope that the body force moves a piece by. From 30 % of the run on it fades to nearly nothing, so that
 * the pieces come to rest on each other with little overlap: let go at once, they would spring back into uneven rings.
 */
const EVEN_GAIN = 0.4;
const FADE_FROM = 0.3;
const FADE_TO = 0.005;

/** Most a piece is turned away from the common orientation at a time, radians. */
const DISALIGN = 0.5;

/** Sweeps from one push toward evenness and disorder to the next. */
const PUSH_EVERY = 3;

/** Lays the pieces of one start and proves them; what found no place is missing from the result. */
export function lay(start: Start, source: Random): Proved {
  const { shapes, field, gap, spread, mix, count, sweeps, tight = false, progress } = start;
  // Where pieces stand farther apart than the gap, the rim and kept circles get their half of the distance too.
  let bed = emptyBed(shapes, shrunk(field, (spread - gap + MARGIN) / 2), mix.length);
  seedBed(bed, mix.subarray(0, count), source);
  const [kick, calm] = tight ? [TIGHT_KICK, TIGHT_CALM] : [FIRST_KICK, CALM];
  anneal(bed, { gap: spread + MARGIN, sweeps, kick, calm, even: !tight, progress }, source);
  const skin = skinOf(bed, 0.1);
  if (spread > gap) {
    settle(bed, spread + MARGIN, skin);
    if (countOf(bed) <= FINISHED) finish(bed, spread + MARGIN, start, source);
  }
  bed = inField(bed, shrunk(field, MARGIN / 2));
  const near = gap + MARGIN;
  settleOrThin(bed, near, skin, mix);
  progress?.(0.85);
  if (spread === gap && countOf(bed) <= FINISHED) {
    fill(bed, near, skin, mix, source);
    if (!tight) finish(bed, near, start, source);
  }
  progress?.(0.95);
  return prove(bed, field, gap);
}

/**
 * Polishes the settled bed. While its rings are not even enough, shakes it lightly, lets it settle and polishes it again,
 * and keeps what came out evener; a shake that gained little is the last.
 */
function finish(bed: Bed, gap: number, { sweeps }: Start, source: Random): void {
  const skin = skinOf(bed, 0.1);
  let variation = polish(bed, gap, skin);
  let gain = 1;
  for (let n = 0; n < HOPS && gain > LITTLE && variation > EVEN_ENOUGH / Math.sqrt(countOf(bed)); n++) {
    const before = snapshot(bed);
    anneal(bed, { gap, sweeps: HOP * sweeps, kick: HOP_KICK, calm: CALM, even: true }, source);
    const reached = settle(bed, gap, skin) ? polish(bed, gap, skin) : Infinity;
    gain = 1 - reached / variation;
    if (gain > 0) variation = reached;
    else restore(bed, before);
  }
}

interface Run {
  gap: number;
  sweeps: number;
  kick: number;
  /** Share of the run at which kicks have shrunk to nothing. */
  calm: number;
  /** Whether the pieces are pushed toward even rings. */
  even: boolean;
  progress?: ((share: number) => void) | undefined;
}

/** Shakes the bed until the pieces lie dense and even, with a little overlap left. */
function anneal(bed: Bed, { gap, sweeps, kick, calm, even, progress }: Run, source: Random): void {
  const { engine } = bed;
  // A wide skin while pieces jump about, a narrow one when they hardly move.
  const [wide, narrow] = [skinOf(bed, 0.4), skinOf(bed, 0.1)];
  engine.forgetRings();
  for (let n = 0; n < sweeps; n++) {
    const done = n / sweeps;
    if (done < calm) shake(bed, source, kick * (1 - done / calm));
    if (n % PUSH_EVERY === 0) {
      // At full strength to the end: let go sooner, one crystal spans the tool.
      engine.disalign(DISALIGN);
      if (even) engine.evenOut(EVEN_GAIN * fade(done));
    }
    engine.sweep(gap, done < calm ? wide : narrow);
    if (n % 64 === 0) progress?.(0.8 * done);
  }
}

function fade(done: number): number {
  const left = done < FADE_FROM ? 1 : (1 - done) / (1 - FADE_FROM);
  return FADE_TO + (1 - FADE_TO) * left * left * left;
}

/** The field with all its circles farther from the pieces by `by` mm. */
function shrunk(field: Field, by: number): Field {
  const clear = field.clear.map((circle) => ({ ...circle, radius: circle.radius + by }));
  return { ...field, radius: field.radius - by, clear };
}

function skinOf({ shapes }: Bed, share: number): number {
  return share * Math.min(...shapes.reach);
}

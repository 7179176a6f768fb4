import { PI } from "../trig.js";
import { type Bed, shift } from "./bed.js";
import { footprintOf, newFootprint } from "./footprint.js";
import { FIRST_RING, LAST_RING, RINGS, radialVariation } from "./rings.js";

/** Most that one step may move a piece, as a share of its reach: keeps the push gentle against the contacts. */
const STEP_LIMIT = 0.05;

/** A lasting excess is pushed against ever harder: each step keeps this share of what was built up before … */
const MEMORY = 0.99;

/** … and adds the present excess, up to this much. Both measured: a longer memory winds up, a shorter one gives in. */
const BUILT_LIMIT = 10;

/**
 * Keeps the coverage even from ring to ring. `excess` is how far each ring is covered beyond its target (share of the mean),
 * `built` what it has built up over time, `push` the potential that drives the pieces off.
 */
export interface Evenness {
  excess: Float64Array;
  built: Float64Array;
  push: Float64Array;
  covered: Float64Array;
}

export function newEvenness(): Evenness {
  const rings = () => new Float64Array(RINGS + 1);
  return { excess: rings(), built: rings(), push: rings(), covered: rings() };
}

/**
 * Measures the coverage of every ring, then moves and turns each piece down the slope of the rings' excess: with its
 * footprint's slopes it feels −Σ Φ(ring) × slope, Φ the push of the ring.
 */
export function evenOut(bed: Bed, rings: Evenness, gain: number): void {
  const { shapes, kind } = bed;
  const { covered, push } = rings;
  const { area, alongX, alongY, turning } = print;
  covered.fill(0);
  for (let i = 0; i < bed.count; i++) {
    footprintOf(bed, i, print);
    let [dx, dy, turn] = [0, 0, 0];
    for (let ring = print.first; ring <= print.last; ring++) {
      covered[ring] = covered[ring]! + area[ring]!;
      dx -= push[ring]! * alongX[ring]!;
      dy -= push[ring]! * alongY[ring]!;
      turn -= push[ring]! * turning[ring]!;
    }
    if (gain === 0) continue;
    const k = kind[i]!;
    const limit = STEP_LIMIT * shapes.reach[k]!;
    const size = gain * Math.sqrt(dx * dx + dy * dy);
    const share = size > limit ? (gain * limit) / size : gain;
    turn = Math.max(-STEP_LIMIT, Math.min(STEP_LIMIT, gain * turn * shapes.turnEase[k]!));
    shift(bed, i, share * dx, share * dy, turn);
  }
  measure(bed, rings);
}

const print = newFootprint();

/** Shares from the areas covered, and from those the next push. */
function measure(bed: Bed, rings: Evenness): void {
  const width = bed.field.edge / RINGS;
  const { covered, excess, built, push } = rings;
  let sum = 0;
  let wanted = 0;
  for (let ring = 0; ring < RINGS; ring++) {
    covered[ring] = covered[ring]! / (PI * width * width * (2 * ring + 1));
    if (ring < FIRST_RING || ring > LAST_RING) continue;
    sum += covered[ring]!;
    wanted += bed.target[ring]!;
  }
  const mean = sum / wanted;
  if (!(mean > 0)) return;
  for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
    excess[ring] = covered[ring]! / mean - bed.target[ring]!;
    const sum = built[ring]! * MEMORY + excess[ring]!;
    built[ring] = Math.max(-BUILT_LIMIT, Math.min(BUILT_LIMIT, sum));
    // A piece counts for more in a small ring: the slope of the variance grows as 1 / ring area; its root is steadier.
    push[ring] = (excess[ring]! + built[ring]!) * Math.sqrt(RINGS / (2 * ring + 1));
  }
}

/** How far the rings are off their targets, see radialVariation. */
export function unevenness(bed: Bed): number {
  const rings = newEvenness();
  evenOut(bed, rings, 0);
  return radialVariation(rings.covered, bed.target);
}

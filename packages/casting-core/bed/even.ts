import { PI } from "../src/arc";
import { FIRST_RING, LAST_RING, RINGS } from "../src/layout/quality/ring-numbers";
import { alongX, alongY, covers, firstRing, footprintOf, lastRing, turning } from "./footprint";
import { count, kind, shift } from "./pieces";
import { fieldEdge, reach, target, turnEase } from "./shapes";

/** Most that one step may move a piece, as a share of its reach: keeps the push gentle against the contacts. */
const STEP_LIMIT: f64 = 0.05;

/** A lasting excess is pushed against ever harder: each step keeps this share of what was built up before … */
const MEMORY: f64 = 0.99;

/** … and adds the present excess, up to this much. Both measured: a longer memory winds up, a shorter one gives in. */
const BUILT_LIMIT: f64 = 10;

/** Share of each ring that the pieces cover, as it was measured last. */
export const covered = new StaticArray<f64>(RINGS + 1);

/** How far each ring is covered beyond its target (share of the mean), and what it has built up over time. */
const built = new StaticArray<f64>(RINGS + 1);

/** The potential that drives the pieces off a ring. */
const push = new StaticArray<f64>(RINGS + 1);

/** Forgets what the rings have built up. */
export function forgetRings(): void {
  for (let ring = 0; ring <= RINGS; ring++) {
    built[ring] = 0;
    push[ring] = 0;
  }
}

/**
 * Measures the coverage of every ring, then moves and turns each piece down the slope of the rings' excess: with its
 * footprint's slopes it feels −Σ Φ(ring) × slope, Φ the push of the ring.
 */
export function evenOut(gain: f64): void {
  for (let ring = 0; ring <= RINGS; ring++) covered[ring] = 0;
  for (let i = 0; i < count; i++) {
    footprintOf(i);
    let dx: f64 = 0;
    let dy: f64 = 0;
    let turn: f64 = 0;
    for (let ring = firstRing; ring <= lastRing; ring++) {
      covered[ring] = covered[ring] + covers[ring];
      dx -= push[ring] * alongX[ring];
      dy -= push[ring] * alongY[ring];
      turn -= push[ring] * turning[ring];
    }
    if (gain === 0) continue;
    const limit = STEP_LIMIT * reach[kind[i]];
    const size = gain * Math.sqrt(dx * dx + dy * dy);
    const share = size > limit ? (gain * limit) / size : gain;
    turn = Math.max(-STEP_LIMIT, Math.min(STEP_LIMIT, gain * turn * turnEase[kind[i]]));
    shift(i, share * dx, share * dy, turn);
  }
  measure();
}

/** Shares from the areas covered, and from those the next push. */
function measure(): void {
  const width = fieldEdge / RINGS;
  let sum: f64 = 0;
  let wanted: f64 = 0;
  for (let ring = 0; ring < RINGS; ring++) {
    covered[ring] = covered[ring] / (PI * width * width * (2 * ring + 1));
    if (ring < FIRST_RING || ring > LAST_RING) continue;
    sum += covered[ring];
    wanted += target[ring];
  }
  const mean = sum / wanted;
  if (!(mean > 0)) return;
  for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
    const excess = covered[ring] / mean - target[ring];
    built[ring] = Math.max(-BUILT_LIMIT, Math.min(BUILT_LIMIT, built[ring] * MEMORY + excess));
    // A piece counts for more in a small ring: the slope of the variance grows as 1 / ring area; its root is steadier.
    push[ring] = (excess + built[ring]) * Math.sqrt(<f64>RINGS / (2 * ring + 1));
  }
}

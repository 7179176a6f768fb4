import { acos, atan2, hypot, TAU } from "../../trig.js";
import type { PlacedPiece } from "../types.js";
import { span } from "./rings.js";

/** Samples round each circle: 2, 3, … 10 and 12 divide it, 11 to within a thirtieth of a degree. */
const ROUND = 2520;

/** Circles sampled, evenly from the axis to 93 % of the radius: half as many tell the figure to 0.006, these to 0.001 (measured on 52 layouts of 7 to 250 pieces). */
const CIRCLES = 180;

/** Within this share of the radius the occupancy is judged (contract, section 3: symmetry). */
const WITHIN = 0.93;

/** Samples by which a circle is turned for k = 2 to 12. */
const TURNS = Array.from({ length: 11 }, (_, n) => Math.round(ROUND / (n + 2)));

// Scratch, made once and written anew for every circle: a layout's starts are compared on a great many.

/** From `runsOf`: the ends of runs; how many samples are taken before each one, twice round the circle. */
const runs = new Int32Array(ROUND + 1);
const before = new Int32Array(2 * ROUND + 1);
/** Of `fillCircle`: which samples of the window stand inside all sides so far. */
const inside = new Uint8Array(ROUND);

/**
 * Largest correlation of the occupancy with itself turned by 360/k degrees, k = 2 to 12, within 93 % of `radius`: 0 for
 * a pattern that never comes back, 1 for a rosette. Sampled on `circles`, each weighted by its length.
 */
export function symmetry(pieces: readonly PlacedPiece[], radius: number, circles: number = CIRCLES): number {
  const taken = occupancy(pieces, (radius * WITHIN) / circles, circles);
  const both = new Float64Array(TURNS.length);
  let whole = 0;
  let filled = 0;
  for (let circle = 0; circle < circles; circle++) {
    const weight = circle + 0.5;
    const ends = runsOf(taken, circle * ROUND);
    whole += weight * ROUND;
    filled += weight * before[ROUND]!;
    for (let n = 0; n < TURNS.length; n++) {
      const turn = TURNS[n]!;
      let common = 0;
      for (let end = 0; end < ends; end += 2) common += before[runs[end + 1]! + turn]! - before[runs[end]! + turn]!;
      both[n]! += weight * common;
    }
  }
  const mean = filled / whole;
  if (mean === 0 || mean === 1) return 0;
  return Math.max(...both.map((common) => (common / whole - mean * mean) / (mean - mean * mean)));
}

/**
 * The likeness that the coverage of its rings alone gives a pattern, however its pieces lie in them: a hole about the axis
 * looks the same whichever way it is turned. `coverage`: see ringCoverage.
 */
export function ringLikeness(coverage: Float64Array): number {
  let [whole, filled, both] = [0, 0, 0];
  for (let ring = 0; ring < WITHIN * coverage.length; ring++) {
    const share = coverage[ring]!;
    const weight = 2 * ring + 1;
    whole += weight;
    filled += weight * share;
    both += weight * share * share;
  }
  const mean = filled / whole;
  return mean === 0 || mean === 1 ? 0 : (both / whole - mean * mean) / (mean - mean * mean);
}

/**
 * Writes the runs of taken samples of the circle at `start` into `runs`, from and to, and into `before` what lies before
 * each sample; how many ends there are comes back.
 */
function runsOf(taken: Uint8Array, start: number): number {
  let ends = 0;
  let sum = 0;
  let last = 0;
  for (let n = 0; n < ROUND; n++) {
    const here = taken[start + n]!;
    if (here !== last) runs[ends++] = n;
    last = here;
    sum += here;
    before[n + 1] = sum;
  }
  if (last === 1) runs[ends++] = ROUND;
  for (let n = 1; n <= ROUND; n++) before[ROUND + n] = sum + before[n]!;
  return ends;
}

/** 1 where a sample lies in a piece: circle by circle, `step` mm apart, ROUND samples each. */
function occupancy(pieces: readonly PlacedPiece[], step: number, circles: number): Uint8Array {
  const taken = new Uint8Array(circles * ROUND);
  for (const piece of pieces) {
    const [near, far] = span(piece);
    const [from, to] = windowOf(piece, near, far);
    const first = Math.max(0, Math.ceil(near / step - 0.5));
    const sides = piece.radius === undefined ? sidesOf(piece, from) : [];
    for (let circle = first; circle < circles && (circle + 0.5) * step < far; circle++) {
      const rho = (circle + 0.5) * step;
      if (piece.radius === undefined) fillCircle(taken, circle, rho, from, to, sides);
      else fillRound(taken, circle, rho, piece as Round);
    }
  }
  return taken;
}

/**
 * Marks the samples of one circle, of those `from` to `to`, that lie in a piece. Each straight side cuts off an arc about
 * its own normal: of angle φ at the distance h from the axis, the samples with ρ cos(θ − φ) > h lie outside.
 */
function fillCircle(
  taken: Uint8Array,
  circle: number,
  rho: number,
  from: number,
  to: number,
  sides: readonly Side[],
): void {
  inside.fill(1, 0, to - from + 1);
  for (let side = 0; side < sides.length; side++) {
    const { middle, height } = sides[side]!;
    if (height >= rho) continue;
    if (height <= -rho) return;
    const half = (acos(height / rho) * ROUND) / TAU;
    // The same arc a whole turn back and on: the window may begin anywhere.
    for (let turn = -ROUND; turn <= ROUND; turn += ROUND) {
      const first = Math.max(0, Math.ceil(middle - half + turn));
      const last = Math.min(to - from, Math.floor(middle + half + turn));
      if (first <= last) inside.fill(0, first, last + 1);
    }
  }
  const start = circle * ROUND;
  let at = ((from % ROUND) + ROUND) % ROUND;
  for (let n = 0; n <= to - from; n++) {
    if (inside[n] === 1) taken[start + at] = 1;
    at = at + 1 === ROUND ? 0 : at + 1;
  }
}

/** A straight side by the sample of its outward normal and its distance from the axis, negative where it faces inward. */
interface Side {
  middle: number;
  height: number;
}

/** The sides of a piece, samples counted `from` the first of its window. */
function sidesOf({ outline }: PlacedPiece, from: number): Side[] {
  return outline.map(([ax, ay], n) => {
    const [bx, by] = outline[(n + 1) % outline.length]!;
    const length = hypot(bx - ax, by - ay);
    return {
      middle: (atan2(ax - bx, by - ay) * ROUND) / TAU - 0.5 - from,
      height: length > 0 ? (ax * by - ay * bx) / length : Infinity,
    };
  });
}

/** A round piece takes an arc about its own direction: |θ − φ| < half with ρ² + d² − 2 ρ d cos half = r². */
function fillRound(taken: Uint8Array, circle: number, rho: number, { x, y, radius }: Round): void {
  const distance = hypot(x, y);
  const cosine = distance > 0 ? (rho * rho + distance * distance - radius * radius) / (2 * rho * distance) : -1;
  if (cosine >= 1) return;
  if (cosine <= -1) {
    if (distance < radius) taken.fill(1, circle * ROUND, (circle + 1) * ROUND);
    return;
  }
  const half = (acos(cosine) * ROUND) / TAU;
  const middle = (atan2(y, x) * ROUND) / TAU - 0.5;
  for (let n = Math.ceil(middle - half); n <= Math.floor(middle + half); n++) {
    taken[circle * ROUND + (((n % ROUND) + ROUND) % ROUND)] = 1;
  }
}

type Round = PlacedPiece & { radius: number };

/**
 * The window of a piece, first and last sample of a circle: all that its own circumscribed circle may hold, a whole turn at
 * most. Nothing beyond it is looked at.
 */
function windowOf({ x, y }: PlacedPiece, near: number, far: number): [number, number] {
  const distance = (near + far) / 2;
  const reach = far - distance;
  if (near <= 0 || reach >= 0.7 * distance) return [0, ROUND - 1];
  // The half angle's sine is reach / distance at most; the arc is at most a fifth longer below 0.7.
  const half = (1.2 * reach * ROUND) / (distance * TAU) + 1;
  const middle = (atan2(y, x) * ROUND) / TAU;
  return [Math.floor(middle - half), Math.ceil(middle + half)];
}

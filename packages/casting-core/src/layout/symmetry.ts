import { convexContains } from "../geometry/polygon.js";
import { atan2, sinCos, TAU } from "../trig.js";
import { span } from "./rings.js";
import type { PlacedPiece } from "./types.js";

/** Samples round each circle: 2, 3, … 10 and 12 divide it, 11 to within a thirtieth of a degree. */
const ROUND = 2520;

/** Circles sampled, evenly from the axis to 93 % of the radius. */
const CIRCLES = 90;

/** Within this share of the radius the occupancy is judged (contract, section 3: symmetry). */
const WITHIN = 0.93;

const DIRECTIONS = Array.from({ length: ROUND }, (_, n) => sinCos((TAU * (n + 0.5)) / ROUND));

/**
 * Largest correlation of the occupancy with itself turned by 360/k degrees, k = 2 to 12, within 93 % of `radius`: 0 for
 * a pattern that never comes back, 1 for a rosette. Sampled on circles, each weighted by its length.
 */
export function symmetry(pieces: readonly PlacedPiece[], radius: number): number {
  const taken = occupancy(pieces, (radius * WITHIN) / CIRCLES);
  let whole = 0;
  let filled = 0;
  for (let circle = 0; circle < CIRCLES; circle++) {
    const weight = circle + 0.5;
    whole += weight * ROUND;
    for (let n = 0; n < ROUND; n++) filled += weight * taken[circle * ROUND + n]!;
  }
  const mean = filled / whole;
  if (mean === 0 || mean === 1) return 0;
  let most = -1;
  for (let k = 2; k <= 12; k++) {
    const turn = Math.round(ROUND / k);
    let both = 0;
    for (let circle = 0; circle < CIRCLES; circle++) {
      const from = circle * ROUND;
      let common = 0;
      for (let n = 0; n < turn; n++) common += taken[from + n]! & taken[from + n + ROUND - turn]!;
      for (let n = turn; n < ROUND; n++) common += taken[from + n]! & taken[from + n - turn]!;
      both += (circle + 0.5) * common;
    }
    most = Math.max(most, (both / whole - mean * mean) / (mean - mean * mean));
  }
  return most;
}

/** 1 where a sample lies in a piece: circle by circle, `step` mm apart, ROUND samples each. */
function occupancy(pieces: readonly PlacedPiece[], step: number): Uint8Array {
  const taken = new Uint8Array(CIRCLES * ROUND);
  for (const piece of pieces) {
    const [near, far] = span(piece);
    const first = Math.max(0, Math.ceil(near / step - 0.5));
    for (let circle = first; circle < CIRCLES && (circle + 0.5) * step < far; circle++) {
      fillCircle(taken, circle, (circle + 0.5) * step, piece);
    }
  }
  return taken;
}

/** Marks the samples of one circle that lie in a piece. */
function fillCircle(taken: Uint8Array, circle: number, rho: number, piece: PlacedPiece): void {
  const [from, to] = reachRound(piece);
  for (let n = from; n <= to; n++) {
    const at = ((n % ROUND) + ROUND) % ROUND;
    const [s, c] = DIRECTIONS[at]!;
    if (holds(piece, rho * c, rho * s)) taken[circle * ROUND + at] = 1;
  }
}

/** First and last sample of a circle that a piece's own circumscribed circle may hold. */
function reachRound(piece: PlacedPiece): [number, number] {
  const [near, far] = span(piece);
  const distance = (near + far) / 2;
  const reach = far - distance;
  if (near <= 0 || reach >= 0.7 * distance) return [0, ROUND - 1];
  // The half angle's sine is reach / distance at most; the arc is at most a fifth longer below 0.7.
  const half = (1.2 * reach * ROUND) / (distance * TAU) + 1;
  const middle = (atan2(piece.y, piece.x) * ROUND) / TAU;
  return [Math.floor(middle - half), Math.ceil(middle + half)];
}

function holds(piece: PlacedPiece, x: number, y: number): boolean {
  if (piece.radius !== undefined) {
    const dx = x - piece.x;
    const dy = y - piece.y;
    return dx * dx + dy * dy <= piece.radius * piece.radius;
  }
  return convexContains(piece.outline, [x, y]);
}

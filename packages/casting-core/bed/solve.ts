import { FIRST_RING, LAST_RING, RINGS } from "../src/layout/quality/ring-numbers";
import { active, first, lean, leverFirst, leverSecond, limits, limitX, limitY, room, second } from "./limits";
import { count, kind } from "./pieces";
import { fieldEdge, turnEase } from "./shapes";
import { excess, piece, pull, ringStart, slopeTurn, slopeX, slopeY } from "./slopes";

/** Rounds through all rings and limits. */
const ROUNDS: i32 = 30;

/** What a ring's squared excess weighs against squared moves, in squared widths of a ring: 1 % against a third of a width. */
const WEIGHT: f64 = 900;

/** The moves: x and y in mm and turn in radians, piece by piece. */
export let moves = new StaticArray<f64>(0);

const ringGive = new StaticArray<f64>(RINGS);
let give = new StaticArray<f64>(0);
let ease = new StaticArray<f64>(0);

/** Makes room for the moves of all pieces and for as many limits as there are places. */
export function openSolve(): void {
  if (3 * count > moves.length) {
    moves = new StaticArray<f64>(3 * count);
    ease = new StaticArray<f64>(count);
  }
  if (first.length > give.length) give = new StaticArray<f64>(first.length);
  for (let i = 0; i < count; i++) ease[i] = turnEase[kind[i]];
}

/**
 * The moves nearest to those that `moves` comes with: they make ½ Σ (move − wish)² + ½ W Σ excess² least without passing
 * a limit, with excess and room taken as straight in the moves and turns counted by the radius of gyration. Goes through
 * the rows of this quadratic programme's dual, round after round (projected Gauss-Seidel: Hildreth, 1957), from where
 * `pull` and `lean` were left; they come out as its multipliers. Near the solution for the use it has.
 */
export function solve(): void {
  const width = fieldEdge / RINGS;
  const soft = 1 / (WEIGHT * width * width);
  for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
    ringGive[ring] = soft + giveOfRing(ring);
    drive(ring, pull[ring]);
  }
  for (let n = 0; n < limits; n++) {
    give[n] = giveOfLimit(active[n]);
    part(active[n], lean[active[n]]);
  }
  for (let round = 0; round < ROUNDS; round++) {
    for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
      const left = excess[ring] + soft * pull[ring] + gained(ring);
      const more = -left / ringGive[ring];
      pull[ring] = pull[ring] + more;
      drive(ring, more);
    }
    for (let n = 0; n < limits; n++) {
      const at = active[n];
      const leant = Math.max(0, lean[at] - roomLeft(at) / give[n]);
      const more = leant - lean[at];
      if (more === 0) continue;
      lean[at] = leant;
      part(at, more);
    }
  }
}

/** What the moves add to a ring's excess. */
function gained(ring: i32): f64 {
  let sum: f64 = 0;
  const last = ringStart[ring + 1];
  for (let p = ringStart[ring]; p < last; p++) {
    const at = 3 * piece[p];
    sum += slopeX[p] * moves[at] + slopeY[p] * moves[at + 1] + slopeTurn[p] * moves[at + 2];
  }
  return sum;
}

/** How far a ring's excess gives way to a pull of 1. */
function giveOfRing(ring: i32): f64 {
  let sum: f64 = 0;
  for (let p = ringStart[ring]; p < ringStart[ring + 1]; p++)
    sum += slopeX[p] * slopeX[p] + slopeY[p] * slopeY[p] + slopeTurn[p] * slopeTurn[p] * ease[piece[p]];
  return sum;
}

/** Adds to the moves what a ring's pull does. */
function drive(ring: i32, by: f64): void {
  const last = ringStart[ring + 1];
  for (let p = ringStart[ring]; p < last; p++) {
    const at = 3 * piece[p];
    moves[at] = moves[at] + by * slopeX[p];
    moves[at + 1] = moves[at + 1] + by * slopeY[p];
    moves[at + 2] = moves[at + 2] + by * slopeTurn[p] * ease[piece[p]];
  }
}

/** What the moves leave of a limit's room, mm. */
function roomLeft(at: i32): f64 {
  const a = 3 * first[at];
  const left = room[at] - limitX[at] * moves[a] - limitY[at] * moves[a + 1] - leverFirst[at] * moves[a + 2];
  if (second[at] < 0) return left;
  const b = 3 * second[at];
  return left + limitX[at] * moves[b] + limitY[at] * moves[b + 1] + leverSecond[at] * moves[b + 2];
}

/** How far a limit gives way to a lean of 1. */
function giveOfLimit(at: i32): f64 {
  const own = 1 + leverFirst[at] * leverFirst[at] * ease[first[at]];
  return second[at] < 0 ? own : own + 1 + leverSecond[at] * leverSecond[at] * ease[second[at]];
}

/** Adds to the moves what leaning on a limit does: it parts the two. */
function part(at: i32, by: f64): void {
  const a = 3 * first[at];
  moves[a] = moves[a] - by * limitX[at];
  moves[a + 1] = moves[a + 1] - by * limitY[at];
  moves[a + 2] = moves[a + 2] - by * leverFirst[at] * ease[first[at]];
  if (second[at] < 0) return;
  const b = 3 * second[at];
  moves[b] = moves[b] + by * limitX[at];
  moves[b + 1] = moves[b + 1] + by * limitY[at];
  moves[b + 2] = moves[b + 2] + by * leverSecond[at] * ease[second[at]];
}

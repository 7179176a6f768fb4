import type { Bed } from "./bed.js";
import type { Limits } from "./limits.js";
import { FIRST_RING, LAST_RING, RINGS } from "./rings.js";
import type { Slopes } from "./slopes.js";

/** Rounds through all rings and limits. */
const ROUNDS = 30;

/** What a ring's squared excess weighs against squared moves, in squared widths of a ring: 1 % against a third of a width. */
const WEIGHT = 900;

/**
 * The moves (x, y in mm and turn in radians, piece by piece) nearest to those that `moves` comes with: they make
 * ½ Σ (move − wish)² + ½ W Σ excess² least without passing a limit, with excess and room taken as straight in the moves
 * and turns counted by the radius of gyration. Goes through the rows of this quadratic programme's dual, round after
 * round (projected Gauss-Seidel: Hildreth, 1957), from where `slopes.pull` and `limits.lean` were left; they come out as
 * its multipliers. Near the solution for the use it has.
 */
export function solve(bed: Bed, limits: Limits, slopes: Slopes, moves: Float64Array): void {
  const width = bed.field.edge / RINGS;
  const soft = 1 / (WEIGHT * width * width);
  const ease = Float64Array.from({ length: bed.count }, (_, i) => bed.shapes.turnEase[bed.kind[i]!]!);
  const { excess, pull } = slopes;
  const { active, count, lean } = limits;
  const ringGive = new Float64Array(RINGS);
  for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
    ringGive[ring] = soft + giveOfRing(slopes, ring, ease);
    drive(slopes, ring, pull[ring]!, ease, moves);
  }
  const give = new Float64Array(count);
  for (let n = 0; n < count; n++) {
    give[n] = giveOfLimit(limits, active[n]!, ease);
    part(limits, active[n]!, lean[active[n]!]!, ease, moves);
  }
  for (let round = 0; round < ROUNDS; round++) {
    for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
      const left = excess[ring]! + soft * pull[ring]! + gained(slopes, ring, moves);
      const more = -left / ringGive[ring]!;
      pull[ring] = pull[ring]! + more;
      drive(slopes, ring, more, ease, moves);
    }
    for (let n = 0; n < count; n++) {
      const at = active[n]!;
      const leant = Math.max(0, lean[at]! - roomLeft(limits, at, moves) / give[n]!);
      const more = leant - lean[at]!;
      if (more === 0) continue;
      lean[at] = leant;
      part(limits, at, more, ease, moves);
    }
  }
}

/** What the moves add to a ring's excess. */
function gained({ start, piece, alongX, alongY, turning }: Slopes, ring: number, moves: Float64Array): number {
  let sum = 0;
  for (let p = start[ring]!; p < start[ring + 1]!; p++) {
    const at = 3 * piece[p]!;
    sum += alongX[p]! * moves[at]! + alongY[p]! * moves[at + 1]! + turning[p]! * moves[at + 2]!;
  }
  return sum;
}

/** How far a ring's excess gives way to a pull of 1. */
function giveOfRing({ start, piece, alongX, alongY, turning }: Slopes, ring: number, ease: Float64Array): number {
  let sum = 0;
  for (let p = start[ring]!; p < start[ring + 1]!; p++)
    sum += alongX[p]! * alongX[p]! + alongY[p]! * alongY[p]! + turning[p]! * turning[p]! * ease[piece[p]!]!;
  return sum;
}

/** Adds to the moves what a ring's pull does. */
function drive(slopes: Slopes, ring: number, pull: number, ease: Float64Array, moves: Float64Array): void {
  const { start, piece, alongX, alongY, turning } = slopes;
  for (let p = start[ring]!; p < start[ring + 1]!; p++) {
    const i = piece[p]!;
    moves[3 * i]! += pull * alongX[p]!;
    moves[3 * i + 1]! += pull * alongY[p]!;
    moves[3 * i + 2]! += pull * turning[p]! * ease[i]!;
  }
}

/** What the moves leave of a limit's room, mm. */
function roomLeft(limits: Limits, at: number, moves: Float64Array): number {
  const { first, second, axisX, axisY, leverFirst, leverSecond, room } = limits;
  const a = 3 * first[at]!;
  const b = 3 * second[at]!;
  const left = room[at]! - axisX[at]! * moves[a]! - axisY[at]! * moves[a + 1]! - leverFirst[at]! * moves[a + 2]!;
  if (b < 0) return left;
  return left + axisX[at]! * moves[b]! + axisY[at]! * moves[b + 1]! + leverSecond[at]! * moves[b + 2]!;
}

/** How far a limit gives way to a lean of 1. */
function giveOfLimit({ first, second, leverFirst, leverSecond }: Limits, at: number, ease: Float64Array): number {
  const give = 1 + leverFirst[at]! * leverFirst[at]! * ease[first[at]!]!;
  return second[at]! < 0 ? give : give + 1 + leverSecond[at]! * leverSecond[at]! * ease[second[at]!]!;
}

/** Adds to the moves what leaning on a limit does: it parts the two. */
function part(limits: Limits, at: number, lean: number, ease: Float64Array, moves: Float64Array): void {
  const { first, second, axisX, axisY, leverFirst, leverSecond } = limits;
  const i = first[at]!;
  const j = second[at]!;
  moves[3 * i]! -= lean * axisX[at]!;
  moves[3 * i + 1]! -= lean * axisY[at]!;
  moves[3 * i + 2]! -= lean * leverFirst[at]! * ease[i]!;
  if (j < 0) return;
  moves[3 * j]! += lean * axisX[at]!;
  moves[3 * j + 1]! += lean * axisY[at]!;
  moves[3 * j + 2]! += lean * leverSecond[at]! * ease[j]!;
}

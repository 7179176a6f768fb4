import { points } from "../channels/strips";
import { hypot } from "../src/arc";
import { enters, overlap } from "./box";
import { boxX, boxY, CLEAR, cut, firstOf, height, leaderX, leaderY, size, startX, startY, width } from "./place";

/*
 * What has its place already: the index, the dots where cuts start, the numbers of earlier cuts and their leaders.
 * Lengths mm.
 */

/** Between a number and the index, or another number on its line: nearer it would be read with it. */
const APART: f64 = 1.2;
/** The same to either side of the index's word: a number there is read as the word's. */
const BY_WORD: f64 = 6;
/** No leader with its number reaches further from its start. */
const REACH: f64 = 20;

/** Radius of the dots. */
let dot: f64 = 0;

/** The boxes of the index: its stroke and its word, x, y, width, height; written by the caller. */
export const index = new StaticArray<f64>(8);

/** What a place takes: its size, its box, where its leader ends. */
const TAKES = 7;
/** Where the number of each cut stands, in its order; read by the caller. */
export let taken = new StaticArray<f64>(0);

/** The cuts whose dots, and the earlier ones whose numbers, are within reach of the cut's start. */
let dots: i32 = 0;
let dotOf = new StaticArray<i32>(0);
let numbers: i32 = 0;
let numberOf = new StaticArray<i32>(0);

/** Makes room for so many cuts with dots of this radius. */
export function openTaken(cuts: i32, radius: f64): void {
  dot = radius;
  taken = new StaticArray<f64>(TAKES * cuts);
  dotOf = new StaticArray<i32>(cuts);
  numberOf = new StaticArray<i32>(cuts);
}

/** The cut's number stands where it was laid last. */
export function take(): void {
  const at = TAKES * cut;
  taken[at] = size;
  taken[at + 1] = boxX;
  taken[at + 2] = boxY;
  taken[at + 3] = width;
  taken[at + 4] = height;
  taken[at + 5] = leaderX;
  taken[at + 6] = leaderY;
}

/** Finds the dots and the numbers that may be in the way of the cut's. */
export function lookRound(): void {
  dots = 0;
  numbers = 0;
  const left = startX - REACH;
  const top = startY - REACH;
  for (let n = 0; n < dotOf.length; n++) {
    const dx = points[firstOf(n)] - startX;
    const dy = points[firstOf(n) + 1] - startY;
    if (hypot(dx, dy) < REACH) dotOf[dots++] = n;
    // What stands in reach of another start lies no further from it than that.
    if (n >= cut || Math.abs(dx) > 2 * REACH || Math.abs(dy) > 2 * REACH) continue;
    if (leaderEnters(n, left, top, 2 * REACH, 2 * REACH) || numberNear(n, 0, left, top, 2 * REACH, 2 * REACH))
      numberOf[numbers++] = n;
  }
}

/** Whether nothing of all this is in the way of the place laid last, whose number and its room take the box given. */
export function isApart(x: f64, y: f64, w: f64, h: f64): bool {
  const by = APART - CLEAR;
  const bySide = BY_WORD - APART;
  if (overlap(index[0] - by, index[1] - by, index[2] + 2 * by, index[3] + 2 * by, x, y, w, h)) return false;
  if (overlap(index[4] - bySide - by, index[5] - by, index[6] + 2 * bySide + 2 * by, index[7] + 2 * by, x, y, w, h))
    return false;
  if (enters(startX, startY, leaderX, leaderY, index[4], index[5], index[6], index[7])) return false;
  for (let n = 0; n < dots; n++) {
    const at = firstOf(dotOf[n]);
    if (overlap(points[at] - dot, points[at + 1] - dot, 2 * dot, 2 * dot, x, y, w, h)) return false;
  }
  for (let n = 0; n < numbers; n++) {
    if (numberNear(numberOf[n], by, x, y, w, h) || leaderEnters(numberOf[n], x, y, w, h)) return false;
    if (entersNumber(numberOf[n])) return false;
  }
  return true;
}

/** Whether the number of cut `n`, so much wider to either side that 6 and 32 are not read as 632, overlaps a box. */
function numberNear(n: i32, by: f64, x: f64, y: f64, w: f64, h: f64): bool {
  const at = TAKES * n;
  return overlap(taken[at + 1] - by, taken[at + 2], taken[at + 3] + 2 * by, taken[at + 4], x, y, w, h);
}

/** Whether the leader of cut `n` has any part in a box. */
function leaderEnters(n: i32, x: f64, y: f64, w: f64, h: f64): bool {
  return enters(points[firstOf(n)], points[firstOf(n) + 1], taken[TAKES * n + 5], taken[TAKES * n + 6], x, y, w, h);
}

/** Whether the leader laid last comes near the number of cut `n`. */
function entersNumber(n: i32): bool {
  const at = TAKES * n;
  const by = CLEAR / 2;
  const x = taken[at + 1] - by;
  const y = taken[at + 2] - by;
  return enters(startX, startY, leaderX, leaderY, x, y, taken[at + 3] + 2 * by, taken[at + 4] + 2 * by);
}

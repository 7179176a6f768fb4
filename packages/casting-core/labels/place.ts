import { lineEnd, points } from "../channels/strips";
import { cos, sin, TAU } from "../src/arc";

/*
 * The places that a number may have: its size, the length of its leader and the direction from its cut's start, all three
 * in one index; and what follows from that for the place laid last. Lengths mm.
 */

/** Sizes of the numbers: the first that finds room; the last ones serve tools of tiny pieces. */
const SIZES: StaticArray<f64> = [4, 3.5, 3, 2.5, 1.8, 1.2];
/** So many of them are at least 2.5 mm: a number that is nearer to another cut is better than a still smaller one. */
const LARGE = 4;
/** Lengths of leaders that are tried. */
const LENGTHS: StaticArray<f64> = [1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 9, 10, 12];
/** Directions that are tried. */
export const DIRECTIONS = 48;
/** Places from 0 on are of sizes that are read with ease up to the first, of any size up to the second. */
export const READABLE: i32 = LARGE * LENGTHS.length * DIRECTIONS;
export const PLACES: i32 = SIZES.length * LENGTHS.length * DIRECTIONS;
/** The smallest size with the shortest leader. */
export const LEAST: i32 = PLACES - LENGTHS.length * DIRECTIONS;
/** Between a number and whatever is drawn. */
export const CLEAR: f64 = 0.35;

/** The letters' height and each number's width as shares of its size; the widths are written by the caller. */
let tall: f64 = 0;
export let wide = new StaticArray<f64>(0);

const sine = new StaticArray<f64>(DIRECTIONS);
const cosine = new StaticArray<f64>(DIRECTIONS);

/** The cut whose number is placed, and where it starts. */
export let cut: i32 = 0;
export let startX: f64 = 0;
export let startY: f64 = 0;

/** The place laid last: size and box of the number, and where its leader ends. */
export let size: f64 = 0;
export let boxX: f64 = 0;
export let boxY: f64 = 0;
export let width: f64 = 0;
export let height: f64 = 0;
export let leaderX: f64 = 0;
export let leaderY: f64 = 0;

/** Makes room for the widths of so many numbers. */
export function openPlaces(cuts: i32, height: f64): void {
  tall = height;
  wide = new StaticArray<f64>(cuts);
  for (let n = 0; n < DIRECTIONS; n++) {
    const angle = (TAU * n) / DIRECTIONS;
    sine[n] = sin(angle);
    cosine[n] = cos(angle);
  }
}

/** Where the x of the first point of a line stands among the points. */
export function firstOf(line: i32): i32 {
  return line > 0 ? 2 * lineEnd[line - 1] : 0;
}

/** Turns to the places of cut `n`. */
export function turnTo(n: i32): void {
  cut = n;
  startX = points[firstOf(n)];
  startY = points[firstOf(n) + 1];
}

/** Lays the cut's number in place `at`. */
export function lay(at: i32): void {
  const length = LENGTHS[(at / DIRECTIONS) % LENGTHS.length];
  const s = sine[at % DIRECTIONS];
  const c = cosine[at % DIRECTIONS];
  size = SIZES[at / (DIRECTIONS * LENGTHS.length)];
  width = wide[cut] * size;
  height = tall * size;
  // From the number's middle to its box along the leader.
  const inside = Math.min(width / 2 / Math.max(1e-9, Math.abs(c)), height / 2 / Math.max(1e-9, Math.abs(s)));
  const far = length + inside;
  boxX = startX + far * c - width / 2;
  boxY = startY + far * s - height / 2;
  // The leader ends clear of the number.
  const reach = Math.max(0, length - CLEAR);
  leaderX = startX + reach * c;
  leaderY = startY + reach * s;
}

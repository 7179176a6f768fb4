import { lineEnd, points } from "../channels/strips";
import { enters } from "./box";
import { beginFree, isFree } from "./free";
import { justNearer, measure, ownMiddle, wellNearer } from "./nearer";
import {
  cut,
  DIRECTIONS,
  firstOf,
  LEAST,
  lay,
  leaderX,
  leaderY,
  openPlaces,
  PLACES,
  READABLE,
  startX,
  startY,
  turnTo,
} from "./place";
import { lookRound, openTaken, take } from "./taken";

/*
 * Where the numbers of cuts stand. Of the lines the first are the cuts, then come those that a leader may not cross, then
 * others, last the cuts' arrows.
 */

let cuts: i32 = 0;
let closed: i32 = 0;

/** The box of the cut's arrow. */
let arrowX: f64 = 0;
let arrowY: f64 = 0;
let arrowWidth: f64 = 0;
let arrowHeight: f64 = 0;

/**
 * Makes room for the numbers of the first `count` lines, their letters as high as this share of their size; lines below
 * `walls` may not be crossed; dots of this radius, mm, are where the cuts start.
 */
export function openNumbers(count: i32, walls: i32, height: f64, dot: f64): void {
  cuts = count;
  closed = walls;
  openPlaces(count, height);
  openTaken(count, dot);
}

/** Places one number after the other: the largest that finds room; at worst over lines, as small and near as can be. */
export function placeNumbers(): void {
  for (let n = 0; n < cuts; n++) {
    turnTo(n);
    boxArrow();
    lookRound();
    beginFree();
    let at = placeIn(0, READABLE);
    if (at < 0) at = placeIn(READABLE, PLACES);
    lay(at < 0 ? LEAST : at);
    take();
  }
}

/**
 * A free place from one to another, −1 if there is none. In the first size with the shortest leader that has any: of those
 * off the cut's arrow and plainly nearer to the cut than to any other, the nearest; else the first of all off it and nearer
 * at all; else the first that is free.
 */
function placeIn(from: i32, to: i32): i32 {
  let first = -1;
  let firstNearer = -1;
  for (let ring = from; ring < to; ring += DIRECTIONS) {
    let best = -1;
    let least: f64 = Infinity;
    for (let at = ring; at < ring + DIRECTIONS; at++) {
      lay(at);
      if (!isFree(closed)) continue;
      if (first < 0) first = at;
      if (enters(startX, startY, leaderX, leaderY, arrowX, arrowY, arrowWidth, arrowHeight)) continue;
      measure(cuts);
      if (firstNearer < 0 && justNearer()) firstNearer = at;
      if (!wellNearer() || ownMiddle >= least) continue;
      best = at;
      least = ownMiddle;
    }
    if (best >= 0) return best;
  }
  return firstNearer < 0 ? first : firstNearer;
}

/** Puts the box round the arrow of the cut. */
function boxArrow(): void {
  const line = lineEnd.length - cuts + cut;
  let right: f64 = -Infinity;
  let low: f64 = -Infinity;
  arrowX = Infinity;
  arrowY = Infinity;
  for (let at = firstOf(line); at < 2 * lineEnd[line]; at += 2) {
    arrowX = Math.min(arrowX, points[at]);
    right = Math.max(right, points[at]);
    arrowY = Math.min(arrowY, points[at + 1]);
    low = Math.max(low, points[at + 1]);
  }
  arrowWidth = right - arrowX;
  arrowHeight = low - arrowY;
}

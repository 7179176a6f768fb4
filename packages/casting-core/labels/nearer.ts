import { nearBar, nearBars } from "../channels/near";
import { barX, barY } from "../channels/strips";
import { hypot } from "../src/arc";
import { lineToBox, pointToLine } from "./box";
import { boxX, boxY, cut, height, startX, startY, width } from "./place";
import { endX, endY, findRound, lineOf } from "./strokes";

/*
 * Whether a number stands nearer to its own cut than to any other. Lengths mm.
 */

/** How much nearer its own cut must be. */
const NEARER: f64 = 0.2;

/** How far the middle of the number laid last and its box are from its own cut, and from the nearest other one. */
export let ownMiddle: f64 = 0;
let ownBox: f64 = 0;
let otherMiddle: f64 = 0;
let otherBox: f64 = 0;

/** Measures how far the number laid last is from the first `cuts` lines. */
export function measure(cuts: i32): void {
  ownMiddle = Infinity;
  ownBox = Infinity;
  otherMiddle = Infinity;
  otherBox = Infinity;
  const x = boxX + width / 2;
  const y = boxY + height / 2;
  const half = hypot(width, height) / 2;
  // The cut's own start is as near as its leader is long: what lies further off than that cannot be nearer.
  findRound(x, y, 0, 0, hypot(x - startX, y - startY) + half + NEARER);
  for (let n = 0; n < nearBars; n++) {
    const s = nearBar[n];
    if (lineOf[s] >= cuts) continue;
    const middle = pointToLine(x, y, barX[s], barY[s], endX[s], endY[s]);
    if (lineOf[s] === cut) {
      ownMiddle = Math.min(ownMiddle, middle);
      if (middle < ownBox + half) ownBox = Math.min(ownBox, toBox(s));
    } else {
      otherMiddle = Math.min(otherMiddle, middle);
      if (middle < otherBox + half) otherBox = Math.min(otherBox, toBox(s));
    }
  }
}

function toBox(s: i32): f64 {
  return lineToBox(barX[s], barY[s], endX[s], endY[s], boxX, boxY, width, height);
}

/** Whether the number measured last stands plainly nearer to its own cut than to any other. */
export function wellNearer(): bool {
  return ownMiddle + NEARER < otherMiddle && ownBox + NEARER < otherBox;
}

/** Whether its middle at least is nearer to its own cut. */
export function justNearer(): bool {
  return ownMiddle < otherMiddle;
}

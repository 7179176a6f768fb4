import { nearBar, nearBars } from "../channels/near";
import { barX, barY } from "../channels/strips";
import { hypot } from "../src/arc";
import { cross, pointToLine } from "./box";
import { boxX, boxY, CLEAR, height, leaderX, leaderY, startX, startY, width } from "./place";
import { endX, endY, findRound, lineOf, strokeEnters } from "./strokes";
import { isApart } from "./taken";

/*
 * Whether nothing is in the way of a number, and of its leader. Lengths mm.
 */

/** Room beside a leader to the lines that it runs along. */
const BESIDE: f64 = 0.45;
/** What comes so near to a start meets in it: places are rounded to 1 µm, the tool's edge is drawn in chords. */
const MEETS: f64 = 2e-3;

/** The stroke that was last found in the room of a number: most often it is in that of the next as well. */
let lastHit: i32 = -1;

/** Forgets what was found before. */
export function beginFree(): void {
  lastHit = -1;
}

/** Whether nothing is in the way of the place laid last; lines below `closed` may not be crossed by a leader. */
export function isFree(closed: i32): bool {
  const x = boxX - CLEAR;
  const y = boxY - CLEAR;
  const w = width + 2 * CLEAR;
  const h = height + 2 * CLEAR;
  return isClear(x, y, w, h) && isApart(x, y, w, h) && leaderFree(closed);
}

/** Whether nothing is drawn in a box. */
function isClear(x: f64, y: f64, w: f64, h: f64): bool {
  if (lastHit >= 0 && strokeEnters(lastHit, x, y, w, h)) return false;
  findRound(x, y, w, h, 0);
  for (let n = 0; n < nearBars; n++) {
    if (!strokeEnters(nearBar[n], x, y, w, h)) continue;
    lastHit = nearBar[n];
    return false;
  }
  return true;
}

/** Whether the leader laid last runs apart from the lines that meet in its start, and crosses none. */
function leaderFree(closed: i32): bool {
  const x = Math.min(startX, leaderX);
  const y = Math.min(startY, leaderY);
  const w = Math.max(startX, leaderX) - x;
  const h = Math.max(startY, leaderY) - y;
  findRound(x, y, w, h, BESIDE);
  for (let n = 0; n < nearBars; n++) {
    const s = nearBar[n];
    if (lineOf[s] >= closed) continue;
    if (runsBeside(s, 0.5) || runsBeside(s, 0.75) || runsBeside(s, 1)) return false;
    if (!strokeEnters(s, x, y, w, h) || meets(s)) continue;
    if (cross(startX, startY, leaderX, leaderY, barX[s], barY[s], endX[s], endY[s])) return false;
  }
  return true;
}

/** Whether a stroke comes near the leader at a share of its length. */
function runsBeside(s: i32, share: f64): bool {
  const dx = leaderX - startX;
  const dy = leaderY - startY;
  const half = Math.min(BESIDE, 0.5 * share * hypot(dx, dy));
  return strokeEnters(s, startX + dx * share - half, startY + dy * share - half, 2 * half, 2 * half);
}

/** Whether a stroke meets others in the start. */
function meets(s: i32): bool {
  return pointToLine(startX, startY, barX[s], barY[s], endX[s], endY[s]) < MEETS;
}

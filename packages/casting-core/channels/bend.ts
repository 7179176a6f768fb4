import { atan2, hypot, TAU } from "../src/arc";
import { arcInBar, arcInDisc } from "./cover";
import { add, forget, intervals, leaveFree } from "./intervals";
import { findNear, nearBar, nearBars, nearDisc, nearDiscs } from "./near";
import { openArcs, roundArea } from "./round";
import { after, alongX, alongY, barX, barY, before, discX, discY, length } from "./strips";

/**
 * What disc `d`, of radius `half`, at a bend adds to the channels' area, mm² (as openArcs): its own two bars leave only
 * the arc between their outer sides open, and others may cover some of that. Where a line turns nearly back, the whole
 * circle is looked at.
 */
export function bendArea(d: i32, half: f64, radius: f64): f64 {
  const x = discX[d];
  const y = discY[d];
  const ux = alongX[before[d]];
  const uy = alongY[before[d]];
  const vx = alongX[after[d]];
  const vy = alongY[after[d]];
  const turn = atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  const long = Math.abs(turn);
  // From one outer normal to the other, anticlockwise.
  const side = turn > 0 ? half : -half;
  const fromX = side * (turn > 0 ? uy : vy);
  const fromY = -side * (turn > 0 ? ux : vx);
  const toX = side * (turn > 0 ? vy : uy);
  const toY = -side * (turn > 0 ? vx : ux);
  const both = hypot(fromX + toX, fromY + toY);
  if (both < half) return roundArea(d, half, radius);
  const middleX = x + (half * (fromX + toX)) / both;
  const middleY = y + (half * (fromY + toY)) / both;
  const reach = (half * long) / 2;

  const out = hypot(middleX, middleY) - radius;
  if (out >= reach) return 0;
  forget(0);
  if (out > -reach) {
    arcInDisc(x, y, half, 0, 0, radius);
    leaveFree(0, 0, TAU);
  }
  findNear(middleX, middleY, reach + half);
  for (let n = 0; n < nearDiscs; n++) {
    const other = nearDisc[n];
    if (other === d) continue;
    const distance = hypot(middleX - discX[other], middleY - discY[other]);
    if (distance <= half - reach) return 0;
    if (distance < half + reach) arcInDisc(x, y, half, discX[other], discY[other], half);
  }
  for (let n = 0; n < nearBars; n++) {
    const b = nearBar[n];
    if (b === before[d] || b === after[d]) continue;
    const distance = besideBar(middleX, middleY, b);
    if (distance <= half - reach) return 0;
    if (distance < half + reach) arcInBar(x, y, half, b, half);
  }
  if (intervals === 0) return (half * half * long + x * (toY - fromY) - y * (toX - fromX)) / 2;
  const angle = atan2(fromY, fromX);
  const from = angle < 0 ? angle + TAU : angle;
  const to = from + long;
  // What lies outside the two bars' own arc is not open either.
  if (to > TAU) add(to - TAU, from);
  else {
    add(0, from);
    add(to, TAU);
  }
  return openArcs(x, y, half);
}

/** Distance of (x, y) from bar `b`'s line within its ends. */
function besideBar(x: f64, y: f64, b: i32): f64 {
  const along = (x - barX[b]) * alongX[b] + (y - barY[b]) * alongY[b];
  const t = Math.max(0, Math.min(length[b], along));
  return hypot(x - barX[b] - t * alongX[b], y - barY[b] - t * alongY[b]);
}

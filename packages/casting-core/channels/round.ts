import { cos, sin, TAU } from "../src/arc";
import { arcInBar, arcInDisc } from "./cover";
import { ends, forget, intervals, leaveFree } from "./intervals";
import { findNear, nearBar, nearBars, nearDisc, nearDiscs } from "./near";
import { discX, discY } from "./strips";

/** What the whole circle of disc `d`, of radius `half`, adds to the channels' area where nothing covers it. */
export function roundArea(d: i32, half: f64, radius: f64): f64 {
  const x = discX[d];
  const y = discY[d];
  forget(0);
  arcInDisc(x, y, half, 0, 0, radius);
  leaveFree(0, 0, TAU);
  findNear(x, y, 2 * half);
  for (let n = 0; n < nearBars; n++) arcInBar(x, y, half, nearBar[n], half);
  for (let n = 0; n < nearDiscs; n++) {
    const other = nearDisc[n];
    if (other !== d) arcInDisc(x, y, half, discX[other], discY[other], half);
  }
  return openArcs(x, y, half);
}

/** What the arcs that the intervals leave open add to the area they bound. */
export function openArcs(x: f64, y: f64, r: f64): f64 {
  leaveFree(0, 0, TAU);
  let area: f64 = 0;
  for (let n = 0; n < intervals; n++) area += arcArea(x, y, r, ends[2 * n], ends[2 * n + 1]);
  return area;
}

/** What the arc from `from` to `to` adds to the area it bounds (Green's theorem: half the integral of x dy − y dx). */
export function arcArea(x: f64, y: f64, r: f64, from: f64, to: f64): f64 {
  return (r * (r * (to - from) + x * (sin(to) - sin(from)) - y * (cos(to) - cos(from)))) / 2;
}

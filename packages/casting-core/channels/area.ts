import { hypot, TAU } from "../src/arc";
import { bendArea } from "./bend";
import { arcInBar, arcInDisc, lineInBar, lineInDisc } from "./cover";
import { ends, forget, intervals, leaveFree } from "./intervals";
import { findNear, nearBar, nearBars, nearDisc, nearDiscs } from "./near";
import { roundArea } from "./round";
import { alongX, alongY, bars, barX, barY, before, discs, discX, discY, length } from "./strips";

/** Area of what the discs, of radius `half`, and the bars, twice as wide, cover within `radius` of the origin. */
export function unionArea(half: f64, radius: f64): f64 {
  let area: f64 = 0;
  for (let d = 0; d < discs; d++) area += before[d] < 0 ? roundArea(d, half, radius) : bendArea(d, half, radius);
  for (let b = 0; b < bars; b++) area += sidesArea(b, half, radius);
  return area + edgeArea(half, radius);
}

/** What bar `b`'s sides add to the area where nothing covers them. */
function sidesArea(b: i32, half: f64, radius: f64): f64 {
  const ux = alongX[b];
  const uy = alongY[b];
  const long = length[b];
  findNear(barX[b] + (ux * long) / 2, barY[b] + (uy * long) / 2, long / 2 + 2 * half);
  let area: f64 = 0;
  for (let side: f64 = -1; side <= 1; side += 2) {
    const x = barX[b] + side * half * uy;
    const y = barY[b] - side * half * ux;
    forget(0);
    lineInDisc(x, y, b, 0, 0, radius);
    leaveFree(0, 0, long);
    for (let n = 0; n < nearBars; n++) if (nearBar[n] !== b) lineInBar(x, y, b, nearBar[n], half);
    for (let n = 0; n < nearDiscs; n++) lineInDisc(x, y, b, discX[nearDisc[n]], discY[nearDisc[n]], half);
    leaveFree(0, 0, long);
    for (let n = 0; n < intervals; n++) area += (side * (x * uy - y * ux) * (ends[2 * n + 1] - ends[2 * n])) / 2;
  }
  return area;
}

/** What the tool's own edge adds where channels run out over it. */
function edgeArea(half: f64, radius: f64): f64 {
  forget(0);
  for (let d = 0; d < discs; d++) arcInDisc(0, 0, radius, discX[d], discY[d], half);
  for (let b = 0; b < bars; b++) {
    const far = Math.max(
      hypot(barX[b], barY[b]),
      hypot(barX[b] + alongX[b] * length[b], barY[b] + alongY[b] * length[b]),
    );
    if (far > radius - half) arcInBar(0, 0, radius, b, half);
  }
  leaveFree(0, 0, TAU);
  let open = TAU;
  for (let n = 0; n < intervals; n++) open -= ends[2 * n + 1] - ends[2 * n];
  return (open * radius * radius) / 2;
}

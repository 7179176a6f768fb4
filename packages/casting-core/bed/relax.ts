import { aboutCircle, fromCircle } from "./circle";
import { axisX, axisY, bestCorner, bestEdge, pointX, pointY, separate } from "./contact";
import { corner, hint, listNeighbours, other, outdated, start } from "./neighbours";
import { count, kind, moved, nextTick, outline, shift, tick, x, y } from "./pieces";
import { area, circle, circles, corners, fieldRadius, ROW, radius, reach, stride, turnEase } from "./shapes";

/** Over-relaxation of each push (measured to settle soonest). */
const PUSH: f64 = 1.3;

/** No centroid within 0.1 mm of the axis (contract, section 3); a little more, so that rounding cannot undo it. */
const AXIS_KEPT: f64 = 0.15;

/** Gap and field of the last sweep: what rests under these may overlap under others. */
let lastGap: f64 = -1;
let lastField: f64 = -1;

/** Each piece's sum of overlaps in the last sweep, mm. */
export let strain = new StaticArray<f64>(0);

/** Makes room for the strains of `capacity` pieces. */
export function openRelax(capacity: i32): void {
  strain = new StaticArray<f64>(capacity);
}

/**
 * One sweep over all pairs: each overlap of the outlines grown by `gap` moves and turns both partners apart by their
 * lever arms, then pieces outside the field are pushed in. Returns the largest overlap met, mm. Whatever overlaps is
 * moved: pieces that were not moved since they were last looked at are passed over, and nothing comes out otherwise.
 */
export function sweep(gap: f64, skin: f64): f64 {
  if (outdated()) listNeighbours(gap, skin);
  nextTick(gap !== lastGap || fieldRadius !== lastField);
  lastGap = gap;
  lastField = fieldRadius;
  let most: f64 = 0;
  for (let i = 0; i < count; i++) strain[i] = 0;
  for (let i = 0; i < count; i++) {
    const ki = kind[i];
    const last = start[i + 1];
    for (let p = start[i]; p < last; p++) {
      const j = other[p];
      if (rests(i) && rests(j)) continue;
      const kj = kind[j];
      const dx = x[j] - x[i];
      const dy = y[j] - y[i];
      const near = reach[ki] + reach[kj] + gap;
      if (dx * dx + dy * dy >= near * near) continue;
      const want = gap + radius[ki] + radius[kj];
      const overlap = want - separate(i, j, want, hint[p], corner[p]);
      hint[p] = i16(bestEdge);
      corner[p] = i16(bestCorner);
      if (overlap <= 0) continue;
      if (overlap > most) most = overlap;
      strain[i] = strain[i] + overlap;
      strain[j] = strain[j] + overlap;
      pushApart(i, j, overlap);
    }
  }
  return Math.max(most, holdInField());
}

/** Whether piece `i` was moved neither in the last sweep nor since. */
function rests(i: i32): bool {
  return moved[i] < tick - 1;
}

function pushApart(i: i32, j: i32, overlap: f64): void {
  const leverI = (pointX - x[i]) * axisY - (pointY - y[i]) * axisX;
  const leverJ = (pointX - x[j]) * axisY - (pointY - y[j]) * axisX;
  const lightI = 1 / area[kind[i]];
  const lightJ = 1 / area[kind[j]];
  const turnI = lightI * leverI * turnEase[kind[i]];
  const turnJ = lightJ * leverJ * turnEase[kind[j]];
  const push = (PUSH * overlap) / (lightI + lightJ + turnI * leverI + turnJ * leverJ);
  shift(i, -push * lightI * axisX, -push * lightI * axisY, -push * turnI);
  shift(j, push * lightJ * axisX, push * lightJ * axisY, push * turnJ);
}

/** Pushes pieces into the circle that holds them, off the axis and off kept circles; returns the largest overlap met. */
function holdInField(): f64 {
  let most: f64 = 0;
  for (let i = 0; i < count; i++) {
    if (rests(i)) continue;
    const px = x[i];
    const py = y[i];
    const out = px * px + py * py;
    const safe = fieldRadius - reach[kind[i]];
    let overlap: f64 = 0;
    if (safe < 0 || out > safe * safe) overlap = pushIn(i);
    if (out < AXIS_KEPT * AXIS_KEPT) {
      const distance = Math.sqrt(out);
      const ux = distance > 0 ? px / distance : 1;
      const uy = distance > 0 ? py / distance : 0;
      shift(i, ux * (AXIS_KEPT * 1.01 - distance), uy * (AXIS_KEPT * 1.01 - distance), 0);
      overlap = Math.max(overlap, AXIS_KEPT - distance);
    }
    for (let n = 0; n < circles; n++) if (aboutCircle(i, n)) overlap = Math.max(overlap, pushOff(i, n));
    strain[i] = strain[i] + overlap;
    if (overlap > most) most = overlap;
  }
  return most;
}

/** Pushes piece `i` in by its farthest corner; returns how far that stood out. */
function pushIn(i: i32): f64 {
  const k = kind[i];
  let farthest: f64 = 0;
  let at = i * stride * ROW;
  let found = at;
  for (let n = corners[k]; n > 0; n--, at += ROW) {
    const squared = outline[at] * outline[at] + outline[at + 1] * outline[at + 1];
    if (squared > farthest) {
      farthest = squared;
      found = at;
    }
  }
  const distance = Math.sqrt(farthest);
  const overlap = distance + radius[k] - fieldRadius;
  if (overlap <= 0) return 0;
  const px = outline[found];
  const py = outline[found + 1];
  // A lone piece wider than its field may stand on the axis: then any way is in.
  if (distance > 0) pushOne(i, px, py, -px / distance, -py / distance, overlap);
  return overlap;
}

/** Pushes piece `i` off kept circle `n`; returns how deep it stood in it. */
function pushOff(i: i32, n: i32): f64 {
  const overlap = circle[3 * n + 2] + radius[kind[i]] - fromCircle(i, n);
  if (overlap > 0) pushOne(i, pointX, pointY, axisX, axisY, overlap);
  return Math.max(0, overlap);
}

/** Moves and turns piece `i` so that its point (px, py) gives way along (ux, uy). */
function pushOne(i: i32, px: f64, py: f64, ux: f64, uy: f64, overlap: f64): void {
  const ease = turnEase[kind[i]];
  const lever = (px - x[i]) * uy - (py - y[i]) * ux;
  const push = (PUSH * overlap) / (1 + lever * lever * ease);
  shift(i, push * ux, push * uy, push * lever * ease);
}

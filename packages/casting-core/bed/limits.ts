import { fromCircle } from "./circle";
import { axisX, axisY, bestEdge, pointX, pointY, separate, touchAt } from "./contact";
import { other, start } from "./neighbours";
import { count, kind, outline, x, y } from "./pieces";
import { circle, circles, corners, fieldRadius, ROW, radius, stride } from "./shapes";

/*
 * What stands in the way of small moves. Every limit has a place of its own: two for each pair of neighbours (pieces side
 * by side touch at two corners), one for each corner at the rim, one for each piece at each kept circle. It says that
 * `first` may come nearer to `second` (−1: what does not move) along the axis by `room` mm.
 */
export let first = new StaticArray<i32>(0);
export let second = new StaticArray<i32>(0);
export let limitX = new StaticArray<f64>(0);
export let limitY = new StaticArray<f64>(0);
/** Lever arms of the axis about the centroids, mm. */
export let leverFirst = new StaticArray<f64>(0);
export let leverSecond = new StaticArray<f64>(0);
export let room = new StaticArray<f64>(0);
/** How hard each was leaned on, kept from one time to the next. */
export let lean = new StaticArray<f64>(0);
/** Places of the `limits` limits within reach. */
export let active = new StaticArray<i32>(0);
export let limits: i32 = 0;

let places: i32 = 0;

/** Makes room for the limits of all pieces and of the pairs listed, none of them leaned on. */
export function openLimits(): void {
  places = 2 * start[count] + count * (stride + circles);
  if (places > first.length) {
    first = new StaticArray<i32>(places);
    second = new StaticArray<i32>(places);
    limitX = new StaticArray<f64>(places);
    limitY = new StaticArray<f64>(places);
    leverFirst = new StaticArray<f64>(places);
    leverSecond = new StaticArray<f64>(places);
    room = new StaticArray<f64>(places);
    lean = new StaticArray<f64>(places);
    active = new StaticArray<i32>(places);
  }
  for (let n = 0; n < places; n++) lean[n] = 0;
}

/** Finds the limits with less than `within` mm of room; `gap` is the least distance between pieces, mm. */
export function findLimits(gap: f64, within: f64): void {
  limits = 0;
  let place = 0;
  for (let i = 0; i < count; i++) {
    for (let p = start[i]; p < start[i + 1]; p++, place += 2) betweenTwo(i, other[p], gap, within, place);
  }
  for (let i = 0; i < count; i++, place += stride + circles) aroundOne(i, within, place);
  // What is out of reach is no longer leaned on.
  let kept = 0;
  for (let n = 0; n < places; n++) {
    if (kept < limits && active[kept] === n) kept++;
    else lean[n] = 0;
  }
}

function betweenTwo(i: i32, j: i32, gap: f64, within: f64, place: i32): void {
  const want = gap + radius[kind[i]] + radius[kind[j]];
  const left = separate(i, j, want + within, -1, 0) - want;
  if (left >= within) return;
  add(place, i, j, left);
  if (bestEdge < 0) return;
  // The same axis at the next corner of the piece whose corner it is.
  const ofFirst = bestEdge < corners[kind[i]];
  const owner = ofFirst ? j : i;
  const sign: f64 = ofFirst ? 1 : -1;
  let least = within - left;
  let next: i32 = -1;
  let at = owner * stride * ROW;
  for (let n = corners[kind[owner]]; n > 0; n--, at += ROW) {
    const dx = outline[at] - pointX;
    const dy = outline[at + 1] - pointY;
    const farther = sign * (dx * axisX + dy * axisY);
    if (farther >= least || (dx === 0 && dy === 0)) continue;
    least = farther;
    next = at;
  }
  if (next < 0) return;
  touchAt(axisX, axisY, outline[next], outline[next + 1]);
  add(place + 1, i, j, left + least);
}

function aroundOne(i: i32, within: f64, place: i32): void {
  const own = radius[kind[i]];
  for (let c = 0; c < corners[kind[i]]; c++) {
    const at = (i * stride + c) * ROW;
    const px = outline[at];
    const py = outline[at + 1];
    const out = Math.sqrt(px * px + py * py);
    const left = fieldRadius - own - out;
    if (left >= within || out === 0) continue;
    touchAt(px / out, py / out, px, py);
    add(place + c, i, -1, left);
  }
  for (let n = 0; n < circles; n++) {
    const left = fromCircle(i, n) - circle[3 * n + 2] - own;
    if (left >= within) continue;
    touchAt(-axisX, -axisY, pointX, pointY);
    add(place + stride + n, i, -1, left);
  }
}

/** Adds the limit of the last contact's axis and point. */
function add(place: i32, i: i32, j: i32, left: f64): void {
  first[place] = i;
  second[place] = j;
  limitX[place] = axisX;
  limitY[place] = axisY;
  leverFirst[place] = (pointX - x[i]) * axisY - (pointY - y[i]) * axisX;
  leverSecond[place] = j < 0 ? 0 : (pointX - x[j]) * axisY - (pointY - y[j]) * axisX;
  room[place] = left;
  active[limits++] = place;
}

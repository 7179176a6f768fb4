import { PI } from "../src/arc";

/*
 * How hard a tool presses on a mirror, see loadPressure in src/layout/quality/pressure.ts: by `level` + `slope` · (x − `line`)
 * at x mm from its axis, and where the far side `lifts` only beyond the line.
 */

export let level: f64 = 1;
export let slope: f64 = 0;
export let line: f64 = 0;
export let lifts: bool = false;
/** At the outermost point where tool and glass still meet. */
export let edge: f64 = 1;

/** Strips across the contact; their sums come within 1e-4 of the closed forms. */
const STRIPS: i32 = 800;

/** The contact of tool and glass in strips: where each lies, its area in mm², and the sums of area, moment and inertia. */
const place = new StaticArray<f64>(STRIPS);
const area = new StaticArray<f64>(STRIPS);
let first: f64 = 0;
let last: f64 = 0;
let sum: f64 = 0;
let moment: f64 = 0;
let inertia: f64 = 0;

/** Has a tool of radius `reach` press whose axis stands `offset` from that of a mirror of radius `mirror`, mm. */
export function press(mirror: f64, reach: f64, offset: f64): void {
  if (offset + reach <= mirror) pressBy(1, 0, 0, 1, false);
  else if (offset >= mirror) pressBy(0, 0, 0, Infinity, true);
  else {
    meet(mirror, reach, offset);
    balance(reach);
    if (level + slope * first < 0) lift(reach);
  }
}

/** The overhang from which on the far side of the tool lifts off, mm, by halving. */
export function liftsAt(mirror: f64, reach: f64): f64 {
  let low: f64 = 0;
  let high = Math.min(reach, mirror);
  for (let n = 0; n < 24; n++) {
    const middle = (low + high) / 2;
    meet(mirror, reach, mirror - reach + middle);
    balance(reach);
    if (level + slope * first < 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

function pressBy(newLevel: f64, newSlope: f64, newLine: f64, newEdge: f64, newLifts: bool): void {
  level = newLevel;
  slope = newSlope;
  line = newLine;
  edge = newEdge;
  lifts = newLifts;
}

/** Works the contact out. */
function meet(mirror: f64, reach: f64, offset: f64): void {
  first = -reach;
  last = Math.min(reach, mirror - offset);
  const step = (last - first) / STRIPS;
  sum = 0;
  moment = 0;
  inertia = 0;
  for (let n = 0; n < STRIPS; n++) {
    const x = first + (n + 0.5) * step;
    const tool = reach * reach - x * x;
    const glass = mirror * mirror - (x + offset) * (x + offset);
    const part = 2 * Math.sqrt(Math.max(0, Math.min(tool, glass))) * step;
    place[n] = x;
    area[n] = part;
    sum += part;
    moment += part * x;
    inertia += part * x * x;
  }
}

/** Force: p₀ A + p₁ M₁ = the whole circle's area. Moment about the tool's axis: p₀ M₁ + p₁ M₂ = 0. */
function balance(reach: f64): void {
  const whole = PI * reach * reach;
  const rise = (-moment * whole) / (sum * inertia - moment * moment);
  const middle = (whole - rise * moment) / sum;
  pressBy(middle, rise, 0, middle + rise * last, false);
}

/** The far side lifts: p = k (x − x₀) from the line x₀ on, with no moment left; the moment falls as x₀ moves out. */
function lift(reach: f64): void {
  let low = first;
  let high: f64 = 0;
  for (let n = 0; n < 40; n++) {
    const middle = (low + high) / 2;
    if (beyond(middle, true) < 0) low = middle;
    else high = middle;
  }
  const from = (low + high) / 2;
  const scale = (PI * reach * reach) / beyond(from, false);
  pressBy(0, scale, from, scale * (last - from), true);
}

/** The sum of area × (x − `from`) beyond there, or with the `lever` of its moment. */
function beyond(from: f64, lever: bool): f64 {
  let total: f64 = 0;
  for (let n = 0; n < STRIPS; n++) {
    const more = place[n] - from;
    if (more > 0) total += area[n] * more * (lever ? place[n] : 1);
  }
  return total;
}

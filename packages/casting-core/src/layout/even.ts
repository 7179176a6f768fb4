import { cos, PI, sin, TAU } from "../trig.js";
import { type Bed, shift } from "./bed.js";
import { FIRST_RING, LAST_RING, RINGS, radialVariation } from "./rings.js";
import { ROW } from "./shapes.js";

/** Most that one step may move a piece, as a share of its reach: keeps the push gentle against the contacts. */
const STEP_LIMIT = 0.05;

/** A lasting excess is pushed against ever harder: each step keeps this share of what was built up before … */
const MEMORY = 0.99;

/** … and adds the present excess, up to this much. Both measured: a longer memory winds up, a shorter one gives in. */
const BUILT_LIMIT = 10;

/**
 * Keeps the coverage even from ring to ring. `excess` is how far each ring is over-covered (share of the mean),
 * `built` what it has built up over time, `push` the potential that drives the pieces off.
 */
export interface Evenness {
  excess: Float64Array;
  built: Float64Array;
  push: Float64Array;
  covered: Float64Array;
  near: Float64Array;
  far: Float64Array;
}

export function newEvenness(): Evenness {
  const rings = () => new Float64Array(RINGS + 1);
  return { excess: rings(), built: rings(), push: rings(), covered: rings(), near: rings(), far: rings() };
}

/**
 * Measures the coverage of every ring, then moves and turns each piece down the slope of the rings' excess.
 *
 * With the pieces' boundaries ∂P and Φ(r) the excess at radius r, a piece feels −∮ Φ n ds, and −∮ Φ (x − c) × n ds as
 * a torque (divergence theorem). The same walk along the boundary gives the exact footprints: the area inside the
 * circle ρ is ∮ min(1, ρ²/r²)/2 (x · n) ds, since the field x · min(1, ρ²/r²)/2 has divergence 1 inside and 0 outside.
 * Each edge is cut where it crosses a ring, so only the short pieces' ρ²/r² is a quadrature (Gauss, two points).
 */
export function evenOut(bed: Bed, rings: Evenness, gain: number): void {
  const { shapes, kind } = bed;
  const { near, far } = rings;
  near.fill(0);
  far.fill(0);
  for (let i = 0; i < bed.count; i++) {
    const k = kind[i]!;
    felt.fill(0);
    if (shapes.radius[k]! > 0) walkCircle(bed, i, rings);
    else walkPolygon(bed, i, rings);
    if (gain === 0) continue;
    const limit = STEP_LIMIT * shapes.reach[k]!;
    let dx = -gain * felt[FORCE_X]!;
    let dy = -gain * felt[FORCE_Y]!;
    let turn = -gain * felt[TORQUE]! * shapes.turnEase[k]!;
    const size = Math.sqrt(dx * dx + dy * dy);
    if (size > limit) {
      dx *= limit / size;
      dy *= limit / size;
    }
    turn = Math.max(-STEP_LIMIT, Math.min(STEP_LIMIT, turn));
    shift(bed, i, dx, dy, turn);
  }
  measure(bed, rings);
}

/** What the piece being walked round feels: an array, since a module's own numbers are slow to write. */
const felt = new Float64Array(3);
const FORCE_X = 0;
const FORCE_Y = 1;
const TORQUE = 2;

function walkPolygon(bed: Bed, i: number, rings: Evenness): void {
  const { shapes, outline } = bed;
  const k = bed.kind[i]!;
  const from = i * shapes.stride;
  const n = shapes.corners[k]!;
  for (let e = 0; e < n; e++) {
    const at = (from + e) * ROW;
    walkEdge(
      bed,
      i,
      rings,
      outline[at]!,
      outline[at + 1]!,
      outline[at + 2]!,
      outline[at + 3]!,
      shapes.edge[k * shapes.stride + e]!,
    );
  }
}

/** Walks one straight edge from (ax, ay) with outward normal (nx, ny), ring by ring. */
function walkEdge(
  bed: Bed,
  i: number,
  rings: Evenness,
  ax: number,
  ay: number,
  nx: number,
  ny: number,
  length: number,
): void {
  const width = bed.field.edge / RINGS;
  const height = ax * nx + ay * ny;
  const start = ay * nx - ax * ny;
  const end = start + length;
  const h2 = height * height + 1e-12; // never 0: an edge may point at the axis
  const x0 = bed.x[i]!;
  const y0 = bed.y[i]!;
  let t = start;
  let ring = Math.min(RINGS, Math.floor(Math.sqrt(h2 + t * t) / width));
  while (t < end) {
    // Toward the foot of the normal the radius falls, past it it grows.
    let next: number;
    let nextRing: number;
    if (t < 0) {
      const inner = ring * width;
      const gap2 = inner * inner - h2;
      if (gap2 > 0) {
        next = Math.max(t, -Math.sqrt(gap2)); // t itself when it stands on the ring's circle
        nextRing = ring - 1;
      } else {
        next = 0;
        nextRing = ring;
      }
    } else {
      const outer = (ring + 1) * width;
      next = ring >= RINGS ? end : Math.max(t, Math.sqrt(Math.max(0, outer * outer - h2)));
      nextRing = ring + 1;
    }
    if (next >= end) {
      next = end;
      nextRing = ring;
    }
    const part = next - t;
    if (part > 0) {
      const mid = t + part / 2;
      const off = part * 0.28867513459481287; // half the length / √3: two-point Gauss
      const low = (mid - off) * (mid - off) + h2;
      const high = (mid + off) * (mid + off) + h2;
      const weight = (height * part) / 2;
      rings.near[ring] = rings.near[ring]! + weight;
      rings.far[ring] = rings.far[ring]! + (weight / 2) * (1 / low + 1 / high);
      const push = rings.push[ring]! * part;
      if (push !== 0) {
        // (x − c) × n with x = height · n + mid · direction; the direction is n turned by +90°.
        const px = height * nx - mid * ny - x0;
        const py = height * ny + mid * nx - y0;
        felt[FORCE_X]! += push * nx;
        felt[FORCE_Y]! += push * ny;
        felt[TORQUE]! += push * (px * ny - py * nx);
      }
    }
    t = next;
    ring = nextRing;
  }
}

/** Walks a circle as a polygon of 12 sides of the same area. */
function walkCircle(bed: Bed, i: number, rings: Evenness): void {
  const radius = bed.shapes.radius[bed.kind[i]!]! * ROUND_SCALE;
  const half = radius * ROUND_HALF_EDGE;
  const apothem = radius * ROUND_APOTHEM;
  for (let e = 0; e < ROUND_SIDES; e++) {
    const nx = ROUND_X[e]!;
    const ny = ROUND_Y[e]!;
    const ax = bed.x[i]! + apothem * nx + half * ny;
    const ay = bed.y[i]! + apothem * ny - half * nx;
    walkEdge(bed, i, rings, ax, ay, nx, ny, 2 * half);
  }
}

const ROUND_SIDES = 12;
const ROUND_APOTHEM = cos(PI / ROUND_SIDES);
const ROUND_HALF_EDGE = sin(PI / ROUND_SIDES);
const ROUND_SCALE = Math.sqrt(TAU / (ROUND_SIDES * sin(TAU / ROUND_SIDES)));
const ROUND_X = Float64Array.from({ length: ROUND_SIDES }, (_, e) => cos((TAU * e) / ROUND_SIDES));
const ROUND_Y = Float64Array.from({ length: ROUND_SIDES }, (_, e) => sin((TAU * e) / ROUND_SIDES));

/** Ring coverage from the walk's sums, and from it the next push. */
function measure(bed: Bed, rings: Evenness): void {
  const width = bed.field.edge / RINGS;
  const { near, far, covered, excess, built, push } = rings;
  let beyond = 0;
  for (let ring = 0; ring <= RINGS; ring++) beyond += far[ring]!;
  let inside = 0;
  let below = 0;
  let sum = 0;
  for (let ring = 0; ring < RINGS; ring++) {
    inside += near[ring]!;
    beyond -= far[ring]!;
    const rho = (ring + 1) * width;
    const area = inside + rho * rho * beyond;
    covered[ring] = (area - below) / (PI * width * width * (2 * ring + 1));
    below = area;
    if (ring >= FIRST_RING && ring <= LAST_RING) sum += covered[ring]!;
  }
  const mean = sum / (LAST_RING - FIRST_RING + 1);
  if (mean === 0) return;
  for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
    excess[ring] = covered[ring]! / mean - 1;
    const sum = built[ring]! * MEMORY + excess[ring]!;
    built[ring] = Math.max(-BUILT_LIMIT, Math.min(BUILT_LIMIT, sum));
    // A piece counts for more in a small ring: the slope of the variance grows as 1 / ring area; its root is steadier.
    push[ring] = (excess[ring]! + built[ring]!) * Math.sqrt(RINGS / (2 * ring + 1));
  }
}

/** Standard deviation ÷ mean of the coverage over the rings that count. */
export function unevenness(bed: Bed): number {
  const rings = newEvenness();
  evenOut(bed, rings, 0);
  return radialVariation(rings.covered);
}

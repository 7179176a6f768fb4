import { acos, PI } from "../src/arc";
import { RINGS } from "../src/layout/quality/ring-numbers";
import { CORNER, cornerAt, cornersOf, kind, x, y } from "./pieces";
import { corners, edge, fieldEdge, radius, reach, stride } from "./shapes";

/*
 * What one piece covers of each ring, mm², and how that grows as it moves along x and y, mm, and turns, mm² a radian.
 * Entries by ring, from `firstRing` to `lastRing`; ring RINGS is all that lies outside.
 */
export let firstRing: i32 = 0;
export let lastRing: i32 = -1;
export const covers = new StaticArray<f64>(RINGS + 1);
export const alongX = new StaticArray<f64>(RINGS + 1);
export const alongY = new StaticArray<f64>(RINGS + 1);
export const turning = new StaticArray<f64>(RINGS + 1);

/**
 * Sums of the walk along a polygon in one ring: the slopes, the area as if all lay inside, and what each mm² of a circle
 * within is worth.
 */
@unmanaged
class Sums {
  alongX: f64 = 0;
  alongY: f64 = 0;
  turning: f64 = 0;
  near: f64 = 0;
  far: f64 = 0;
}

const sums = new StaticArray<f64>((RINGS + 1) * 5);

function sumsOf(ring: i32): Sums {
  return changetype<Sums>(changetype<usize>(sums) + <usize>ring * offsetof<Sums>());
}

/**
 * Finds the footprint of piece `i`.
 *
 * Along the boundary ∂P the slopes are ∮ n ds and ∮ (x − c) × n ds over the part in the ring (divergence theorem). The
 * area inside the circle ρ is ∮ min(1, ρ²/r²)/2 (x · n) ds, since the field x · min(1, ρ²/r²)/2 has divergence 1 inside
 * and 0 outside. Each edge is cut where it crosses a ring, so only the short parts' ρ²/r² is a quadrature.
 */
export function footprintOf(i: i32): void {
  const k = kind[i];
  const width = fieldEdge / RINGS;
  const distance = Math.sqrt(x[i] * x[i] + y[i] * y[i]);
  firstRing = i32(Math.min(RINGS, Math.max(0, Math.floor((distance - reach[k]) / width))));
  lastRing = i32(Math.min(RINGS, Math.floor((distance + reach[k]) / width)));
  if (radius[k] > 0) roundFootprint(i, distance, width);
  else polygonFootprint(i, width);
}

/** A circle's area within ρ is a lens, and moving outward takes the lens's chord from it. */
function roundFootprint(i: i32, distance: f64, width: f64): void {
  const own = radius[kind[i]];
  const ux = distance > 0 ? x[i] / distance : 0;
  const uy = distance > 0 ? y[i] / distance : 0;
  let below: f64 = 0;
  let chordBelow: f64 = 0;
  for (let ring = firstRing; ring <= lastRing; ring++) {
    const rho = (ring + 1) * width;
    let within = PI * own * own;
    let chord: f64 = 0;
    if (ring < RINGS && rho < distance + own) {
      if (rho <= own - distance) within = PI * rho * rho;
      else if (rho <= distance - own) within = 0;
      else {
        const foot = (distance * distance + own * own - rho * rho) / (2 * distance);
        const half = Math.sqrt(Math.max(0, own * own - foot * foot));
        within = own * own * acos(foot / own) + rho * rho * acos((distance - foot) / rho) - half * distance;
        chord = 2 * half;
      }
    }
    covers[ring] = within - below;
    alongX[ring] = (chordBelow - chord) * ux;
    alongY[ring] = (chordBelow - chord) * uy;
    turning[ring] = 0;
    below = within;
    chordBelow = chord;
  }
}

function polygonFootprint(i: i32, width: f64): void {
  const k = kind[i];
  const size = <usize>(lastRing + 1 - firstRing) * offsetof<Sums>();
  memory.fill(changetype<usize>(sumsOf(firstRing)), 0, size);
  let at = cornersOf(i);
  for (let e = 0; e < corners[k]; e++, at += CORNER) walkEdge(i, width, at, edge[k * stride + e]);
  let beyond: f64 = 0;
  for (let ring = firstRing; ring <= lastRing; ring++) beyond += sumsOf(ring).far;
  let inside: f64 = 0;
  let below: f64 = 0;
  for (let ring = firstRing; ring <= lastRing; ring++) {
    const here = sumsOf(ring);
    const rho = (ring + 1) * width;
    inside += here.near;
    beyond -= here.far;
    const within = inside + (ring < RINGS ? rho * rho * beyond : 0);
    covers[ring] = within - below;
    alongX[ring] = here.alongX;
    alongY[ring] = here.alongY;
    turning[ring] = here.turning;
    below = within;
  }
}

/** Walks one straight edge of `length` mm, that begins at the corner `at`, ring by ring. */
function walkEdge(i: i32, width: f64, at: usize, length: f64): void {
  const corner = cornerAt(at);
  const ax = corner.x;
  const ay = corner.y;
  const nx = corner.nx;
  const ny = corner.ny;
  const height = ax * nx + ay * ny;
  const start = ay * nx - ax * ny;
  const end = start + length;
  const h2 = height * height + 1e-12; // never 0: an edge may point at the axis
  let t = start;
  let ring = i32(Math.min(RINGS, Math.floor(Math.sqrt(h2 + t * t) / width)));
  while (t < end) {
    // Toward the foot of the normal the radius falls, past it it grows.
    let next: f64;
    let nextRing: i32;
    if (t < 0) {
      const circle = ring * width;
      const gap2 = circle * circle - h2;
      next = gap2 > 0 ? Math.max(t, -Math.sqrt(gap2)) : 0; // t itself when it stands on the ring's circle
      nextRing = gap2 > 0 ? ring - 1 : ring;
    } else {
      const circle = (ring + 1) * width;
      next = ring >= RINGS ? end : Math.max(t, Math.sqrt(Math.max(0, circle * circle - h2)));
      nextRing = ring + 1;
    }
    if (next >= end) {
      next = end;
      nextRing = ring;
    }
    const part = next - t;
    if (part > 0) addPart(i, ring, t + part / 2, part, height, h2, nx, ny);
    t = next;
    ring = nextRing;
  }
}

/** Adds the part of an edge about `mid` (from the foot of its normal on the axis) that lies in one ring. */
function addPart(i: i32, ring: i32, mid: f64, part: f64, height: f64, h2: f64, nx: f64, ny: f64): void {
  const off = part * 0.28867513459481287; // half the length / √3: two-point Gauss
  const low = (mid - off) * (mid - off) + h2;
  const high = (mid + off) * (mid + off) + h2;
  // Both quotients in one division.
  const both = f64x2.div(f64x2.splat(1), f64x2.replace_lane(f64x2.splat(low), 1, high));
  const weight = (height * part) / 2;
  const here = sumsOf(ring);
  here.near = here.near + weight;
  here.far = here.far + (weight / 2) * (f64x2.extract_lane(both, 0) + f64x2.extract_lane(both, 1));
  // (x − c) × n with x = height · n + mid · direction; the direction is n turned by +90°.
  const px = height * nx - mid * ny - x[i];
  const py = height * ny + mid * nx - y[i];
  here.alongX = here.alongX + part * nx;
  here.alongY = here.alongY + part * ny;
  here.turning = here.turning + part * (px * ny - py * nx);
}

import { acos, PI } from "../trig.js";
import type { Bed } from "./bed.js";
import { RINGS } from "./rings.js";
import { ROW } from "./shapes.js";

/**
 * What one piece covers of each ring, mm², and how that grows as it moves along x and y, mm, and turns, mm² a radian.
 * Entries by ring, from `first` to `last`; ring RINGS is all that lies outside.
 */
export interface Footprint {
  first: number;
  last: number;
  area: Float64Array;
  alongX: Float64Array;
  alongY: Float64Array;
  turning: Float64Array;
}

export function newFootprint(): Footprint {
  const rings = () => new Float64Array(RINGS + 1);
  return { first: 0, last: -1, area: rings(), alongX: rings(), alongY: rings(), turning: rings() };
}

/**
 * Writes the footprint of piece `i` into `out`.
 *
 * Along the boundary ∂P the slopes are ∮ n ds and ∮ (x − c) × n ds over the part in the ring (divergence theorem). The
 * area inside the circle ρ is ∮ min(1, ρ²/r²)/2 (x · n) ds, since the field x · min(1, ρ²/r²)/2 has divergence 1 inside
 * and 0 outside. Each edge is cut where it crosses a ring, so only the short parts' ρ²/r² is a quadrature.
 */
export function footprintOf(bed: Bed, i: number, out: Footprint): void {
  const { shapes } = bed;
  const k = bed.kind[i]!;
  const width = bed.field.edge / RINGS;
  const distance = Math.sqrt(bed.x[i]! * bed.x[i]! + bed.y[i]! * bed.y[i]!);
  out.first = Math.min(RINGS, Math.max(0, Math.floor((distance - shapes.reach[k]!) / width)));
  out.last = Math.min(RINGS, Math.floor((distance + shapes.reach[k]!) / width));
  if (shapes.radius[k]! > 0) roundFootprint(bed, i, distance, width, out);
  else polygonFootprint(bed, i, width, out);
}

/** A circle's area within ρ is a lens, and moving outward takes the lens's chord from it. */
function roundFootprint(bed: Bed, i: number, distance: number, width: number, out: Footprint): void {
  const radius = bed.shapes.radius[bed.kind[i]!]!;
  const [ux, uy] = distance > 0 ? [bed.x[i]! / distance, bed.y[i]! / distance] : [0, 0];
  let below = 0;
  let chordBelow = 0;
  for (let ring = out.first; ring <= out.last; ring++) {
    const rho = (ring + 1) * width;
    let area = PI * radius * radius;
    let chord = 0;
    if (ring < RINGS && rho < distance + radius) {
      if (rho <= radius - distance) area = PI * rho * rho;
      else if (rho <= distance - radius) area = 0;
      else {
        const own = (distance * distance + radius * radius - rho * rho) / (2 * distance);
        const half = Math.sqrt(Math.max(0, radius * radius - own * own));
        area = radius * radius * acos(own / radius) + rho * rho * acos((distance - own) / rho) - half * distance;
        chord = 2 * half;
      }
    }
    out.area[ring] = area - below;
    out.alongX[ring] = (chordBelow - chord) * ux;
    out.alongY[ring] = (chordBelow - chord) * uy;
    out.turning[ring] = 0;
    below = area;
    chordBelow = chord;
  }
}

/** Sums of the walk along a polygon, by ring: area as if all lay inside, and what each mm² of a circle within is worth. */
const near = new Float64Array(RINGS + 1);
const far = new Float64Array(RINGS + 1);

function polygonFootprint(bed: Bed, i: number, width: number, out: Footprint): void {
  const { shapes, outline } = bed;
  const { first, last, area, alongX, alongY, turning } = out;
  const k = bed.kind[i]!;
  for (let ring = first; ring <= last; ring++) {
    near[ring] = 0;
    far[ring] = 0;
    alongX[ring] = 0;
    alongY[ring] = 0;
    turning[ring] = 0;
  }
  const from = i * shapes.stride;
  const n = shapes.corners[k]!;
  for (let e = 0; e < n; e++) {
    const at = (from + e) * ROW;
    const length = shapes.edge[k * shapes.stride + e]!;
    walkEdge(bed, i, out, width, outline[at]!, outline[at + 1]!, outline[at + 2]!, outline[at + 3]!, length);
  }
  let beyond = 0;
  for (let ring = first; ring <= last; ring++) beyond += far[ring]!;
  let inside = 0;
  let below = 0;
  for (let ring = first; ring <= last; ring++) {
    const rho = (ring + 1) * width;
    inside += near[ring]!;
    beyond -= far[ring]!;
    const within = inside + (ring < RINGS ? rho * rho * beyond : 0);
    area[ring] = within - below;
    below = within;
  }
}

/** Walks one straight edge from (ax, ay) with outward normal (nx, ny), ring by ring. */
function walkEdge(
  bed: Bed,
  i: number,
  out: Footprint,
  width: number,
  ax: number,
  ay: number,
  nx: number,
  ny: number,
  length: number,
): void {
  const height = ax * nx + ay * ny;
  const start = ay * nx - ax * ny;
  const end = start + length;
  const h2 = height * height + 1e-12; // never 0: an edge may point at the axis
  const x0 = bed.x[i]!;
  const y0 = bed.y[i]!;
  const { alongX, alongY, turning } = out;
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
      near[ring] = near[ring]! + weight;
      far[ring] = far[ring]! + (weight / 2) * (1 / low + 1 / high);
      // (x − c) × n with x = height · n + mid · direction; the direction is n turned by +90°.
      const px = height * nx - mid * ny - x0;
      const py = height * ny + mid * nx - y0;
      alongX[ring] = alongX[ring]! + part * nx;
      alongY[ring] = alongY[ring]! + part * ny;
      turning[ring] = turning[ring]! + part * (px * ny - py * nx);
    }
    t = next;
    ring = nextRing;
  }
}

import type { Outline } from "../../geometry/types.js";
import { acos, atan2, hypot, PI } from "../../trig.js";
import type { PlacedPiece } from "../types.js";
import { FIRST_RING, LAST_RING, RINGS } from "./ring-numbers.js";

export { FIRST_RING, LAST_RING, RINGS };

/** Share of each of `rings` equal-width rings about the axis, out to `radius` mm, that the outlines cover; exact. */
export function ringCoverage(pieces: readonly PlacedPiece[], radius: number, rings: number): Float64Array {
  const width = radius / rings;
  const covered = new Float64Array(rings);
  for (const piece of pieces) {
    const [near, far] = span(piece);
    const areaWithin = areaInCircle(piece);
    let below = 0;
    for (let ring = Math.min(rings - 1, Math.floor(near / width)); ring < rings; ring++) {
      const area = areaWithin((ring + 1) * width);
      covered[ring]! += area - below;
      below = area;
      if ((ring + 1) * width >= far) break;
    }
  }
  for (let ring = 0; ring < rings; ring++) covered[ring]! /= PI * width * width * (2 * ring + 1);
  return covered;
}

/**
 * Standard deviation ÷ mean of the coverage over the rings that count; 0 without pieces. With `target` the deviation is
 * that from each ring's target, as a share of the mean (see targetOf).
 */
export function radialVariation(coverage: Float64Array, target: Float64Array = EVEN): number {
  let [sum, wanted] = [0, 0];
  for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
    sum += coverage[ring]!;
    wanted += target[ring]!;
  }
  if (sum === 0) return 0;
  const mean = sum / wanted;
  let squares = 0;
  for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
    const off = coverage[ring]! / mean - target[ring]!;
    squares += off * off;
  }
  return Math.sqrt(squares / (LAST_RING - FIRST_RING + 1));
}

const EVEN = new Float64Array(RINGS).fill(1);

/** Area of `piece` within a distance from the axis, mm². */
function areaInCircle({ x, y, radius, outline }: PlacedPiece): (rho: number) => number {
  if (radius !== undefined) return (rho) => lens(hypot(x, y), radius, rho);
  const sides = sidesOf(outline);
  return (rho) => polygonInCircle(sides, rho);
}

/** A side of an outline: how far its line passes from the axis, and from where to where along the line it runs, mm. */
interface Side {
  height: number;
  start: number;
  end: number;
}

function sidesOf(outline: Outline): Side[] {
  const sides: Side[] = [];
  let [ax, ay] = outline[outline.length - 1]!;
  for (const [bx, by] of outline) {
    const length = hypot(bx - ax, by - ay);
    if (length > 0) {
      const start = (ax * (bx - ax) + ay * (by - ay)) / length;
      sides.push({ height: (ax * by - ay * bx) / length, start, end: start + length });
    }
    ax = bx;
    ay = by;
  }
  return sides;
}

/**
 * The area of a polygon inside the circle `rho` about the origin is ∮ min(1, ρ²/r²)/2 (x · n) ds along its outline
 * (divergence theorem: that field has divergence 1 inside the circle and 0 outside). Along an edge at distance h from
 * the origin, x · n is h, and ∫ h/(h² + t²) dt is the angle that the edge is seen under from there.
 */
function polygonInCircle(sides: readonly Side[], rho: number): number {
  let twice = 0;
  for (let n = 0; n < sides.length; n++) {
    const { height, start, end } = sides[n]!;
    const half = Math.sqrt(Math.max(0, rho * rho - height * height));
    const from = Math.max(start, Math.min(end, -half));
    const to = Math.max(start, Math.min(end, half));
    twice += height * (to - from) + rho * rho * (angleOf(height, start, from) + angleOf(height, to, end));
  }
  return twice / 2;
}

/** The angle under which a part of a side is seen from the axis, radians; negative where the side faces inward. */
function angleOf(height: number, from: number, to: number): number {
  return from < to ? atan2(height * (to - from), height * height + from * to) : 0;
}

/** Area common to a circle of `radius` at `distance` from the origin and the circle `rho` about it. */
function lens(distance: number, radius: number, rho: number): number {
  if (rho >= distance + radius) return PI * radius * radius;
  if (rho <= distance - radius) return 0;
  if (rho <= radius - distance) return PI * rho * rho;
  const own = (distance * distance + radius * radius - rho * rho) / (2 * distance);
  const other = distance - own;
  const half = Math.sqrt(Math.max(0, radius * radius - own * own));
  return radius * radius * acos(own / radius) - own * half + rho * rho * acos(other / rho) - other * half;
}

/** Least and largest distance of a piece from the axis, mm. */
export function span(piece: PlacedPiece): [number, number] {
  const distance = hypot(piece.x, piece.y);
  const reach =
    piece.radius ?? piece.outline.reduce((most, [x, y]) => Math.max(most, hypot(x - piece.x, y - piece.y)), 0);
  return [Math.max(0, distance - reach), distance + reach];
}

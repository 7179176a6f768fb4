import type { Point } from "../../geometry/types.js";
import { hypot } from "../../trig.js";
import { type Measure, measure, type Site } from "./sites.js";

// Newton's method on exact distances: the distance from a convex site has a continuous slope, so a start a few
// hundredths of a millimetre off needs two or three steps.
const STEPS = 20;
const CLOSE = 1e-10;

const atA: Measure = { distance: 0, nx: 0, ny: 0 };
const atB: Measure = { distance: 0, nx: 0, ny: 0 };
const atC: Measure = { distance: 0, nx: 0, ny: 0 };

/** The point near `start` that is equally far from `a` and `b`, reached by the shortest way. */
export function ontoBisector(start: Point, a: Site, b: Site): Point {
  let x = start[0];
  let y = start[1];
  for (let step = 0; step < STEPS; step++) {
    measure(a, x, y, atA);
    measure(b, x, y, atB);
    const error = atA.distance - atB.distance;
    const gx = atA.nx - atB.nx;
    const gy = atA.ny - atB.ny;
    const squared = gx * gx + gy * gy;
    if (Math.abs(error) < CLOSE || squared < 1e-12) break;
    x -= (error * gx) / squared;
    y -= (error * gy) / squared;
  }
  return [x, y];
}

/** How far the first step of ontoBisector goes from `start`, mm. */
export function stepToBisector(start: Point, a: Site, b: Site): number {
  measure(a, start[0], start[1], atA);
  measure(b, start[0], start[1], atB);
  return Math.abs(atA.distance - atB.distance) / hypot(atA.nx - atB.nx, atA.ny - atB.ny);
}

/**
 * The point near `start` that is equally far from three sites; `start` itself where no such point is within `reach`.
 * Steps are short beside the reach: between two corners that all but touch, a whole one can overshoot the point by far.
 */
export function ontoJunction(start: Point, a: Site, b: Site, c: Site, reach: number): Point {
  let x = start[0];
  let y = start[1];
  for (let step = 0; step < STEPS; step++) {
    measure(a, x, y, atA);
    measure(b, x, y, atB);
    measure(c, x, y, atC);
    const ab = atA.distance - atB.distance;
    const ac = atA.distance - atC.distance;
    if (Math.abs(ab) < CLOSE && Math.abs(ac) < CLOSE) break;
    const ux = atA.nx - atB.nx;
    const uy = atA.ny - atB.ny;
    const vx = atA.nx - atC.nx;
    const vy = atA.ny - atC.ny;
    const determinant = ux * vy - uy * vx;
    if (Math.abs(determinant) < 1e-9) return start;
    const dx = (ac * uy - ab * vy) / determinant;
    const dy = (ab * vx - ac * ux) / determinant;
    const share = Math.min(1, reach / STRIDES / hypot(dx, dy));
    x += share * dx;
    y += share * dy;
    if (hypot(x - start[0], y - start[1]) > reach) return start;
  }
  return [x, y];
}

/** Steps that go from a start to the end of its reach. */
const STRIDES = 4;

import type { JobReadings } from "../job/types.js";
import { atan2, cos, degrees, radians, sin } from "../trig.js";
import type { Measured } from "./types.js";

/** Times its own standard uncertainty that astigmatism must reach to count as found: about 95 % (JCGM 100:2008, 6.2). */
const COVERAGE = 2;

/**
 * Astigmatism from a bar laid in at least three directions: the readings follow m + A cos 2(θ − θ₀), fitted by least
 * squares. A ring or three legs see the mean curvature only and tell nothing of it. Nothing where it is not more than
 * the reading error: twice the standard uncertainty of A, from the spread about the fit and at least from the dial's
 * step.
 *
 * @param depths the readings without sign, mm
 * @param step standard uncertainty of one reading by the dial's step, mm
 */
export function astigmatismOf(
  { instrument, zones }: JobReadings,
  depths: readonly number[],
  step: number,
): Measured["astigmatism"] {
  if (instrument.bar === undefined) return undefined;
  const laid = zones.flatMap(({ along }, index) =>
    along === undefined ? [] : [{ turn: 2 * radians(along), value: depths[index]! }],
  );
  if (!tellsDirections(zones)) return undefined;
  const fit = planeThrough(laid.map(({ turn, value }) => ({ x: cos(turn), y: sin(turn), value })));
  if (!fit) return undefined;
  const amount = Math.sqrt(fit.x * fit.x + fit.y * fit.y);
  const scatter = Math.max(step, fit.scatter);
  const uncertainty = scatter * Math.sqrt(fit.spreadAlong(fit.x / amount, fit.y / amount));
  if (!(amount > COVERAGE * uncertainty)) return undefined;
  const along = degrees(atan2(fit.y, fit.x)) / 2;
  return { amount: amount * 1000, uncertainty: uncertainty * 1000, deepest: along < 0 ? along + 180 : along };
}

/** Whether a bar was laid in directions enough to tell one from another. */
export function tellsDirections(zones: readonly { along?: number }[]): boolean {
  return new Set(zones.flatMap(({ along }) => (along === undefined ? [] : [along % 180]))).size >= 3;
}

interface Plane {
  x: number;
  y: number;
  /** Standard deviation of the values about the plane; 0 where three values leave none to judge it by. */
  scatter: number;
  /** Variance of the slope along a unit direction, for values of variance 1. */
  spreadAlong: (ux: number, uy: number) => number;
}

/** The plane c + x X + y Y through values, by its normal equations; nothing where the directions do not span it. */
function planeThrough(points: readonly { x: number; y: number; value: number }[]): Plane | undefined {
  const n = points.length;
  const mean = (pick: (point: (typeof points)[number]) => number) =>
    points.reduce((sum, point) => sum + pick(point), 0) / n;
  const [mx, my, mv] = [mean((p) => p.x), mean((p) => p.y), mean((p) => p.value)];
  let [xx, xy, yy, xv, yv] = [0, 0, 0, 0, 0];
  for (const { x, y, value } of points) {
    xx += (x - mx) * (x - mx);
    xy += (x - mx) * (y - my);
    yy += (y - my) * (y - my);
    xv += (x - mx) * (value - mv);
    yv += (y - my) * (value - mv);
  }
  const det = xx * yy - xy * xy;
  if (Math.abs(det) < 1e-9 * n * n) return undefined;
  const slope = { x: (xv * yy - yv * xy) / det, y: (yv * xx - xv * xy) / det };
  const squares = points.reduce((sum, { x, y, value }) => {
    const off = value - mv - slope.x * (x - mx) - slope.y * (y - my);
    return sum + off * off;
  }, 0);
  return {
    ...slope,
    scatter: n > 3 ? Math.sqrt(squares / (n - 3)) : 0,
    spreadAlong: (ux, uy) => (yy * ux * ux - 2 * xy * ux * uy + xx * uy * uy) / det,
  };
}

import { CastingError } from "../errors.js";
import type { Curve, Job, JobReadings } from "../job/types.js";
import { atan2, cos, degrees, radians, sin } from "../trig.js";
import { lengthText } from "../units/length-text.js";
import type { Measured } from "./types.js";

/** A flat's error that the zero carries into every reading, mm, where nothing else is known: a good surface plate. */
const ZERO_PLATE = 0.002;
/** How truly an instrument's own size is known, as a share of it (common practice). */
const SIZE = 0.002;
/** A dial's smallest step where the job does not say, mm. */
const RESOLUTION = 0.001;
/** A reading of a step r is spread evenly over it: standard uncertainty r / √12 (JCGM 100:2008, 4.3.7). */
const EVEN = Math.sqrt(12);

/** How an instrument touches: radius of its circle of contact, or half its bar, and the radius of its feet. Lengths mm. */
interface Contact {
  radius: number;
  foot: number;
}

/**
 * The curve from spherometer readings, zeroed on a flat: the least-squares radius with its uncertainty, and what each
 * reading is off that sphere. With a: radius of contact, h: reading, ρ: radius of ball feet, whose centres lie on a sphere
 * ρ inside the concave glass, R = (a² + h²) / 2h + ρ; − ρ on convex glass (geometry; a sharp ring: Oxford Dictionary of
 * Physics, "spherometer"). Throws `invalid` where the readings belong to no sphere.
 */
export function radiusFromReadings({ blank, units }: Pick<Job, "blank" | "units">): Measured {
  const readings = blank.readings!;
  const contact = contactOf(readings.instrument, blank.curve);
  const depths = depthsOf(readings, blank.curve, contact, (mm) => lengthText(mm, units));
  // For equal instruments the sum of squares of (reading − h) is least at the mean reading: R follows from it.
  const mean = depths.reduce((sum, depth) => sum + depth, 0) / depths.length;
  const radius = radiusOf(mean, contact, blank.curve);
  const squares = depths.reduce((sum, depth) => sum + (depth - mean) * (depth - mean), 0);
  const spread = depths.length > 1 ? Math.sqrt(squares / (depths.length - 1)) : undefined;
  const astigmatism = astigmatismOf(readings, depths);
  return {
    radius,
    readings: depths.length,
    uncertainty: uncertaintyOf(readings, contact, mean, spread, depths.length),
    ...(spread === undefined ? {} : { spread: spread * 1000 }),
    contact: contact.radius,
    zones: readings.zones.map(({ at, angle }, index) => ({
      at,
      ...(angle === undefined ? {} : { angle }),
      off: (depths[index]! - mean) * 1000,
      radius: radiusOf(depths[index]!, contact, blank.curve),
    })),
    ...(astigmatism ? { astigmatism } : {}),
  };
}

/** A ring with a wall touches concave glass at its outer edge, convex glass at its inner one; equal legs l apart stand on a circle of l / √3. */
function contactOf(instrument: JobReadings["instrument"], curve: Curve): Contact {
  const { ring, legs, bar, wall, ball } = instrument;
  const foot = (ball ?? 0) / 2;
  if (legs !== undefined) return { radius: legs / Math.sqrt(3), foot };
  if (bar !== undefined) return { radius: bar / 2, foot };
  return { radius: ring! / 2 - (curve === "convex" ? (wall ?? 0) : 0), foot };
}

function depthsOf(readings: JobReadings, curve: Curve, { radius }: Contact, mm: (value: number) => string): number[] {
  const signs = readings.zones.map(({ reading }) => (reading < 0 ? -1 : 1));
  return readings.zones.map(({ reading }, index) => {
    const path = ["blank", "readings", "zones", index, "reading"] as const;
    if (signs[index] !== signs[0])
      throw refused(
        path,
        `the readings have both signs: glass is not concave and convex at once; check ${mm(reading)}`,
      );
    if (reading < 0 && curve === "concave") {
      throw refused(
        path,
        `a reading of ${mm(reading)} falls where concave glass lies; write curve: convex, or the reading without its sign`,
      );
    }
    const depth = Math.abs(reading);
    if (depth === 0) throw refused(path, "a reading of 0 is a flat; write curve: flat, or check the reading");
    if (depth > radius) {
      throw refused(
        path,
        `a reading of ${mm(depth)} is deeper than a hemisphere over the instrument's radius of ${mm(radius)}; check both and their units`,
      );
    }
    return depth;
  });
}

function radiusOf(depth: number, { radius, foot }: Contact, curve: Curve): number {
  return (radius * radius) / (2 * depth) + depth / 2 + (curve === "convex" ? -foot : foot);
}

/** Standard uncertainty of the radius, mm: dR/dh = (h² − a²) / 2h², dR/da = a / h; parts added as squares (JCGM 100:2008). */
function uncertaintyOf(
  { instrument }: JobReadings,
  { radius }: Contact,
  depth: number,
  spread: number | undefined,
  count: number,
): number {
  const step = (instrument.resolution ?? RESOLUTION) / EVEN;
  const ofMean = (spread ?? 0) / Math.sqrt(count);
  const ofDepth = Math.sqrt(step * step * (1 + 1 / count) + ZERO_PLATE * ZERO_PLATE + ofMean * ofMean);
  const byDepth = (Math.abs(depth * depth - radius * radius) / (2 * depth * depth)) * ofDepth;
  const bySize = (radius / depth) * SIZE * radius;
  return Math.sqrt(byDepth * byDepth + bySize * bySize);
}

/**
 * Astigmatism from a bar laid in at least three directions: the readings follow m + A cos 2(θ − θ₀), fitted by least
 * squares. A ring or three legs see the mean curvature only and tell nothing of it. Nothing where it is not more than
 * the reading error.
 */
function astigmatismOf({ instrument, zones }: JobReadings, depths: readonly number[]): Measured["astigmatism"] {
  if (instrument.bar === undefined) return undefined;
  const laid = zones.flatMap(({ along }, index) =>
    along === undefined ? [] : [{ turn: 2 * radians(along), depth: depths[index]! }],
  );
  const directions = new Set(zones.flatMap(({ along }) => (along === undefined ? [] : [along % 180])));
  if (directions.size < 3) return undefined;
  const fit = leastSquares(laid.map(({ turn, depth }) => ({ x: cos(turn), y: sin(turn), value: depth })));
  if (!fit) return undefined;
  const amount = Math.sqrt(fit.x * fit.x + fit.y * fit.y);
  const step = instrument.resolution ?? RESOLUTION;
  if (amount <= step) return undefined;
  const along = degrees(atan2(fit.y, fit.x)) / 2;
  return { amount: amount * 1000, deepest: along < 0 ? along + 180 : along };
}

/** The plane c + x X + y Y through values, by its normal equations; nothing where the directions do not span it. */
function leastSquares(
  points: readonly { x: number; y: number; value: number }[],
): { x: number; y: number } | undefined {
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
  return { x: (xv * yy - yv * xy) / det, y: (yv * xx - xv * xy) / det };
}

function refused(path: readonly (string | number)[], text: string): CastingError {
  return new CastingError("invalid", [{ path, text }]);
}

import { CastingError } from "../errors.js";
import { SPHEROMETER } from "../job/limits.js";
import type { Curve, Job, JobReadings } from "../job/types.js";
import { lengthText } from "../units/length-text.js";
import { astigmatismOf } from "./astigmatism.js";
import type { Measured } from "./types.js";

/** A reading of a step r is spread evenly over it: standard uncertainty r / √12, mm (JCGM 100:2008, 4.3.7). */
function stepOf(instrument: JobReadings["instrument"]): number {
  return (instrument.resolution ?? SPHEROMETER.resolution) / Math.sqrt(12);
}

/** How an instrument touches: radius of its circle of contact, or half its bar, and the radius of its feet. Lengths mm. */
interface Contact {
  radius: number;
  /** Standard uncertainty of the radius of contact. */
  radiusError: number;
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
  const astigmatism = astigmatismOf(readings, depths, stepOf(readings.instrument));
  return {
    radius,
    readings: depths.length,
    uncertainty: uncertaintyOf(readings, contact, mean, spread, depths.length),
    ...(spread === undefined ? {} : { spread: spread * 1000 }),
    contact: contact.radius,
    zones: readings.zones.map(({ at, angle, along }, index) => ({
      at,
      ...(angle === undefined ? {} : { angle }),
      ...(along === undefined ? {} : { along }),
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
  // Radius of contact for each mm of the size that the maker measured.
  const share = legs === undefined ? 1 / 2 : 1 / Math.sqrt(3);
  const size = legs ?? bar ?? ring!;
  const radius = share * size - (ring !== undefined && curve === "convex" ? (wall ?? 0) : 0);
  return { radius, radiusError: share * (instrument["size-error"] ?? SPHEROMETER.size * size), foot };
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
        `a reading of ${mm(reading)} falls where concave glass lies; set curve to convex, or write the reading without its sign`,
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
  { radius, radiusError }: Contact,
  depth: number,
  spread: number | undefined,
  count: number,
): number {
  const step = stepOf(instrument);
  const zero = instrument["zero-error"] ?? SPHEROMETER.zero;
  const ofMean = (spread ?? 0) / Math.sqrt(count);
  const ofDepth = Math.sqrt(step * step * (1 + 1 / count) + zero * zero + ofMean * ofMean);
  const byDepth = (Math.abs(depth * depth - radius * radius) / (2 * depth * depth)) * ofDepth;
  const bySize = (radius / depth) * radiusError;
  return Math.sqrt(byDepth * byDepth + bySize * bySize);
}

function refused(path: readonly (string | number)[], text: string): CastingError {
  return new CastingError("invalid", [{ path, text }]);
}

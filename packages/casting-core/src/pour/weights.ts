import { CastingError } from "../errors.js";
import { pieceVolume } from "../pieces/kinds.js";
import type { PieceKind } from "../pieces/types.js";
import type { PieceInMix, Pour } from "./types.js";

/** Standard acceleration of free fall, m/s² (ISO 80000-3). */
export const FREE_FALL = 9.80665;
/** Reference mass of the revised NIOSH lifting equation, kg (NIOSH publication 94-110), for a load held close. */
const NIOSH_MASS = 23;
/** The hands' distance at which it holds, and how a wide load moves them out: H = 20 cm + half its width (same source). */
const CLOSE_REACH = 250;
const BODY_REACH = 200;
/** A piece that weighs less than this in the mix is moved by the pour, g (common practice: tiles of 25 x 6 mm slide). */
const SLIDES_BELOW = 3;

/** What one person should lift at most with a tool of `diameter` in front, and how many people `mass` kg needs. */
export function liftOf(diameter: number, mass: number): Pour["lift"] {
  const guideline = NIOSH_MASS * Math.min(1, CLOSE_REACH / (BODY_REACH + diameter / 2));
  return { guideline, people: Math.ceil(mass / guideline) };
}

/** Pressure under `depth` mm of mix of `density` kg/L, kPa. */
export function mixPressure(density: number, depth: number): number {
  return (density * FREE_FALL * depth) / 1000;
}

/**
 * Weight of each kind in air and in a mix of `wetDensity` kg/L. Throws `impossible` for each kind that floats: it would
 * rise off the glass and be buried in the back.
 */
export function piecesInMix(kinds: readonly PieceKind[], wetDensity: number): PieceInMix[] {
  const floating = kinds
    .filter(({ density }) => density <= wetDensity)
    .map(({ kind, item, density }) => ({
      path: ["pieces", kind, item === undefined ? "density" : "item"],
      text: `the piece floats: it weighs ${round(density)} kg/L, the mix ${round(wetDensity)} kg/L; take a heavier piece, or check its density`,
    }));
  if (floating.length > 0) throw new CastingError("impossible", floating);
  return kinds.map((kind) => {
    const volume = pieceVolume(kind);
    const massInMix = volume * (kind.density - wetDensity);
    return { kind: kind.kind, mass: volume * kind.density, massInMix, slides: massInMix < SLIDES_BELOW };
  });
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100);
}

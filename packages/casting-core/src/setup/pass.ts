import type { Blank, Tool } from "../blank/types.js";
import type { Run } from "../job/run.js";
import type { Coverage } from "../layout/quality/hard-coverage.js";
import { loadPressure } from "../layout/quality/pressure.js";
import { wearOf } from "../layout/quality/wear.js";
import { FOLLOWS } from "../units/figure-text.js";
import type { Place, Removal, SetupWear, SweepRow } from "./types.js";

/** The whole mirror; and rougher, where many runs are compared: bend within 0.01 of the fine one, zoning within 5 % of it. */
const WHOLE = { whole: true, from: 0, to: 1, zones: 200, angles: 360, phases: 32 } as const;
const ROUGH = { whole: true, from: 0, to: 1, zones: 100, angles: 180, phases: 16 } as const;
/** Zones on the plot, of the many that are worked out. */
const SHOWN = 40;
/** Below this difference between inside and outside a pass keeps the curve. */
export const LEVEL = 0.03;
/** Pressure at the mirror's edge over the mean from which to warn (common practice). */
export const EDGE = 1.5;

/** Removal by zone, scaled to a mean of 1 over the whole mirror's area, beside the removal that is wanted. */
export function passOf(blank: Blank, coverage: Coverage, run: Run, removal: Removal | undefined): SetupWear {
  const { zones, removal: worn } = wearOf(coverage, run, WHOLE);
  const mean = areaMean(zones, worn);
  const shown = Array.from({ length: SHOWN }, (_, n) => Math.floor(((n + 0.5) * zones.length) / SHOWN));
  const depths = removal && wantedAt(removal, zones);
  const meanWanted = depths ? areaMean(zones, depths) : 0;
  const bend = mean > 0 ? bendOf(zones, worn, blank.diameter / 2) / mean : 0;
  const middleDown = bend > LEVEL ? 1 : bend < -LEVEL ? -1 : 0;
  const does =
    middleDown === 0 ? "keeps" : middleDown * (blank.curve === "convex" ? -1 : 1) > 0 ? "deepens" : "flattens";
  const needs = removal === undefined ? 0 : removal.first === "centre" ? 1 : -1;
  return {
    zones: shown.map((n) => ({
      at: zones[n]!,
      removal: mean > 0 ? worn[n]! / mean : 0,
      ...(depths ? { wanted: meanWanted > 0 ? depths[n]! / meanWanted : 0 } : {}),
    })),
    bend,
    does,
    ...(removal
      ? {
          toward: middleDown === 0 ? "neither" : middleDown === needs ? "toward" : "away",
          match: matchOf(removal, zones, worn),
        }
      : {}),
  };
}

/** Depth of the removal wanted at `places`, µm. */
function wantedAt({ zones }: Removal, places: Float64Array): Float64Array {
  const last = zones.length - 1;
  const step = zones[1]!.at;
  return places.map((at) => {
    const n = Math.min(last - 1, Math.floor(at / step));
    const share = at / step - n;
    return zones[n]!.depth * (1 - share) + zones[n + 1]!.depth * share;
  });
}

function areaMean(places: ArrayLike<number>, values: ArrayLike<number>): number {
  let [sum, area] = [0, 0];
  for (let n = 0; n < places.length; n++) {
    sum += places[n]! * values[n]!;
    area += places[n]!;
  }
  return sum / area;
}

/** Mean over the inner third of the mirror's radius less the mean over the outer third. */
function bendOf(zones: Float64Array, worn: Float64Array, half: number): number {
  const mean = (inside: (at: number) => boolean) => {
    const kept = [...zones.keys()].filter((n) => inside(zones[n]!));
    return areaMean(
      kept.map((n) => zones[n]!),
      kept.map((n) => worn[n]!),
    );
  };
  return mean((at) => at < half / 3) - mean((at) => at > (2 * half) / 3);
}

/** Offsets from the axis to an overhang of a fifth of the tool, each without and with a stroke of a fifth. */
export function placesOf(blank: Blank, tool: Tool): Place[] {
  const tangent = (blank.diameter - tool.diameter) / 2;
  const overhang = tool.diameter / 10;
  const offsets = new Set([tangent / 2, tangent, tangent + overhang / 2, tangent + overhang, tangent + 2 * overhang]);
  return [...offsets].flatMap((offset) => [0, tool.diameter / 5].map((stroke) => ({ offset, stroke })));
}

/**
 * What runs at `places` do that wear the mirror's centre too, and, with a `removal` wanted, how well they follow it. The
 * job's `own` is told as it is told everywhere.
 */
export function sweepOf(
  places: readonly Place[],
  own: SweepRow,
  blank: Blank,
  tool: Tool,
  coverage: Coverage,
  run: Run,
  removal: Removal | undefined,
): SweepRow[] {
  const half = blank.diameter / 2;
  return places.flatMap((place) => {
    if (isSame(place, own)) return [own];
    const { zones, removal: worn, zoning } = wearOf(coverage, { ...run, ...place }, ROUGH);
    if (worn[0] === 0) return [];
    const edgePressure = loadPressure(half, tool.diameter / 2, place.offset + place.stroke / 2).edge;
    const bend = bendOf(zones, worn, half) / areaMean(zones, worn);
    return [{ ...place, edgePressure, bend, zoning, ...(removal ? { match: matchOf(removal, zones, worn) } : {}) }];
  });
}

/** Whether two runs are one, whatever units they were written in. */
export function isSame(a: Place, b: Place): boolean {
  return Math.abs(a.offset - b.offset) < 1e-6 && Math.abs(a.stroke - b.stroke) < 1e-6;
}

/** Whether a run presses so hard on the mirror's edge that it can chip it. */
export function isHard({ edgePressure }: Pick<SweepRow, "edgePressure">): boolean {
  return edgePressure >= EDGE;
}

/**
 * Correlation of the removal wanted with what a run removes, weighted by the mirror's area: evenly ground depth does not
 * change the curve, so only how the two vary counts. 1 follows it exactly, below 0 leads away.
 */
function matchOf(removal: Removal, places: Float64Array, worn: Float64Array): number {
  return correlationOf(places, worn, wantedAt(removal, places));
}

function correlationOf(at: Float64Array, found: Float64Array, depth: Float64Array): number {
  const [meanFound, meanDepth] = [areaMean(at, found), areaMean(at, depth)];
  const product = (a: Float64Array, am: number, b: Float64Array, bm: number) =>
    areaMean(
      at,
      a.map((value, n) => (value - am) * (b[n]! - bm)),
    );
  const spread = Math.sqrt(product(found, meanFound, found, meanFound) * product(depth, meanDepth, depth, meanDepth));
  return spread > 0 ? product(found, meanFound, depth, meanDepth) / spread : 0;
}

/** A run that follows the removal wanted better by no more than this is none to change for. */
const AS_GOOD = 0.01;

/**
 * The row that follows the removal wanted best, among those below the pressure that chips the edge; the job's `own`, if it
 * can run, where none is clearly better; nothing where none of them follows it.
 */
export function closestOf(sweep: readonly SweepRow[], own?: SweepRow): SweepRow | undefined {
  const safe = (row: SweepRow) => !isHard(row) && row.match !== undefined && row.match >= FOLLOWS;
  const best = sweep.filter(safe).sort((a, b) => b.match! - a.match!)[0];
  const asGood = best ? best.match! - AS_GOOD : FOLLOWS;
  return own && !isHard(own) && own.match !== undefined && own.match >= asGood ? own : best;
}

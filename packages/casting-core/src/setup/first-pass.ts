import type { Blank, Tool } from "../blank/types.js";
import type { Job } from "../job/types.js";
import { loadPressure } from "../layout/pressure.js";
import type { Layout } from "../layout/types.js";
import { hardCoverage, type Run, wearOf } from "../layout/wear.js";
import type { PieceKind } from "../pieces/types.js";
import type { Pour } from "../pour/types.js";
import { PI } from "../trig.js";
import type { Drive, Load, Removal, Setup, SetupWear, Speed } from "./types.js";

/** Standard acceleration of free fall, m/s² (ISO 80000-3). */
const FREE_FALL = 9.80665;
/** Drag over load of a tool on wet grain that is reckoned with (common practice; value from memory). */
const FRICTION = 0.3;
/** The whole mirror; and rougher, where many runs are compared: within 1 % of the fine one. */
const WHOLE = { from: 0, to: 1, zones: 200, angles: 720, phases: 16 };
const ROUGH = { from: 0, to: 1, zones: 60, angles: 180, phases: 8 };
/** Zones on the plot, of the many that are worked out. */
const SHOWN = 40;
/** Below this difference between inside and outside a pass keeps the curve. */
const LEVEL = 0.03;

/** Pressures for each weight: on the hard area, worn in; and fresh, a nut bearing on its ring only. */
export function loadsOf(
  job: Job,
  tool: Tool,
  kinds: readonly PieceKind[],
  layout: Layout,
  pour: Pour,
  edge: number,
): Load[] {
  const worn = layout.quality.hardCoverage * PI * (tool.diameter / 2) * (tool.diameter / 2);
  const fresh = layout.pieces.reduce((sum, { kind }) => {
    const { bearing, area, bore } = kinds[kind]!;
    const whole = area - (PI / 4) * bore * bore;
    if (!bearing) return sum + whole;
    return sum + (PI / 4) * (bearing.outer * bearing.outer - bearing.inner * bearing.inner);
  }, 0);
  return [...job.setup.weights]
    .sort((a, b) => a - b)
    .map((weight) => {
      const mass = pour.mass.dry + weight;
      // N / mm² are MPa.
      const on = (area: number) => (mass * FREE_FALL * 1000) / area;
      return { weight, mass, worn: on(worn), fresh: on(fresh), edge: on(worn) * edge };
    });
}

/** Speed of the mirror's edge and the tool's turns for each turntable speed. */
export function speedsOf({ blank, setup }: Job): Speed[] {
  return [...setup.turntable]
    .sort((a, b) => a - b)
    .map((turntable) => ({
      turntable,
      tool: turntable * setup["tool-turns"],
      rim: (PI * blank.diameter * turntable) / 60_000,
    }));
}

/** Drag at the height of the drive tips the tool forward: shift = friction × height; for a disc p = 1 + 4 shift / radius. */
export function driveOf(tool: Tool, pour: Pour): Drive {
  const height = Math.max(pour.fill.centre, pour.fill.edge);
  const shift = FRICTION * height;
  return { height, friction: FRICTION, shift, leading: 1 + (4 * shift) / (tool.diameter / 2) };
}

/** A start from slow and light, one thing at a time, to the job's fastest and heaviest. */
export function ladderOf(loads: readonly Load[], speeds: readonly Speed[]): Setup["ladder"] {
  const slow = speeds[0]!.turntable;
  const light = loads[0]!.weight;
  const steps = [
    {
      turntable: slow,
      weight: light,
      reason: "slow and light: listen, look for rocking, chips at the edge, dry channels",
    },
  ];
  for (const { turntable } of speeds.slice(1))
    steps.push({ turntable, weight: light, reason: "faster, with no more weight: the tool must run smoothly" });
  for (const { weight } of loads.slice(1))
    steps.push({ turntable: slow, weight, reason: "more weight, slow again: the glass must drag evenly, not grab" });
  return steps.map((step, n) => ({ step: n + 1, ...step }));
}

/** Removal by zone, scaled to a mean of 1 over the mirror's area, beside the removal that is wanted. */
export function passOf(
  blank: Blank,
  kinds: readonly PieceKind[],
  layout: Layout,
  run: Run,
  removal: Removal | undefined,
): SetupWear {
  const coverage = hardCoverage(kinds, layout.pieces);
  const { zones, removal: worn } = wearOf(coverage, run, WHOLE);
  const mean = areaMean(zones, worn);
  const shown = Array.from({ length: SHOWN }, (_, n) => Math.floor(((n + 0.5) * zones.length) / SHOWN));
  const wanted =
    removal &&
    scaledWanted(
      removal,
      [...shown].map((n) => zones[n]!),
    );
  const bend = mean > 0 ? bendOf(zones, worn, blank.diameter / 2) / mean : 0;
  const middleDown = bend > LEVEL ? 1 : bend < -LEVEL ? -1 : 0;
  const does =
    middleDown === 0 ? "keeps" : middleDown * (blank.curve === "convex" ? -1 : 1) > 0 ? "deepens" : "flattens";
  const needs = removal === undefined ? 0 : removal.first === "centre" ? 1 : -1;
  return {
    zones: shown.map((n, index) => ({
      at: zones[n]!,
      removal: mean > 0 ? worn[n]! / mean : 0,
      ...(wanted ? { wanted: wanted[index]! } : {}),
    })),
    bend,
    does,
    ...(removal ? { toward: middleDown === 0 ? "neither" : middleDown === needs ? "toward" : "away" } : {}),
  };
}

/** Wanted removal at `places`, scaled to a mean of 1 over the mirror. */
function scaledWanted({ zones }: Removal, places: readonly number[]): number[] {
  const last = zones.length - 1;
  const step = zones[1]!.at;
  const depths = places.map((at) => {
    const n = Math.min(last - 1, Math.floor(at / step));
    const share = at / step - n;
    return zones[n]!.depth * (1 - share) + zones[n + 1]!.depth * share;
  });
  const mean = areaMean(places, depths);
  return depths.map((depth) => (mean > 0 ? depth / mean : 0));
}

function areaMean(places: ArrayLike<number>, values: ArrayLike<number>): number {
  let [sum, area] = [0, 0];
  for (let n = 0; n < places.length; n++) {
    sum += places[n]! * values[n]!;
    area += places[n]!;
  }
  // Nothing is worn where the tool does not come.
  return area > 0 ? sum / area : 0;
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

/** Offsets from the axis to an overhang of a fifth of the tool, without and with a stroke of a fifth, and what they do. */
export function sweepOf(
  blank: Blank,
  tool: Tool,
  kinds: readonly PieceKind[],
  layout: Layout,
  run: Run,
): Setup["sweep"] {
  const coverage = hardCoverage(kinds, layout.pieces);
  const half = blank.diameter / 2;
  const tangent = half - tool.diameter / 2;
  const overhang = tool.diameter / 10;
  const offsets = [
    ...new Set([tangent / 2, tangent, tangent + overhang / 2, tangent + overhang, tangent + 2 * overhang]),
  ];
  return offsets.flatMap((offset) =>
    [0, tool.diameter / 5].map((stroke) => {
      const { zones, removal, zoning } = wearOf(coverage, { ...run, offset, stroke }, ROUGH);
      return {
        offset,
        stroke,
        edgePressure: loadPressure(half, tool.diameter / 2, offset + stroke / 2).edge,
        bend: bendOf(zones, removal, half) / (areaMean(zones, removal) || 1),
        zoning,
      };
    }),
  );
}

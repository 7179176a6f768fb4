import type { Tool } from "../blank/types.js";
import type { Job } from "../job/types.js";
import type { Layout } from "../layout/types.js";
import type { PieceKind } from "../pieces/types.js";
import type { Pour } from "../pour/types.js";
import { FREE_FALL } from "../pour/weights.js";
import { PI } from "../trig.js";
import type { Drive, Load, Setup, Speed } from "./types.js";

/** Drag over load of a tool on wet grain that is reckoned with (common practice; value from memory). */
const FRICTION = 0.3;

/** kPa on the hard area, worn in: more than `usual` is seldom, more than `most` is noted (common practice). */
export const LOAD = { usual: 10, most: 30 };
/** A rim faster than this throws grit, m/s (common practice). */
export const FAST = 1.5;

/** Pressures for each weight: on the hard area, worn in; and fresh, a nut bearing on its ring only, where that is known. */
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
  const known = layout.pieces.every(({ kind }) => !kinds[kind]!.chamfered);
  return [...new Set(job.setup.weights)]
    .sort((a, b) => a - b)
    .map((weight) => {
      const mass = pour.mass.dry + weight;
      // N / mm² are MPa.
      const on = (area: number) => (mass * FREE_FALL * 1000) / area;
      return { weight, mass, worn: on(worn), ...(known ? { fresh: on(fresh) } : {}), edge: on(worn) * edge };
    });
}

/** Speed of the mirror's edge and the tool's turns for each turntable speed, each once, slow to fast. */
export function speedsOf({ blank, setup }: Job): Speed[] {
  return [...new Set(setup.turntable)]
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

/** Whether a speed throws grit off the mirror's edge. */
export function isFast({ rim }: Speed): boolean {
  return rim > FAST;
}

/** Whether a weight presses harder than glass and pieces bear. */
export function isHeavy({ worn }: Load): boolean {
  return worn > LOAD.most;
}

/**
 * A start from slow and light, one thing at a time, to the fastest and heaviest of the job that no warning forbids; none
 * where every speed or weight is too much. Less than no weight there is not.
 */
export function ladderOf(allLoads: readonly Load[], allSpeeds: readonly Speed[]): Setup["ladder"] {
  const speeds = allSpeeds.filter((speed) => !isFast(speed));
  const loads = allLoads.filter((load) => load.weight === 0 || !isHeavy(load));
  if (speeds.length === 0 || loads.length === 0) return [];
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

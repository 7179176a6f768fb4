import type { Run } from "../../job/run.js";
import { cos, PI } from "../../trig.js";
import type { Place } from "../../wasm.js";
import { newEngine } from "./engine.js";
import type { Coverage } from "./hard-coverage.js";

/** Removal by zone of the mirror, relative: the same numbers for both, so that their ratio shows what the layout does. */
export interface Wear {
  /** Distance of each zone from the mirror's axis, mm. */
  zones: Float64Array;
  removal: Float64Array;
  /** The same with the hard area spread evenly over the pieces' own circle. */
  even: Float64Array;
  /** Standard deviation of removal ÷ even over the zones that are judged: without the middle and the edge. */
  zoning: number;
}

/**
 * Zones from the share `from` to the share `to` of how far pieces come, or of the `whole` mirror; steps of a half turn;
 * positions of a stroke.
 */
interface Sampling {
  whole?: true;
  from: number;
  to: number;
  zones: number;
  angles: number;
  phases: number;
}

/** The shares of the reach between which the contract judges zoning, and how finely: within 0.4 % of four times the angles and eight times the positions (measured on 15 runs). */
const [MIDDLE, EDGE] = [0.05, 0.95];
const JUDGED: Sampling = { from: MIDDLE, to: EDGE, zones: 200, angles: 360, phases: 32 };

/**
 * Removal by Preston's relation, pressure × speed × time (F. W. Preston, J. Soc. Glass Technology 11, 1927):
 * W(ρ) = ∮ C(r) p(x) v dφ for each zone ρ of the mirror, C the coverage at the distance r from the tool's axis, p the
 * pressure that balances the load (see loadPressure), v the speed of one against the other; over a stroke the mean of its
 * positions. The rings' mean stands for the coverage: it holds where the tool's turns do not repeat a track.
 */
export function wearOf({ reach, rings }: Coverage, run: Run, sampling: Sampling = JUDGED): Wear {
  const { whole, from, to, zones: count, angles, phases } = sampling;
  const far = Math.min(run.mirror, run.offset + run.stroke / 2 + reach);
  const end = whole ? run.mirror : far;
  const engine = newEngine();
  engine.open(count, rings.length, angles);
  const numbers = ({ value }: Place, length: number) => new Float64Array(engine.memory.buffer, value, length);
  numbers(engine.rings, rings.length).set(rings);
  const zones = numbers(engine.zones, count);
  for (let n = 0; n < count; n++) zones[n] = end * (from + ((to - from) * (n + 0.5)) / count);
  // The mean of the rings by their area.
  const hard = rings.reduce((sum, share, n) => sum + share * (2 * n + 1), 0) / (rings.length * rings.length);
  for (const offset of positions(run, phases)) engine.wear(run.mirror, offset, reach, 1 - run.turns, hard);
  const removal = numbers(engine.removal, count);
  const even = numbers(engine.even, count);
  return { zones, removal, even, zoning: spreadOf(zones, removal, even, far) };
}

/** The offsets that a stroke along the line of the axes goes through, evenly in its phase. */
function positions({ offset, stroke }: Run, phases: number): number[] {
  if (stroke === 0) return [offset];
  return Array.from({ length: phases }, (_, n) => offset + (stroke / 2) * cos(((n + 0.5) * PI) / phases));
}

/** Standard deviation of removal ÷ even where anything is removed at all, between the middle and the edge. */
function spreadOf(zones: Float64Array, removal: Float64Array, even: Float64Array, far: number): number {
  const ratios = [...removal].flatMap((worn, n) => {
    const judged = zones[n]! >= MIDDLE * far && zones[n]! <= EDGE * far;
    return judged && even[n]! > 0 ? [worn / even[n]!] : [];
  });
  if (ratios.length === 0) return 0;
  const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
  return Math.sqrt(ratios.reduce((sum, ratio) => sum + (ratio - mean) * (ratio - mean), 0) / ratios.length);
}

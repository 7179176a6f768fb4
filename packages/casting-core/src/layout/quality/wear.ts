import type { Run } from "../../job/run.js";
import { cos, PI, sinCos } from "../../trig.js";
import type { Coverage } from "./hard-coverage.js";
import { loadPressure } from "./pressure.js";

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
export function wearOf(coverage: Coverage, run: Run, sampling: Sampling = JUDGED): Wear {
  const { whole, from, to, zones: count, angles, phases } = sampling;
  const { reach } = coverage;
  const far = Math.min(run.mirror, run.offset + run.stroke / 2 + reach);
  const end = whole ? run.mirror : far;
  const zones = Float64Array.from({ length: count }, (_, n) => end * (from + ((to - from) * (n + 0.5)) / count));
  const removal = new Float64Array(count);
  const even = new Float64Array(count);
  const track = trackOf(coverage, run, angles);
  for (const offset of positions(run, phases)) {
    const { at } = loadPressure(run.mirror, reach, Math.abs(offset));
    // Without overhang it is 1 everywhere.
    const pressure = Math.abs(offset) + reach <= run.mirror ? undefined : at;
    addWear({ zones, removal, even }, offset, pressure, track);
  }
  return { zones, removal, even, zoning: spreadOf(zones, removal, even, far) };
}

/** What every zone meets on a half turn, wherever the tool stands: the same for all of them. */
interface Track {
  /** Of the directions, from the line of the axes, in which a zone is looked at. */
  cosines: Float64Array;
  sines: Float64Array;
  /** Turns of the mirror against the tool, per turn of the mirror. */
  slide: number;
  reach: number;
  width: number;
  rings: Float64Array;
  /** The mean of the rings by their area. */
  hard: number;
}

function trackOf({ reach, rings }: Coverage, { turns }: Run, angles: number): Track {
  const cosines = new Float64Array(angles);
  const sines = new Float64Array(angles);
  for (let n = 0; n < angles; n++) [sines[n], cosines[n]] = sinCos(((n + 0.5) * PI) / angles);
  const hard = rings.reduce((sum, share, n) => sum + share * (2 * n + 1), 0) / (rings.length * rings.length);
  return { cosines, sines, slide: 1 - turns, reach, width: reach / rings.length, rings, hard };
}

/** Adds to `wear` what goes off each of its zones on a half turn under a tool at `offset`. */
function addWear(
  { zones, removal, even }: Omit<Wear, "zoning">,
  offset: number,
  pressure: ((x: number) => number) | undefined,
  { cosines, sines, slide, reach, width, rings, hard }: Track,
): void {
  const outward = offset < 0 ? -1 : 1;
  for (let zone = 0; zone < zones.length; zone++) {
    const rho = zones[zone]!;
    let worn = removal[zone]!;
    let evenly = even[zone]!;
    for (let n = 0; n < cosines.length; n++) {
      const x = rho * cosines[n]! - offset;
      const y = rho * sines[n]!;
      const r = Math.sqrt(x * x + y * y);
      if (r >= reach) {
        // Past the tool's side of the axis a zone only leads away from it.
        if (offset >= 0) break;
        continue;
      }
      // Mirror: (−y, x + offset) a radian; tool: (−y, x) times its turns.
      const vx = -slide * y;
      const vy = slide * x + offset;
      const speed = Math.sqrt(vx * vx + vy * vy);
      const here = pressure === undefined ? speed : pressure(outward * x) * speed;
      evenly += hard * here;
      // Just below the edge the quotient may round up to the number of rings.
      worn += rings[Math.min(rings.length - 1, Math.floor(r / width))]! * here;
    }
    removal[zone] = worn;
    even[zone] = evenly;
  }
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

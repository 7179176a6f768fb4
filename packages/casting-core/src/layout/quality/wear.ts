import type { Job, JobSetup } from "../../job/types.js";
import type { PieceKind } from "../../pieces/types.js";
import { cos, hypot, PI, sinCos } from "../../trig.js";
import { mustBeLaid } from "../laid.js";
import type { PlacedPiece } from "../types.js";
import { loadPressure } from "./pressure.js";
import { ringCoverage, span } from "./rings.js";

/** The tool's coverage in rings of equal width about its axis, to `reach` mm. */
export interface Coverage {
  reach: number;
  /** Share of each ring that is hard; beyond the last there is nothing. */
  rings: Float64Array;
}

/** Between which distances from the tool's axis pieces stand, mm. */
export interface Band {
  inner: number;
  outer: number;
}

/** Where tool and mirror run, lengths mm; `turns` of the tool per turn of the mirror. */
export interface Run {
  mirror: number;
  offset: number;
  stroke: number;
  turns: number;
}

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

const RINGS = 240;
/** What rounding leaves of a ring that lies in bores altogether. */
const NOTHING = 1e-9;

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
 * The hard area of a layout, bores taken out, ring by ring to the edge of the outermost piece.
 *
 * @throws CastingError `invalid` where a piece is of none of `kinds` or has no outline
 */
export function hardCoverage(kinds: readonly PieceKind[], pieces: readonly PlacedPiece[]): Coverage {
  mustBeLaid(kinds, pieces);
  const reach = pieces.reduce((most, piece) => Math.max(most, outermost(piece)), 0);
  const rings = ringCoverage(pieces, reach, RINGS);
  const bores = pieces.flatMap((piece): PlacedPiece[] => {
    const { bore } = kinds[piece.kind]!;
    return bore > 0 ? [{ ...piece, radius: bore / 2, outline: [] }] : [];
  });
  const holes = ringCoverage(bores, reach, RINGS);
  for (let n = 0; n < RINGS; n++) {
    const left = rings[n]! - holes[n]!;
    rings[n] = left > NOTHING ? left : 0;
  }
  return { reach, rings };
}

/** How far a piece reaches from the tool's axis, mm. */
export function outermost(piece: PlacedPiece): number {
  if (piece.radius !== undefined) return span(piece)[1];
  return piece.outline.reduce((most, [x, y]) => Math.max(most, hypot(x, y)), 0);
}

/** The outermost band of a tool that has hard area in every ring. */
export function outermostBand({ reach, rings }: Coverage): Band {
  let ring = rings.length;
  while (ring > 0 && rings[ring - 1]! > 0) ring--;
  return { inner: (ring * reach) / rings.length, outer: reach };
}

/** The tool's axis from the mirror's: a length, or the tangent position, where the two edges meet. */
export function offsetOf({ offset }: Pick<JobSetup, "offset">, blank: number, tool: number): number {
  return offset === "tangent" ? (blank - tool) / 2 : offset;
}

/** How mirror and tool of a job run. */
export function runOf({ blank, tool, setup }: Pick<Job, "blank" | "tool" | "setup">): Run {
  const offset = offsetOf(setup, blank.diameter, tool.diameter);
  return { mirror: blank.diameter / 2, offset, stroke: setup.stroke, turns: setup["tool-turns"] };
}

/**
 * Removal by Preston's relation, pressure × speed × time (F. W. Preston, J. Soc. Glass Technology 11, 1927):
 * W(ρ) = ∮ C(r) p(x) v dφ for each zone ρ of the mirror, C the coverage at the distance r from the tool's axis, p the
 * pressure that balances the load (see loadPressure), v the speed of one against the other; over a stroke the mean of its
 * positions. The rings' mean stands for the coverage: it holds where the tool's turns do not repeat a track.
 */
export function wearOf(coverage: Coverage, run: Run, sampling: Sampling = JUDGED): Wear {
  const { whole, from, to, zones: count, angles, phases } = sampling;
  const { reach, rings } = coverage;
  const width = reach / rings.length;
  const far = Math.min(run.mirror, run.offset + run.stroke / 2 + reach);
  const hard = rings.reduce((sum, share, n) => sum + share * (2 * n + 1), 0) / (rings.length * rings.length);
  const end = whole ? run.mirror : far;
  const zones = Float64Array.from({ length: count }, (_, n) => end * (from + ((to - from) * (n + 0.5)) / count));
  const removal = new Float64Array(count);
  const even = new Float64Array(count);
  const track: Track = {
    cosines: new Float64Array(angles),
    sines: new Float64Array(angles),
    slide: 1 - run.turns,
    reach,
    width,
    rings,
    hard,
  };
  for (let n = 0; n < angles; n++) [track.sines[n], track.cosines[n]] = sinCos(((n + 0.5) * PI) / angles);
  for (const offset of positions(run, phases)) {
    const { at } = loadPressure(run.mirror, reach, Math.abs(offset));
    // Without overhang it is 1 everywhere.
    const pressure = Math.abs(offset) + reach <= run.mirror ? undefined : at;
    for (let zone = 0; zone < count; zone++) wear(zones[zone]!, offset, track, pressure, zone, removal, even);
  }
  return { zones, removal, even, zoning: spreadOf(zones, removal, even, far) };
}

/** What a zone of the mirror meets on its way round, and how. */
interface Track {
  cosines: Float64Array;
  sines: Float64Array;
  slide: number;
  reach: number;
  width: number;
  rings: Float64Array;
  hard: number;
}

/** Adds what wears off a zone, `rho` from the mirror's axis, on a half turn under a tool at `offset`. */
function wear(
  rho: number,
  offset: number,
  { cosines, sines, slide, reach, width, rings, hard }: Track,
  pressure: ((x: number) => number) | undefined,
  zone: number,
  removal: Float64Array,
  even: Float64Array,
): void {
  const outward = offset < 0 ? -1 : 1;
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

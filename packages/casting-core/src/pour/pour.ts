import type { Blank, Tool } from "../blank/types.js";
import { Gathered, impossible } from "../errors.js";
import type { Job, JobSocket } from "../job/types.js";
import { mustBeLaid } from "../layout/laid.js";
import type { Layout } from "../layout/types.js";
import { countsOf, pieceVolume } from "../pieces/kinds.js";
import { STEEL } from "../pieces/nuts.js";
import type { PieceKind } from "../pieces/types.js";
import { PI } from "../trig.js";
import { volumeText } from "../units/figure-text.js";
import { batchesOf, capacityOf, recipe } from "./batches.js";
import { driedMass, freeWater } from "./chemistry.js";
import { damOf } from "./dam.js";
import { fitOf } from "./fit.js";
import { castHeatCapacity, heatOf } from "./heat.js";
import { fillOf, moldVolume, socketOf, socketVolume } from "./mold.js";
import { plasterOf } from "./plaster.js";
import { scheduleOf } from "./schedule.js";
import { shoppingOf } from "./shopping.js";
import type { Pour } from "./types.js";
import { liftOf, mixPressure, piecesInMix } from "./weights.js";

/** The blocks of a job that the pour is worked out from. */
export type PourJob = Pick<Job, "units" | "blank" | "plaster" | "dam" | "socket" | "container">;

/** Least share of the mold that must be plaster for a cast to hold together (common practice). */
const LEAST = 0.02;
/** Cavities in the face's plaster taken as this deep all over, mm (common practice). */
const REPAIR_DEPTH = 1;
/** Warmth for forced drying and its limit, °C: potters' rule and makers' drying leaflets. Gypsum breaks down above. */
const DRYING = { temperature: 45, limit: 49 };

/** What the pour stands on. Throws `invalid` or `impossible`, by key, where any of it cannot be. */
function mustPour(job: PourJob, blank: Blank, tool: Tool, kinds: readonly PieceKind[]) {
  const faults = new Gathered();
  const poured = pouredInto(job, [blank, tool], kinds, faults);
  faults.tell();
  return { ...poured, plaster: poured.plaster!, pieces: poured.pieces!, fill: poured.fill! };
}

/**
 * What the pour stands on, whatever the layout; what is wrong goes into `faults`, and what stands on that is left out.
 * Told before anything is laid, so that a long run does not end in a slip of the pen.
 *
 * @param thickestOther thickness of pieces that are not among `kinds`, as something else is wrong with them
 */
export function pouredInto(
  job: PourJob,
  glass: [Blank, Tool] | undefined,
  kinds: readonly PieceKind[],
  faults: Gathered,
  thickestOther = 0,
) {
  const thickest = Math.max(thickestOther, ...kinds.map((kind) => kind.thickness));
  const plaster = faults.of(() => plasterOf(job.plaster));
  const fill = glass && faults.of(() => fillOf(job, ...glass, thickest));
  const { film = 0 } = job.plaster;
  const socket = faults.of(
    () => job.socket && glass && fill && socketOf(job.socket, glass[1], { ...fill, film, thickest }, job.units),
  );
  const pieces = plaster && faults.of(() => piecesInMix(kinds, plaster.wetDensity));
  return { plaster, pieces, fill, socket };
}

/**
 * What is poured for `job`: the mold, the mix, its batches and marks, heat and times, fit, masses, dam and what to buy.
 * Throws `invalid` or `impossible`, by key, where the figures of the job cannot be poured.
 */
export function planPour(
  job: PourJob,
  blank: Blank,
  tool: Tool,
  kinds: readonly PieceKind[],
  layout: Pick<Layout, "pieces">,
): Pour {
  mustBeLaid(kinds, layout.pieces);
  const counts = countsOf(kinds, layout.pieces);
  // A kind that the others left no place for raises no fill line and no socket.
  const laid = layout.pieces.length > 0 ? kinds.filter((_, i) => counts[i]! > 0) : kinds;
  const { plaster, pieces, fill, socket } = mustPour(job, blank, tool, laid);
  // The film takes its own thickness from the mold; the fill line counts from the glass, under it.
  const mold = moldVolume(blank, tool, fill.edge - (job.plaster.film ?? 0));

  const ofAll = (value: (kind: PieceKind) => number): number =>
    kinds.reduce((total, kind, i) => total + counts[i]! * value(kind), 0);
  const piecesVolume = ofAll(pieceVolume);
  const piecesMass = ofAll((kind) => (pieceVolume(kind) * kind.density) / 1000);
  const faceArea = (PI / 4) * tool.diameter * tool.diameter;

  const displaced = job.socket && socket ? socketVolume(job.socket, socket) : 0;
  const castVolume = mold - piecesVolume - displaced;
  // A socket nearly as wide as the tool, or a curve that its straight foot dips into, can take all of the mold.
  if (!(castVolume > LEAST * mold)) {
    throw impossible(
      job.socket ? ["socket", "diameter"] : ["plaster", "fill"],
      `pieces and socket take ${volumeText(piecesVolume + displaced, job.units)} of the mold's ${volumeText(mold, job.units)} and leave no room for plaster; take a smaller socket, or fill deeper`,
    );
  }
  const mixVolume = castVolume * (1 + job.plaster.spare);
  const batches = batchesOf(mixVolume, plaster, job.container, job.units);
  const repairMix = (REPAIR_DEPTH * (faceArea - ofAll((kind) => kind.area))) / 1000;
  const repair = { depth: REPAIR_DEPTH, mix: repairMix, ...recipe(repairMix, plaster) };

  const { powder, water } = recipe(castVolume, plaster);
  const socketMass = job.socket ? massOf(job.socket) : 0;
  const hard = piecesMass + socketMass;
  const wet = hard + powder + water;
  const heat = heatOf(plaster);
  const meanDepth = (castVolume * 1000) / faceArea;
  const dam = damOf(job, blank, tool, fill.edge);
  const allPowder = recipe(mixVolume, plaster).powder + repair.powder;
  return {
    fill,
    plaster,
    moldVolume: mold,
    piecesVolume,
    socketVolume: displaced,
    castVolume,
    mixVolume,
    ...(socket ? { socket } : {}),
    ...(job.container && Number.isFinite(job.container.height)
      ? { container: { capacity: capacityOf(job.container) } }
      : {}),
    batches,
    repair,
    heat,
    schedule: scheduleOf(plaster, batches.length, heat.rise, meanDepth, castHeatCapacity(plaster)),
    drying: { freeWater: powder * freeWater(plaster.water), ...DRYING },
    fit: fitOf(plaster.kind, job.blank, blank, tool),
    mass: { wet, dry: hard + powder * driedMass(plaster.water), pieces: piecesMass, socket: socketMass },
    lift: liftOf(tool.diameter, wet),
    pressure: mixPressure(plaster.wetDensity, Math.max(fill.edge, fill.centre)),
    pieces,
    dam,
    shopping: shoppingOf(kinds, counts, allPowder, blank, dam, job),
  };
}

/** A socket of steel, kg; its bore is air. */
function massOf({ diameter, bore = 0, length }: JobSocket): number {
  return (PI / 4) * (diameter * diameter - bore * bore) * length * 1e-6 * STEEL;
}

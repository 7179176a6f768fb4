import type { Blank, Tool } from "../blank/types.js";
import type { Job, JobSocket } from "../job/types.js";
import type { Layout } from "../layout/types.js";
import { pieceVolume } from "../pieces/kinds.js";
import { STEEL } from "../pieces/nuts.js";
import type { PieceKind } from "../pieces/types.js";
import { PI } from "../trig.js";
import { batchesOf, capacityOf, recipe } from "./batches.js";
import { driedMass } from "./chemistry.js";
import { damOf } from "./dam.js";
import { heatOf } from "./heat.js";
import { fillOf, moldVolume, socketOf, socketVolume } from "./mold.js";
import { plasterOf } from "./plaster.js";
import type { Pour } from "./types.js";

/**
 * What is poured for `job`: the mold, the mix, its batches and marks, heat, masses and the dam. Throws `invalid` or
 * `impossible`, by key, where the figures of the job cannot be poured.
 */
export function planPour(job: Job, blank: Blank, tool: Tool, kinds: readonly PieceKind[], layout: Layout): Pour {
  const plaster = plasterOf(job.plaster);
  const thickest = Math.max(0, ...kinds.map((kind) => kind.thickness));
  const fill = fillOf(job.plaster, blank, tool, thickest);
  const mold = moldVolume(blank, tool, fill.edge);
  const laid = layout.pieces.map((piece) => kinds[piece.kind]!);
  const piecesVolume = sum(laid.map(pieceVolume));
  const piecesMass = sum(laid.map((kind) => (pieceVolume(kind) * kind.density) / 1000));
  const socket = job.socket && socketOf(job.socket, tool, thickest, fill.centre);
  const displaced = job.socket && socket ? socketVolume(job.socket, socket) : 0;
  const castVolume = mold - piecesVolume - displaced;
  const mixVolume = castVolume * (1 + job.plaster.spare);
  const { powder, water } = recipe(castVolume, plaster);
  const hard = piecesMass + (job.socket ? socketMass(job.socket) : 0);
  return {
    fill,
    plaster,
    moldVolume: mold,
    piecesVolume,
    socketVolume: displaced,
    castVolume,
    mixVolume,
    ...(socket ? { socket } : {}),
    ...(job.container ? { container: { capacity: capacityOf(job.container) } } : {}),
    batches: batchesOf(mixVolume, plaster, job.container),
    heat: heatOf(plaster),
    mass: { wet: hard + powder + water, dry: hard + powder * driedMass(plaster.water) },
    dam: damOf(job, blank, tool, fill.edge),
  };
}

function socketMass({ diameter, bore = 0, length }: JobSocket): number {
  return (PI / 4) * (diameter * diameter - bore * bore) * length * 1e-6 * STEEL;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

import type { Tool } from "../blank/types.js";
import { impossible } from "../errors.js";
import type { Job } from "../job/types.js";
import type { PieceKind } from "../pieces/types.js";
import { random } from "../random.js";
import type { Field } from "./bed.js";
import { lay } from "./lay.js";
import { mixOf } from "./mix.js";
import { inLayingOrder } from "./order.js";
import { cellOf, latticeGuess } from "./room.js";
import { shapesOf } from "./shapes.js";
import type { PlacedPiece } from "./types.js";

/** Most pieces that one tool may hold: above it a run takes minutes, and nobody lays that many. */
export const MOST_PIECES = 20_000;

/** Pieces to try for, as a share of what an ordered lattice would hold: what one start can jam. */
const AIM = 0.94;

export interface Laid {
  pieces: PlacedPiece[];
  unplaced: { kind: number; count: number }[];
}

/**
 * Lays `kinds` in the tool's circle: as many as fit, or `job.layout.count` of them spread over the whole tool. The same
 * job and seed give the same pieces on every machine. Ids follow the laying order (see inLayingOrder).
 *
 * @param progress called now and then with the share done, 0 to 1
 * @throws CastingError `impossible` where no piece fits, fewer fit than asked for, or more than 20 000 would
 */
export function layPieces(job: Job, tool: Tool, kinds: readonly PieceKind[], progress?: (share: number) => void): Laid {
  const field = fieldOf(job, tool);
  const gap = job.layout.gap + job.layout.hand;
  const shapes = shapesOf(kinds);
  const asked = job.layout.count;
  const room = roomFor(kinds, field, gap);
  const count = asked === "max" ? room : asked;
  if (count > MOST_PIECES) {
    throw impossible(
      ["layout", "count"],
      `about ${count} pieces would have to be laid, more than the ${MOST_PIECES} that one tool may hold; use larger pieces or give a smaller count`,
    );
  }
  const mix = mixOf(kinds, count);
  const sweeps = 1500;
  const start = { shapes, field, gap, spread: gap, mix, sweeps, progress };
  const pieces = lay(start, random(job.layout.seed));
  return { pieces: inLayingOrder(pieces, Math.sqrt(cellOf(kinds[0]!, gap))), unplaced: [] };
}

function fieldOf(job: Job, tool: Tool): Field {
  const clear = job.layout["keep-clear"].map(({ x, y, diameter }) => ({ x, y, radius: diameter / 2 }));
  if (job.socket?.foot === "glass") clear.push({ x: 0, y: 0, radius: job.socket.diameter / 2 });
  return { radius: tool.diameter / 2 - tool.rim, edge: tool.diameter / 2, clear };
}

/** How many pieces of the mix to try for. */
function roomFor(kinds: readonly PieceKind[], field: Field, gap: number): number {
  const mix = mixOf(kinds, MOST_PIECES + 1);
  const cells = kinds.map((kind) => cellOf(kind, gap));
  let sum = 0;
  for (let n = 0; n < mix.length; n++) {
    sum += cells[mix[n]!]!;
    if (n + 1 > AIM * latticeGuess(field, sum / (n + 1), gap)) return n;
  }
  return mix.length;
}

import type { Blank } from "../blank/types.js";
import type { Job } from "../job/types.js";
import { pieceVolume } from "../pieces/kinds.js";
import type { PieceKind } from "../pieces/types.js";
import type { Dam, Shopping } from "./types.js";

/** One piece in twenty on top, for chipped and lost ones (common practice). */
const SPARE_SHARE = 0.05;
/** Film that hangs over the blank all round, mm (common practice). */
const FILM_OVERHANG = 50;

/** What to buy: `counts` of each kind that lie in the tool, with spares; `powder` kg for the pour and the repair. */
export function shoppingOf(
  kinds: readonly PieceKind[],
  counts: readonly number[],
  powder: number,
  blank: Blank,
  dam: Dam,
  job: Pick<Job, "dam" | "socket">,
): Shopping {
  const pieces = kinds.map((kind, i) => {
    const count = counts[i] ?? 0;
    const spares = Math.ceil(count * SPARE_SHARE);
    const mass = ((count + spares) * pieceVolume(kind) * kind.density) / 1000;
    return { kind: kind.kind, name: kind.name, count, spares, mass };
  });
  return {
    pieces,
    powder,
    film: blank.diameter + 2 * FILM_OVERHANG,
    dam: { length: dam.length, height: dam.height, sheet: job.dam.sheet },
    ...(job.socket ? { socket: { diameter: job.socket.diameter, length: job.socket.length } } : {}),
  };
}

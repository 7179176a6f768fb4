import { convexContains } from "../../geometry/polygon.js";
import type { JobSocket } from "../../job/types.js";
import type { PieceKind } from "../../pieces/types.js";
import { hypot, sinCos, TAU } from "../../trig.js";
import type { PlacedPiece } from "../types.js";

/** Directions, and circles between bore and outside, at which the foot is looked under. */
const DIRECTIONS = 180;
const CIRCLES = 5;

/**
 * How a socket upright on the axis stands on the thickest pieces: `hangs` with none of them under its foot, `tips` with
 * them all to one side of the axis. The foot is the ring between its bore and its outside; a piece's bore bears nothing.
 */
export function standOf(
  { diameter, bore = 0 }: Pick<JobSocket, "diameter" | "bore">,
  kinds: readonly PieceKind[],
  pieces: readonly PlacedPiece[],
): "stands" | "tips" | "hangs" {
  const thickest = pieces.reduce((most, { kind }) => Math.max(most, kinds[kind]!.thickness), 0);
  const under = pieces.filter(
    ({ kind, x, y }) => kinds[kind]!.thickness === thickest && hypot(x, y) <= diameter / 2 + kinds[kind]!.reach,
  );
  const bears = (x: number, y: number) =>
    under.some(
      (piece) =>
        convexContains(piece.outline, [x, y]) && hypot(x - piece.x, y - piece.y) >= kinds[piece.kind]!.bore / 2,
    );
  const borne: number[] = [];
  for (let n = 0; n < DIRECTIONS; n++) {
    const [s, c] = sinCos((TAU * n) / DIRECTIONS);
    for (let circle = 0; circle < CIRCLES; circle++) {
      const rho = (bore + ((diameter - bore) * circle) / (CIRCLES - 1)) / 2;
      if (!bears(rho * c, rho * s)) continue;
      borne.push(n);
      break;
    }
  }
  if (borne.length === 0) return "hangs";
  // Upright means that the axis lies between what bears: no half turn round it is without.
  const widest = borne.reduce((most, n, i) => Math.max(most, (borne[i + 1] ?? borne[0]! + DIRECTIONS) - n), 0);
  return widest < DIRECTIONS / 2 ? "stands" : "tips";
}

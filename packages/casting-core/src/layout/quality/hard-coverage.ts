import type { PieceKind } from "../../pieces/types.js";
import { hypot } from "../../trig.js";
import { mustBeLaid } from "../laid.js";
import type { PlacedPiece } from "../types.js";
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

const RINGS = 240;
/** What rounding leaves of a ring that lies in bores altogether. */
const NOTHING = 1e-9;

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

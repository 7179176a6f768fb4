import { CastingError, type Fault } from "../errors.js";
import { farthest, pointToOutline } from "../geometry/distance.js";
import type { Job, JobOwnPiece, JobPiece } from "../job/types.js";
import { nearest } from "../nearest.js";
import { PI } from "../trig.js";
import { CATALOGUE, type CatalogueItem, catalogueItem } from "./catalogue.js";
import { shaped } from "./shapes.js";
import type { PieceKind } from "./types.js";

/**
 * The kinds of pieces of `job`, in its order, ready to be laid. Throws one `invalid` error that names every piece that
 * is not in the catalogue, is not convex, or has a hole that breaks its edge.
 */
export function pieceKinds(job: Job): PieceKind[] {
  const faults: Fault[] = [];
  const kinds = job.pieces.map((piece, kind) => kindOf(piece, kind, faults));
  if (faults.length > 0) throw new CastingError("invalid", faults);
  return kinds.filter((kind) => kind !== undefined);
}

function kindOf(piece: JobPiece, kind: number, faults: Fault[]): PieceKind | undefined {
  const fault = (key: string, text: string): undefined => {
    faults.push({ path: ["pieces", kind, key], text });
  };
  const row = "item" in piece ? catalogueItem(piece.item) : undefined;
  if ("item" in piece && !row) return fault("item", unknownItem(piece.item));
  const own = row ? row.piece : (piece as JobOwnPiece);
  const shape = shaped(own);
  if (typeof shape === "string") return fault("points", shape);
  const bore = own.bore ?? 0;
  const inner = shape.radius ?? pointToOutline([0, 0], shape.outline);
  if (bore >= 2 * inner) {
    return fault("bore", `A bore of ${bore} mm breaks the edge: the piece holds less than ${round(2 * inner)} mm.`);
  }
  return {
    kind,
    ...(row ? named(row) : { name: ownName(own) }),
    shape: own.shape,
    outline: shape.outline,
    ...(shape.radius !== undefined ? { radius: shape.radius } : {}),
    reach: shape.radius ?? farthest(shape.outline),
    area: shape.area,
    bore,
    thickness: own.thickness,
    density: own.density,
    fold: shape.fold,
    ...(piece.share !== undefined ? { share: piece.share } : {}),
    ...(piece.stock !== undefined ? { stock: piece.stock } : {}),
  };
}

function named({ item, name, bearing }: CatalogueItem): Pick<PieceKind, "item" | "name" | "bearing"> {
  return bearing ? { item, name, bearing } : { item, name };
}

function unknownItem(item: string): string {
  const near = nearest(item, CATALOGUE.map((row) => row.item)); // biome-ignore format: one thought
  const remedy = near ? `did you mean "${near}"?` : "`casting list pieces` shows what there is.";
  return `"${item.slice(0, 64)}" is not in the catalogue: ${remedy}`;
}

/** A short name for a piece of the maker's own, sizes in mm. */
function ownName(piece: JobOwnPiece): string {
  const high = `x ${round(piece.thickness)} mm`;
  switch (piece.shape) {
    case "rectangle":
      return `rectangle ${round(piece.length)} x ${round(piece.width)} ${high}`;
    case "round":
      return `round ${round(piece.diameter)} ${high}`;
    case "polygon":
      return `polygon of ${piece.points.length} corners ${high}`;
    default:
      return `${piece.shape} ${round(piece.across)} ${high}`;
  }
}

/** At most three decimals, without trailing zeros. */
function round(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

/** Volume of one piece, mL: (outline − bore) × thickness. */
export function pieceVolume(kind: PieceKind): number {
  return (kind.area - (PI / 4) * kind.bore * kind.bore) * kind.thickness * 1e-3;
}

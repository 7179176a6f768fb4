import { CastingError, Gathered } from "../errors.js";
import { farthest, pointToOutline } from "../geometry/distance.js";
import type { Job, JobOwnPiece, JobPiece, Units } from "../job/types.js";
import { nearest } from "../nearest.js";
import { PI } from "../trig.js";
import { atMost } from "../units/bound-text.js";
import { lengthText } from "../units/length-text.js";
import { CATALOGUE, type CatalogueItem, catalogueItem } from "./catalogue.js";
import { shaped } from "./shapes.js";
import type { PieceKind } from "./types.js";

/**
 * The kinds of pieces of `job`, in its order, ready to be laid. Throws one `invalid` error that names every piece that
 * is not in the catalogue, is not convex, or has a hole that breaks its edge.
 */
export function pieceKinds(job: Job): PieceKind[] {
  const faults = new Gathered();
  const kinds = kindsInto(job, faults);
  faults.tell();
  return kinds;
}

/** The kinds of pieces of `job` that can be laid; what is wrong with the others goes into `faults`. */
export function kindsInto({ pieces, units }: Pick<Job, "pieces" | "units">, faults: Gathered): PieceKind[] {
  const kinds = Array.from({ length: pieces.length }, (_, kind) => faults.of(() => kindOf(pieces[kind]!, kind, units)));
  return kinds.filter((kind) => kind !== undefined);
}

/** How many of `pieces` are of each of `kinds`. */
export function countsOf(kinds: readonly PieceKind[], pieces: readonly { kind: number }[]): number[] {
  return kinds.map(({ kind }) => pieces.filter((piece) => piece.kind === kind).length);
}

function kindOf(piece: JobPiece, kind: number, units: Units): PieceKind {
  const fault = (key: string, text: string): CastingError =>
    new CastingError("invalid", [{ path: ["pieces", kind, key], text }]);
  const row = "item" in piece ? catalogueItem(piece.item) : undefined;
  if ("item" in piece && !row) throw fault("item", unknownItem(piece.item));
  const own = row ? row.piece : (piece as JobOwnPiece);
  const shape = shaped(own, units);
  if (typeof shape === "string") throw fault("points", shape);
  const bore = own.bore ?? 0;
  const inner = shape.radius ?? pointToOutline([0, 0], shape.outline);
  if (bore >= 2 * inner) {
    throw fault(
      "bore",
      `a bore of ${lengthText(bore, units)} breaks the edge; the piece holds less than ${atMost(2 * inner, units)}`,
    );
  }
  return {
    kind,
    ...(row ? named(row) : { name: ownName(own, units) }),
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

function named({
  item,
  name,
  bearing,
  chamfered,
}: CatalogueItem): Partial<PieceKind> & Pick<PieceKind, "item" | "name"> {
  return { item, name, ...(bearing ? { bearing } : {}), ...(chamfered ? { chamfered } : {}) };
}

function unknownItem(item: string): string {
  const near = nearest(item, CATALOGUE.map((row) => row.item)); // biome-ignore format: one thought
  const remedy = near ? `did you mean "${near}"?` : "`casting list pieces` shows what there is";
  return `"${item.slice(0, 64)}" is not in the catalogue; ${remedy}`;
}

/** A short name for a piece of the maker's own, sizes in the job's units. */
function ownName(piece: JobOwnPiece, units: Units): string {
  const text = (mm: number): string => lengthText(mm, units);
  const high = text(piece.thickness);
  switch (piece.shape) {
    case "rectangle":
      return `rectangle ${text(piece.length)} x ${text(piece.width)} x ${high}`;
    case "round":
      return `round ${text(piece.diameter)} x ${high}`;
    case "polygon":
      return `polygon of ${piece.points.length} corners x ${high}`;
    default:
      return `${piece.shape} ${text(piece.across)} x ${high}`;
  }
}

/** Volume of one piece, mL: (outline − bore) × thickness. */
export function pieceVolume(kind: PieceKind): number {
  return (kind.area - (PI / 4) * kind.bore * kind.bore) * kind.thickness * 1e-3;
}

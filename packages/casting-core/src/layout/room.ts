import type { PieceKind } from "../pieces/types.js";
import { hypot, PI } from "../trig.js";
import type { Field } from "./bed.js";

/** Width of the edge that an ordered lattice leaves unused, in square roots of its cell; fits the lattices of the bench to 2 %. */
const EDGE_LOSS = 0.46;

/** Area that a piece takes in the densest simple lattice of its kind with `gap` between neighbours, mm². */
export function cellOf(kind: PieceKind, gap: number): number {
  if (kind.radius !== undefined) {
    const pitch = 2 * kind.radius + gap;
    return (pitch * pitch * Math.sqrt(3)) / 2;
  }
  let girth = 0;
  kind.outline.forEach(([ax, ay], c) => {
    const [bx, by] = kind.outline[(c + 1) % kind.outline.length]!;
    girth += hypot(bx - ax, by - ay);
  });
  return kind.area + (girth * gap) / 2 + gap * gap;
}

/** About how many cells of `cell` mm² an ordered lattice would put in `field`, at least 0. */
export function latticeGuess(field: Field, cell: number, gap: number): number {
  const radius = field.radius + gap / 2 - EDGE_LOSS * Math.sqrt(cell);
  if (radius <= 0) return field.radius > 0 ? 1 : 0;
  let area = PI * radius * radius;
  for (const circle of field.clear) area -= PI * circle.radius * circle.radius;
  return Math.max(0, area / cell);
}

import { farthest } from "../../packages/casting-core/src/geometry/distance.js";
import { centroid, signedArea } from "../../packages/casting-core/src/geometry/polygon.js";
import type { Outline } from "../../packages/casting-core/src/geometry/types.js";
import type { PieceKind } from "../../packages/casting-core/src/pieces/types.js";

/** Piece kinds for tests of the layout alone, made without the catalogue: 6 mm thick tiles of our own. */
function kindOf(changes: Pick<PieceKind, "shape" | "outline" | "fold"> & Partial<PieceKind>): PieceKind {
  return {
    kind: 0,
    name: "tile",
    reach: farthest(changes.outline),
    area: signedArea(changes.outline),
    bore: 0,
    thickness: 6,
    density: 2.35,
    ...changes,
  };
}

function regular(corners: number, reach: number): Outline {
  return Array.from({ length: corners }, (_, c) => {
    const turn = (2 * Math.PI * c) / corners;
    return [reach * Math.cos(turn), reach * Math.sin(turn)];
  });
}

export function hexagonKind(across: number, changes: Partial<PieceKind> = {}): PieceKind {
  return kindOf({ shape: "hexagon", outline: regular(6, across / Math.sqrt(3)), fold: 6, ...changes });
}

export function rectangleKind(length: number, width: number, changes: Partial<PieceKind> = {}): PieceKind {
  const x = length / 2;
  const y = width / 2;
  const outline: Outline = [
    [-x, -y],
    [x, -y],
    [x, y],
    [-x, y],
  ];
  const square = length === width;
  return kindOf({ shape: square ? "square" : "rectangle", outline, fold: square ? 4 : 2, ...changes });
}

export function roundKind(diameter: number, changes: Partial<PieceKind> = {}): PieceKind {
  const radius = diameter / 2;
  const area = Math.PI * radius * radius;
  return kindOf({
    shape: "round",
    outline: regular(96, radius),
    radius,
    reach: radius,
    area,
    fold: Infinity,
    ...changes,
  });
}

export function polygonKind(points: Outline, changes: Partial<PieceKind> = {}): PieceKind {
  const [cx, cy] = centroid(points);
  return kindOf({ shape: "polygon", outline: points.map(([x, y]) => [x - cx, y - cy]), fold: 1, ...changes });
}

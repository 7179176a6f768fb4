import type { Point } from "../geometry/types.js";
import type { PieceKind } from "../pieces/types.js";

/** Offsets tried along each side of the lattice's cell. */
const OFFSETS = 24;

/** Rows of equal pieces: their distance, the distance of neighbours in a row, and how far each row is shifted. */
interface Rows {
  pitch: number;
  along: number;
  /** Share of `along` by which a row stands off the one before; absent where rows may slide freely. */
  shift?: number;
  corners: readonly Point[];
  radius: number;
}

/**
 * Most pieces of one kind that an ordered lattice puts in the circle of `radius` mm at `gap`: the best of its offsets,
 * rows of rectangles free to slide. Hexagons and rounds stand in a hexagonal lattice, all other shapes in rows of their
 * bounding boxes, upright or lying (for triangles and free polygons that is a lower bound).
 */
export function latticeCount(kind: PieceKind, radius: number, gap: number): number {
  let most = 0;
  for (const rows of rowsOf(kind, gap)) most = Math.max(most, bestOffset(rows, radius));
  return most;
}

function rowsOf({ shape, outline, radius }: PieceKind, gap: number): Rows[] {
  if (radius !== undefined) {
    const along = 2 * radius + gap;
    return [{ pitch: (along * Math.sqrt(3)) / 2, along, shift: 0.5, corners: [[0, 0]], radius }];
  }
  const [width, height] = extent(outline);
  if (shape === "hexagon") {
    // A corner on +x: columns of flats above each other, so rows run along y.
    const along = height + gap;
    const turned = outline.map(([x, y]): Point => [-y, x]);
    return [{ pitch: (along * Math.sqrt(3)) / 2, along, shift: 0.5, corners: turned, radius: 0 }];
  }
  const upright = { pitch: height + gap, along: width + gap, corners: outline, radius: 0 };
  const lying = {
    pitch: width + gap,
    along: height + gap,
    corners: outline.map(([x, y]): Point => [-y, x]),
    radius: 0,
  };
  return [upright, lying];
}

function bestOffset(rows: Rows, radius: number): number {
  let most = 0;
  for (let n = 0; n < OFFSETS; n++) {
    const y0 = (n / OFFSETS) * rows.pitch;
    if (rows.shift === undefined) most = Math.max(most, slidingRows(rows, y0, radius));
    else {
      for (let m = 0; m < OFFSETS; m++) {
        most = Math.max(most, fixedRows(rows, (m / OFFSETS) * rows.along, y0, rows.shift, radius));
      }
    }
  }
  return most;
}

/** Each row holds what its chord holds: from the leftmost to the rightmost place of a piece. */
function slidingRows({ pitch, along, corners }: Rows, y0: number, radius: number): number {
  let count = 0;
  for (let y = y0 - Math.ceil(radius / pitch) * pitch; y <= radius; y += pitch) {
    let left = -Infinity;
    let right = Infinity;
    for (const [cx, cy] of corners) {
      const room = radius * radius - (y + cy) * (y + cy);
      const half = room < 0 ? -Infinity : Math.sqrt(room);
      left = Math.max(left, -half - cx);
      right = Math.min(right, half - cx);
    }
    if (right >= left) count += Math.floor((right - left) / along + 1e-9) + 1;
  }
  return count;
}

function fixedRows(
  { pitch, along, corners, radius: own }: Rows,
  x0: number,
  y0: number,
  shift: number,
  radius: number,
): number {
  const limit = (radius - own) * (radius - own);
  const reach = Math.ceil(radius / Math.min(pitch, along)) + 1;
  let count = 0;
  for (let row = -reach; row <= reach; row++) {
    const y = y0 + row * pitch;
    const start = x0 + (row % 2 === 0 ? 0 : shift * along);
    for (let n = -reach; n <= reach; n++) {
      const x = start + n * along;
      if (corners.every(([cx, cy]) => (x + cx) * (x + cx) + (y + cy) * (y + cy) <= limit)) count++;
    }
  }
  return count;
}

function extent(outline: readonly Point[]): Point {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
}

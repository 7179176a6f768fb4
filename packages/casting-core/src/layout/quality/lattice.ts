import { distance } from "../../geometry/distance.js";
import type { Point } from "../../geometry/types.js";
import type { PieceKind } from "../../pieces/types.js";

/** Offsets across the rows that are tried: 24 miss a piece on one tool in ten, 96 on none of 41 (measured). */
const OFFSETS = 96;

/** Rows of equal pieces: their distance, the distance of neighbours in a row, and how far each row is shifted. */
interface Rows {
  pitch: number;
  along: number;
  /** Share of `along` by which a row stands off the one before; absent where rows may slide freely. */
  shift?: number;
  corners: readonly Point[];
  radius: number;
  /** A second piece beside each, turned by half a turn: where its centroid lies from the first one's. */
  twin?: Point;
}

/**
 * Most pieces of one kind that an ordered lattice puts in the circle of `radius` mm at `gap`: the best of its offsets,
 * rows of rectangles free to slide. Hexagons and rounds stand in a hexagonal lattice, triangles in pairs that a half turn
 * joins, all other shapes in rows of their bounding boxes, upright or lying (for free polygons that is a lower bound).
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
  if (outline.length === 3) return [trianglePairs(outline, gap)];
  const upright = { pitch: height + gap, along: width + gap, corners: outline, radius: 0 };
  const lying = {
    pitch: width + gap,
    along: height + gap,
    corners: outline.map(([x, y]): Point => [-y, x]),
    radius: 0,
  };
  return [upright, lying];
}

/**
 * Every triangle tiles the plane with its half turn about the middle of a side. Grown by half the gap all round, it does
 * so with that gap between neighbours: its sides are then the steps of the lattice.
 */
function trianglePairs(outline: readonly Point[], gap: number): Rows {
  const [a, b, c] = outline as [Point, Point, Point];
  const sides = [distance(b, c), distance(c, a), distance(a, b)] as const;
  const girth = sides[0] + sides[1] + sides[2];
  const area = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2;
  // The incircle's middle and radius: growing moves the corners straight away from it.
  const middle = mean([a, b, c], sides, girth);
  const growth = 1 + (gap * girth) / (4 * area);
  const [ux, uy] = [(b[0] - a[0]) / sides[2], (b[1] - a[1]) / sides[2]];
  const turned = ([x, y]: Point): Point => [x * ux + y * uy, y * ux - x * uy];
  const grown = [a, b, c].map(([x, y]) =>
    turned([middle[0] + growth * (x - middle[0]), middle[1] + growth * (y - middle[1])]),
  ) as [Point, Point, Point];
  const along = grown[1][0] - grown[0][0];
  return {
    pitch: grown[2][1] - grown[0][1],
    along,
    shift: (grown[2][0] - grown[0][0]) / along,
    corners: outline.map(turned),
    radius: 0,
    // Outlines are given about their centroid: the half turn about the middle of b c takes it to b + c.
    twin: [grown[1][0] + grown[2][0], grown[1][1] + grown[2][1]],
  };
}

function mean(points: readonly Point[], weights: readonly number[], sum: number): Point {
  return [0, 1].map((axis) => points.reduce((total, point, n) => total + point[axis]! * weights[n]!, 0) / sum) as [
    number,
    number,
  ];
}

function bestOffset(rows: Rows, radius: number): number {
  let most = 0;
  for (let n = 0; n < OFFSETS; n++) {
    const y0 = (n / OFFSETS) * rows.pitch;
    if (rows.shift === undefined) most = Math.max(most, slidingRows(rows, y0, radius));
    else {
      const chords = chordsOf(rows, y0, rows.shift, radius);
      // Slid to the left, the lattice loses no piece before one comes to the end of its chord.
      for (const [left] of chords) most = Math.max(most, placesOn(chords, left, rows.along));
    }
  }
  return most;
}

/** Each row holds what its chord holds: from the leftmost to the rightmost place of a piece. */
function slidingRows({ pitch, along, corners }: Rows, y0: number, radius: number): number {
  let count = 0;
  for (let y = y0 - Math.ceil(radius / pitch) * pitch; y <= radius; y += pitch) {
    const [left, right] = chordOf(corners, y, radius);
    if (right >= left) count += Math.floor((right - left) / along + 1e-9) + 1;
  }
  return count;
}

/** The chord of each row that has one, from where its own first place is at 0. */
function chordsOf(
  { pitch, along, corners, radius: own, twin }: Rows,
  y0: number,
  shift: number,
  radius: number,
): Point[] {
  const sets = twin ? [corners, corners.map(([x, y]): Point => [twin[0] - x, twin[1] - y])] : [corners];
  const reach = Math.ceil(radius / Math.min(pitch, along)) + 1;
  const chords: Point[] = [];
  for (let row = -reach; row <= reach; row++) {
    const slid = row * shift;
    const start = (slid - Math.floor(slid)) * along;
    for (const set of sets) {
      const [left, right] = chordOf(set, y0 + row * pitch, radius - own);
      if (left <= right) chords.push([left - start, right - start]);
    }
  }
  return chords;
}

/** Each row holds those of its places, `along` apart from `x0` on, that lie on its chord. */
function placesOn(chords: readonly Point[], x0: number, along: number): number {
  let count = 0;
  for (const [left, right] of chords)
    count += Math.floor((right - x0) / along + 1e-9) - Math.ceil((left - x0) / along - 1e-9) + 1;
  return count;
}

/** Leftmost and rightmost place in the row at height `y` where all corners keep within `radius`; right of left where none is. */
function chordOf(corners: readonly Point[], y: number, radius: number): Point {
  let left = -Infinity;
  let right = Infinity;
  for (const corner of corners) {
    const room = radius * radius - (y + corner[1]) * (y + corner[1]);
    const half = room < 0 ? -Infinity : Math.sqrt(room);
    left = Math.max(left, -half - corner[0]);
    right = Math.min(right, half - corner[0]);
  }
  return [left, right];
}

function extent(outline: readonly Point[]): Point {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
}

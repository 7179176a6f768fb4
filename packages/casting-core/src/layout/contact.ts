import type { Bed } from "./bed.js";
import { ROW } from "./shapes.js";

/** Where two pieces come closest: the axis from the first to the second, and a point of each on it. */
export interface Contact {
  /** Clear distance of the cores along the axis; a lower bound of the true one, and equal to it at the nearest features. */
  separation: number;
  axisX: number;
  axisY: number;
  pointX: number;
  pointY: number;
  /** Edge that separates best, counted through both pieces; −1 where neither has one. */
  edge: number;
  /** The other piece's corner nearest to that edge. */
  corner: number;
}

export function newContact(): Contact {
  return { separation: 0, axisX: 0, axisY: 0, pointX: 0, pointY: 0, edge: -1, corner: 0 };
}

/**
 * Clear distance between the cores of pieces `i` and `j` along the best separating axis: the normals of their edges
 * and, where the nearest features are two corners, the line between those. Stops early and returns as soon as an axis
 * separates them by `want`. `hint` and `hintCorner` are the edge and corner that separated them last time. Writes to
 * `out`.
 */
export function separate(
  bed: Bed,
  i: number,
  j: number,
  want: number,
  hint: number,
  hintCorner: number,
  out: Contact,
): number {
  const { shapes, outline } = bed;
  const ki = bed.kind[i]!;
  const kj = bed.kind[j]!;
  const ni = shapes.corners[ki]!;
  const nj = shapes.corners[kj]!;
  let best = -Infinity;
  let edge = hint;
  if (hint >= 0) {
    best = hint < ni ? climb(bed, i, j, hint, hintCorner) : climb(bed, j, i, hint - ni, hintCorner);
    out.edge = hint;
    out.corner = nearest;
    if (best >= want) return best;
  }
  let corner = nearest;
  const dx = bed.x[j]! - bed.x[i]!;
  const dy = bed.y[j]! - bed.y[i]!;
  if (ni > 1) {
    const at = i * shapes.stride * ROW + 2;
    const own = ki * shapes.stride;
    const innerJ = shapes.inner[kj]!;
    for (let e = 0; e < ni; e++) {
      const bound = dx * outline[at + e * ROW]! + dy * outline[at + e * ROW + 1]! - shapes.normalAt[own + e]! - innerJ;
      if (bound <= best) continue;
      const found = along(bed, i, j, e);
      if (found > best) {
        best = found;
        edge = e;
        corner = nearest;
      }
    }
  }
  if (nj > 1) {
    const at = j * shapes.stride * ROW + 2;
    const own = kj * shapes.stride;
    const innerI = shapes.inner[ki]!;
    for (let e = 0; e < nj; e++) {
      const bound = -dx * outline[at + e * ROW]! - dy * outline[at + e * ROW + 1]! - shapes.normalAt[own + e]! - innerI;
      if (bound <= best) continue;
      const found = along(bed, j, i, e);
      if (found > best) {
        best = found;
        edge = ni + e;
        corner = nearest;
      }
    }
  }
  out.edge = edge;
  out.corner = corner;
  if (best >= want) return best;
  if (edge < 0) {
    const length = Math.sqrt(dx * dx + dy * dy);
    out.axisX = length > 0 ? dx / length : 1;
    out.axisY = length > 0 ? dy / length : 0;
    out.pointX = bed.x[j]!;
    out.pointY = bed.y[j]!;
    out.separation = length;
    return length;
  }
  // The edge's owner a, the other piece b and its corner nearest along the normal.
  const first = edge < ni;
  const a = first ? i : j;
  const b = first ? j : i;
  const e = first ? edge : edge - ni;
  const na = first ? ni : nj;
  const atA = a * shapes.stride * ROW;
  const start = atA + e * ROW;
  const nx = outline[start + 2]!;
  const ny = outline[start + 3]!;
  const atB = b * shapes.stride * ROW + corner * ROW;
  const bx = outline[atB]!;
  const by = outline[atB + 1]!;
  const sign = first ? 1 : -1;
  out.axisX = sign * nx;
  out.axisY = sign * ny;
  out.pointX = bx;
  out.pointY = by;
  if (best > 0) {
    const end = atA + (e + 1 === na ? 0 : e + 1) * ROW;
    const ax = outline[start]!;
    const ay = outline[start + 1]!;
    const t = (by - ay) * nx - (bx - ax) * ny; // along the edge: its direction is the normal turned by +90°
    const length = shapes.edge[bed.kind[a]! * shapes.stride + e]!;
    if (t < 0 || t > length) {
      const corner2 = t < 0 ? start : end;
      let ux = bx - outline[corner2]!;
      let uy = by - outline[corner2 + 1]!;
      const distance = Math.sqrt(ux * ux + uy * uy);
      if (distance > best) {
        ux /= distance;
        uy /= distance;
        const found = lowest(bed, a, -ux, -uy) + lowest(bed, b, ux, uy);
        if (found > best) {
          best = found;
          out.axisX = sign * ux;
          out.axisY = sign * uy;
          const low = b * shapes.stride * ROW + nearest * ROW;
          out.pointX = outline[low]!;
          out.pointY = outline[low + 1]!;
          if (best >= want) return best;
        }
      }
    }
  }
  out.separation = best;
  return best;
}

/** The corner that `along` or `climb` found nearest. */
let nearest = 0;

/** Clear distance of piece `b` beyond edge `e` of piece `a`; leaves its nearest corner in `nearest`. */
function along(bed: Bed, a: number, b: number, e: number): number {
  const { shapes, outline } = bed;
  const at = (a * shapes.stride + e) * ROW;
  return (
    lowest(bed, b, outline[at + 2]!, outline[at + 3]!) -
    outline[at]! * outline[at + 2]! -
    outline[at + 1]! * outline[at + 3]!
  );
}

/** The same from a corner that was nearest before: a convex outline has one valley, so two corners beside it tell. */
function climb(bed: Bed, a: number, b: number, e: number, from: number): number {
  const { shapes, outline } = bed;
  const at = (a * shapes.stride + e) * ROW;
  const nx = outline[at + 2]!;
  const ny = outline[at + 3]!;
  const start = b * shapes.stride * ROW;
  const n = shapes.corners[bed.kind[b]!]!;
  const here = start + from * ROW;
  const before = start + (from === 0 ? n - 1 : from - 1) * ROW;
  const after = start + (from + 1 === n ? 0 : from + 1) * ROW;
  const height = outline[here]! * nx + outline[here + 1]! * ny;
  if (
    outline[before]! * nx + outline[before + 1]! * ny < height ||
    outline[after]! * nx + outline[after + 1]! * ny < height
  ) {
    return along(bed, a, b, e);
  }
  nearest = from;
  return height - outline[at]! * nx - outline[at + 1]! * ny;
}

/** Least height of piece `b` along (nx, ny); leaves the corner that has it in `nearest`. */
function lowest(bed: Bed, b: number, nx: number, ny: number): number {
  const { shapes, outline } = bed;
  let at = b * shapes.stride * ROW;
  const n = shapes.corners[bed.kind[b]!]!;
  let least = Infinity;
  let found = 0;
  for (let c = 0; c < n; c++, at += ROW) {
    const value = outline[at]! * nx + outline[at + 1]! * ny;
    if (value < least) {
      least = value;
      found = c;
    }
  }
  nearest = found;
  return least;
}

import type { Bed } from "./bed.js";

/** Where two pieces come closest: the axis from the first to the second, and a point of each on it. */
export interface Contact {
  /** Clear distance of the cores along the axis; a lower bound of the true one, and equal to it at the nearest features. */
  separation: number;
  axisX: number;
  axisY: number;
  pointX: number;
  pointY: number;
  /** Edge that separates best, counted through both pieces; −1 for an axis from corner to corner. */
  edge: number;
}

export function newContact(): Contact {
  return { separation: 0, axisX: 0, axisY: 0, pointX: 0, pointY: 0, edge: -1 };
}

/**
 * Clear distance between the cores of pieces `i` and `j` along the best separating axis: the normals of their edges
 * and, where the nearest features are two corners, the line between those. Stops early and returns as soon as an axis
 * separates them by `want`. `hint` is the edge that separated them last time. Writes to `out`.
 */
export function separate(bed: Bed, i: number, j: number, want: number, hint: number, out: Contact): number {
  const { shapes, cornerX, cornerY } = bed;
  const ki = bed.kind[i]!;
  const kj = bed.kind[j]!;
  const ni = shapes.corners[ki]!;
  const nj = shapes.corners[kj]!;
  let best = -Infinity;
  let edge = hint;
  out.edge = hint;
  if (hint >= 0) {
    best = hint < ni ? along(bed, i, j, hint) : along(bed, j, i, hint - ni);
    if (best >= want) return best;
  }
  const dx = bed.x[j]! - bed.x[i]!;
  const dy = bed.y[j]! - bed.y[i]!;
  if (ni > 1) {
    const at = i * shapes.stride;
    const own = ki * shapes.stride;
    const innerJ = shapes.inner[kj]!;
    for (let e = 0; e < ni; e++) {
      const bound = dx * bed.normalX[at + e]! + dy * bed.normalY[at + e]! - shapes.normalAt[own + e]! - innerJ;
      if (bound <= best) continue;
      const found = along(bed, i, j, e);
      if (found > best) {
        best = found;
        edge = e;
      }
    }
  }
  if (nj > 1) {
    const at = j * shapes.stride;
    const own = kj * shapes.stride;
    const innerI = shapes.inner[ki]!;
    for (let e = 0; e < nj; e++) {
      const bound = -dx * bed.normalX[at + e]! - dy * bed.normalY[at + e]! - shapes.normalAt[own + e]! - innerI;
      if (bound <= best) continue;
      const found = along(bed, j, i, e);
      if (found > best) {
        best = found;
        edge = ni + e;
      }
    }
  }
  out.edge = edge;
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
  const atA = a * shapes.stride;
  const nx = bed.normalX[atA + e]!;
  const ny = bed.normalY[atA + e]!;
  const corner = lowest(bed, b, nx, ny);
  const bx = cornerX[corner]!;
  const by = cornerY[corner]!;
  const sign = first ? 1 : -1;
  out.axisX = sign * nx;
  out.axisY = sign * ny;
  out.pointX = bx;
  out.pointY = by;
  if (best > 0) {
    const start = atA + e;
    const end = atA + (e + 1 === na ? 0 : e + 1);
    const ax = cornerX[start]!;
    const ay = cornerY[start]!;
    const t = (by - ay) * nx - (bx - ax) * ny; // along the edge: its direction is the normal turned by +90°
    const length = shapes.edge[bed.kind[a]! * shapes.stride + e]!;
    if (t < 0 || t > length) {
      const corner2 = t < 0 ? start : end;
      let ux = bx - cornerX[corner2]!;
      let uy = by - cornerY[corner2]!;
      const distance = Math.sqrt(ux * ux + uy * uy);
      if (distance > best) {
        ux /= distance;
        uy /= distance;
        const highest = lowest(bed, a, -ux, -uy);
        const low = lowest(bed, b, ux, uy);
        const found = (cornerX[low]! - cornerX[highest]!) * ux + (cornerY[low]! - cornerY[highest]!) * uy;
        if (found > best) {
          best = found;
          out.axisX = sign * ux;
          out.axisY = sign * uy;
          out.pointX = cornerX[low]!;
          out.pointY = cornerY[low]!;
          if (best >= want) return best;
        }
      }
    }
  }
  out.separation = best;
  return best;
}

/** Clear distance of piece `b` beyond edge `e` of piece `a`. */
function along(bed: Bed, a: number, b: number, e: number): number {
  const { shapes, cornerX, cornerY } = bed;
  const at = a * shapes.stride + e;
  const nx = bed.normalX[at]!;
  const ny = bed.normalY[at]!;
  let c = b * shapes.stride;
  let least = Infinity;
  for (let n = shapes.corners[bed.kind[b]!]!; n > 0; n--, c++) {
    const value = cornerX[c]! * nx + cornerY[c]! * ny;
    if (value < least) least = value;
  }
  return least - cornerX[at]! * nx - cornerY[at]! * ny;
}

/** Index of the corner of piece `b` that lies lowest along (nx, ny). */
function lowest(bed: Bed, b: number, nx: number, ny: number): number {
  const { shapes, cornerX, cornerY } = bed;
  let c = b * shapes.stride;
  let least = Infinity;
  let found = c;
  for (let n = shapes.corners[bed.kind[b]!]!; n > 0; n--, c++) {
    const value = cornerX[c]! * nx + cornerY[c]! * ny;
    if (value < least) {
      least = value;
      found = c;
    }
  }
  return found;
}

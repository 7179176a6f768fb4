import { kind, outline, x, y } from "./pieces";
import { corners, edge, inner, normalAt, ROW, stride } from "./shapes";

/*
 * Where two pieces come closest: the axis from the first to the second, and a point of each on it.
 */

export let axisX: f64 = 0;
export let axisY: f64 = 0;
export let pointX: f64 = 0;
export let pointY: f64 = 0;
/** Edge that separates best, counted through both pieces; −1 where neither has one. */
export let bestEdge: i32 = -1;
/** The other piece's corner nearest to that edge. */
export let bestCorner: i32 = 0;

/** The corner that `along`, `climb` or `lowest` found nearest. */
let nearest: i32 = 0;

/** Says where two come closest that were compared elsewhere. */
export function touchAt(ux: f64, uy: f64, px: f64, py: f64): void {
  axisX = ux;
  axisY = uy;
  pointX = px;
  pointY = py;
}

/**
 * Clear distance between the cores of pieces `i` and `j` along the best separating axis, mm: the normals of their edges
 * and, where the nearest features are two corners, the line between those. A lower bound of the true distance, and equal
 * to it at the nearest features. Stops early and returns as soon as an axis separates them by `want`. `hint` and
 * `hintCorner` are the edge and corner that separated them last time; −1 if none is known.
 */
export function separate(i: i32, j: i32, want: f64, hint: i32, hintCorner: i32): f64 {
  const ni = corners[kind[i]];
  const _nj = corners[kind[j]];
  bestEdge = hint;
  let best: f64 = -Infinity;
  if (hint >= 0) {
    best = hint < ni ? climb(i, j, hint, hintCorner) : climb(j, i, hint - ni, hintCorner);
    bestCorner = nearest;
    if (best >= want) return best;
  }
  const dx = x[j] - x[i];
  const dy = y[j] - y[i];
  best = byEdges(i, j, dx, dy, 0, best);
  best = byEdges(j, i, -dx, -dy, ni, best);
  if (best >= want) return best;
  if (bestEdge < 0) {
    const length = Math.sqrt(dx * dx + dy * dy);
    touchAt(length > 0 ? dx / length : 1, length > 0 ? dy / length : 0, x[j], y[j]);
    return length;
  }
  return bestEdge < ni ? byCorners(i, j, bestEdge, 1, best) : byCorners(j, i, bestEdge - ni, -1, best);
}

/**
 * The best of `best` and the edges of piece `a`, seen from which piece `b` lies at (dx, dy); edges are counted from
 * `from` on.
 */
function byEdges(a: i32, b: i32, dx: f64, dy: f64, from: i32, best: f64): f64 {
  const k = kind[a];
  const n = corners[k];
  if (n === 1) return best;
  const at = a * stride * ROW + 2;
  const own = k * stride;
  const depth = inner[kind[b]];
  for (let e = 0; e < n; e++) {
    const bound = dx * outline[at + e * ROW] + dy * outline[at + e * ROW + 1] - normalAt[own + e] - depth;
    if (bound <= best) continue;
    const found = along(a, b, e);
    if (found > best) {
      best = found;
      bestEdge = from + e;
      bestCorner = nearest;
    }
  }
  return best;
}

/**
 * Says where edge `e` of piece `a` and the corner of `b` that is nearest to it come closest; where that corner lies beside
 * the edge, a line between corners may separate the two by more than `best`, which is then returned. `sign` is −1 where
 * the axis is to point from `b` to `a`.
 */
function byCorners(a: i32, b: i32, e: i32, sign: f64, best: f64): f64 {
  const atA = a * stride * ROW;
  const start = atA + e * ROW;
  const nx = outline[start + 2];
  const ny = outline[start + 3];
  const atB = (b * stride + bestCorner) * ROW;
  const bx = outline[atB];
  const by = outline[atB + 1];
  touchAt(sign * nx, sign * ny, bx, by);
  if (best <= 0) return best;
  const k = kind[a];
  // Along the edge: its direction is the normal turned by +90°.
  const t = (by - outline[start + 1]) * nx - (bx - outline[start]) * ny;
  if (t >= 0 && t <= edge[k * stride + e]) return best;
  const beside = t < 0 ? start : atA + (e + 1 === corners[k] ? 0 : e + 1) * ROW;
  let ux = bx - outline[beside];
  let uy = by - outline[beside + 1];
  const distance = Math.sqrt(ux * ux + uy * uy);
  if (distance <= best) return best;
  ux /= distance;
  uy /= distance;
  const found = lowest(a, -ux, -uy) + lowest(b, ux, uy);
  if (found <= best) return best;
  const low = (b * stride + nearest) * ROW;
  touchAt(sign * ux, sign * uy, outline[low], outline[low + 1]);
  return found;
}

/** Clear distance of piece `b` beyond edge `e` of piece `a`. */
function along(a: i32, b: i32, e: i32): f64 {
  const at = (a * stride + e) * ROW;
  return (
    lowest(b, outline[at + 2], outline[at + 3]) - outline[at] * outline[at + 2] - outline[at + 1] * outline[at + 3]
  );
}

/** The same from a corner that was nearest before: a convex outline has one valley, so two corners beside it tell. */
function climb(a: i32, b: i32, e: i32, from: i32): f64 {
  const at = (a * stride + e) * ROW;
  const nx = outline[at + 2];
  const ny = outline[at + 3];
  const start = b * stride * ROW;
  const n = corners[kind[b]];
  const here = start + from * ROW;
  const before = start + (from === 0 ? n - 1 : from - 1) * ROW;
  const after = start + (from + 1 === n ? 0 : from + 1) * ROW;
  const height = outline[here] * nx + outline[here + 1] * ny;
  if (
    outline[before] * nx + outline[before + 1] * ny < height ||
    outline[after] * nx + outline[after + 1] * ny < height
  ) {
    return along(a, b, e);
  }
  nearest = from;
  return height - outline[at] * nx - outline[at + 1] * ny;
}

/** Least height of piece `b` along (nx, ny). */
function lowest(b: i32, nx: f64, ny: f64): f64 {
  let at = b * stride * ROW;
  const n = corners[kind[b]];
  let least: f64 = Infinity;
  let found: i32 = 0;
  for (let c = 0; c < n; c++, at += ROW) {
    const value = outline[at] * nx + outline[at + 1] * ny;
    if (value < least) {
      least = value;
      found = c;
    }
  }
  nearest = found;
  return least;
}

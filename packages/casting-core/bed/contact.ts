import { CORNER, cornerAt, cornersOf, kind, x, y } from "./pieces";
import { corners, edge, inner, normalAt, stride } from "./shapes";

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
  bestEdge = hint;
  let best: f64 = -Infinity;
  if (hint >= 0) {
    best =
      hint < ni
        ? climb(cornersOf(i) + <usize>hint * CORNER, j, hintCorner)
        : climb(cornersOf(j) + <usize>(hint - ni) * CORNER, i, hintCorner);
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
  const depth = inner[kind[b]];
  let at = cornersOf(a);
  let offset = changetype<usize>(normalAt) + <usize>(k * stride) * sizeof<f64>();
  for (let e = 0; e < n; e++, at += CORNER, offset += sizeof<f64>()) {
    const edge = cornerAt(at);
    const bound = dx * edge.nx + dy * edge.ny - load<f64>(offset) - depth;
    if (bound <= best) continue;
    const found = along(at, b);
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
  const atA = cornersOf(a);
  const start = cornerAt(atA + <usize>e * CORNER);
  const nx = start.nx;
  const ny = start.ny;
  const cornerB = cornerAt(cornersOf(b) + <usize>bestCorner * CORNER);
  const bx = cornerB.x;
  const by = cornerB.y;
  touchAt(sign * nx, sign * ny, bx, by);
  if (best <= 0) return best;
  const k = kind[a];
  // Along the edge: its direction is the normal turned by +90°.
  const t = (by - start.y) * nx - (bx - start.x) * ny;
  if (t >= 0 && t <= edge[k * stride + e]) return best;
  const beside = t < 0 ? start : cornerAt(atA + <usize>(e + 1 === corners[k] ? 0 : e + 1) * CORNER);
  let ux = bx - beside.x;
  let uy = by - beside.y;
  const distance = Math.sqrt(ux * ux + uy * uy);
  if (distance <= best) return best;
  ux /= distance;
  uy /= distance;
  const found = lowest(a, -ux, -uy) + lowest(b, ux, uy);
  if (found <= best) return best;
  const low = cornerAt(cornersOf(b) + <usize>nearest * CORNER);
  touchAt(sign * ux, sign * uy, low.x, low.y);
  return found;
}

/** Clear distance of piece `b` beyond the edge of another that begins at the corner `at`. */
function along(at: usize, b: i32): f64 {
  const edge = cornerAt(at);
  const nx = edge.nx;
  const ny = edge.ny;
  return lowest(b, nx, ny) - edge.x * nx - edge.y * ny;
}

/** The same from a corner that was nearest before: a convex outline has one valley, so two corners beside it tell. */
function climb(at: usize, b: i32, from: i32): f64 {
  const edge = cornerAt(at);
  const nx = edge.nx;
  const ny = edge.ny;
  const start = cornersOf(b);
  const last = corners[kind[b]] - 1;
  const here = cornerAt(start + <usize>from * CORNER);
  const before = cornerAt(start + <usize>(from === 0 ? last : from - 1) * CORNER);
  const after = cornerAt(start + <usize>(from === last ? 0 : from + 1) * CORNER);
  const height = here.x * nx + here.y * ny;
  if (before.x * nx + before.y * ny < height || after.x * nx + after.y * ny < height) return along(at, b);
  nearest = from;
  return height - edge.x * nx - edge.y * ny;
}

/** Least height of piece `b` along (nx, ny). */
function lowest(b: i32, nx: f64, ny: f64): f64 {
  let at = cornersOf(b);
  const n = corners[kind[b]];
  let least: f64 = Infinity;
  let found: i32 = 0;
  for (let c = 0; c < n; c++, at += CORNER) {
    const corner = cornerAt(at);
    const value = corner.x * nx + corner.y * ny;
    if (value < least) {
      least = value;
      found = c;
    }
  }
  nearest = found;
  return least;
}

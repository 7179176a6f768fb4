import { Delaunay } from "d3-delaunay";
import type { Point } from "../../geometry/types.js";

/** Delaunay triangles of points that each belong to a site. Sides are named by the triangle corner they start at. */
export interface Mesh {
  coordinates: Float64Array;
  /** Points of the triangles, three by three. */
  triangles: Uint32Array;
  /** The same side seen from the triangle beyond it, −1 at the hull. */
  halfedges: Int32Array;
  /** Site of each triangle corner. */
  sites: Int32Array;
}

/** The Delaunay triangles of the points x, y, x, y …, whose sites are `owner`. */
export function meshOf(coordinates: readonly number[], owner: readonly number[]): Mesh {
  const flat = new Float64Array(coordinates);
  const { triangles, halfedges } = new Delaunay(flat);
  legalise(flat, triangles, halfedges);
  // Not by `from`, which takes ten times as long on a million corners.
  const sites = new Int32Array(triangles.length);
  for (let n = 0; n < sites.length; n++) sites[n] = owner[triangles[n]!]!;
  return { coordinates: flat, triangles, halfedges, sites };
}

/** The side after `half` in its triangle. */
export function next(half: number): number {
  return half % 3 === 2 ? half - 2 : half + 1;
}

/** Whether the triangle side that starts at `half` joins two different sites: then a middle line crosses it. */
export function crosses({ sites }: Mesh, half: number): boolean {
  return sites[half] !== sites[next(half)];
}

/** Middle of the circle through the corners of a triangle. */
export function circumcentre({ coordinates, triangles }: Mesh, triangle: number): Point {
  const i = triangles[3 * triangle]!;
  const j = triangles[3 * triangle + 1]!;
  const k = triangles[3 * triangle + 2]!;
  const ax = coordinates[2 * i]!;
  const ay = coordinates[2 * i + 1]!;
  const bx = coordinates[2 * j]! - ax;
  const by = coordinates[2 * j + 1]! - ay;
  const cx = coordinates[2 * k]! - ax;
  const cy = coordinates[2 * k + 1]! - ay;
  const twice = 2 * (bx * cy - by * cx);
  const bb = bx * bx + by * by;
  const cc = cx * cx + cy * cy;
  return [ax + (cy * bb - by * cc) / twice, ay + (bx * cc - cx * bb) / twice];
}

/** The third site of a junction's triangle beside two others. */
export function third({ sites }: Mesh, triangle: number, left: number, right: number): number {
  let at = 3 * triangle;
  while (sites[at] === left || sites[at] === right) at++;
  return sites[at]!;
}

/**
 * Flips the sides that are not Delaunay's (Lawson, 1977). The library leaves a few among many points nearly on one
 * circle, as its list of sides still to be looked at is bounded; a junction there came to lie outside the tool.
 */
function legalise(coordinates: Float64Array, triangles: Uint32Array, halfedges: Int32Array): void {
  const link = (one: number, other: number): void => {
    halfedges[one] = other;
    if (other >= 0) halfedges[other] = one;
  };
  const open: number[] = [];
  for (let half = 0; half < halfedges.length; half++) {
    if (half > halfedges[half]! || isLegal(coordinates, triangles, half, halfedges[half]!)) continue;
    open.push(half);
    while (open.length > 0) {
      const a = open.pop()!;
      const b = halfedges[a]!;
      if (b < 0 || isLegal(coordinates, triangles, a, b)) continue;
      const [afterA, beforeA] = [next(a), next(next(a))];
      const [afterB, beforeB] = [next(b), next(next(b))];
      triangles[a] = triangles[beforeB]!;
      triangles[b] = triangles[beforeA]!;
      link(a, halfedges[beforeB]!);
      link(b, halfedges[beforeA]!);
      link(beforeA, beforeB);
      open.push(a, b, afterA, afterB);
    }
  }
}

/** Rounding must not flip four points on one circle for ever: what lies inside by less, as a part of its size, is let be. */
const ROUNDING = 1e-9;

/** Whether the point beyond the side `a`, its twin `b`, is outside the circle of `a`'s triangle. */
function isLegal(coordinates: Float64Array, triangles: Uint32Array, a: number, b: number): boolean {
  const afterA = next(a);
  const p = 2 * triangles[a]!;
  const q = 2 * triangles[afterA]!;
  const r = 2 * triangles[next(afterA)]!;
  const s = 2 * triangles[next(next(b))]!;
  const x = coordinates[s]!;
  const y = coordinates[s + 1]!;
  const px = coordinates[p]! - x;
  const py = coordinates[p + 1]! - y;
  const qx = coordinates[q]! - x;
  const qy = coordinates[q + 1]! - y;
  const rx = coordinates[r]! - x;
  const ry = coordinates[r + 1]! - y;
  const pp = px * px + py * py;
  const qq = qx * qx + qy * qy;
  const rr = rx * rx + ry * ry;
  const inside = pp * (rx * qy - qx * ry) + qq * (px * ry - rx * py) + rr * (qx * py - px * qy);
  const size = pp + qq + rr;
  return inside <= ROUNDING * size * size;
}

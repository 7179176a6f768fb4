import type { Point } from "../../geometry/types.js";
import { ontoBisector, ontoJunction } from "./bisector.js";
import { circumcentre, crosses, type Mesh, next, third } from "./mesh.js";
import { distanceTo, type Site } from "./sites.js";

/** A line between two sites as the samples have it. */
export interface Way {
  /** Nodes at its ends; the same for a line that closes on itself. */
  a: number;
  b: number;
  /** The two sites that it runs between, as seen going from a to b. */
  left: number;
  right: number;
  /** The third sites at a and at b; none for a line that closes on itself round a single site. */
  ends: number[];
  /** Points near the middle, from a to b. */
  through: Point[];
}

/**
 * The junctions of a mesh, each moved to where its three sites are equally far, and the ways between them: a triangle on
 * three sites is a junction, one on two a step along a way. `spacing` is how far the samples are apart, mm.
 */
export function waysOf(mesh: Mesh, sites: readonly Site[], spacing: number): { nodes: Point[]; ways: Way[] } {
  const count = mesh.triangles.length / 3;
  const nodeOf = new Int32Array(count).fill(-1);
  const nodes: Point[] = [];
  /** The triangle of each. */
  const junctions: number[] = [];
  for (let t = 0; t < count; t++) {
    const a = mesh.sites[3 * t]!;
    const b = mesh.sites[3 * t + 1]!;
    const c = mesh.sites[3 * t + 2]!;
    if (a === b || b === c || c === a) continue;
    nodeOf[t] = nodes.length;
    junctions.push(t);
    nodes.push(junction(circumcentre(mesh, t), sites[a]!, sites[b]!, sites[c]!, spacing));
  }
  const ways: Way[] = [];
  const walked = new Uint8Array(mesh.triangles.length);
  const walk = (start: number): void => {
    const left = mesh.sites[start]!;
    const right = mesh.sites[next(start)]!;
    const through: Point[] = [];
    let half = start;
    for (;;) {
      walked[half] = 1;
      const across = mesh.halfedges[half]!;
      walked[across] = 1;
      const triangle = Math.floor(across / 3);
      const b = nodeOf[triangle]!;
      if (b >= 0) {
        const from = Math.floor(start / 3);
        const ends = [third(mesh, from, left, right), third(mesh, triangle, left, right)];
        ways.push({ a: nodeOf[from]!, b, left, right, ends, through });
        return;
      }
      through.push(circumcentre(mesh, triangle));
      half = next(across);
      if (!crosses(mesh, half)) half = next(half);
      if (half !== start) continue;
      const closing = nodes.push(ontoBisector(through[0]!, sites[left]!, sites[right]!)) - 1;
      ways.push({ a: closing, b: closing, left, right, ends: [], through: through.slice(1) });
      return;
    }
  };
  // Ways between junctions first; what is left then closes on itself round a single site.
  for (const t of junctions) {
    for (let half = 3 * t; half < 3 * t + 3; half++) if (walked[half] === 0) walk(half);
  }
  for (let half = 0; half < mesh.triangles.length; half++) {
    if (walked[half] === 0 && crosses(mesh, half)) walk(half);
  }
  return { nodes, ways };
}

/** The point near `start` that is equally far from three sites, see ontoJunction. */
export function junction(start: Point, a: Site, b: Site, c: Site, spacing: number): Point {
  // Where two sites close in on each other like a wedge, a little in distance is much in place.
  return ontoJunction(start, a, b, c, Math.max(spacing, Math.abs(distanceTo(a, start))));
}

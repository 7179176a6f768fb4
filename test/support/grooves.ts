import Flatten from "@flatten-js/core";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import type { GrooveEdge, Grooves } from "../../packages/casting-core/src/grooves/types.js";
import type { Layout, PlacedPiece } from "../../packages/casting-core/src/layout/types.js";

/** Distance from a point to a piece by a second geometry library; not valid inside a piece. */
export function measuredTo(piece: PlacedPiece): (point: Point) => number {
  if (piece.radius !== undefined) {
    const radius = piece.radius;
    return ([x, y]) => Math.hypot(x - piece.x, y - piece.y) - radius;
  }
  const polygon = new Flatten.Polygon(piece.outline);
  return ([x, y]) => polygon.distanceTo(new Flatten.Point(x, y))[0];
}

/** Points along an edge, about `step` apart, its own corners among them. */
export function pointsAlong(edge: GrooveEdge, step: number): Point[] {
  const points: Point[] = [edge.points[0]!];
  for (let i = 1; i < edge.points.length; i++) {
    const [ax, ay] = edge.points[i - 1]!;
    const [bx, by] = edge.points[i]!;
    const parts = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / step));
    for (let k = 1; k <= parts; k++) points.push([ax + ((bx - ax) * k) / parts, ay + ((by - ay) * k) / parts]);
  }
  return points;
}

/** Most by which the two nearest of pieces, tool's edge and circles kept clear differ in distance along middle lines. */
export function worstOffMiddle(
  grooves: Grooves,
  layout: Layout,
  toolDiameter: number,
  clear: { x: number; y: number; diameter: number }[] = [],
): number {
  const pieces = layout.pieces.map((piece) => ({ piece, far: measuredTo(piece) }));
  let worst = 0;
  for (const edge of grooves.edges) {
    if (edge.outlet) continue;
    for (const point of pointsAlong(edge, 1)) {
      const [x, y] = point;
      const distances = pieces
        .filter(({ piece }) => Math.hypot(piece.x - x, piece.y - y) < 80)
        .map(({ far }) => far(point));
      distances.push(toolDiameter / 2 - Math.hypot(x, y));
      for (const circle of clear) distances.push(Math.hypot(circle.x - x, circle.y - y) - circle.diameter / 2);
      distances.sort((p, q) => p - q);
      worst = Math.max(worst, distances[1]! - distances[0]!);
    }
  }
  return worst;
}

/** Nodes that an odd number of cut edges meet at. */
export function oddJunctions(grooves: Grooves): number[] {
  const degree = grooves.nodes.map(() => 0);
  for (const { a, b, cut } of grooves.edges) {
    if (!cut) continue;
    degree[a]!++;
    degree[b]!++;
  }
  return degree.flatMap((count, node) => (count % 2 === 1 ? [node] : []));
}

/** Connected parts of the cut edges, as lists of nodes. */
export function cutParts(grooves: Grooves): number[][] {
  const root = grooves.nodes.map((_, i) => i);
  const find = (i: number): number => (root[i] === i ? i : find(root[i]!));
  const used = new Set<number>();
  for (const { a, b, cut } of grooves.edges) {
    if (!cut) continue;
    used.add(a).add(b);
    root[find(a)] = find(b);
  }
  const parts = new Map<number, number[]>();
  for (const node of used) parts.set(find(node), [...(parts.get(find(node)) ?? []), node]);
  return [...parts.values()];
}

/** Least number of ways that cover each cut edge once: half the odd junctions of each part, one where there are none. */
export function fewestCuts(grooves: Grooves): number {
  const odd = new Set(oddJunctions(grooves));
  return cutParts(grooves).reduce((sum, part) => sum + Math.max(1, part.filter((node) => odd.has(node)).length / 2), 0);
}

/** How often each straight part between two points stands in the lines, whichever way round. */
export function stretches(lines: readonly Point[][]): Map<string, number> {
  const times = new Map<string, number>();
  for (const points of lines) {
    for (let i = 1; i < points.length; i++) {
      const ends = [points[i - 1]!.join(), points[i]!.join()].sort().join(" ");
      times.set(ends, (times.get(ends) ?? 0) + 1);
    }
  }
  return times;
}

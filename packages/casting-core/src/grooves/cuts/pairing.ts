import Flatbush from "flatbush";
import { distance } from "../../geometry/distance.js";
import type { Point } from "../../geometry/types.js";

/** Neighbours looked at for each node; pairs farther apart are made only of what is left over. */
const NEIGHBOURS = 8;

/** `nodes` (an even number) in pairs that lie near together: the travel from one cut's end to the next one's start. */
export function nearPairs(nodes: readonly number[], points: readonly Point[]): [number, number][] {
  const partner = new Map<number, number>();
  if (nodes.length === 0) return [];
  const candidates = closePairs(nodes, points);
  for (const [a, b] of candidates) if (!partner.has(a) && !partner.has(b)) partner.set(a, b).set(b, a);
  const left = nodes.filter((node) => !partner.has(node));
  while (left.length > 0) {
    const a = left.pop()!;
    let nearest = 0;
    left.forEach((node, i) => {
      if (distance(points[a]!, points[node]!) < distance(points[a]!, points[left[nearest]!]!)) nearest = i;
    });
    const b = left.splice(nearest, 1)[0]!;
    partner.set(a, b).set(b, a);
  }
  uncross(candidates, partner, points);
  return nodes.filter((node) => node < partner.get(node)!).map((node) => [node, partner.get(node)!]);
}

/** Pairs of each node with its nearest neighbours, the closest pairs first. */
function closePairs(nodes: readonly number[], points: readonly Point[]): [number, number][] {
  const index = new Flatbush(nodes.length);
  for (const node of nodes) index.add(points[node]![0], points[node]![1]);
  index.finish();
  const pairs: { a: number; b: number; length: number }[] = [];
  for (const a of nodes) {
    for (const found of index.neighbors(points[a]![0], points[a]![1], NEIGHBOURS + 1)) {
      const b = nodes[found]!;
      if (b !== a) pairs.push({ a: Math.min(a, b), b: Math.max(a, b), length: distance(points[a]!, points[b]!) });
    }
  }
  pairs.sort((p, q) => p.length - q.length || p.a - q.a || p.b - q.b);
  return pairs.map(({ a, b }) => [a, b]);
}

/** Swaps partners wherever that makes two pairs shorter together. */
function uncross(
  candidates: readonly [number, number][],
  partner: Map<number, number>,
  points: readonly Point[],
): void {
  const length = (a: number, b: number): number => distance(points[a]!, points[b]!);
  // A handful of rounds settles it; each swap shortens the whole, so it cannot go round in circles.
  for (let swapped = true; swapped; ) {
    swapped = false;
    for (const [a, b] of candidates) {
      const c = partner.get(a)!;
      const d = partner.get(b)!;
      if (length(a, b) + length(c, d) > length(a, c) + length(b, d) - 1e-6) continue;
      partner.set(a, b).set(b, a).set(c, d).set(d, c);
      swapped = true;
    }
  }
}

import type { Link } from "../network/graph.js";
import { leastMatching, type Pair } from "./matching.js";

/** Odd junctions looked at as partners of each; doubled until all can be matched. */
const NEAREST = 8;

/**
 * Indices of the links that one continuous cut over a connected part has to go along twice. The least possible length:
 * a matching of the odd junctions over their shortest ways, two of them left over as the ends of the cut (the open form
 * of the postman's problem; Edmonds and Johnson, 1973). `firstNearest`: how many partners each is offered at first.
 */
export function leastRetrace(
  odd: readonly number[],
  links: readonly Link[],
  at: readonly number[][],
  firstNearest: number = NEAREST,
): number[] {
  if (odd.length <= 2) return [];
  const all = new Set(odd);
  for (let nearest = firstNearest; ; nearest *= 2) {
    const ways = odd.map((node) => waysToOdd(node, all, nearest, links, at));
    const index = new Map(odd.map((node, i) => [node, i]));
    const pairs: Pair[] = [];
    ways.forEach((found, a) => {
      for (const [node, way] of found) {
        const b = index.get(node)!;
        if (a < b || !ways[b]!.has(odd[a]!)) pairs.push({ a, b, cost: way.length });
      }
      // Two more nodes that cost nothing take the cut's ends.
      pairs.push({ a, b: odd.length, cost: 0 }, { a, b: odd.length + 1, cost: 0 });
    });
    const partner = leastMatching(odd.length + 2, pairs);
    if (!partner) {
      if (nearest < odd.length) continue;
      throw new Error("the odd junctions of a connected part could not be matched");
    }
    const times = new Map<number, number>();
    odd.forEach((node, a) => {
      const b = partner[a]!;
      if (b >= odd.length || b < a) return;
      const way = ways[a]!.get(odd[b]!) ?? ways[b]!.get(node)!;
      for (const link of way.links) times.set(link, (times.get(link) ?? 0) + 1);
    });
    return [...times].filter(([, n]) => n % 2 === 1).map(([link]) => link);
  }
}

interface Way {
  length: number;
  links: number[];
}

/** Shortest ways from `start` to the `count` nearest of the nodes `odd` (Dijkstra, 1959). */
function waysToOdd(
  start: number,
  odd: ReadonlySet<number>,
  count: number,
  links: readonly Link[],
  at: readonly number[][],
): Map<number, Way> {
  const found = new Map<number, Way>();
  const done = new Set<number>();
  const front = new Map<number, { length: number; by: number; from: number }>([
    [start, { length: 0, by: -1, from: -1 }],
  ]);
  const came = new Map<number, { by: number; from: number }>();
  while (front.size > 0 && found.size < count) {
    // The front stays a few dozen nodes wide: looking through it is quicker than a heap.
    let node = -1;
    let length = Infinity;
    for (const [candidate, { length: reached }] of front) {
      if (reached < length) {
        node = candidate;
        length = reached;
      }
    }
    const { by, from } = front.get(node)!;
    front.delete(node);
    done.add(node);
    came.set(node, { by, from });
    if (node !== start && odd.has(node)) found.set(node, { length, links: wayBack(node, came) });
    for (const link of at[node]!) {
      const { a, b, length: step } = links[link]!;
      const other = a === node ? b : a;
      if (done.has(other)) continue;
      const reached = front.get(other);
      if (!reached || length + step < reached.length) front.set(other, { length: length + step, by: link, from: node });
    }
  }
  return found;
}

function wayBack(node: number, came: ReadonlyMap<number, { by: number; from: number }>): number[] {
  const links: number[] = [];
  for (let step = came.get(node)!; step.from >= 0; step = came.get(step.from)!) links.push(step.by);
  return links;
}

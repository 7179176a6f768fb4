import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { cutsOf } from "../../packages/casting-core/src/grooves/cuts/cuts.js";
import { leastMatching } from "../../packages/casting-core/src/grooves/cuts/matching.js";
import { stretches } from "../support/grooves.js";

/** A small graph drawn with straight edges between random places, some of them in parts of their own. */
const graphs = fc
  .record({
    nodes: fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 })), {
      minLength: 2,
      maxLength: 8,
      selector: ([x, y]) => 100 * x + y,
    }),
    ends: fc.uniqueArray(fc.tuple(fc.nat(7), fc.nat(7)), {
      minLength: 1,
      maxLength: 11,
      selector: ([a, b]) => 10 * Math.min(a, b) + Math.max(a, b),
    }),
  })
  .map(({ nodes, ends }) => ({
    nodes: nodes as Point[],
    edges: ends
      .filter(([a, b]) => a !== b && a < nodes.length && b < nodes.length)
      .map(([a, b]) => ({ a, b, points: [nodes[a]!, nodes[b]!] as Point[], cut: true })),
  }))
  .filter(({ edges }) => edges.length > 0);

type Graph = { nodes: Point[]; edges: { a: number; b: number; points: Point[]; cut: boolean }[] };

/** Fewest ways that cover each edge once, by trying: a way from a node over unused edges, longest coverings first. */
function fewestByTrying({ nodes, edges }: Graph): number {
  const all = (1 << edges.length) - 1;
  const covered = new Map<number, number>([[0, 0]]);
  // All sets of edges that one way can cover.
  const ways = new Set<number>();
  const extend = (node: number, used: number): void => {
    edges.forEach(({ a, b }, i) => {
      if (used & (1 << i) || (a !== node && b !== node)) return;
      const more = used | (1 << i);
      ways.add(more);
      extend(a === node ? b : a, more);
    });
  };
  for (let node = 0; node < nodes.length; node++) extend(node, 0);
  for (let count = 1; ; count++) {
    for (const [set, reached] of [...covered]) {
      if (reached !== count - 1) continue;
      for (const way of ways) if ((set & way) === 0 && !covered.has(set | way)) covered.set(set | way, count);
    }
    if (covered.has(all)) return covered.get(all)!;
  }
}

/** Least length gone along again by one way for each part: try every set of edges to double. */
function retraceByTrying({ nodes, edges }: Graph): number {
  const lengths = edges.map(({ a, b }) => Math.hypot(nodes[a]![0] - nodes[b]![0], nodes[a]![1] - nodes[b]![1]));
  const root = nodes.map((_, i) => i);
  const find = (i: number): number => (root[i] === i ? i : find(root[i]!));
  for (const { a, b } of edges) root[find(a)] = find(b);
  let least = Infinity;
  for (let doubled = 0; doubled < 1 << edges.length; doubled++) {
    const degree = nodes.map(() => 0);
    let length = 0;
    edges.forEach(({ a, b }, i) => {
      const times = doubled & (1 << i) ? 2 : 1;
      degree[a]! += times;
      degree[b]! += times;
      length += (times - 1) * lengths[i]!;
    });
    const odd = new Map<number, number>();
    degree.forEach((count, node) => {
      if (count % 2 === 1) odd.set(find(node), (odd.get(find(node)) ?? 0) + 1);
    });
    if ([...odd.values()].every((count) => count <= 2)) least = Math.min(least, length);
  }
  return least;
}

describe("on small graphs, against trying everything", () => {
  test("the cuts are the fewest", () => {
    fc.assert(
      fc.property(graphs, (graph) => {
        fc.pre(graph.edges.length <= 8);
        expect(cutsOf(graph.nodes, graph.edges, "fewest").cuts.length).toBe(fewestByTrying(graph));
      }),
      { numRuns: 60 },
    );
  });

  test("the cuts go along every edge once, corner by corner, and along none that is not cut", () => {
    fc.assert(
      fc.property(graphs, ({ nodes, edges }) => {
        const bent = edges.map(({ a, b }, n) => ({
          a,
          b,
          points: [nodes[a]!, [100 + n, 50] as Point, nodes[b]!],
          cut: n % 4 < 3,
        }));
        const { cuts, retraced } = cutsOf(nodes, bent, "fewest");
        expect(stretches(cuts)).toEqual(stretches(bent.filter(({ cut }) => cut).map(({ points }) => points)));
        expect(retraced).toBe(0);
      }),
      { numRuns: 100 },
    );
  });

  test("one cut goes along the least length again", () => {
    fc.assert(
      fc.property(graphs, (graph) => {
        expect(cutsOf(graph.nodes, graph.edges, "one").retraced).toBeCloseTo(retraceByTrying(graph), 5);
      }),
      { numRuns: 150 },
    );
  });

  test("a matching costs the least", () => {
    const costs = fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 15, maxLength: 15 });
    fc.assert(
      fc.property(costs, (values) => {
        const pairs: { a: number; b: number; cost: number }[] = [];
        for (let a = 0; a < 6; a++) for (let b = a + 1; b < 6; b++) pairs.push({ a, b, cost: values[pairs.length]! });
        const matched = leastMatching(6, pairs)!;
        const cost = pairs.filter(({ a, b }) => matched[a] === b).reduce((sum, pair) => sum + pair.cost, 0);
        const best = (left: number[]): number => {
          if (left.length === 0) return 0;
          const [a, ...rest] = left as [number, ...number[]];
          return Math.min(
            ...rest.map((b) => pairs.find((p) => p.a === a && p.b === b)!.cost + best(rest.filter((c) => c !== b))),
          );
        };
        expect(cost).toBe(best([0, 1, 2, 3, 4, 5]));
      }),
      { numRuns: 100 },
    );
    // What the matching is worked out with leaves nothing behind.
    expect(["b", "path", "v"].filter((name) => Object.hasOwn(globalThis, name))).toEqual([]);
  });

  test("nodes that cannot all be matched give nothing", () => {
    expect(
      leastMatching(4, [
        { a: 0, b: 1, cost: 1 },
        { a: 0, b: 2, cost: 1 },
        { a: 0, b: 3, cost: 1 },
      ]),
    ).toBeUndefined();
  });
});

/** Straight edges between places, every one cut. */
const straight = (nodes: Point[], ends: [number, number][]) =>
  ends.map(([a, b]) => ({ a, b, points: [nodes[a]!, nodes[b]!], cut: true }));

describe("the travel between cuts", () => {
  test.each([[[0, 1, 2, 3, 4]], [[0, 3, 4, 1, 2]], [[4, 2, 1, 3, 0]]])(
    "leaves the longest lift out, in whichever order the ends are listed: %j",
    (order) => {
      // Four rays: two end 2 mm apart on the right, two 5 mm apart on the left.
      const places: Point[] = [
        [0, 0],
        [10, 0],
        [10, 2],
        [-10, 0],
        [-10, 5],
      ];
      const nodes = order.map((n) => places[n]!);
      const centre = order.indexOf(0);
      const rays = order.flatMap((_, n): [number, number][] => (n === centre ? [] : [[centre, n]]));
      const { cuts } = cutsOf(nodes, straight(nodes, rays), "fewest");
      expect(cuts).toHaveLength(2);
      const [before, after] = [cuts[0]!.at(-1)!, cuts[1]![0]!];
      expect(Math.hypot(after[0] - before[0], after[1] - before[1])).toBe(2);
    },
  );

  test("goes from the part nearest to the middle to the one nearest to where that ended, and so on", () => {
    const starts = [30, 5, 9, -7];
    const nodes = starts.flatMap((x): Point[] => [
      [x, 0],
      [x + 1, 0],
    ]);
    const { cuts } = cutsOf(
      nodes,
      straight(
        nodes,
        starts.map((_, n) => [2 * n, 2 * n + 1]),
      ),
      "fewest",
    );
    expect(cuts.map((way) => Math.min(way[0]![0], way[1]![0]))).toEqual([5, 9, -7, 30]);
  });
});

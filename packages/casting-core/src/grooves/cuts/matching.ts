import blossom from "edmonds-blossom";

/** A pair that may be matched, with what it costs. */
export interface Pair {
  a: number;
  b: number;
  cost: number;
}

/** Costs are told apart to this part of the largest one; the matching works on whole numbers. */
const STEPS = 100_000_000;

/**
 * For each of `count` nodes the node it is matched with, so that all are matched and the costs add up to the least
 * possible (Edmonds, 1965); undefined where `pairs` hold no matching of all nodes.
 */
export function leastMatching(count: number, pairs: readonly Pair[]): number[] | undefined {
  let most = 0;
  for (const { cost } of pairs) most = Math.max(most, cost);
  const scale = most > 0 ? STEPS / most : 0;
  // The algorithm looks for the largest weight among the matchings with most pairs. Even weights keep its halves whole.
  const weighted = pairs.map(({ a, b, cost }): [number, number, number] => [
    a,
    b,
    2 * (STEPS - Math.round(cost * scale)),
  ]);
  const matched = withGlobals(UNDECLARED, () => blossom(weighted, true));
  return matched.length === count && matched.every((other) => other >= 0) ? matched : undefined;
}

/**
 * Variables that the package assigns without declaring them. Bundled as a module its code is strict, and the first such
 * assignment fails unless a global of that name is there.
 */
const UNDECLARED = ["b", "path", "v"];

/** Runs `act` with globals of these names, and leaves the global scope as it was. */
function withGlobals<T>(names: readonly string[], act: () => T): T {
  const scope = globalThis as unknown as Record<string, unknown>;
  const before = names.map((name) => (Object.hasOwn(scope, name) ? { value: scope[name] } : undefined));
  for (const name of names) scope[name] = undefined;
  try {
    return act();
  } finally {
    names.forEach((name, index) => {
      const had = before[index];
      if (had) scope[name] = had.value;
      else delete scope[name];
    });
  }
}

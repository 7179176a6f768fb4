// What one cut goes along again, and the matching it is worked out with.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leastMatching } from "../../packages/casting-core/src/grooves/cuts/matching.js";
import { leastRetrace } from "../../packages/casting-core/src/grooves/cuts/retrace.js";
import { type Link, linksAt, partsOf } from "../../packages/casting-core/src/grooves/network/graph.js";
import { links } from "../support/arbitrary.js";

describe("a matching", () => {
  it("of no nodes is empty, of all at no cost is whole", () => {
    expect(leastMatching(0, [])).toEqual([]);
    expect(
      leastMatching(4, [
        { a: 0, b: 3, cost: 0 },
        { a: 1, b: 2, cost: 0 },
      ]),
    ).toEqual([3, 2, 1, 0]);
    expect(leastMatching(2, [{ a: 0, b: 1, cost: 5 }])).toEqual([1, 0]);
    expect(leastMatching(3, [{ a: 0, b: 1, cost: 1 }])).toBeUndefined();
    expect(leastMatching(4, [{ a: 0, b: 1, cost: 1 }])).toBeUndefined();
  });

  it("takes the least in all, not the least pair first", () => {
    const pairs = [
      { a: 0, b: 1, cost: 1 },
      { a: 2, b: 3, cost: 10 },
      { a: 0, b: 2, cost: 2 },
      { a: 1, b: 3, cost: 2 },
      { a: 0, b: 3, cost: 3 },
      { a: 1, b: 2, cost: 7 },
    ];
    for (const unit of [1, 1e-9, 1e9]) {
      const scaled = pairs.map(({ a, b, cost }) => ({ a, b, cost: cost * unit }));
      expect(leastMatching(4, scaled)).toEqual([2, 3, 0, 1]);
    }
  });

  it("is of all where it can be, though fewer pairs would cost nothing", () => {
    const row = [10, 0, 10].map((cost, a) => ({ a, b: a + 1, cost }));
    expect(leastMatching(4, row)).toEqual([1, 0, 3, 2]);
  });

  it("leaves the global scope as it was", () => {
    const scope = globalThis as unknown as Record<string, unknown>;
    scope["path"] = "mine";
    leastMatching(2, [{ a: 0, b: 1, cost: 1 }]);
    expect(scope["path"]).toBe("mine");
    expect(["b", "v"].filter((name) => Object.hasOwn(scope, name))).toEqual([]);
    delete scope["path"];
    expect(() => leastMatching(2, [{ a: Number.NaN, b: 1, cost: 1 }])).not.toThrow(ReferenceError);
    expect(["b", "path", "v"].filter((name) => Object.hasOwn(scope, name))).toEqual([]);
  });
});

describe("what is gone along again", () => {
  /** Least length to double so that no more than two nodes of a part are odd, by trying every set of links. */
  function byTrying(list: readonly Link[], part: readonly number[], one: number): number {
    let least = Number.POSITIVE_INFINITY;
    for (let doubled = 0; doubled < 1 << list.length; doubled++) {
      const degree = new Array<number>(7).fill(0);
      let length = 0;
      list.forEach((link, i) => {
        const twice = (doubled >> i) & 1;
        degree[link.a]! += 1 + twice;
        degree[link.b]! += 1 + twice;
        length += twice * link.length;
      });
      const odd = degree.filter((n, node) => n % 2 === 1 && part[node] === one).length;
      if (odd <= 2) least = Math.min(least, length);
    }
    return least;
  }

  it("is the least there is, and as good as a matching with few partners offered", () => {
    fc.assert(
      fc.property(links, (all) => {
        const list = all.slice(0, 10);
        const at = linksAt(7, list);
        const { part, count } = partsOf(list, at);
        for (let one = 0; one < count; one++) {
          const odd = at.flatMap((here, node) => (here.length % 2 === 1 && part[node] === one ? [node] : []));
          const length = (nearest?: number) =>
            leastRetrace(odd, list, at, nearest).reduce((sum, link) => sum + list[link]!.length, 0);
          expect(length()).toBe(byTrying(list, part, one));
          expect(length(1)).toBeGreaterThanOrEqual(length());
          const degree = at.map((here) => here.length);
          for (const link of leastRetrace(odd, list, at, 1)) {
            degree[list[link]!.a]!++;
            degree[list[link]!.b]!++;
          }
          expect(degree.filter((n, node) => n % 2 === 1 && part[node] === one).length).toBeLessThanOrEqual(2);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("of a star leaves its two longest rays out, though each end has but its middle near", () => {
    const star = [1, 2, 3, 4, 5].map((length): Link => ({ a: 0, b: length, length }));
    const at = linksAt(6, star);
    for (const nearest of [1, 2, 8]) {
      expect(leastRetrace([0, 1, 2, 3, 4, 5], star, at, nearest).sort()).toEqual([0, 1, 2]);
    }
  });

  it("is shorter where the nearest of each end would not do, and two are offered", () => {
    // A stem of 3 mm, two ends of 5 mm on one side of it and two of 1 mm on the other. The least is the stem and the two
    // short ends, which are joined to one another though each has the stem nearest.
    const forks = [
      [0, 1, 5],
      [0, 2, 3],
      [2, 3, 1],
      [0, 4, 5],
      [2, 5, 1],
    ].map(([a, b, length]): Link => ({ a: a!, b: b!, length: length! }));
    const length = (nearest: number) =>
      leastRetrace([0, 1, 2, 3, 4, 5], forks, linksAt(6, forks), nearest).reduce((sum, i) => sum + forks[i]!.length, 0);
    expect([1, 2, 8].map(length)).toEqual([6, 5, 5]);
  });

  it("cannot be found where no way joins the odd ends", () => {
    const apart = [0, 2, 4, 6].map((a): Link => ({ a, b: a + 1, length: 1 }));
    const odd = [0, 2, 4, 6];
    expect(() => leastRetrace(odd, apart, linksAt(8, apart))).toThrow(
      "the odd junctions of a connected part could not be matched",
    );
  });

  it("is nothing where one way does, and the middle of a letter H else", () => {
    const h: Link[] = [
      { a: 0, b: 1, length: 5 },
      { a: 1, b: 2, length: 5 },
      { a: 1, b: 4, length: 3 },
      { a: 3, b: 4, length: 5 },
      { a: 4, b: 5, length: 7 },
    ];
    const at = linksAt(6, h);
    expect(leastRetrace([0, 1], h, at)).toEqual([]);
    // Six odd ends, two of them the cut's own: the two shortest ways that make the others even are one stem each side.
    const again = leastRetrace([0, 1, 2, 3, 4, 5], h, at);
    expect(again.reduce((sum, link) => sum + h[link]!.length, 0)).toBe(10);
  });

  it("is as long, whatever numbers the junctions have, with all or few partners offered", () => {
    const numbers = fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6], { minLength: 7 });
    fc.assert(
      fc.property(links, numbers, (all, number) => {
        // Powers of three: no two ways are equally long.
        const list = all.slice(0, 10).map(({ a, b }, i): Link => ({ a, b, length: 3 ** i }));
        const again = list.map(({ a, b, length }): Link => ({ a: number[a]!, b: number[b]!, length }));
        const retraced = (all: readonly Link[], from: number, nearest: number) => {
          const at = linksAt(7, all);
          const { part } = partsOf(all, at);
          const odd = at.flatMap((here, node) => (here.length % 2 === 1 && part[node] === part[from] ? [node] : []));
          return leastRetrace(odd, all, at, nearest).reduce((sum, link) => sum + all[link]!.length, 0);
        };
        for (const nearest of [1, 2, 8]) {
          expect(retraced(again, number[list[0]!.a]!, nearest)).toBe(retraced(list, list[0]!.a, nearest));
        }
      }),
      { numRuns: 300 },
    );
  });

  it("leaves out what two ways share", () => {
    // Two long ends left, two short ones right of a bridge; the long ones, offered the two nearest, know only the short.
    const bridge: Link[] = [
      { a: 0, b: 1, length: 1 },
      { a: 0, b: 2, length: 5 },
      { a: 0, b: 3, length: 5 },
      { a: 1, b: 4, length: 1 },
      { a: 1, b: 5, length: 1.5 },
      { a: 0, b: 6, length: 100 },
      { a: 1, b: 7, length: 100 },
    ];
    const at = linksAt(8, bridge);
    for (const nearest of [2, 8])
      expect(leastRetrace([2, 3, 4, 5, 6, 7], bridge, at, nearest).sort()).toEqual([1, 2, 3, 4]);
  });
});

// Which end of a cut is followed by which start.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { distance } from "../../packages/casting-core/src/geometry/distance.js";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { leastMatching } from "../../packages/casting-core/src/grooves/cuts/matching.js";
import { nearPairs } from "../../packages/casting-core/src/grooves/cuts/pairing.js";
import { random } from "../../packages/casting-core/src/random.js";
import { places } from "../support/arbitrary.js";

describe("pairs for short travel", () => {
  it("hold every node once, and of four the shortest", () => {
    const all = (points: Point[]) =>
      nearPairs(
        points.map((_, i) => i),
        points,
      );
    expect(nearPairs([], [])).toEqual([]);
    fc.assert(
      fc.property(fc.uniqueArray(places(50), { minLength: 4, maxLength: 4, selector: String }), (points) => {
        const length = (pairs: number[][]) =>
          pairs.reduce((sum, [a, b]) => sum + distance(points[a!]!, points[b!]!), 0);
        const found = all(points);
        expect(found.flat().sort()).toEqual([0, 1, 2, 3]);
        for (const [a, b] of found) expect(a).toBeLessThan(b);
        const least = Math.min(
          ...[
            [
              [0, 1],
              [2, 3],
            ],
            [
              [0, 2],
              [1, 3],
            ],
            [
              [0, 3],
              [1, 2],
            ],
          ].map(length),
        );
        expect(length(found)).toBeCloseTo(least, 5);
      }),
      { numRuns: 200 },
    );
  });

  it("are made also of what lies far from all others, and of some of the points alone", () => {
    fc.assert(
      fc.property(fc.uniqueArray(places(900), { minLength: 24, maxLength: 40, selector: String }), (points) => {
        const nodes = points.flatMap((_, i) => (i % 2 === 0 || i < 2 ? [i] : []));
        const even = nodes.slice(0, nodes.length - (nodes.length % 2));
        const pairs = nearPairs(even, points);
        expect(pairs.flat().sort((p, q) => p - q)).toEqual(even);
        // A node's own partner apart, none of the eight nearest would serve both pairs better.
        const off = (a: number, b: number) => distance(points[a]!, points[b]!);
        const partner = new Map(pairs.flatMap(([a, b]) => [[a, b] as const, [b, a] as const]));
        for (const a of even) {
          const near = even.filter((b) => b !== a).sort((b, c) => off(a, b) - off(a, c));
          for (const b of near.slice(0, 8)) {
            const [c, d] = [partner.get(a)!, partner.get(b)!];
            if (b !== c) expect(off(a, b) + off(c, d)).toBeGreaterThanOrEqual(off(a, c) + off(b, d) - 1e-6);
          }
        }
      }),
      { numRuns: 40 },
    );
    const clusters = Array.from({ length: 22 }, (_, i): Point => (i < 11 ? [i, 0] : [1000 + i, 0]));
    const lengths = nearPairs(
      clusters.map((_, i) => i),
      clusters,
    ).map(([a, b]) => clusters[b]![0] - clusters[a]![0]);
    expect(lengths.filter((length) => length > 100)).toHaveLength(1);
    expect(lengths.filter((length) => length === 1)).toHaveLength(10);
  });

  it("join what is left of crowds to the nearest of what is left", () => {
    for (const order of [
      [0, 5000, 1000, 6000],
      [5000, 0, 6000, 1000],
      [1000, 6000, 5000, 0],
    ]) {
      const crowds = order.flatMap((start) => Array.from({ length: 11 }, (_, n): Point => [start + n, 0]));
      const far = nearPairs(
        crowds.map((_, i) => i),
        crowds,
      ).filter(([a, b]) => distance(crowds[a]!, crowds[b]!) > 20);
      expect(far).toHaveLength(2);
      for (const [a, b] of far) expect(distance(crowds[a]!, crowds[b]!)).toBeLessThan(1011);
    }
  });

  it("undo a bad choice among what is left, where the eight nearest reach from one crowd to another", () => {
    // Seven in each crowd: what is left of the two middle ones lies nearest, but then the outer two are far apart.
    const crowds = [0, 1900, 2900, 1000].flatMap((start) => Array.from({ length: 7 }, (_, n): Point => [start + n, 0]));
    const lengths = nearPairs(
      crowds.map((_, i) => i),
      crowds,
    ).map(([a, b]) => distance(crowds[a]!, crowds[b]!));
    expect(lengths.filter((length) => length > 20)).toHaveLength(2);
    expect(lengths.reduce((sum, length) => sum + length, 0)).toBeLessThan(2100);
  });

  it("are on average within 2.5 % of the shortest there are", () => {
    const source = random(5);
    let [made, least] = [0, 0];
    for (let n = 0; n < 60; n++) {
      const points = Array.from({ length: 24 }, (): Point => [100 * source.next(), 100 * source.next()]);
      const off = (a: number, b: number) => distance(points[a]!, points[b]!);
      const nodes = points.map((_, i) => i);
      const all = nodes.flatMap((a) => nodes.slice(a + 1).map((b) => ({ a, b, cost: off(a, b) })));
      made += nearPairs(nodes, points).reduce((sum, [a, b]) => sum + off(a, b), 0);
      least += leastMatching(24, all)!.reduce((sum, b, a) => sum + off(a, b) / 2, 0);
    }
    // What the matching is worked out with leaves nothing behind, of a large one either.
    expect(["b", "path", "v"].filter((name) => Object.hasOwn(globalThis, name))).toEqual([]);
    expect(made / least).toBeGreaterThanOrEqual(1);
    expect(made / least).toBeLessThan(1.025);
  });

  it("are of equal ones those of the nodes that come first", () => {
    const square: Point[] = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ];
    for (const [numbers, wanted] of [
      ["0123", "01 23"],
      ["0132", "01 23"],
      ["0213", "02 13"],
      ["3120", "02 13"],
    ] as const) {
      // The square's corners, by the numbers they have; whichever is named first.
      const points = square.map((_, number) => square[numbers.indexOf(String(number))]!);
      for (const named of [
        [0, 1, 2, 3],
        [3, 2, 1, 0],
        [2, 0, 3, 1],
      ]) {
        const pairs = nearPairs(named, points).map((pair) => pair.join(""));
        expect(pairs.sort().join(" ")).toBe(wanted);
      }
    }
  });

  it("join what is left of a crowd, of two crowds equally far, to the one named first", () => {
    for (const side of [-1000, 1000]) {
      // Eleven in a row, the last of each left over; the last row named lies in the middle.
      const rows = [side, -side, 9000, 0].flatMap((start) =>
        Array.from({ length: 11 }, (_, n): Point => [start + n, 0]),
      );
      const pairs = nearPairs(
        rows.map((_, i) => i),
        rows,
      );
      expect(
        pairs.map((pair) => pair.map((node) => Math.floor(node / 11)).join("")).filter((ab) => ab === "03"),
      ).toEqual(["03"]);
    }
  });
});

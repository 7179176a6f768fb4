// Junctions that the samples have between the wrong sites, put right by exact distances.
import { describe, expect, it } from "vitest";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { putRight } from "../../packages/casting-core/src/grooves/junctions.js";
import { meshOf } from "../../packages/casting-core/src/grooves/mesh.js";
import { networkOf } from "../../packages/casting-core/src/grooves/network.js";
import { distanceTo, type Site, sampleSite } from "../../packages/casting-core/src/grooves/sites.js";
import { waysOf } from "../../packages/casting-core/src/grooves/ways.js";

/** Four regular pieces that nearly meet in the middle: each off its place on a square by x and y, and turned. */
function nearlyMeeting(sides: number, radius: number, places: readonly (readonly number[])[]): Site[] {
  const pieces = places.map(([dx, dy, turn], n): Site => {
    const [x, y] = [(n % 3 === 0 ? 12 : -12) + dx!, (n < 2 ? 12 : -12) + dy!];
    const outline = Array.from({ length: sides }, (_, c): Point => {
      const angle = turn! + (2 * Math.PI * c) / sides;
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    });
    return { kind: "piece", shapes: [{ form: "outline", outline }] };
  });
  return [...pieces, { kind: "rim", shapes: [{ form: "hollow", radius: 60 }] }];
}

// Found among 1500 such places: samples 1.13 mm apart have the wrong two of them meet.
const CASES: [string, Site[]][] = [
  [
    "octagons",
    nearlyMeeting(8, 10, [
      [-0.093, 0.079, 5.801],
      [0.057, 0.001, 6.818],
      [0.079, -0.053, 2.85],
      [0.082, 0.007, 1.104],
    ]),
  ],
  [
    "pentagons",
    nearlyMeeting(5, 9, [
      [0.443, 0.029, 5.673],
      [0.036, -0.054, 2.212],
      [0.297, 0.155, 5.326],
      [0.152, -0.355, 3.169],
    ]),
  ],
];

/** By how much any other site is nearer to a point than the third nearest, which a junction is as far from as from the nearest, mm. */
function intrusion(sites: readonly Site[], point: Point): number {
  const [first, , third] = sites.map((site) => distanceTo(site, point)).sort((a, b) => a - b);
  return third! - first!;
}

describe.each(CASES)("four %s that nearly meet", (_, sites) => {
  it("have no junction with another nearer than its own three", () => {
    for (const node of networkOf(sites, 4).nodes) expect(intrusion(sites, node)).toBeLessThan(0.006);
  });

  it("are put right where they stand", () => {
    const [spacing, points, owner]: [number, number[], number[]] = [1.13, [], []];
    sites.forEach((site, index) => {
      sampleSite(site, spacing, 1e-3, points);
      while (2 * owner.length < points.length) owner.push(index);
    });
    const { nodes, ways } = waysOf(meshOf(points, owner), sites, spacing);
    expect(Math.max(...nodes.map((node) => intrusion(sites, node)))).toBeGreaterThan(0.007);
    expect(putRight(nodes, ways, sites, spacing)).toBe(true);
    for (const node of nodes) expect(intrusion(sites, node)).toBeLessThan(1e-3);
    // Every way ends where its own two sites and the third beyond are equally far.
    for (const { a, b, left, right, ends } of ways) {
      for (const [node, third] of [
        [a, ends[0]],
        [b, ends[1]],
      ] as const) {
        expect(new Set([left, right, third]).size).toBe(3);
        const far = [left, right, third!].map((site) => distanceTo(sites[site]!, nodes[node]!));
        expect(Math.max(...far) - Math.min(...far)).toBeLessThan(1e-6);
      }
    }
    // Three ways at each junction.
    for (const [n] of nodes.entries())
      expect(ways.flatMap(({ a, b }) => [a, b]).filter((end) => end === n)).toHaveLength(3);
  });
});

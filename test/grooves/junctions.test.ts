// Junctions that the samples have between the wrong sites, put right by exact distances.
import { describe, expect, it } from "vitest";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { putRight } from "../../packages/casting-core/src/grooves/network/junctions.js";
import { meshOf } from "../../packages/casting-core/src/grooves/network/mesh.js";
import { networkOf } from "../../packages/casting-core/src/grooves/network/network.js";
import { distanceTo, type Site, sampleSite } from "../../packages/casting-core/src/grooves/network/sites.js";
import { waysOf } from "../../packages/casting-core/src/grooves/network/ways.js";

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

/** As many regular pieces in a ring that nearly meet in its middle. */
function ring(sides: number, places: readonly (readonly number[])[]): Site[] {
  const reach = 2 + 10 / Math.sin(Math.PI / places.length);
  const pieces = places.map(([dx, dy, turn], n): Site => {
    const round = (2 * Math.PI * n) / places.length;
    const [x, y] = [reach * Math.cos(round) + dx!, reach * Math.sin(round) + dy!];
    const outline = Array.from({ length: sides }, (_, c): Point => {
      const angle = turn! + (2 * Math.PI * c) / sides;
      return [x + 10 * Math.cos(angle), y + 10 * Math.sin(angle)];
    });
    return { kind: "piece", shapes: [{ form: "outline", outline }] };
  });
  return [...pieces, { kind: "rim", shapes: [{ form: "hollow", radius: reach + 40 }] }];
}

// Found among thousands of such places: samples so many mm apart have the wrong of them meet.
const CASES: [string, number, Site[]][] = [
  [
    "four octagons",
    1.13,
    nearlyMeeting(8, 10, [
      [-0.093, 0.079, 5.801],
      [0.057, 0.001, 6.818],
      [0.079, -0.053, 2.85],
      [0.082, 0.007, 1.104],
    ]),
  ],
  [
    "four pentagons",
    1.13,
    nearlyMeeting(5, 9, [
      [0.443, 0.029, 5.673],
      [0.036, -0.054, 2.212],
      [0.297, 0.155, 5.326],
      [0.152, -0.355, 3.169],
    ]),
  ],
  [
    "five squares, whose ways are led about at either end",
    4,
    ring(4, [
      [0.017, -0.005, 5.256],
      [-0.006, 0.008, 3.289],
      [0.002, 0.016, 3.559],
      [-0.017, 0.005, 1.259],
      [-0.006, 0.011, 1.16],
    ]),
  ],
  [
    "five octagons, where one flip makes another needed",
    4,
    ring(8, [
      [-0.024, -0.01, 0.5],
      [0.004, -0.001, 1.748],
      [0.014, 0.002, 2.113],
      [-0.017, 0.027, 1.741],
      [-0.018, 0.018, 6.306],
    ]),
  ],
  [
    "five octagons, where one flip makes another needed at its first end",
    4,
    ring(8, [
      [0, 0.002, 6.773],
      [-0.007, 0.02, 0.682],
      [0.016, 0.019, 2.375],
      [0.001, 0.005, 0.42],
      [-0.024, 0.019, 5.42],
    ]),
  ],
];

/** Junctions and ways as samples so far apart have them. */
function sampledWays(sites: readonly Site[], spacing: number): ReturnType<typeof waysOf> {
  const [points, owner]: [number[], number[]] = [[], []];
  sites.forEach((site, index) => {
    sampleSite(site, spacing, 1e-3, points);
    while (2 * owner.length < points.length) owner.push(index);
  });
  return waysOf(meshOf(points, owner), sites, spacing);
}

/** By how much any other site is nearer to a point than the third nearest, which a junction is as far from as from the nearest, mm. */
function intrusion(sites: readonly Site[], point: Point): number {
  const [first, , third] = sites.map((site) => distanceTo(site, point)).sort((a, b) => a - b);
  return third! - first!;
}

describe.each(CASES)("%s that nearly meet, by samples %f mm apart,", (_, spacing, sites) => {
  it("have no junction with another nearer than its own three", () => {
    for (const node of networkOf(sites, 4).nodes) expect(intrusion(sites, node)).toBeLessThan(0.006);
  });

  it("are put right where they stand", () => {
    const { nodes, ways } = sampledWays(sites, spacing);
    expect(Math.max(...nodes.map((node) => intrusion(sites, node)))).toBeGreaterThan(5e-4);
    expect(putRight(nodes, ways, sites, spacing)).toBe(true);
    for (const node of nodes) expect(intrusion(sites, node)).toBeLessThan(5.01e-4);
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

describe("four octagons, one aside, so that the others meet well apart from it", () => {
  const sites = nearlyMeeting(8, 10, [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
    [1, -1, 0],
  ]);
  const found = () => sampledWays(sites, 1.13);
  /** Place of the ways between pieces that have both ends in the middle of all. */
  const short = ({ nodes, ways }: ReturnType<typeof waysOf>) =>
    ways.findIndex(({ a, b }) => [a, b].every((node) => Math.hypot(...nodes[node]!) < 5));

  it("stay as they are, and are right", () => {
    const { nodes, ways } = found();
    const before = structuredClone({ nodes, ways });
    expect(putRight(nodes, ways, sites, 1.13)).toBe(true);
    expect({ nodes, ways }).toEqual(before);
  });

  it("are not right with any junction 0.02 mm off, and are with it 0.001 mm off", () => {
    found().nodes.forEach((_, n) => {
      for (const turn of [0, 1, 2, 3]) {
        const off = (by: number) => {
          const { nodes, ways } = found();
          nodes[n]![0] += by * Math.cos((turn * Math.PI) / 2);
          nodes[n]![1] += by * Math.sin((turn * Math.PI) / 2);
          return putRight(nodes, ways, sites, 1.13);
        };
        expect(off(0.02)).toBe(false);
        expect(off(0.001)).toBe(true);
      }
    });
  });

  it("are not put otherwise for a junction that is off, where that would be worse", () => {
    const { nodes, ways } = found();
    const n = short({ nodes, ways });
    const way = ways[n]!;
    // Between the sites that do not meet, and at the places of those that do.
    const [before, after] = way.ends as [number, number];
    expect(new Set([way.left, way.right, before, after]).size).toBe(4);
    const { a } = way;
    const toward = sites[after]!;
    const [x, y] = nodes[a]!;
    const step = [0, 1, 2, 3, 4, 5, 6, 7]
      .map((turn): Point => [x + 2 * Math.cos((turn * Math.PI) / 4), y + 2 * Math.sin((turn * Math.PI) / 4)])
      .sort((p, q) => distanceTo(toward, p) - distanceTo(toward, q))[0]!;
    nodes[a] = step;
    const given = structuredClone({ nodes, ways });
    expect(putRight(nodes, ways, sites, 1.13)).toBe(false);
    expect({ nodes, ways }).toEqual(given);
  });
});

// What the samples' triangles have for lines, before any of them is drawn.
import { expect, it } from "vitest";
import { meshOf } from "../../packages/casting-core/src/grooves/network/mesh.js";
import { type Site, sampleSite } from "../../packages/casting-core/src/grooves/network/sites.js";
import { junction, waysOf } from "../../packages/casting-core/src/grooves/network/ways.js";

it("a line round a single piece closes on itself, at a place that is none of those it goes through", () => {
  const sites: Site[] = [
    { kind: "piece", shapes: [{ form: "disc", x: 5, y: 0, radius: 10 }] },
    { kind: "rim", shapes: [{ form: "hollow", radius: 40 }] },
  ];
  const [points, owner]: [number[], number[]] = [[], []];
  sites.forEach((site, index) => {
    sampleSite(site, 2, 0, points);
    while (2 * owner.length < points.length) owner.push(index);
  });
  const { nodes, ways } = waysOf(meshOf(points, owner), sites, 2);
  expect(nodes).toHaveLength(1);
  const [[x, y]] = nodes as [[number, number]];
  expect(Math.hypot(x - 5, y) - 10).toBeCloseTo(40 - Math.hypot(x, y), 9);
  expect(ways).toEqual([
    { a: 0, b: 0, left: expect.any(Number), right: expect.any(Number), ends: [], through: expect.any(Array) },
  ]);
  const [{ left, right, through }] = ways as [(typeof ways)[0]];
  expect([left, right].sort()).toEqual([0, 1]);
  expect(through.length).toBeGreaterThan(30);
  for (const [px, py] of through) expect(Math.hypot(px - x, py - y)).toBeGreaterThan(0.1);
});

it("a junction is looked for as far as the samples are apart, and as far as its sites are", () => {
  /** Three discs round the middle, each so far from it. */
  const round = (far: number) =>
    [0, 2, 4].map((turn): Site => {
      const reach = 5 + far;
      const shape = { form: "disc", x: reach * Math.cos(turn), y: reach * Math.sin(turn), radius: 5 } as const;
      return { kind: "piece", shapes: [shape] };
    }) as [Site, Site, Site];
  const middle = [expect.closeTo(0, 8), expect.closeTo(0, 8)];
  expect(junction([0, 3], ...round(10), 0.5)).toEqual(middle);
  expect(junction([-0.3, 0], ...round(0.1), 1)).toEqual(middle);
});

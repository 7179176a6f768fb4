// The network itself: which lines meet where.
import { describe, expect, it } from "vitest";
import type { Outline, Point } from "../../packages/casting-core/src/geometry/types.js";
import { type Network, networkOf, onEdge } from "../../packages/casting-core/src/grooves/network/network.js";
import { distanceTo, type Site } from "../../packages/casting-core/src/grooves/network/sites.js";
import { lengthOf } from "../../packages/casting-core/src/grooves/polyline.js";

const outline = (points: Outline): Site => ({ kind: "piece", shapes: [{ form: "outline", outline: points }] });
const square = (x: number, y: number, half: number): Site =>
  outline([
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
  ]);
const rim = (radius: number): Site => ({ kind: "rim", shapes: [{ form: "hollow", radius }] });

/** Four squares of 20 mm, 4 mm apart, round (7, -5); the last moved aside by so much. */
const four = (aside: number): Site[] => [
  square(19, 7, 10),
  square(-5, 7, 10),
  square(-5, -17, 10),
  square(19 + aside, -17 - aside, 10),
  rim(60),
];
const near = ({ nodes }: Network, [x, y]: Point) =>
  nodes.flatMap((node, n) => (Math.hypot(node[0] - x, node[1] - y) < 0.2 ? [n] : []));
const meeting = ({ lines }: Network, node: number) => lines.filter(({ a, b }) => a === node || b === node);

describe("where four pieces meet", () => {
  it("is one junction of four lines, exactly in the middle", () => {
    const network = networkOf(four(0), 4);
    const [middle, ...others] = near(network, [7, -5]);
    expect(others).toEqual([]);
    expect(network.nodes[middle!]).toEqual([7, -5]);
    expect(meeting(network, middle!)).toHaveLength(4);
    // Round four pieces: the middle and four places by the rim, each between two pieces.
    expect(network.nodes).toHaveLength(5);
    expect(network.lines).toHaveLength(8);
  });

  it.each([0.007, 0.01, 0.02, 0.06])(
    "are two junctions, joined by a short line, where one piece stands %f mm aside",
    (aside) => {
      const network = networkOf(four(aside), 4);
      const two = near(network, [7, -5]);
      expect(two).toHaveLength(2);
      for (const node of two) expect(meeting(network, node)).toHaveLength(3);
      const short = network.lines.filter(({ a, b }) => two.includes(a) && two.includes(b));
      expect(short).toHaveLength(1);
      const [[ax, ay], [bx, by]] = two.map((node) => network.nodes[node]!) as [Point, Point];
      expect(lengthOf(short[0]!.points)).toBeCloseTo(Math.hypot(bx - ax, by - ay), 9);
      expect(network.nodes).toHaveLength(6);
      expect(network.lines).toHaveLength(9);
    },
  );
});

it("is one junction still where a piece stands 0.004 mm aside, which the plan's micrometres hardly tell", () => {
  const network = networkOf(four(0.004), 4);
  expect(near(network, [7, -5])).toHaveLength(1);
  expect(network.lines).toHaveLength(8);
});

it("distances are asked for by a few samples alone where those come out right", () => {
  let asked = 0;
  const counted = four(3).map(
    (site): Site => ({
      ...site,
      get shapes() {
        asked++;
        return site.shapes;
      },
    }),
  );
  expect(networkOf(counted, 4)).toEqual(networkOf(four(3), 4));
  // 23 000 times; by samples that are off by a tenth as much, or by twice as many, 41 000 times and more.
  expect(asked).toBeLessThan(30_000);
});

describe("every line", () => {
  const sites = four(3);

  it("goes from junction to junction by points of its own, none nearer to another site than to its two", () => {
    const { nodes, lines } = networkOf(sites, 4);
    for (const { a, b, points, left, right } of lines) {
      expect([points[0], points.at(-1)]).toEqual([nodes[a], nodes[b]]);
      expect(new Set(points.map(String)).size).toBe(points.length);
      for (const point of points) {
        const far = sites.map((site) => distanceTo(site, point));
        expect(Math.abs(far[left]! - far[right]!)).toBeLessThan(0.01);
        expect(Math.min(...far)).toBeGreaterThan(far[left]! - 0.01);
      }
    }
  });

  it("has no more points than its bends need", () => {
    const { lines } = networkOf(sites, 4);
    // Between the parallel sides of two squares it is straight, and bends beside their corners.
    for (const { points, left, right } of lines) if (right !== 4 && left !== 4) expect(points.length).toBeLessThan(30);
    expect(lines.flatMap(({ points }) => points).length).toBeLessThan(450);
  });
});

it("a small piece among large ones has its lines in the middle, however wide or narrow the gap", () => {
  for (const gap of [4, 0.2, 0.02]) {
    const sites = [square(-10 - gap / 2, 0, 10), square(1 + gap / 2, 0, 1), square(12 + 1.5 * gap, 0, 10), rim(40)];
    const { lines } = networkOf(sites, gap);
    const pairs = lines.map(({ left, right }) => [left, right].sort().join()).sort();
    expect(pairs).toEqual(expect.arrayContaining(["0,1", "0,2", "0,3", "1,2", "2,3"]));
    for (const { points, left, right } of lines)
      for (const point of points) {
        const far = [left, right].map((site) => distanceTo(sites[site]!, point));
        expect(Math.abs(far[0]! - far[1]!)).toBeLessThan(0.01);
      }
  }
});

it("a point on the tool's edge is told to 2 µm", () => {
  for (const [x, y] of [
    [50, 0],
    [30, -40],
    [0, 50.0019],
    [-49.9981, 0],
  ])
    expect(onEdge([x!, y!], 100)).toBe(true);
  for (const [x, y] of [
    [0, 50.0021],
    [-49.9979, 0],
    [0, 0],
    [70, 0],
  ])
    expect(onEdge([x!, y!], 100)).toBe(false);
});

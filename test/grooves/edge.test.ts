// Pieces that stand on the tool's very edge: between two of its samples the edge bows out beyond them.
import { describe, expect, it } from "vitest";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { networkOf } from "../../packages/casting-core/src/grooves/network/network.js";
import { distanceTo, type Shape, type Site } from "../../packages/casting-core/src/grooves/network/sites.js";

const RADIUS = 60;
const RIM: Site = { kind: "rim", shapes: [{ form: "hollow", radius: RADIUS }] };

/** A triangle with a corner, or a disc with a point, `rim` from the edge in the direction `turn`. */
const pieceAt = (form: "triangle" | "disc", turn: number, rim: number): Shape => {
  const place = (out: number, aside: number): Point => [
    out * Math.cos(turn) - aside * Math.sin(turn),
    out * Math.sin(turn) + aside * Math.cos(turn),
  ];
  const tip = RADIUS - rim;
  if (form === "triangle")
    return { form: "outline", outline: [place(tip, 0), place(tip - 20, 10), place(tip - 20, -10)] };
  const [x, y] = place(tip - 15, 0);
  return { form: "disc", x, y, radius: 15 };
};

describe.each(["triangle", "disc"] as const)("three pieces, each a %s", (form) => {
  // Between samples of the edge, and on one.
  it.each([
    [10, 0.77],
    [30, 0.3],
    [30, 0],
    [200, 1.2],
  ])("on the edge and %f mm apart have the lines that they have beside it (turned by %f)", (gap, turn) => {
    const pairs = [0, 1e-3, 1].map((rim) => {
      // The last stands farther in.
      const pieces = [rim, rim, rim + 0.5].map(
        (out, n): Site => ({ kind: "piece", shapes: [pieceAt(form, turn + 1.5 * n, out)] }),
      );
      const sites = [...pieces, RIM];
      const { nodes, lines } = networkOf(sites, gap);
      expect(nodes).toHaveLength(4);
      for (const { points, left, right } of lines)
        for (const point of points) {
          const far = sites.map((site) => distanceTo(site, point));
          expect(Math.abs(far[left]! - far[right]!)).toBeLessThan(0.01);
          expect(Math.min(...far)).toBeGreaterThan(far[left]! - 0.01);
        }
      return lines.map(({ left, right }) => [left, right].sort().join()).sort();
    });
    expect(pairs).toEqual(pairs.map(() => ["0,1", "0,2", "0,3", "1,2", "1,3", "2,3"]));
  });
});

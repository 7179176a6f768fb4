import fc from "fast-check";
import { expect, test } from "vitest";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { circumcentre, crosses, meshOf, next, third } from "../../packages/casting-core/src/grooves/network/mesh.js";
import { places } from "../support/arbitrary.js";

const SIDE = 4000;

/** The outline of one triangle and the tool's edge round it, sampled more finely than the library's list of sides is long. */
function triangleInTool(): { coordinates: number[]; owner: number[] } {
  const corners: Point[] = [
    [27.479, -7.959],
    [27.251, -12.346],
    [31.129, -11.038],
  ];
  const coordinates = corners.flatMap(([ax, ay], n) => {
    const [bx, by] = corners[(n + 1) % 3]!;
    return Array.from({ length: SIDE }, (_, i) => [ax + ((bx - ax) * i) / SIDE, ay + ((by - ay) * i) / SIDE]).flat();
  });
  for (let i = 0; i < 8 * SIDE; i++) {
    const turn = (Math.PI * i) / (4 * SIDE);
    coordinates.push(38.5 * Math.cos(turn), 38.5 * Math.sin(turn));
  }
  return { coordinates, owner: coordinates.filter((_, i) => i % 2 === 0).map((_, i) => (i < 3 * SIDE ? 0 : 1)) };
}

test("no circle through a triangle's corners holds the point beyond its side, however many the points on one circle", () => {
  const { coordinates, owner } = triangleInTool();
  const { triangles, halfedges, sites } = meshOf(coordinates, owner);
  const at = (corner: number): Point => [
    coordinates[2 * triangles[corner]!]!,
    coordinates[2 * triangles[corner]! + 1]!,
  ];
  let [held, unpaired, torn] = [0, 0, 0];
  for (const [side, twin] of halfedges.entries()) {
    if (twin < side) continue;
    if (twin >= 0 && halfedges[twin] !== side) unpaired += 1;
    if (triangles[side] !== triangles[next(twin)] || triangles[next(side)] !== triangles[twin]) torn += 1;
    const [x, y] = at(next(next(twin)));
    // The sign of this determinant tells in from out (Guibas and Stolfi, 1985); the library's triangles run clockwise.
    const [[a, b, c], [d, e, f], [g, h, i]] = [side, next(side), next(next(side))].map((corner) => {
      const [px, py] = at(corner);
      return [px - x, py - y, (px - x) ** 2 + (py - y) ** 2];
    }) as [number[], number[], number[]];
    const size = (c! + f! + i!) ** 2;
    const determinant = a! * (e! * i! - f! * h!) - b! * (d! * i! - f! * g!) + c! * (d! * h! - e! * g!);
    if (-determinant > 2e-9 * size) held += 1;
  }
  expect([held, unpaired, torn]).toEqual([0, 0, 0]);
  expect([...sites]).toEqual([...triangles].map((point) => owner[point]));
});

test("sides go round their triangle, and the middle of its circle is as far from each corner", () => {
  expect([0, 1, 2, 3, 4, 5].map(next)).toEqual([1, 2, 0, 4, 5, 3]);
  fc.assert(
    fc.property(fc.uniqueArray(places(50), { minLength: 6, maxLength: 12, selector: String }), (points) => {
      const mesh = meshOf(
        points.flat(),
        points.map((_, i) => i),
      );
      for (let triangle = 0; 3 * triangle < mesh.triangles.length; triangle++) {
        const [x, y] = circumcentre(mesh, triangle);
        const off = [0, 1, 2].map((n) => {
          const [px, py] = points[mesh.triangles[3 * triangle + n]!]!;
          return Math.hypot(px - x, py - y);
        });
        for (const one of off) expect(one / off[0]!).toBeCloseTo(1, 6);
      }
    }),
    { numRuns: 60 },
  );
});

test("a middle line crosses the sides that join two sites, and its junction has a third one", () => {
  // Two points of one site on the left, one of each of two others on the right.
  const mesh = meshOf([0, 0, 0, 4, 6, -1, 6, 5], [7, 7, 8, 9]);
  expect(mesh.triangles).toHaveLength(6);
  for (const [side, corner] of mesh.triangles.entries()) {
    const other = mesh.triangles[next(side)]!;
    expect(crosses(mesh, side)).toBe(Math.min(corner, other) > 1 || corner < 2 !== other < 2);
  }
  const junction = [0, 1].find((triangle) => new Set(mesh.sites.slice(3 * triangle, 3 * triangle + 3)).size === 3)!;
  expect(third(mesh, junction, 7, 8)).toBe(9);
  expect(third(mesh, junction, 9, 7)).toBe(8);
  expect(third(mesh, junction, 8, 9)).toBe(7);
});

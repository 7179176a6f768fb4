import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pointToOutline } from "../../packages/casting-core/src/geometry/distance.js";
import { centroid, convexContains, signedArea } from "../../packages/casting-core/src/geometry/polygon.js";
import type { JobPiece } from "../../packages/casting-core/src/job/types.js";
import { CATALOGUE, catalogueItem } from "../../packages/casting-core/src/pieces/catalogue.js";
import { pieceKinds, pieceVolume } from "../../packages/casting-core/src/pieces/kinds.js";
import { exampleJob } from "../support/jobs.js";

const own = { thickness: 6, density: 2.35 };

function kindOf(piece: JobPiece) {
  return pieceKinds(exampleJob({ pieces: [piece] }))[0]!;
}

describe("every row of the catalogue", () => {
  test.each(CATALOGUE.map((row) => [row.item]))("%s is a piece that can be laid", (item) => {
    const kind = kindOf({ item });
    expect(kind.item).toBe(item);
    expect(catalogueItem(item)!.source.length).toBeGreaterThan(5);
    expect(item).toMatch(/^[a-z][a-z0-9./-]*$/);
    expect(pieceVolume(kind)).toBeGreaterThan(0);
    if (kind.bearing) {
      const inner = pointToOutline([0, 0], kind.outline);
      expect(kind.bearing.inner).toBeGreaterThan(kind.bore);
      expect(kind.bearing.outer).toBeGreaterThan(kind.bearing.inner);
      expect(kind.bearing.outer).toBeLessThan(2 * inner);
    }
  });

  test("names are not used twice", () => {
    expect(new Set(CATALOGUE.map((row) => row.item)).size).toBe(CATALOGUE.length);
  });
});

describe("poses", () => {
  test("hexagon and triangle have a corner on +x", () => {
    for (const shape of ["hexagon", "triangle"] as const) {
      const { outline, reach } = kindOf({ shape, across: 20, ...own });
      expect(outline[0]![0]).toBeCloseTo(20 / Math.sqrt(3), 12);
      expect(outline[0]![1]).toBe(0);
      expect(reach).toBeCloseTo(20 / Math.sqrt(3), 12);
    }
  });

  test("a rectangle's length runs along x", () => {
    const { outline, area, fold } = kindOf({ shape: "rectangle", length: 50, width: 20, ...own });
    expect(Math.max(...outline.map(([x]) => x))).toBe(25);
    expect(Math.max(...outline.map(([, y]) => y))).toBe(10);
    expect([area, fold]).toEqual([1000, 2]);
  });

  test("a round piece has 96 corners on its circle and the circle's area", () => {
    const { outline, radius, area, fold } = kindOf({ shape: "round", diameter: 19, ...own });
    expect(outline).toHaveLength(96);
    for (const [x, y] of outline) expect(Math.hypot(x, y)).toBeCloseTo(9.5, 12);
    expect([radius, fold]).toEqual([9.5, Infinity]);
    expect(area).toBeCloseTo(Math.PI * 9.5 * 9.5, 10);
  });

  test("a polygon is moved to its centroid, not turned, whichever way round it is given", () => {
    const points: [number, number][] = [[0, 0], [30, 0], [20, 15], [0, 10]]; // biome-ignore format: one row of corners
    const kind = kindOf({ shape: "polygon", points, ...own });
    const back = kindOf({ shape: "polygon", points: [...points].reverse(), ...own });
    expect(kind.area).toBeCloseTo(325, 9);
    expect(kind.outline[1]![0] - kind.outline[0]![0]).toBeCloseTo(30, 12);
    expect(signedArea(back.outline)).toBeCloseTo(325, 9);
    expect(kind.fold).toBe(1);
  });

  test("a corner on a straight side is no corner", () => {
    const kind = kindOf({ shape: "polygon", points: [[0, 0], [0.1, 0.1], [10, 10], [0, 10]], ...own }); // biome-ignore format: one row
    expect(kind.outline).toHaveLength(3);
  });
});

const positive = fc.double({ min: 1, max: 200, noNaN: true });
const shapes: fc.Arbitrary<JobPiece> = fc.oneof(
  fc.record({ shape: fc.constantFrom("hexagon" as const, "square" as const, "triangle" as const), across: positive }),
  fc.record({ shape: fc.constant("rectangle" as const), length: positive, width: positive }),
  fc.record({ shape: fc.constant("round" as const), diameter: positive }),
).map((shape) => ({ ...shape, ...own }) as JobPiece); // biome-ignore format: reads as one

test("outlines are convex, counter-clockwise, about their centroid, and turn onto themselves by their fold", () => {
  fc.assert(
    fc.property(shapes, (piece) => {
      const { outline, area, fold, radius, reach } = kindOf(piece);
      const size = reach * reach;
      if (radius === undefined) expect(signedArea(outline) / area).toBeCloseTo(1, 12);
      const [cx, cy] = centroid(outline);
      expect(Math.hypot(cx, cy) / reach).toBeLessThan(1e-12);
      expect(convexContains(outline, [0, 0])).toBe(true);
      expect(size).toBeGreaterThan(0);
      const angle = (2 * Math.PI) / (fold === Infinity ? 96 : fold);
      for (const [x, y] of outline) {
        const turned = [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)] as const;
        const nearest = Math.min(...outline.map(([ox, oy]) => Math.hypot(ox - turned[0], oy - turned[1])));
        expect(nearest / reach).toBeLessThan(1e-12);
      }
    }),
    { numRuns: 60 },
  );
});

describe("refused by key", () => {
  const polygon = (points: [number, number][]): JobPiece => ({ shape: "polygon", points, ...own });
  test.each<[string, JobPiece, RegExp]>([
    [
      "a dent",
      polygon([
        [0, 0],
        [10, 0],
        [3, 3],
        [0, 10],
      ]),
      /pieces\[0\]\.points: the polygon is not convex, or crosses itself, near \(3 mm, 3 mm\); give the corners of a convex shape in order$/,
    ],
    [
      "a bow tie",
      polygon([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10.5],
      ]),
      /points: .*not convex/,
    ],
    [
      "a pentagram",
      polygon([0, 2, 4, 1, 3].map((k) => [Math.cos((k * 2 * Math.PI) / 5), Math.sin((k * 2 * Math.PI) / 5)])),
      /not convex/,
    ],
    [
      "a repeated corner",
      polygon([
        [0, 0],
        [10, 0],
        [10, 0],
        [0, 10],
      ]),
      /points 2 and 3 are both at \(10 mm, 0 mm\); give each corner once$/,
    ],
    [
      "a line",
      polygon([
        [0, 0],
        [10, 10],
        [20, 20],
      ]),
      /on one line/,
    ],
    [
      "a bow tie",
      polygon([
        [0, 0],
        [20, 20],
        [20, 0],
        [0, 20],
      ]),
      /crosses itself/,
    ],
    [
      "two points",
      polygon([
        [0, 0],
        [10, 10],
      ]),
      /at least 3/,
    ],
    [
      "a bore through the edge",
      { shape: "square", across: 20, bore: 20, ...own },
      /pieces\[0\]\.bore: .*breaks the edge/,
    ],
    ["an unknown item", { item: "iso-4032-m11" }, /pieces\[0\]\.item: .*did you mean "iso-4032-m1/],
    ["nonsense", { item: "qqqqqqqqqqqqqqqqqqqqqq" }, /casting list pieces/],
  ])("%s", (_, piece, message) => {
    expect(() => kindOf(piece)).toThrow(message);
  });

  test("a polygon's corner is told in the job's units", () => {
    const dent: JobPiece = polygon([
      [0, 0],
      [25.4, 0],
      [6.35, 6.35],
      [0, 25.4],
    ]);
    expect(() => pieceKinds(exampleJob({ units: "in", pieces: [dent] }))).toThrow("near (1/4 in, 1/4 in);");
  });

  test("all at once", () => {
    expect(() => pieceKinds(exampleJob({ pieces: [{ item: "x" }, { item: "iso-4032-m12" }, { item: "y" }] }))).toThrow(
      /pieces\[0\][\s\S]*pieces\[2\]/,
    );
  });
});

test("a nut's bore fills with plaster", () => {
  const kind = kindOf({ item: "iso-4032-m12" });
  expect(pieceVolume(kind)).toBeCloseTo(
    ((Math.sqrt(3) / 2) * 18 * 18 - (Math.PI / 4) * kind.bore * kind.bore) * 0.0108,
    9,
  );
});

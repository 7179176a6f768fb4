// How many pieces a tool is begun with.
import { describe, expect, it } from "vitest";
import { blockedArea } from "../../packages/casting-core/src/layout/field.js";
import { layPieces } from "../../packages/casting-core/src/layout/layout.js";
import { RINGS, radialVariation, ringCoverage } from "../../packages/casting-core/src/layout/quality/rings.js";
import { jamShare, latticeGuess, meanCell } from "../../packages/casting-core/src/layout/room.js";
import type { PieceKind } from "../../packages/casting-core/src/pieces/types.js";
import { exampleJob } from "../support/jobs.js";
import { hexagonKind } from "../support/kinds.js";
import { regular, toolOf } from "../support/layouts.js";

const kindOf = (corners: number, reach: number): PieceKind => ({
  ...hexagonKind(2 * reach),
  shape: "polygon",
  name: `${corners} corners`,
  outline: regular(corners, reach, 0, 0, 0),
  fold: corners,
  reach,
  area: (corners / 2) * reach * reach * Math.sin((2 * Math.PI) / corners),
});
const begun = (corners: number) => {
  const kinds = [kindOf(corners, 12)];
  const field = { radius: 197, edge: 200, clear: [] };
  return jamShare(kinds, Int32Array.of(0)) * latticeGuess(field, meanCell(kinds, Int32Array.of(0), 3), 3);
};

describe("pieces of many corners", () => {
  it("leave gaps that no order closes: fewer are begun with than of what tiles", () => {
    // Area of each shape as a share of its cell: a hexagon fills the plane, an octagon 0.906 of it, no shape less than 0.9.
    const share = (corners: number) => (begun(corners) * kindOf(corners, 12).area) / begun(6) / kindOf(6, 12).area;
    expect(share(8)).toBeGreaterThan(0.92);
    expect(share(8)).toBeLessThan(0.97);
    expect(share(12)).toBeGreaterThan(share(8) + 0.01);
    expect(share(5)).toBeLessThan(1);
  });

  it.each([5, 8])("of %i lie evenly", (corners) => {
    const job = exampleJob({ layout: { ...exampleJob().layout, gap: 3, seed: 2 } });
    const { pieces } = layPieces(job, toolOf(400), [kindOf(corners, 12)]);
    expect(pieces.length).toBeGreaterThan(0.96 * begun(corners));
    expect(radialVariation(ringCoverage(pieces, 200, RINGS))).toBeLessThan(0.027);
  });
});

describe("what kept circles take of the field", () => {
  const blocked = (...clear: [number, number, number][]) =>
    blockedArea({ radius: 100, edge: 103, clear: clear.map(([x, y, radius]) => ({ x, y, radius })) });
  /** Area common to two circles (the lens of plane geometry), mm². */
  const lens = (d: number, r: number, q: number) =>
    r * r * Math.acos((d * d + r * r - q * q) / (2 * d * r)) +
    q * q * Math.acos((d * d + q * q - r * r) / (2 * d * q)) -
    Math.sqrt((-d + r + q) * (d + r - q) * (d - r + q) * (d + r + q)) / 2;
  const circle = (r: number) => Math.PI * r * r;

  it.each<[string, number, [number, number, number][]]>([
    ["nothing", 0, []],
    ["a circle off the field", 0, [[150, 0, 40]]],
    ["a circle about the axis", circle(30), [[0, 0, 30]]],
    ["one beside it, at any turn", circle(20), [[-50, -1, 20]]],
    [
      "the same one twice",
      circle(20),
      [
        [-50, 10, 20],
        [-50, 10, 20],
      ],
    ],
    [
      "one inside another",
      circle(30),
      [
        [10, 0, 30],
        [15, 5, 8],
      ],
    ],
    [
      "two that overlap",
      2 * circle(30) - lens(40, 30, 30),
      [
        [20, 30, 30],
        [-20, 30, 30],
      ],
    ],
    ["one that reaches beyond the field", lens(90, 100, 40), [[0, -90, 40]]],
    ["one that covers it", circle(100), [[5, 0, 200]]],
  ])("%s", (_, area, clear) => {
    expect(Math.abs(blocked(...clear) - area)).toBeLessThan(2e-3 * area + 1e-9);
  });
});

it("circles off the tool, or written twice, cost no piece more", () => {
  const count = (...clear: { x: number; y: number; diameter: number }[]) => {
    const job = exampleJob({ layout: { ...exampleJob().layout, "keep-clear": clear } });
    return layPieces(job, toolOf(190), [hexagonKind(16)]).pieces.length;
  };
  const [hole, off] = [
    { x: 30, y: 20, diameter: 60 },
    { x: 300, y: 0, diameter: 180 },
  ];
  expect(count(off)).toBe(count());
  expect(Math.abs(count(hole, hole, hole, hole) - count(hole))).toBeLessThanOrEqual(2);
});

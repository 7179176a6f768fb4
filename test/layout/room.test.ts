// How many pieces a tool is begun with.
import { describe, expect, it } from "vitest";
import { layPieces } from "../../packages/casting-core/src/layout/layout.js";
import { RINGS, radialVariation, ringCoverage } from "../../packages/casting-core/src/layout/rings.js";
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

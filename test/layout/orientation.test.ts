import { describe, expect, it } from "vitest";
import { blankOf, toolOf } from "../../packages/casting-core/src/blank/blank.js";
import { layoutNotes } from "../../packages/casting-core/src/layout/notes/notes.js";
import { orientationOrder } from "../../packages/casting-core/src/layout/quality/orientation.js";
import { pieceKinds } from "../../packages/casting-core/src/pieces/kinds.js";
import { exampleJob, hexagon } from "../support/jobs.js";
import { hexagonKind, roundKind } from "../support/kinds.js";
import { layoutOf, regular } from "../support/layouts.js";

/** Hexagons 25 mm apart in rows of eight, turned by `turn` degrees each. */
function turned(count: number, turn: (n: number) => number) {
  const middles = Array.from({ length: count }, (_, n) => [25 * (n % 8) - 87, 25 * Math.floor(n / 8) - 87] as const);
  const layout = layoutOf(
    middles.map(([x, y]) => regular(6, 11, x, y, 0)),
    3,
  );
  return { ...layout, pieces: layout.pieces.map((piece, n) => ({ ...piece, angle: turn(n) })) };
}

describe("the order of orientations", () => {
  const kinds = [hexagonKind(20)];

  it("is 1 for parallel pieces, 0 for turns spread evenly, and the root of a half for two at 15 degrees", () => {
    expect(orientationOrder(kinds, turned(12, () => 17).pieces)).toBeCloseTo(1, 12);
    expect(orientationOrder(kinds, turned(12, (n) => 5 * n).pieces)).toBeCloseTo(0, 12);
    expect(orientationOrder(kinds, turned(2, (n) => 15 * n).pieces)).toBeCloseTo(Math.SQRT1_2, 12);
    // A sixth of a turn brings a hexagon onto itself.
    expect(orientationOrder(kinds, turned(12, (n) => 60 * n).pieces)).toBeCloseTo(1, 12);
  });

  it("is that of the kind that has most, and rounds have none", () => {
    const pieces = turned(12, (n) => (n < 6 ? 10 * n : 0)).pieces.map((piece, n) => ({
      ...piece,
      kind: n < 6 ? 0 : 1,
    }));
    expect(orientationOrder([hexagonKind(20), { ...hexagonKind(20), kind: 1 }], pieces)).toBeCloseTo(1, 12);
    expect(orientationOrder([hexagonKind(20), { ...roundKind(20), kind: 1 }], pieces)).toBeCloseTo(0, 12);
    expect(orientationOrder(kinds, [])).toBe(0);
  });

  it("is noted from 30 % on, where pieces enough make it no chance", () => {
    const job = exampleJob();
    const blank = blankOf(job);
    const text = (count: number, turn: (n: number) => number) =>
      layoutNotes(job, blank, toolOf(job, blank), pieceKinds(job), turned(count, turn)).find(
        ({ code }) => code === "ordered",
      )?.text;
    expect(text(60, () => 10)).toBe(
      "The pieces lie turned alike to 100.0 %, as in one crystal, which can print a direction: try other seeds.",
    );
    expect(text(60, (n) => 5 * n)).toBeUndefined();
    expect(text(20, () => 10)).toBeUndefined();
  });

  it("is not told from the few of one kind among many of others, which chance turns alike", () => {
    const job = exampleJob({ pieces: [hexagon(20), { ...hexagon(20), share: 0.02 }] });
    const blank = blankOf(job);
    const mixed = turned(60, (n) => 5 * n);
    const pieces = mixed.pieces.map((piece, n) => ({ ...piece, kind: n === 0 ? 1 : 0 }));
    const codes = layoutNotes(job, blank, toolOf(job, blank), pieceKinds(job), { ...mixed, pieces }).map(
      ({ code }) => code,
    );
    expect(codes).not.toContain("ordered");
  });
});

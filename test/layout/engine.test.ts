import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pointToSegment } from "../../packages/casting-core/src/geometry/distance.js";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import type { JobLayout } from "../../packages/casting-core/src/job/types.js";
import { laidOutline } from "../../packages/casting-core/src/layout/laying/snap.js";
import { layPieces } from "../../packages/casting-core/src/layout/layout.js";
import type { PlacedPiece } from "../../packages/casting-core/src/layout/types.js";
import type { PieceKind } from "../../packages/casting-core/src/pieces/types.js";
import { exampleJob } from "../support/jobs.js";
import { hexagonKind, polygonKind, rectangleKind, roundKind } from "../support/kinds.js";

function layIn(diameter: number, kinds: PieceKind[], layout: Partial<JobLayout> = {}, rim = 3) {
  const job = exampleJob({
    tool: { diameter, rim },
    layout: { gap: 3, seed: 1, count: "max", hand: 0, "keep-clear": [], ...layout },
  });
  return layPieces(job, { diameter, rim, sagitta: 0 }, kinds);
}

/** Clear distance by brute force: every corner against every side, and 0 when two sides cross. */
function bruteDistance(a: PlacedPiece, b: PlacedPiece): number {
  if (a.radius !== undefined && b.radius !== undefined) {
    return Math.hypot(a.x - b.x, a.y - b.y) - a.radius - b.radius;
  }
  const coreA: Point[] = a.radius === undefined ? a.outline : [[a.x, a.y]];
  const coreB: Point[] = b.radius === undefined ? b.outline : [[b.x, b.y]];
  let least = Infinity;
  for (const [from, to] of [
    [coreA, coreB],
    [coreB, coreA],
  ] as const) {
    for (const p of from) {
      for (const [c, q] of to.entries()) least = Math.min(least, pointToSegment(p, q, to[(c + 1) % to.length]!));
    }
  }
  return least - (a.radius ?? 0) - (b.radius ?? 0);
}

function expectTrue(pieces: PlacedPiece[], diameter: number, gap: number, rim: number) {
  pieces.forEach((a, i) => {
    const far =
      a.radius === undefined
        ? Math.max(...a.outline.map(([x, y]) => Math.hypot(x, y)))
        : Math.hypot(a.x, a.y) + a.radius;
    expect(far).toBeLessThanOrEqual(diameter / 2 - rim + 1e-9);
    expect(Math.hypot(a.x, a.y)).toBeGreaterThanOrEqual(0.1);
    for (const b of pieces.slice(i + 1)) {
      const near = Math.hypot(a.x - b.x, a.y - b.y);
      // Centres this near mean crossing outlines, whatever their corners say.
      if (near < 1e-6) expect(near).toBeGreaterThan(gap);
      if (near < 200) expect(bruteDistance(a, b)).toBeGreaterThanOrEqual(gap - 1e-9);
    }
  });
}

const KINDS: [string, PieceKind[], number][] = [
  ["hexagons", [hexagonKind(20)], 205],
  ["squares", [rectangleKind(25, 25)], 125],
  ["rectangles", [rectangleKind(48, 23)], 70],
  ["rounds", [roundKind(25)], 148],
];

describe("layPieces", () => {
  it.each(KINDS)("packs %s densely and proves every distance by brute force", (_, kinds, least) => {
    const { pieces } = layIn(400, kinds);
    expect(pieces.length).toBeGreaterThanOrEqual(least);
    expectTrue(pieces, 400, 3, 3);
  });

  it("gives the same pieces for the same seed, and others for another", () => {
    const first = layIn(200, [hexagonKind(20)]);
    expect(layIn(200, [hexagonKind(20)])).toEqual(first);
    expect(layIn(200, [hexagonKind(20)], { seed: 2 }).pieces).not.toEqual(first.pieces);
  });

  it("writes whole micrometres, and corners that follow from x, y and angle", () => {
    const kinds = [hexagonKind(20), rectangleKind(30, 12, { kind: 1 })];
    for (const piece of layIn(200, kinds).pieces) {
      expect(Number(piece.x.toFixed(3))).toBe(piece.x);
      expect(Number(piece.y.toFixed(3))).toBe(piece.y);
      expect(piece.outline).toEqual(laidOutline(kinds[piece.kind]!.outline, piece.x, piece.y, piece.angle));
    }
  });

  it("lets no orientation span a tool of hexagons, whatever the seed", () => {
    const kinds = [hexagonKind(16)];
    for (const seed of [3, 6]) {
      // Worked out here by hand: the mean of the sixfold turns.
      const turns = layIn(240, kinds, { gap: 4, seed }).pieces.map(({ angle }) => (6 * angle * Math.PI) / 180);
      const mean = (of: (turn: number) => number) => turns.reduce((sum, turn) => sum + of(turn), 0) / turns.length;
      expect(Math.hypot(mean(Math.cos), mean(Math.sin))).toBeLessThan(0.3);
    }
  });

  it("numbers the pieces from the middle out", () => {
    const { pieces } = layIn(200, [hexagonKind(20)]);
    expect(pieces.map(({ id }) => id)).toEqual(pieces.map((_, i) => i + 1));
    const third = Math.floor(pieces.length / 3);
    const mean = (list: PlacedPiece[]) => list.reduce((sum, { x, y }) => sum + Math.hypot(x, y), 0) / list.length;
    expect(mean(pieces.slice(0, third))).toBeLessThan(mean(pieces.slice(-third)));
  });

  it("keeps random convex pieces apart at any size", () => {
    const shape = fc.oneof(
      fc.integer({ min: 3, max: 8 }).chain((n) =>
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: n, maxLength: n }).map((shares) => {
          // Corners on a circle at random, well apart: always convex.
          const total = shares.reduce((sum, s) => sum + s + 0.3, 0);
          let turn = 0;
          return polygonKind(
            shares.map((s): Point => {
              turn += ((s + 0.3) / total) * 2 * Math.PI;
              return [14 * Math.cos(turn), 14 * Math.sin(turn)];
            }),
          );
        }),
      ),
      fc.constant(roundKind(24)),
    );
    fc.assert(
      fc.property(
        fc.array(shape, { minLength: 1, maxLength: 3 }),
        fc.constantFrom(0.1, 1, 3),
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.integer({ min: 1, max: 1000 }),
        (shapes, scale, gap, seed) => {
          const kinds = shapes.map((kind, k) => scaledKind({ ...kind, kind: k }, scale));
          const diameter = 150 * scale;
          const { pieces } = layIn(diameter, kinds, { gap: gap * scale, seed }, 2 * scale);
          expect(pieces.length).toBeGreaterThan(5);
          expectTrue(pieces, diameter, gap * scale, 2 * scale);
        },
      ),
      { numRuns: 6 },
    );
  });
});

function scaledKind(kind: PieceKind, scale: number): PieceKind {
  const changes = kind.radius === undefined ? {} : { radius: kind.radius * scale };
  return {
    ...kind,
    ...changes,
    outline: kind.outline.map(([x, y]): Point => [x * scale, y * scale]),
    reach: kind.reach * scale,
    area: kind.area * scale * scale,
  };
}

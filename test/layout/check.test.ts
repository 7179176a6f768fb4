import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import type { Outline } from "../../packages/casting-core/src/geometry/types.js";
import { check } from "../../packages/casting-core/src/layout/check.js";
import type { PlacedPiece } from "../../packages/casting-core/src/layout/types.js";
import { layoutOf, regular } from "../support/layouts.js";

/** Added to every distance of our own, to see whether the second opinion speaks up; and how many were measured. */
const fault = vi.hoisted(() => ({ by: 0, measured: 0 }));
vi.mock("../../packages/casting-core/src/geometry/distance.js", async (original) => {
  const ours = await original<typeof import("../../packages/casting-core/src/geometry/distance.js")>();
  return {
    ...ours,
    clearDistance: (...both: Parameters<typeof ours.clearDistance>) => {
      fault.measured += 1;
      return ours.clearDistance(...both) + fault.by;
    },
    pointToOutline: (...both: Parameters<typeof ours.pointToOutline>) => ours.pointToOutline(...both) + fault.by,
  };
});
afterEach(() => {
  fault.by = 0;
});

const FIELD = { radius: 97, edge: 100, clear: [] };

/** An upright rectangle by its lower left corner. */
function box(x: number, y: number, wide: number, high: number): Outline {
  return [
    [x, y],
    [x + wide, y],
    [x + wide, y + high],
    [x, y + high],
  ];
}

type Shapes = Parameters<typeof layoutOf>[0];

function laid(...shapes: Shapes): PlacedPiece[] {
  return layoutOf(shapes, 0).pieces;
}

/** How far a shape reaches in the direction of `turn`. */
function support({ outline, x, y, radius }: Pick<PlacedPiece, "outline" | "x" | "y" | "radius">, turn: number): number {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return radius === undefined ? Math.max(...outline.map((p) => c * p[0] + s * p[1])) : c * x + s * y + radius;
}

/** Clear distance of two convex shapes as the widest strip that parts them, its direction found by narrowing down. */
function widestStrip(a: Parameters<typeof support>[0], b: Parameters<typeof support>[0]): number {
  const strip = (turn: number) => -support(a, turn) - support(b, turn + Math.PI);
  let best = 0;
  let step = Math.PI / 180;
  for (let turn = 0; turn < 2 * Math.PI; turn += step) if (strip(turn) > strip(best)) best = turn;
  for (; step > 1e-10; step *= 0.6) {
    for (const turn of [best - step, best + step]) if (strip(turn) > strip(best)) best = turn;
  }
  return Math.max(0, strip(best));
}

describe("A gap of 0", () => {
  const disc = (x: number) => ({ x, y: 0, radius: 10 });
  it.each<[string, Shapes]>([
    ["rounds", [disc(20), disc(39.999)]],
    ["a round and a square", [disc(20), box(29.999, -5, 10, 10)]],
    ["a square and a round", [box(20, -5, 10, 10), disc(39.999)]],
    ["squares, corner in side", [box(20, -5, 10, 10), box(29.999, -2, 10, 10)]],
    ["squares, across each other", [box(20, -5, 30, 10), box(30, -15, 10, 30)]],
    ["a square inside another", [box(20, -5, 30, 10), box(30, -3, 4, 4)]],
  ])("is no leave to overlap: %s", (_, shapes) => {
    expect(check(laid(...shapes), FIELD, 0)).toMatchObject({ pairs: [[0, 1]], gapMin: 0 });
  });

  it.each<[string, Shapes]>([
    ["rounds", [disc(20), disc(40)]],
    ["a round and a square", [disc(20), box(30, -5, 10, 10)]],
    ["squares", [box(20, -5, 10, 10), box(30, -2, 10, 10)]],
  ])("is leave to touch: %s", (_, shapes) => {
    expect(check(laid(...shapes), FIELD, 0)).toMatchObject({ pairs: [], gapMin: 0 });
  });
});

describe("the check of laid pieces", () => {
  it("agrees with the widest strips that part the pieces, and with their farthest points", () => {
    const place = { x: fc.integer({ min: -70_000, max: 70_000 }), y: fc.integer({ min: -70_000, max: 70_000 }) };
    const shape = fc
      .record({
        ...place,
        corners: fc.constantFrom(0, 3, 4, 6),
        reach: fc.integer({ min: 2000, max: 30_000 }),
        turn: fc.double({ min: 0, max: 6, noNaN: true }),
      })
      .map(({ x, y, corners, reach, turn }) =>
        corners === 0
          ? { x: x / 1000, y: y / 1000, radius: reach / 1000 }
          : regular(corners, reach / 1000, x / 1000, y / 1000, turn),
      );
    const circle = fc.record({ ...place, radius: fc.integer({ min: 1000, max: 20_000 }) });
    fc.assert(
      fc.property(
        fc.array(shape, { minLength: 1, maxLength: 7 }),
        fc.array(circle, { maxLength: 2 }),
        fc.double({ min: 1e-6, max: 30, noNaN: true }),
        (shapes, circles, gap) => {
          const pieces = laid(...shapes);
          const clear = circles.map(({ x, y, radius }) => ({ x: x / 1000, y: y / 1000, radius: radius / 1000 }));
          const { gapMin, rimMin, pairs, misplaced } = check(pieces, { ...FIELD, clear }, gap);
          const near: [number, number][] = [];
          const wrong: number[] = [];
          let least = Infinity;
          let far = 0;
          pieces.forEach((piece, i) => {
            pieces.slice(i + 1).forEach((other, n) => {
              const distance = widestStrip(piece, other);
              least = Math.min(least, distance);
              fc.pre(Math.abs(distance - gap) > 1e-7);
              if (distance < gap) near.push([i, i + 1 + n]);
            });
            const reach = Math.max(...Array.from({ length: 3600 }, (_, n) => support(piece, (n * Math.PI) / 1800)));
            far = Math.max(far, reach);
            const blocked = clear.some((circle) => widestStrip(piece, { ...circle, outline: [] }) === 0);
            if (reach > FIELD.radius || Math.hypot(piece.x, piece.y) < 0.1 || blocked) wrong.push(i);
          });
          if (pieces.length === 1) expect(gapMin).toBe(Infinity);
          else expect(gapMin).toBeCloseTo(least, 6);
          expect(Math.abs(FIELD.edge - far - rimMin)).toBeLessThan(1e-3);
          expect(pairs.sort((a, b) => a[0] - b[0] || a[1] - b[1])).toEqual(near);
          expect(misplaced).toEqual(wrong);
        },
      ),
      { numRuns: 150 },
    );
  });

  it("finds nothing in an empty tool", () => {
    expect(check([], FIELD, 3)).toEqual({ gapMin: Infinity, rimMin: Infinity, pairs: [], misplaced: [] });
  });

  it("takes the asked gap as kept, and one short by 2 nm as broken", () => {
    const across = laid(box(10, 10, 20, 20), box(33, 12, 20, 20));
    const discs = laid({ x: 20, y: 0, radius: 5 }, { x: 34, y: 0, radius: 6 });
    const mixed = laid(box(10, 10, 20, 20), { x: 20, y: 38, radius: 5 });
    for (const pieces of [across, discs, mixed, [...mixed].reverse()]) {
      expect(check(pieces, FIELD, 3)).toMatchObject({ gapMin: expect.closeTo(3, 12), pairs: [] });
      expect(check(pieces, FIELD, 3 + 5e-10).pairs).toEqual([]);
      expect(check(pieces, FIELD, 3 + 2e-9).pairs).toEqual([[0, 1]]);
    }
  });

  it("calls the distance of pieces that cross, hold or cover one another 0", () => {
    const cross = laid(box(10, 18, 30, 4), box(23, 5, 4, 30));
    const held = laid(box(10, 10, 30, 30), box(20, 20, 5, 5));
    const holding = laid(box(10, 10, 30, 30), { x: 25, y: 25, radius: 3 });
    const discs = laid({ x: 30, y: 0, radius: 9 }, { x: 35, y: 0, radius: 9 });
    for (const pieces of [cross, held, holding, [...holding].reverse(), discs]) {
      expect(check(pieces, FIELD, 1)).toMatchObject({ gapMin: 0, pairs: [[0, 1]] });
    }
  });

  it("finds the least distance also where all lie farther apart than the gap", () => {
    // 3, 4, 5: the boxes' corners face each other over 30 and 40 mm.
    const corners = laid(box(-60, -60, 5, 5), box(-25, -15, 5, 5));
    expect(check(corners, FIELD, 1).gapMin).toBeCloseTo(50, 9);
    const four = laid(
      box(-60, -60, 5, 5),
      box(40, 40, 5, 5),
      { x: 60, y: -60, radius: 4 },
      { x: -40, y: 50, radius: 4 },
    );
    expect(check(four, FIELD, 1).gapMin).toBeCloseTo(Math.hypot(40 + 40, 45 - 50) - 4, 9);
    for (const turned of [
      [...four].reverse(),
      four.map((piece) => mirrored(piece, -1, 1)),
      four.map((piece) => mirrored(piece, 1, -1)),
    ]) {
      expect(check(turned, FIELD, 1).gapMin).toBeCloseTo(Math.hypot(80, 5) - 4, 9);
    }
  });

  it("lets a piece reach the rim, and no farther", () => {
    const disc = (reach: number) => laid({ x: reach - 10, y: 0, radius: 10 });
    // 65² + 72² = 97².
    const square = (reach: number) => laid(box(60, reach - 30, 5, 5));
    for (const piece of [disc, square]) {
      expect(check(piece(97), FIELD, 3).misplaced).toEqual([]);
      expect(check(piece(97.001), FIELD, 3).misplaced).toEqual([0]);
    }
    expect(check(disc(97.001), FIELD, 3).rimMin).toBeCloseTo(2.999, 9);
    expect(check(square(97), FIELD, 3).rimMin).toBeCloseTo(3, 9);
  });

  it("keeps centroids a tenth of a millimetre off the axis", () => {
    expect(check(laid({ x: 0.1, y: 0, radius: 10 }), FIELD, 3).misplaced).toEqual([]);
    expect(check(laid({ x: 0.099, y: 0, radius: 10 }), FIELD, 3).misplaced).toEqual([0]);
    expect(check(laid(box(-9.901, -10, 20, 20)), FIELD, 3).misplaced).toEqual([0]);
  });

  it("lets a piece touch a circle kept clear, and come no nearer", () => {
    const clear = [
      { x: -60, y: 0, radius: 2 },
      { x: 40, y: 10, radius: 10 },
    ];
    for (const [by, misplaced] of [
      [0, []],
      [0.001, [0]],
    ] as const) {
      expect(check(laid(box(10 + by, 0, 20, 20)), { ...FIELD, clear }, 3).misplaced).toEqual(misplaced);
      expect(check(laid({ x: 40, y: -6 + by, radius: 6 }), { ...FIELD, clear }, 3).misplaced).toEqual(misplaced);
    }
    expect(check(laid(box(20, -10, 40, 40)), { ...FIELD, clear }, 3).misplaced).toEqual([0]);
  });

  it("takes a round piece as the circle it is, not by the outline that it is drawn with", () => {
    const [one, other] = laid({ x: 20, y: 0, radius: 5 }, { x: -10, y: 0, radius: 5 }).map((piece) => ({
      ...piece,
      outline: [],
    }));
    const clear = [{ x: 0, y: 15.5, radius: 20 }];
    expect(check([one!, other!], { ...FIELD, clear: [] }, 3)).toMatchObject({ gapMin: 20, rimMin: 75, misplaced: [] });
    // 20 and 15.5 mm away: 25.3 in all, 10 and 15.5: 18.4, less than both radii together.
    expect(check([one!, other!], { ...FIELD, clear }, 3).misplaced).toEqual([1]);
  });
});

describe("a check of many pieces", () => {
  /** Distances measured in checking 20 by 20 squares of 10 mm. */
  function measured(pitch: number, gap: number): number {
    const rows = Array.from({ length: 20 }, (_, i) => i * pitch);
    const pieces = laid(...rows.flatMap((x) => rows.map((y) => box(x, y, 10, 10))));
    fault.measured = 0;
    expect(check(pieces, { radius: 1e5, edge: 1e5, clear: [] }, gap).gapMin).toBeCloseTo(pitch - 10, 9);
    return fault.measured;
  }

  it("measures neighbours alone", () => {
    expect(measured(13, 3)).toBeLessThan(5 * 400);
  });

  it("measures hardly any where none are neighbours", () => {
    expect(measured(60, 3)).toBeLessThan(10);
  });
});

/** A piece seen in a mirror, its corners counter-clockwise again. */
function mirrored(piece: PlacedPiece, right: number, up: number): PlacedPiece {
  const outline = piece.outline.map(([x, y]): [number, number] => [right * x, up * y]).reverse();
  return { ...piece, x: right * piece.x, y: up * piece.y, outline };
}

describe("a second opinion", () => {
  const square = box(10, 10, 20, 20);
  const disc = { x: 20, y: 38, radius: 5 };
  // Each 3 mm away from the square, nearest by a corner of its own or by one of the square's, at a side of either kind.
  const corner = (x: number, y: number, turn: number) => regular(4, 8, x, y, turn);
  it.each<[string, Shapes]>([
    ["side by side", [square, box(33, 12, 20, 20)]],
    ["a corner before the right side", [square, corner(41, 20, 0)]],
    ["a corner before the left side", [square, corner(-1, 20, 0)]],
    ["a corner before the upper side", [square, corner(20, 41, 0)]],
    ["a corner before the lower side", [square, corner(20, -1, 0)]],
    ["a disc above", [square, disc]],
    ["a disc first", [disc, square]],
    ["a disc on the left", [square, { x: 2, y: 20, radius: 5 }]],
  ])("catches distances of ours that are 4 µm too long: %s", (_, shapes) => {
    for (const pieces of [laid(...shapes), laid(...shapes).reverse()]) {
      fault.by = 0;
      expect(check(pieces, FIELD, 3)).toMatchObject({ gapMin: expect.closeTo(3, 9), pairs: [] });
      fault.by = 0.004;
      expect(check(pieces, FIELD, 3.002)).toMatchObject({ gapMin: expect.closeTo(3, 9), pairs: [[0, 1]] });
    }
  });
});

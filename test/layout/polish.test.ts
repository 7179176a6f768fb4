import { describe, expect, it } from "vitest";
import { check } from "../../packages/casting-core/src/layout/check.js";
import type { Field } from "../../packages/casting-core/src/layout/field.js";
import {
  add,
  type Bed,
  countOf,
  emptyBed,
  piecesOf,
  snapshot,
} from "../../packages/casting-core/src/layout/laying/bed.js";
import { polish, unevenness } from "../../packages/casting-core/src/layout/laying/polish.js";
import { shapesOf } from "../../packages/casting-core/src/layout/laying/shapes.js";
import { MARGIN, snap } from "../../packages/casting-core/src/layout/laying/snap.js";
import {
  FIRST_RING,
  LAST_RING,
  RINGS,
  radialVariation,
  ringCoverage,
} from "../../packages/casting-core/src/layout/quality/rings.js";
import { targetOf } from "../../packages/casting-core/src/layout/quality/target.js";
import type { PieceKind } from "../../packages/casting-core/src/pieces/types.js";
import { random } from "../../packages/casting-core/src/random.js";
import { floats, integers, partsOf } from "../support/bed.js";
import { hexagonKind, rectangleKind, roundKind } from "../support/kinds.js";

const FIELD: Field = { radius: 97, edge: 100, clear: [] };

/** Pieces of the kinds in turn at `places`, each turned a little more than the one before. */
function bedWith(kinds: PieceKind[], places: readonly (readonly [number, number])[], field = FIELD): Bed {
  const bed = emptyBed(shapesOf(kinds), field, places.length);
  places.forEach(([x, y], n) => {
    add(bed, n % kinds.length, x, y, Math.cos(0.7 * n), Math.sin(0.7 * n));
  });
  return bed;
}

/** A loose bed: a square grid with `pitch` mm between the centroids, every place off by up to `off` mm. */
function looseBed(kinds: PieceKind[], pitch: number, off: number, field = FIELD): Bed {
  const source = random(1);
  const places: [number, number][] = [];
  for (let x = -80.5; x <= 81; x += pitch) {
    for (let y = -80.5; y <= 81; y += pitch) {
      const [px, py] = [x + off * (2 * source.next() - 1), y + off * (2 * source.next() - 1)];
      const kept = field.clear.some((circle) => Math.hypot(px - circle.x, py - circle.y) < circle.radius + pitch / 2);
      if (Math.hypot(px, py) < field.radius - pitch / 2 && !kept) places.push([px, py]);
    }
  }
  return bedWith(kinds, places, field);
}

const PLACES = [
  [31.2, 12.7],
  [-40.1, 30.3],
  [20.4, -50.6],
  [4.1, 1.3],
  [-84.3, 8.2],
] as const;

describe.each([
  ["hexagons", hexagonKind(20)],
  ["oblong rectangles", rectangleKind(28, 13)],
  ["rounds", roundKind(25)],
])("the footprint of %s", (_, kind) => {
  const bed = bedWith([kind], PLACES);
  /** The footprint of piece `i`, a copy. */
  const printOf = (i: number) => {
    partsOf(bed).footprintOf(i);
    const rings = (name: "covers" | "alongX" | "alongY" | "turning") => floats(bed, name, RINGS + 1).slice();
    return {
      first: partsOf(bed).firstRing.value,
      last: partsOf(bed).lastRing.value,
      area: rings("covers"),
      slopes: [rings("alongX"), rings("alongY"), rings("turning")],
    };
  };

  it("is what the exact ring coverage says", () => {
    const width = FIELD.edge / RINGS;
    snap(bed).forEach((piece, i) => {
      const shares = ringCoverage([piece], FIELD.edge, RINGS);
      const print = printOf(i);
      for (let ring = 0; ring < RINGS; ring++) {
        const area = ring < print.first || ring > print.last ? 0 : print.area[ring]!;
        // Corners are snapped to a micrometre; the quadrature is good to a hundredth of a square millimetre.
        expect(area).toBeCloseTo(shares[ring]! * Math.PI * width * width * (2 * ring + 1), 1);
      }
    });
  });

  it("grows as its slopes say", () => {
    const step = 1e-4;
    for (let i = 0; i < countOf(bed); i++) {
      const print = printOf(i);
      print.slopes.forEach((slope, axis) => {
        const move = [0, 0, 0].map((_, n) => (n === axis ? step : 0)) as [number, number, number];
        partsOf(bed).shift(i, ...move);
        const moved = printOf(i);
        partsOf(bed).shift(i, -move[0], -move[1], -move[2]);
        for (let ring = Math.max(print.first, moved.first); ring <= Math.min(print.last, moved.last); ring++)
          expect(Math.abs((moved.area[ring]! - print.area[ring]!) / step - slope[ring]!)).toBeLessThan(0.2);
      });
    }
  });
});

/** Has the limits of a bed found, its neighbours listed to `near` with a skin. */
function findLimitsOf(bed: Bed, gap: number, near: number, skin: number, reach: number): void {
  const parts = partsOf(bed);
  parts.listNeighbours(near, skin);
  parts.openLimits();
  parts.findLimits(gap, reach);
}

/** The limits as the bed holds them; `active` are the places of those within reach. */
function limitsIn(bed: Bed) {
  const active = integers(bed, "active", partsOf(bed).limits.value).slice();
  const places = Math.max(-1, ...active) + 1;
  const [first, second] = [integers(bed, "first", places), integers(bed, "second", places)];
  const [limitX, limitY] = [floats(bed, "limitX", places), floats(bed, "limitY", places)];
  const [leverFirst, leverSecond] = [floats(bed, "leverFirst", places), floats(bed, "leverSecond", places)];
  const [room, lean] = [floats(bed, "room", places), floats(bed, "lean", places)];
  return { active, first, second, limitX, limitY, leverFirst, leverSecond, room, lean };
}

describe("limits", () => {
  const limitsOf = (bed: Bed, gap: number, reach: number) => {
    findLimitsOf(bed, gap, gap + reach, 1, reach);
    const { first, second, limitX, limitY, leverFirst, leverSecond, room, active } = limitsIn(bed);
    return Array.from(active, (at) => ({
      between: [first[at]!, second[at]!],
      axis: [limitX[at]!, limitY[at]!],
      room: room[at]!,
      levers: [leverFirst[at]!, leverSecond[at]!],
    }));
  };
  const straight = (places: [number, number][], field = FIELD) => {
    const bed = emptyBed(shapesOf([rectangleKind(20, 20)]), field, places.length);
    for (const [x, y] of places) add(bed, 0, x, y, 1, 0);
    return bed;
  };

  it("hold squares side by side at both corners", () => {
    const found = limitsOf(
      straight([
        [5, 5],
        [28.2, 5],
      ]),
      3,
      1,
    );
    expect(found).toHaveLength(2);
    for (const { between, axis, room } of found) {
      expect(between).toEqual([0, 1]);
      expect(axis).toEqual([1, 0]);
      expect(room).toBeCloseTo(0.2, 9);
    }
    expect(found.map(({ levers }) => levers[1]!).sort((a, b) => a - b)).toEqual([-10, 10]);
  });

  it("hold a piece at the rim by its corners, outward", () => {
    const found = limitsOf(straight([[86.5, 0]]), 3, 0.5);
    expect(found).toHaveLength(2);
    for (const { between, axis, room } of found) {
      expect(between).toEqual([0, -1]);
      expect(axis[0]).toBeGreaterThan(0.9);
      expect(room).toBeCloseTo(97 - Math.hypot(96.5, 10), 9);
    }
  });

  it("hold a piece off a kept circle, toward its middle", () => {
    const found = limitsOf(straight([[40.3, 0]], { ...FIELD, clear: [{ x: 0, y: 0, radius: 30 }] }), 3, 1);
    expect(found).toHaveLength(1);
    expect(found[0]!.axis[0]).toBeCloseTo(-1, 12);
    expect(found[0]!.room).toBeCloseTo(0.3, 9);
  });

  it("are none where all is out of reach", () => {
    expect(limitsOf(straight([[30, 30]]), 3, 1)).toEqual([]);
  });
});

describe("the moves", () => {
  const bed = looseBed([hexagonKind(14)], 18.5, 1);
  const count = countOf(bed);
  findLimitsOf(bed, 3, 3, 4, 3);
  const parts = partsOf(bed);
  parts.openSlopes();
  parts.findSlopes();
  parts.openSolve();
  for (let n = 0; n < 40; n++) {
    floats(bed, "moves", 3 * count).fill(0);
    parts.solve();
  }
  const moves = floats(bed, "moves", 3 * count);

  it("lessen the rings' excess", () => {
    const start = integers(bed, "ringStart", LAST_RING + 2);
    const entries = start[LAST_RING + 1]!;
    const piece = integers(bed, "piece", entries);
    const [x, y, turn] = [
      floats(bed, "slopeX", entries),
      floats(bed, "slopeY", entries),
      floats(bed, "slopeTurn", entries),
    ];
    let [before, after] = [0, 0];
    for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
      let excess = floats(bed, "excess", RINGS)[ring]!;
      before += excess * excess;
      for (let p = start[ring]!; p < start[ring + 1]!; p++) {
        const at = 3 * piece[p]!;
        excess += x[p]! * moves[at]! + y[p]! * moves[at + 1]! + turn[p]! * moves[at + 2]!;
      }
      after += excess * excess;
    }
    expect(after).toBeLessThan(before / 4);
  });

  it("pass no limit, and lean only on those without room left (the conditions of Karush, Kuhn and Tucker)", () => {
    const limits = limitsIn(bed);
    expect(limits.active.length).toBeGreaterThan(50);
    let leant = 0;
    for (const at of limits.active) {
      const [a, b] = [3 * limits.first[at]!, 3 * limits.second[at]!];
      let room = limits.room[at]! - limits.limitX[at]! * moves[a]! - limits.limitY[at]! * moves[a + 1]!;
      room -= limits.leverFirst[at]! * moves[a + 2]!;
      if (b >= 0) {
        room += limits.limitX[at]! * moves[b]! + limits.limitY[at]! * moves[b + 1]!;
        room += limits.leverSecond[at]! * moves[b + 2]!;
      }
      expect(room).toBeGreaterThan(-1e-3);
      expect(limits.lean[at]!).toBeGreaterThanOrEqual(0);
      if (limits.lean[at]! > 1e-3) expect(room).toBeLessThan(1e-3);
      if (limits.lean[at]! > 0) leant += 1;
    }
    expect(leant).toBeGreaterThan(5);
  });
});

it("the moves are those wished for where nothing stands against them", () => {
  const bed = bedWith([hexagonKind(14)], [[30, 30]]);
  const parts = partsOf(bed);
  findLimitsOf(bed, 3, 3, 4, 1);
  parts.openSlopes();
  parts.openSolve();
  floats(bed, "moves", 3).set([0.1, -0.2, 0.05]);
  parts.solve();
  const moves = floats(bed, "moves", 3);
  expect([...moves]).toEqual([0.1, -0.2, 0.05]);
});

describe.each([
  ["hexagons", [hexagonKind(14)], FIELD],
  ["rounds", [roundKind(14)], FIELD],
  ["a mix", [rectangleKind(13, 13), roundKind(9)], FIELD],
  ["hexagons round a kept circle", [hexagonKind(14)], { ...FIELD, clear: [{ x: 20, y: -15, radius: 16 }] }],
])("a loose bed of %s, polished", (_, kinds, field) => {
  const bed = looseBed(kinds, 21, 1.5, field);
  const [count, before] = [countOf(bed), unevenness(bed)];
  const reached = polish(bed, 3 + MARGIN, 1);

  it("is much evener with the same pieces", () => {
    expect(countOf(bed)).toBe(count);
    expect(unevenness(bed)).toBe(reached);
    expect(reached).toBeLessThan(0.6 * before);
    const coverage = ringCoverage(snap(bed), field.edge, RINGS);
    expect(radialVariation(coverage, bed.target)).toBeCloseTo(reached, 2);
  });

  it("keeps gap, rim and kept circles", () => {
    expect(check(snap(bed), field, 3)).toMatchObject({ pairs: [], misplaced: [] });
  });
});

it("a bed that does not come out evener stays as it is", () => {
  // Nearer than the gap, and held there by the rim on the other side: nothing settles.
  const tight = bedWith(
    [rectangleKind(20, 20)],
    [
      [0.2, 0],
      [10, 0],
    ],
    { radius: 16, edge: 17, clear: [] },
  );
  const before = snapshot(tight);
  polish(tight, 3, 1);
  expect(piecesOf(tight)).toEqual(before);
});

describe("what the rings are meant to be covered", () => {
  it("is the same for all without kept circles", () => {
    expect(new Set(targetOf(FIELD, 10))).toEqual(new Set([1]));
  });

  it("is nothing inside a kept circle about the axis, and all beyond it", () => {
    const target = targetOf({ ...FIELD, clear: [{ x: 0, y: 0, radius: 50 }] }, 10);
    expect(target[29]).toBe(0);
    expect(target[30]).toBe(0); // the strip that pieces leave bare
    expect(target[32]).toBe(1);
  });

  it("is less beside a circle off the axis, by what the rest cannot make up for", () => {
    const target = targetOf({ ...FIELD, clear: [{ x: 50, y: 0, radius: 20 }] }, 8);
    // The circle with its bare strip takes 2 asin(11/50) of the ring at 50 mm, and the rest may lie a tenth denser.
    expect(target[29]).toBeCloseTo(1.1 * (1 - (2 * Math.asin(11 / 49.2)) / Math.PI), 1);
    expect(target[10]).toBe(1);
  });
});

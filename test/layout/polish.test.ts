import { describe, expect, it } from "vitest";
import { add, type Bed, emptyBed, shift } from "../../packages/casting-core/src/layout/bed.js";
import { check } from "../../packages/casting-core/src/layout/check.js";
import { unevenness } from "../../packages/casting-core/src/layout/even.js";
import type { Field } from "../../packages/casting-core/src/layout/field.js";
import { footprintOf, newFootprint } from "../../packages/casting-core/src/layout/footprint.js";
import { findLimits, newLimits } from "../../packages/casting-core/src/layout/limits.js";
import { listNeighbours, newNeighbours } from "../../packages/casting-core/src/layout/neighbours.js";
import { polish } from "../../packages/casting-core/src/layout/polish.js";
import {
  FIRST_RING,
  LAST_RING,
  RINGS,
  radialVariation,
  ringCoverage,
} from "../../packages/casting-core/src/layout/rings.js";
import { shapesOf } from "../../packages/casting-core/src/layout/shapes.js";
import { findSlopes, newSlopes } from "../../packages/casting-core/src/layout/slopes.js";
import { MARGIN, snap } from "../../packages/casting-core/src/layout/snap.js";
import { solve } from "../../packages/casting-core/src/layout/solve.js";
import { targetOf } from "../../packages/casting-core/src/layout/target.js";
import type { PieceKind } from "../../packages/casting-core/src/pieces/types.js";
import { random } from "../../packages/casting-core/src/random.js";
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
  const print = newFootprint();

  it("is what the exact ring coverage says", () => {
    const width = FIELD.edge / RINGS;
    snap(bed).forEach((piece, i) => {
      const shares = ringCoverage([piece], FIELD.edge, RINGS);
      footprintOf(bed, i, print);
      for (let ring = 0; ring < RINGS; ring++) {
        const area = ring < print.first || ring > print.last ? 0 : print.area[ring]!;
        // Corners are snapped to a micrometre; the quadrature is good to a hundredth of a square millimetre.
        expect(area).toBeCloseTo(shares[ring]! * Math.PI * width * width * (2 * ring + 1), 1);
      }
    });
  });

  it("grows as its slopes say", () => {
    const step = 1e-4;
    const moved = newFootprint();
    for (let i = 0; i < bed.count; i++) {
      footprintOf(bed, i, print);
      const slopes = [print.alongX, print.alongY, print.turning];
      slopes.forEach((slope, axis) => {
        const move = [0, 0, 0].map((_, n) => (n === axis ? step : 0)) as [number, number, number];
        shift(bed, i, ...move);
        footprintOf(bed, i, moved);
        shift(bed, i, -move[0], -move[1], -move[2]);
        for (let ring = Math.max(print.first, moved.first); ring <= Math.min(print.last, moved.last); ring++)
          expect(Math.abs((moved.area[ring]! - print.area[ring]!) / step - slope[ring]!)).toBeLessThan(0.2);
      });
    }
  });
});

describe("limits", () => {
  const limitsOf = (bed: Bed, gap: number, reach: number) => {
    const list = newNeighbours(bed.count);
    listNeighbours(bed, list, gap + reach, 1);
    const limits = newLimits(bed, list);
    findLimits(bed, list, gap, reach, limits);
    return Array.from(limits.active.subarray(0, limits.count), (at) => ({
      between: [limits.first[at]!, limits.second[at]!],
      axis: [limits.axisX[at]!, limits.axisY[at]!],
      room: limits.room[at]!,
      levers: [limits.leverFirst[at]!, limits.leverSecond[at]!],
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
  const list = newNeighbours(bed.count);
  listNeighbours(bed, list, 3, 4);
  const limits = newLimits(bed, list);
  findLimits(bed, list, 3, 3, limits);
  const slopes = newSlopes(bed.count);
  findSlopes(bed, slopes);
  const moves = new Float64Array(3 * bed.count);
  for (let n = 0; n < 40; n++) {
    moves.fill(0);
    solve(bed, limits, slopes, moves);
  }

  it("lessen the rings' excess", () => {
    let [before, after] = [0, 0];
    for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
      let excess = slopes.excess[ring]!;
      before += excess * excess;
      for (let p = slopes.start[ring]!; p < slopes.start[ring + 1]!; p++) {
        const at = 3 * slopes.piece[p]!;
        excess +=
          slopes.alongX[p]! * moves[at]! + slopes.alongY[p]! * moves[at + 1]! + slopes.turning[p]! * moves[at + 2]!;
      }
      after += excess * excess;
    }
    expect(after).toBeLessThan(before / 4);
  });

  it("pass no limit, and lean only on those without room left (the conditions of Karush, Kuhn and Tucker)", () => {
    expect(limits.count).toBeGreaterThan(50);
    let leant = 0;
    for (const at of limits.active.subarray(0, limits.count)) {
      const [a, b] = [3 * limits.first[at]!, 3 * limits.second[at]!];
      let room = limits.room[at]! - limits.axisX[at]! * moves[a]! - limits.axisY[at]! * moves[a + 1]!;
      room -= limits.leverFirst[at]! * moves[a + 2]!;
      if (b >= 0) {
        room += limits.axisX[at]! * moves[b]! + limits.axisY[at]! * moves[b + 1]!;
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
  const list = newNeighbours(1);
  listNeighbours(bed, list, 3, 4);
  const limits = newLimits(bed, list);
  findLimits(bed, list, 3, 1, limits);
  const slopes = newSlopes(1);
  const moves = Float64Array.of(0.1, -0.2, 0.05);
  solve(bed, limits, slopes, moves);
  expect([...moves]).toEqual([0.1, -0.2, 0.05]);
});

describe.each([
  ["hexagons", [hexagonKind(14)], FIELD],
  ["rounds", [roundKind(14)], FIELD],
  ["a mix", [rectangleKind(13, 13), roundKind(9)], FIELD],
  ["hexagons round a kept circle", [hexagonKind(14)], { ...FIELD, clear: [{ x: 20, y: -15, radius: 16 }] }],
])("a loose bed of %s, polished", (_, kinds, field) => {
  const bed = looseBed(kinds, 21, 1.5, field);
  const [count, before] = [bed.count, unevenness(bed)];
  const reached = polish(bed, newNeighbours(bed.count), 3 + MARGIN, 1);

  it("is much evener with the same pieces", () => {
    expect(bed.count).toBe(count);
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
  const [x, y] = [tight.x.slice(), tight.y.slice()];
  polish(tight, newNeighbours(2), 3, 1);
  expect([tight.x, tight.y]).toEqual([x, y]);
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

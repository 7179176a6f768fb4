// The compiled bed: how far pieces are apart, and what a sweep does to them.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clearDistance } from "../../packages/casting-core/src/geometry/distance.js";
import type { Field } from "../../packages/casting-core/src/layout/field.js";
import { add, type Bed, emptyBed, piecesOf, remove } from "../../packages/casting-core/src/layout/laying/bed.js";
import { shapesOf } from "../../packages/casting-core/src/layout/laying/shapes.js";
import { laidOutline } from "../../packages/casting-core/src/layout/laying/snap.js";
import { random } from "../../packages/casting-core/src/random.js";
import { degrees } from "../../packages/casting-core/src/trig.js";
import { partsOf } from "../support/bed.js";
import { hexagonKind, rectangleKind, roundKind } from "../support/kinds.js";

const KINDS = [hexagonKind(20), rectangleKind(30, 12, { kind: 1 }), rectangleKind(14, 14, { kind: 2 })];
const FIELD: Field = { radius: 97, edge: 100, clear: [] };

type Place = { kind: number; x: number; y: number; turn: number };

function bedWith(places: readonly Place[], kinds = KINDS, field = FIELD): Bed {
  const bed = emptyBed(shapesOf(kinds), field, places.length);
  for (const { kind, x, y, turn } of places) add(bed, kind, x, y, Math.cos(turn), Math.sin(turn));
  return bed;
}

const outlineOf = ({ kind, x, y, turn }: Place) => laidOutline(KINDS[kind]!.outline, x, y, degrees(turn));

const place = (x: number): fc.Arbitrary<Place> =>
  fc.record({
    kind: fc.integer({ min: 0, max: 2 }),
    x: fc.constant(x),
    y: fc.double({ min: -20, max: 20, noNaN: true }),
    turn: fc.double({ min: -3, max: 3, noNaN: true }),
  });

describe("how far two pieces are apart", () => {
  /** What the bed finds, and the clear distance of the outlines, which are rounded to micrometres. */
  const both = (first: Place, second: Place) => [
    partsOf(bedWith([first, second])).separate(0, 1, 1e9, -1, 0),
    clearDistance(outlineOf(first), outlineOf(second)),
  ];

  it("is never said to be more than it is", () => {
    fc.assert(
      fc.property(place(0), place(0), fc.double({ min: 5, max: 40, noNaN: true }), (first, second, x) => {
        const [found, clear] = both(first, { ...second, x });
        expect(found).toBeLessThan(clear! + 0.002);
      }),
      { numRuns: 500 },
    );
  });

  it("is exact where they come near each other, by edges and by corners", () => {
    const source = random(1);
    let near = 0;
    for (let n = 0; n < 2000; n++) {
      const [kind, turn, x, y] = [n % 3, 6 * source.next(), 10 + 20 * source.next(), 30 * source.next() - 15];
      const [found, clear] = both({ kind, x: 0, y: 0, turn: 6 * source.next() }, { kind, x, y, turn });
      if (found! < 1 || found! > 5) continue;
      near++;
      expect(Math.abs(found! - clear!)).toBeLessThan(0.002);
    }
    expect(near).toBeGreaterThan(300);
  });
});

describe("a sweep", () => {
  const still = (kind: number, x: number, y: number): Place => ({ kind, x, y, turn: 0 });

  // Pushes are over-relaxed: what is parted once may stand a little farther apart.
  const apart = (distance: number, least: number) => {
    expect(distance).toBeGreaterThan(least - 1e-3);
    expect(distance).toBeLessThan(1.2 * least);
  };

  it("parts two pieces to the gap, the same for both", () => {
    const bed = bedWith([still(2, -8, 1), still(2, 8, 1)]);
    for (let n = 0; n < 60; n++) bed.engine.sweep(5, 2);
    const { x } = piecesOf(bed);
    apart(x[1]! - x[0]!, 19);
    expect(x[0]! + x[1]!).toBeCloseTo(0, 9);
    expect(bed.engine.sweep(5, 2)).toBeLessThan(1e-3);
  });

  it("keeps a piece off the axis, and away from a kept circle", () => {
    const bed = bedWith([still(0, 0, 0)]);
    bed.engine.sweep(3, 2);
    expect(Math.hypot(piecesOf(bed).x[0]!, piecesOf(bed).y[0]!)).toBeGreaterThan(0.1);
    const clear = [{ x: 40, y: 0, radius: 10 }];
    const round = bedWith([still(0, 28, 3)], [roundKind(20)], { ...FIELD, clear });
    for (let n = 0; n < 60; n++) round.engine.sweep(3, 2);
    apart(Math.hypot(piecesOf(round).x[0]! - 40, piecesOf(round).y[0]!), 20);
  });

  it("meets a piece that has come near since neighbours were listed", () => {
    const bed = bedWith([still(2, -60, 0), still(2, -34, 0)]);
    expect(bed.engine.sweep(3, 2)).toBe(0);
    partsOf(bed).shift(1, -10, 0, 0);
    expect(bed.engine.sweep(3, 2)).toBeCloseTo(1, 9);
  });

  it("passes over what rests, until the gap is wider or the field narrower", () => {
    const bed = bedWith([still(2, -60, 0), still(2, -43, 0), still(2, 0, 85)]);
    for (let n = 0; n < 4; n++) expect(bed.engine.sweep(3, 2)).toBe(0);
    expect(bed.engine.sweep(4, 2)).toBeCloseTo(1, 9);
    for (let n = 0; n < 60; n++) bed.engine.sweep(4, 2);
    bed.engine.setField(90, 100);
    expect(bed.engine.sweep(4, 2)).toBeGreaterThan(1);
  });

  it("comes out the same for many that come to rest as where all are looked at each time", () => {
    const places = Array.from({ length: 60 }, (_, n) => still(n % 3, ((n * 37) % 101) - 50, ((n * 53) % 103) - 51));
    const [passing, looking] = [bedWith(places), bedWith(places)];
    for (let n = 0; n < 300; n++) {
      // Set down where it lies, each piece counts as moved.
      const { count, kind, x, y, cosine, sine } = piecesOf(looking);
      for (let i = 0; i < count; i++) looking.engine.put(i, kind[i]!, x[i]!, y[i]!, cosine[i]!, sine[i]!);
      expect(passing.engine.sweep(1, 2)).toBe(looking.engine.sweep(1, 2));
    }
    expect([...piecesOf(passing).x]).toEqual([...piecesOf(looking).x]);
  });

  it("meets those that are left when one is taken away", () => {
    const bed = bedWith([still(2, -60, 0), still(2, 0, 60), still(2, 50, 0), still(2, 62, 0)]);
    expect(bed.engine.sweep(3, 2)).toBeCloseTo(5, 9);
    remove(bed, 1);
    expect(piecesOf(bed).count).toBe(3);
    for (let n = 0; n < 60; n++) bed.engine.sweep(3, 2);
    const { x } = piecesOf(bed);
    apart(Math.abs(x[1]! - x[2]!), 17);
  });
});

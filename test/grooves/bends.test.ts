// The area of channels that bend tightly: where a bend's inner side runs past a whole part, more than neighbours cover it.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { channelArea } from "../../packages/casting-core/src/grooves/area/area.js";

const RADIUS = 1000;
const area = (...lines: Point[][]) => channelArea(lines, 3, RADIUS);
/** The same line as so many lines as it has parts: each is looked at with all that is near. */
const apart = (line: readonly Point[]) => line.slice(1).map((point, i): Point[] => [line[i]!, point]);

/** From the origin on: parts of these lengths, turned from one to the next by these angles, degrees. */
function drawn(start: number, lengths: readonly number[], turns: readonly number[]): Point[] {
  let [x, y, direction] = [0, 0, start];
  return [
    [0, 0],
    ...lengths.map((length, i): Point => {
      direction += ((turns[i - 1] ?? 0) * Math.PI) / 180;
      x += length * Math.cos(direction);
      y += length * Math.sin(direction);
      return [x, y];
    }),
  ];
}

const ARM = [4, 4, 4, 4];
const straight = ARM.slice(1).map(() => 0);

const bends = fc
  .record({
    start: fc.integer({ min: 0, max: 359 }).map((degrees) => (degrees * Math.PI) / 180),
    turns: fc.array(fc.constantFrom(-120, -90, -60, -30, 30, 60, 90, 120), { minLength: 2, maxLength: 6 }),
    lengths: fc.array(fc.constantFrom(0.05, 0.3, 0.8, 1.3, 1.8), { minLength: 5, maxLength: 5 }),
  })
  .filter(({ turns }) => {
    const directions = turns.map((_, i) => turns.slice(0, i + 1).reduce((sum, turn) => sum + turn, 0));
    return Math.max(0, ...directions) - Math.min(0, ...directions) <= 120;
  });

describe("the area of a line that bends tightly", () => {
  it("is the same in one line as in as many as it has parts", () => {
    fc.assert(
      fc.property(bends, ({ start, turns, lengths }) => {
        const line = drawn(
          start,
          [...ARM, ...lengths.slice(0, turns.length - 1), ...ARM],
          [...straight, ...turns, ...straight],
        );
        expect(area(line)).toBeCloseTo(area(...apart(line)), 7);
      }),
      { numRuns: 500 },
    );
  });

  it("is so where it bends across the tool's edge, or beside another line", () => {
    fc.assert(
      fc.property(bends, fc.double({ min: 3, max: 20, noNaN: true }), ({ start, turns, lengths }, radius) => {
        const line = drawn(start, [8, ...lengths.slice(0, turns.length - 1), 8], turns);
        const beside = line.map(([x, y]): Point => [x + 1.1, y - 0.7]);
        for (const lines of [[line], [line, beside]]) {
          const parts = lines.flatMap(apart);
          expect(channelArea(lines, 3, radius)).toBeCloseTo(channelArea(parts, 3, radius), 6);
        }
      }),
      { numRuns: 500 },
    );
  });

  it.each([90, 120])("is so of a zigzag of bends by %i° all along, whichever way it runs", (turn) => {
    const most = 1.5 * Math.tan((turn * Math.PI) / 360);
    for (const length of [0.4 * most, 0.95 * most]) {
      const lengths = Array.from({ length: 40 }, () => length);
      const turns = lengths.map((_, i) => (i % 2 === 0 ? turn : -turn));
      for (let start = 0; start < 360; start += 15) {
        const line = drawn((start * Math.PI) / 180, lengths, turns);
        expect(area(line)).toBeCloseTo(area(...apart(line)), 7);
      }
    }
  });

  it("does not depend on which of the lines it is", () => {
    const ring = drawn(
      0,
      Array.from({ length: 12 }, () => 1),
      Array.from({ length: 11 }, () => 30),
    );
    const tight = drawn(1, [...ARM, 0.3, ...ARM], [...straight, 60, 60, ...straight]).map(
      ([x, y]): Point => [x + 100, y],
    );
    ring[12] = ring[0]!;
    const wanted = area(...apart(ring)) + area(...apart(tight));
    for (const lines of [
      [ring, tight],
      [tight, ring],
    ])
      expect(area(...lines)).toBeCloseTo(wanted, 7);
  });
});

describe("the area of a frame and its diagonals", () => {
  it("is theirs together without what lies twice", () => {
    const [a, b, c, d]: Point[] = [
      [0, 0],
      [20, 0],
      [20, 20],
      [0, 20],
    ];
    const frame = area([a!, b!], [b!, c!], [c!, d!], [d!, a!]);
    // Outside with round corners, less the square left open inside.
    expect(frame).toBeCloseTo(400 + 4 * 30 + Math.PI * 2.25 - 17 * 17, 7);
    const crossed = area([a!, b!], [b!, c!], [c!, d!], [d!, a!], [a!, c!], [b!, d!]);
    // Four triangles stay open, each with a side of the square left open; 1.5 mm off each diagonal.
    const open = 17 - 2 * 1.5 * Math.SQRT2;
    expect(crossed).toBeCloseTo(400 + 4 * 30 + Math.PI * 2.25 - open * open, 7);
  });
});

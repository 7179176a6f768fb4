// Which parts of circles and lines lie within discs and bars: what the area of channels is made up of.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { acos, atan2, cos, sin } from "../../packages/casting-core/src/trig.js";
import {
  arcArea,
  arcInBar,
  arcInDisc,
  type Bar,
  free,
  type Interval,
  lineInBar,
  lineInDisc,
} from "../support/channels.js";

const TAU = 2 * Math.PI;
const whole = (least: number, most: number) => fc.integer({ min: least, max: most });
/** A bar from a place in whole millimetres, in any direction, level and upright ones often. */
const bars = fc
  .tuple(
    whole(-9, 9),
    whole(-9, 9),
    fc.oneof(
      whole(0, 7).map((n) => (n * Math.PI) / 4),
      whole(0, 628).map((n) => n / 100),
    ),
    whole(1, 9),
  )
  .map(([x, y, turn, length]): Bar => ({ x, y, ux: Math.cos(turn), uy: Math.sin(turn), length }));

const holds = (intervals: readonly Interval[], at: number) => intervals.some(([from, to]) => from <= at && at <= to);
/** Whether what is `off` from a disc's or bar's outline is held though outside, or the other way round. */
const wrong = (intervals: readonly Interval[], at: number, off: number) =>
  Math.abs(off) > 1e-6 && holds(intervals, at) !== off < 0;
/** Signed distance from what a bar covers beside it: negative inside, to its nearest side or end. */
const offBar = (x: number, y: number, bar: Bar, half: number) => {
  const along = (x - bar.x) * bar.ux + (y - bar.y) * bar.uy;
  const off = (y - bar.y) * bar.ux - (x - bar.x) * bar.uy;
  return Math.max(-along, along - bar.length, Math.abs(off) - half);
};
const around = (x: number, y: number, r: number) =>
  Array.from({ length: 100 }, (_, n) => {
    const angle = (TAU * (n + 0.5)) / 100;
    return { angle, x: x + r * Math.cos(angle), y: y + r * Math.sin(angle) };
  });

describe("what is left free", () => {
  it("is in order, none of it empty, and with what is covered makes up the whole", () => {
    const intervals = fc.array(
      fc.tuple(whole(-3, 12), whole(1, 6)).map(([from, length]): Interval => [from, from + length]),
    );
    fc.assert(
      fc.property(intervals, (covered) => {
        const open = free(covered, 0, 10);
        let end = -1;
        for (const [from, to] of open) {
          expect(from).toBeGreaterThan(end);
          expect(to).toBeGreaterThan(from);
          end = to;
        }
        for (let at = 0.5; at < 10; at++) expect(holds(open, at)).toBe(!holds(covered, at));
      }),
    );
    expect(free([], 2, 5)).toEqual([[2, 5]]);
    expect(
      free(
        [
          [3, 10],
          [-1, 2],
        ],
        0,
        10,
      ),
    ).toEqual([[2, 3]]);
  });

  it("stands behind what was in the row before, however many there are", () => {
    const before: Interval[] = [
      [3, 4],
      [0, 9],
    ];
    const every = Array.from({ length: 1000 }, (_, n): Interval => [(7 * n) % 1000, ((7 * n) % 1000) + 0.5]);
    const open = free(every, 0, 1000, before);
    expect(open.slice(0, 2)).toEqual(before);
    expect(open.slice(2)).toEqual(every.map((_, n) => [n + 0.5, n + 1]));
    expect(free([[0, 1000]], 5, 10, before)).toEqual(before);
  });
});

describe("of a circle", () => {
  const inDisc = (x: number, y: number, r: number, radius: number) => arcInDisc(1, -2, r, 1 + x, -2 + y, radius);

  it("within a disc is all of it, also where it touches from inside, or nothing, also where it touches from outside", () => {
    for (const [x, y, radius] of [
      [0, 0, 4],
      [0, 0, 9],
      [3, 4, 9],
      [0, -3, 7],
    ] as const) {
      expect(inDisc(x, y, 4, radius)).toEqual([[0, TAU]]);
    }
    for (const [x, y, radius] of [
      [9, 0, 2],
      [3, 4, 1],
      [0, -9, 5],
      [0, 0, 3],
      [1, 0, 3],
      [0, 0.5, 3],
    ] as const) {
      expect(inDisc(x, y, 4, radius)).toEqual([]);
    }
  });

  it("within a disc above is its upper half, in one piece from 0, and below the lower, to a whole turn", () => {
    expect(inDisc(0, 3, 4, 5)).toEqual([[0, Math.PI]]);
    expect(inDisc(0, -3, 4, 5)).toEqual([[Math.PI, TAU]]);
    // On the right it falls in two where the angles begin again.
    const near = (angle: number) => expect.closeTo(angle, 12);
    expect(inDisc(3, 0, 4, 5)).toEqual([
      [near(0.75 * TAU), TAU],
      [0, near(TAU / 4)],
    ]);
  });

  it("within a disc or bar is where its points are", () => {
    fc.assert(
      fc.property(whole(-9, 9), whole(-9, 9), whole(1, 9), whole(1, 9), bars, (x, y, r, radius, bar) => {
        const disc = inDisc(x, y, r, radius);
        const offDisc = around(0, 0, r).map((at) => [at.angle, Math.hypot(at.x - x, at.y - y) - radius] as const);
        expect(offDisc.filter(([angle, off]) => wrong(disc, angle, off))).toEqual([]);
        const out = arcInBar(x, y, r, bar, radius);
        const offs = around(x, y, r).map((at) => [at.angle, offBar(at.x, at.y, bar, radius)] as const);
        expect(offs.filter(([angle, off]) => wrong(out, angle, off))).toEqual([]);
        for (const [from, to] of [...disc, ...out]) {
          expect(from).toBeGreaterThanOrEqual(0);
          // Where an arc ends on the very turn, a second one of no length may follow.
          expect(to).toBeGreaterThanOrEqual(from);
          expect(to).toBeLessThanOrEqual(TAU);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe("of a line", () => {
  const level: Bar = { x: 0, y: 0, ux: 1, uy: 0, length: 10 };
  const upright: Bar = { x: 4, y: -5, ux: 0, uy: 1, length: 10 };

  it("within a disc is its chord, nothing where it touches or passes", () => {
    expect(lineInDisc(0, 0, level, 7, 3, 5)).toEqual([[3, 11]]);
    expect(lineInDisc(0, 5, level, 7, 0, 5)).toEqual([]);
    expect(lineInDisc(0, 6, level, 7, 0, 5)).toEqual([]);
    expect(lineInDisc(4, -5, upright, 1, 4, 5)).toEqual([[5, 13]]);
  });

  it("along a bar's very side is as long as the bar, and beyond it nothing", () => {
    for (const y of [-2, -1, 0, 2]) expect(lineInBar(-3, y, level, level, 2)).toEqual([[3, 13]]);
    for (const y of [-2.001, 2.001, 5]) expect(lineInBar(-3, y, level, level, 2)).toEqual([]);
  });

  it("across a bar is as long as it is wide, also along its very ends, and nothing beyond them", () => {
    for (const x of [0, 4, 10]) expect(lineInBar(x, -5, upright, level, 2)).toEqual([[3, 7]]);
    for (const x of [-0.001, 10.001]) expect(lineInBar(x, -5, upright, level, 2)).toEqual([]);
  });

  it("through no more than a bar's corner is nothing", () => {
    const slanting: Bar = { x: 0, y: 0, ux: Math.SQRT1_2, uy: Math.SQRT1_2, length: 10 };
    expect(lineInBar(-5, -3, slanting, level, 2)).toEqual([]);
    expect(lineInBar(-5, -3.5, slanting, level, 2)).toEqual([
      [expect.closeTo(5 * Math.SQRT2, 9), expect.closeTo(5.5 * Math.SQRT2, 9)],
    ]);
  });

  it("within a disc or bar is where its points are", () => {
    fc.assert(
      fc.property(whole(-9, 9), whole(-9, 9), bars, bars, whole(1, 9), (x, y, bar, other, half) => {
        const disc = lineInDisc(x, y, bar, other.x, other.y, half);
        const beside = lineInBar(x, y, bar, other, half);
        for (let at = -30; at < 30; at += 0.37) {
          const [px, py] = [x + at * bar.ux, y + at * bar.uy];
          const far = Math.hypot(px - other.x, py - other.y) - half;
          if (wrong(disc, at, far)) expect.fail(`disc at ${at}`);
          if (wrong(beside, at, offBar(px, py, other, half))) expect.fail(`bar at ${at}`);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe("an arc's share of the area it bounds", () => {
  it("is the circle's all round, wherever that lies, and of a half the half and what its chord leaves out", () => {
    for (const [x, y] of [
      [0, 0],
      [7, -3],
    ] as const)
      expect(arcArea(x, y, 2, 0, TAU)).toBeCloseTo(4 * Math.PI, 12);
    // The upper half about (0, 5): half the disc, and the triangle from the origin to its chord, counted off.
    expect(arcArea(0, 5, 2, 0, Math.PI)).toBeCloseTo(2 * Math.PI + 10, 12);
    expect(arcArea(5, 0, 2, -Math.PI / 2, Math.PI / 2)).toBeCloseTo(2 * Math.PI + 10, 12);
  });
});

describe("what is compiled", () => {
  it("comes to the same bits as the core: sine, cosine and arcs", () => {
    const turns = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(turns, turns, turns, turns, (x, y, from, to) => {
        const wanted = (3 * (3 * (to - from) + x * (sin(to) - sin(from)) - y * (cos(to) - cos(from)))) / 2;
        expect(arcArea(x, y, 3, from, to)).toBe(wanted);
        const apart = Math.sqrt(x * x + y * y);
        const half = acos((apart * apart + 9 - 4) / (2 * apart * 3));
        for (const [start] of arcInDisc(0, 0, 3, x, y, 2).slice(0, 1)) {
          const first = atan2(y, x) - half;
          expect(start).toBe(first < 0 ? first + TAU : first);
        }
      }),
      { numRuns: 2000 },
    );
  });
});

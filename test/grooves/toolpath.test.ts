// Corners of the cutter's ways, rounded: by hand, with as much room as is said.
import { describe, expect, it } from "vitest";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { type Surroundings, surroundingsOf } from "../../packages/casting-core/src/grooves/cuts/room.js";
import { roundedWays } from "../../packages/casting-core/src/grooves/cuts/toolpath.js";
import { layoutOf, regular } from "../support/layouts.js";

const CUTTER = 3;
const open: Surroundings = { within: (_, limit) => limit, nearest: () => 100 };
const rounded = (way: Point[], around = open) => roundedWays([way], around, CUTTER, 0.5)[0]!;
/** Seven points of the parabola that touches both sides of a corner `reach` from it. */
const bow = ([ax, ay]: Point, [cx, cy]: Point, [bx, by]: Point) =>
  Array.from({ length: 7 }, (_, n): Point => {
    const [p, q] = [(1 - n / 6) ** 2, (n / 6) ** 2];
    const at = (a: number, c: number, b: number) => expect.closeTo(p * a + (1 - p - q) * c + q * b, 2) as number;
    return [at(ax, cx, bx), at(ay, cy, by)];
  });
/** A way of a corner at (20, 0), its sides in parts. */
const corner = (before: number[], after: number[]): Point[] => [
  ...before.map((x): Point => [x, 0]),
  [20, 0],
  ...after.map((y): Point => [20, y]),
];
const from = (reach: number) => bow([20 - reach, 0], [20, 0], [20, reach]);

describe("a corner with room round it", () => {
  it("is a parabola from a cutter's width before it to as far behind it", () => {
    expect(rounded(corner([0], [20]))).toEqual([[0, 0], ...from(3), [20, 20]]);
    expect(roundedWays([corner([0], [20])], open, 4, 0.5)[0]).toEqual([[0, 0], ...from(4), [20, 20]]);
  });

  it("takes the place of the way's points there, and of no others", () => {
    expect(rounded(corner([0, 16, 17.5, 19], [1, 2.5, 4, 20]))).toEqual([
      [0, 0],
      [16, 0],
      ...from(3),
      [20, 4],
      [20, 20],
    ]);
  });

  it("is half as long, or a quarter, where a side is shorter", () => {
    expect(rounded(corner([0], [2]))).toEqual([[0, 0], ...from(1.5), [20, 2]]);
    expect(rounded(corner([18], [20]))).toEqual([[18, 0], ...from(1.5), [20, 20]]);
    expect(rounded(corner([0], [1]))).toEqual([[0, 0], ...from(0.75), [20, 1]]);
    expect(rounded(corner([19.5], [20]))).toEqual(corner([19.5], [20]));
  });

  it("does not reach past the next corner, which is rounded by itself", () => {
    const way: Point[] = [
      [0, 0],
      [20, 0],
      [20, 2],
      [40, 2],
    ];
    const path = rounded(way);
    expect(path.slice(0, 6)).toEqual([[0, 0], ...from(1.5)].slice(0, 6));
    expect(path.slice(-2)).toEqual([
      [expect.closeTo(20.75, 3), 2],
      [40, 2],
    ]);
    // On and up all along, and never back.
    path.slice(1).forEach(([x, y], n) => {
      expect(x).toBeGreaterThanOrEqual(path[n]![0]);
      expect(y).toBeGreaterThanOrEqual(path[n]![1]);
    });
  });

  it("has each point once, also where a rounding ends on a point of the way, or within a micrometre of one", () => {
    for (const off of [-0.0004, 0, 0.0004]) {
      expect(rounded(corner([0, 17 - off], [3 + off, 20]))).toEqual([[0, 0], ...from(3), [20, 20]]);
    }
    // Two corners as far apart as both roundings are long, or as one could be at the most.
    for (const side of [3, 1.5]) {
      const way = rounded([
        [0, 0],
        [20, 0],
        [20, side],
        [40, side],
      ]);
      expect(way.slice(0, 8)).toEqual([[0, 0], ...from(side / 2)]);
      expect(way.slice(7)).toEqual([...bow([20, side / 2], [20, side], [20 + side / 2, side]), [40, side]]);
    }
  });

  it("is looked at over forty points of the way on each side", () => {
    const fine = Array.from({ length: 400 }, (_, n) => (n + 1) / 25);
    const path = rounded(corner([0], fine));
    expect(path.slice(1, 8)).toEqual(from(1.5));
    expect(path.slice(8)).toEqual(fine.filter((y) => y > 1.5).map((y) => [20, y]));
  });
});

describe("what is no corner", () => {
  it("stays: a straight way, one point, a loop's first point, a bend of less than ten degrees", () => {
    const bent = (degrees: number): Point[] => [
      [0, 0],
      [20, 0],
      [20 + 20 * Math.cos((degrees * Math.PI) / 180), 20 * Math.sin((degrees * Math.PI) / 180)],
    ];
    expect(rounded([[1, 2]])).toEqual([[1, 2]]);
    expect(rounded(bent(0))).toEqual(bent(0));
    expect(rounded(bent(10))).toEqual(bent(10));
    expect(rounded(bent(10.1))).toHaveLength(9);
    const loop: Point[] = [
      [0, 0],
      [20, 0],
      [0, 20],
      [0, 0],
    ];
    expect([rounded(loop)[0], rounded(loop).at(-1)]).toEqual([
      [0, 0],
      [0, 0],
    ]);
    expect(rounded(loop)).toHaveLength(16);
  });

  it("is a place that stands twice in the way", () => {
    const way: Point[] = [
      [0, 0],
      [10, 0],
      [10, 0],
      [20, 0],
    ];
    expect(rounded(way)).toEqual(way);
  });
});

describe("beside pieces", () => {
  it("is rounded as far as the cutter and its clearance keep from the piece inside the bend, else left sharp", () => {
    // A disc inside the bend; the corner of the way is 2 · √2 mm farther from it than the sides' foot.
    const path = (off: number) => {
      const { pieces } = layoutOf([{ x: 20 - off, y: off, radius: 5 }], 4);
      return { path: rounded(corner([0], [20]), surroundingsOf(pieces)), pieces };
    };
    expect(path(9).path).toEqual([[0, 0], ...from(3), [20, 20]]);
    const tight = [7.6, 7.3, 7.05].map((off) => (path(off).path.length > 3 ? path(off).path[1]![0] : 20));
    expect(tight).toEqual([17, 17, 17]);
    expect(path(6.9).path).toEqual(corner([0], [20]));
  });

  it("is rounded less where a piece's own corner reaches into the bend", () => {
    // A corner of a square, as far from both sides of the way.
    const start = (off: number) => {
      const { pieces } = layoutOf([regular(4, Math.SQRT2 * 5, 15 - off, 5 + off, Math.PI / 4)], 4);
      return rounded(corner([0], [20]), surroundingsOf(pieces))[1]![0];
    };
    expect([2.2, 2.19, 2.18, 2.01].map(start)).toEqual([17, 17, 18.5, 18.5]);
  });

  it("may join a way that is narrower by half of what is left for rounding, and by no more", () => {
    // A disc beside the way, nearest just outside where the rounding of a cutter's width ends.
    const way = corner([0, 16, 17.5, 19], [1, 2.5, 4, 20]);
    for (const [x, y] of [
      [16.5, -1],
      [21, 3.5],
    ] as const) {
      const start = (room: number) => {
        const centre = y < 0 ? { x, y: -5 - room } : { x: 25 + room, y };
        const { pieces } = layoutOf([{ ...centre, radius: 5 }], 4);
        return rounded(way, surroundingsOf(pieces)).find((point) => point[0] > 16)![0];
      };
      expect([2, 1.995, 1.985].map(start)).toEqual([17, 17, 17.5]);
    }
  });
});

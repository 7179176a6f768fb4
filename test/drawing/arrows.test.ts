// The arrows' heads on the groove template, and the leaders beside them.
import { describe, expect, it } from "vitest";
import { arrowsOf } from "../../packages/casting-core/src/drawing/arrows.js";
import { groovesSheet } from "../../packages/casting-core/src/drawing/channels.js";
import { enters, inkOf } from "../../packages/casting-core/src/drawing/ink.js";
import type { Shape } from "../../packages/casting-core/src/drawing/sheet.js";
import { distance, pointToSegment } from "../../packages/casting-core/src/geometry/distance.js";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";

/** The tip of the first cut's arrow, whose head is 2 mm long and 1.6 mm wide. */
function tip(...cuts: Point[][]): Point {
  const [at, left, right] = inkOf(arrowsOf(cuts)[0]!).points as [Point, Point, Point];
  expect(distance(left, right)).toBeCloseTo(1.6, 9);
  expect(pointToSegment(at, left, right)).toBeCloseTo(2, 9);
  return at;
}

describe("an arrow", () => {
  const cut: Point[] = [
    [10, 10],
    [10, 10],
    [12, 10],
    [30, 10],
  ];

  it("points along its cut, 4 mm from where it begins", () => {
    expect(tip(cut)).toEqual([14, 10]);
    expect(inkOf(arrowsOf([cut])[0]!).points.slice(1, 3)).toEqual([
      [12, 10.8],
      [12, 9.2],
    ]);
  });

  it("is drawn for none where nothing is cut", () => {
    expect(arrowsOf([])).toEqual([]);
  });

  it("leaves free where other cuts begin or meet its own", () => {
    const across = (x: number): Point[] => [
      [x, 10],
      [x, 20],
    ];
    // Its middle 1.5 mm from the other cut at the least.
    expect(tip(cut, across(14.6))).toEqual([14, 10]);
    expect(tip(cut, across(14.2))).toEqual([13.5, 10]);
    expect(tip(cut, across(13))).toEqual([15.5, 10]);
    expect(tip(cut, across(11.6))).toEqual([14.5, 10]);
  });

  it("of a cut that has no such place lies where others are farthest; of a very short one at its end", () => {
    const short = (to: number): Point[] => [
      [10, 10],
      [to, 10],
    ];
    const beyond: Point[] = [
      [13.6, 0],
      [13.6, 20],
    ];
    expect(tip(short(13.6), beyond)).toEqual([13, 10]);
    expect(tip(short(11.5), beyond)).toEqual([11.5, 10]);
  });
});

describe("a number's leader", () => {
  it("keeps off the arrow of its own cut, also where that bends into it", () => {
    const sheet = groovesSheet(
      makePlan(
        readJob(
          "blank: {diameter: 160, focal-ratio: 4}\ntool: {diameter: 120}\nlayout: {seed: 3}\n" +
            "pieces: {shape: square, across: 20, thickness: 5, density: 2.4}\n",
        ),
      ),
    );
    const group = (id: string): readonly Shape[] => sheet.groups.find((one) => one.id === id)!.shapes;
    const leaders = group("leaders").filter(({ kind }) => kind === "polyline");
    const arrows = group("marks").filter(({ kind }) => kind === "polygon");
    expect(leaders).toHaveLength(arrows.length);
    leaders.forEach((leader, n) => {
      const [[ax, ay], [bx, by]] = inkOf(leader).points as [Point, Point];
      expect(enters(ax, ay, bx, by, inkOf(arrows[n]!).bounds)).toBe(false);
    });
  });
});

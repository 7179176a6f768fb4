// The numbers on the groove template: which cut each belongs to must be plain to see.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { groovesSheet } from "../../packages/casting-core/src/drawing/channels.js";
import {
  enters,
  grown,
  inkOf,
  overlap,
  type Rect,
  textBox,
  touches,
} from "../../packages/casting-core/src/drawing/ink.js";
import type { Shape, Text } from "../../packages/casting-core/src/drawing/sheet.js";
import { pointToSegment } from "../../packages/casting-core/src/geometry/distance.js";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";
import { rectToSegment } from "../support/rects.js";

const fixture = (name: string) => readFileSync(`fixtures/${name}.yaml`, "utf8");
const JOBS: [string, string][] = [
  ["the sample", fixture("sample")],
  ["five pieces", fixture("sample").replace("layout:", "layout:\n  count: 5")],
  ["one cut for all", fixture("sample").replace("grooves:", "grooves:\n  order: one")],
  ["mains between mixed tiles", fixture("large-mixed")],
  ["all channels between mixed tiles", fixture("large-mixed").replace("mains", "all")],
  ["inches", fixture("inches")],
  ["a full-size tool", fixture("small-full-size")],
  [
    "a tiny tool, where a cut begins within a rounding inside a chord of the tool's edge",
    "units: in\nblank: {diameter: 3 1/2, radius: 5}\ntool: {diameter: 2 1/2, rim: 1/16}\n" +
      "pieces: {shape: hexagon, across: 5/16, thickness: 3/16, density: 7.8}\nlayout: {gap: 1/8, seed: 3}\n" +
      "grooves: {cutter: 3/32, depth: 1/16, clearance: 1/64}\nplaster: {kind: type-3, fill: 3/4, cover: 3/8}\n" +
      "socket: {diameter: 3/4, length: 1, foot: glass}\n",
  ],
  [
    "a tool of 30 mm, with a cut beside the index",
    "blank: {diameter: 40 mm, curve: flat}\ntool: {diameter: 30 mm, rim: 1 mm}\n" +
      "pieces: {shape: round, diameter: 5 mm, thickness: 3 mm, density: 2.4}\nlayout: {gap: 1 mm}\n" +
      "grooves: {cutter: 0.8 mm, depth: 1 mm, clearance: 0.1 mm}\nplaster: {cover: 6 mm}\n",
  ],
  [
    "a convex tool in inches, with a cut below the word INDEX",
    "units: in\nblank: {diameter: 6, curve: convex, radius: 40}\ntool: {diameter: 6, rim: 1/8}\n" +
      "pieces: {shape: hexagon, across: 1/2, thickness: 1/4, density: 7.85, bore: 0.2}\n",
  ],
];

function drawn(text: string) {
  const plan = makePlan(readJob(text));
  const sheet = groovesSheet(plan);
  const group = (id: string): readonly Shape[] => sheet.groups.find((one) => one.id === id)!.shapes;
  const { points: edge } = inkOf(group("tool-edge")[0]!);
  const axis: Point = [
    (Math.min(...edge.map(([x]) => x)) + Math.max(...edge.map(([x]) => x))) / 2,
    (Math.min(...edge.map(([, y]) => y)) + Math.max(...edge.map(([, y]) => y))) / 2,
  ];
  const numbers = group("labels").filter((shape): shape is Text => shape.kind === "text" && /^\d+$/.test(shape.text));
  const leaders = group("leaders").flatMap((shape) => (shape.kind === "polyline" ? [shape.points] : []));
  const lines = ["tool-edge", "uncut", "outlines", "grooves", "marks"].flatMap((id) => group(id)).map(inkOf);
  const cuts = plan.grooves.cuts.map((cut) => cut.map(([x, y]): Point => [axis[0] - x, axis[1] - y]));
  // The index stands among the marks, the squares' sizes with the squares.
  const words = sheet.groups
    .flatMap(({ shapes }) => shapes)
    .filter((shape): shape is Text => shape.kind === "text" && !/^\d+$/.test(shape.text));
  const index = inkOf(group("marks")[0]!).bounds;
  return { numbers, leaders, lines, cuts, words, index };
}

const far = (point: Point, line: readonly Point[]) =>
  Math.min(...line.slice(1).map((to, n) => pointToSegment(point, line[n]!, to)));
const boxFrom = (box: Rect, line: readonly Point[]) =>
  Math.min(...line.slice(1).map((to, n) => rectToSegment(box, line[n]!, to)));

function besideNone(numbers: readonly Text[]): void {
  const boxes = numbers.map(textBox);
  for (const [n, { x, y, width, height }] of boxes.entries()) {
    const wide = { x: x - 1, y, width: width + 2, height };
    expect(boxes.filter((other, m) => m !== n && overlap(other, wide))).toEqual([]);
  }
}

it("numbers of many short cuts between triangles keep 1 mm from each other on their line", () => {
  besideNone(
    drawn(
      "units: in\nblank: {diameter: 6, focal-ratio: 15, curve: convex}\nlayout: {gap: 5/32}\n" +
        "pieces: {shape: triangle, across: 1/2, thickness: 3/16, density: 2.4}\n",
    ).numbers,
  );
});

describe.each(JOBS)("the cut numbers of %s", (name, text) => {
  const { numbers, leaders, lines, cuts, words, index } = drawn(text);

  it("are all there, none smaller than 2.5 mm", () => {
    expect(numbers.map((number) => number.text)).toEqual(cuts.map((_, n) => String(n + 1)));
    for (const { size } of numbers) expect(size).toBeGreaterThanOrEqual(2.5);
  });

  it("leave every word readable: no leader runs through one, no number lies on one", () => {
    expect(words.map((word) => word.text)).toContain("INDEX");
    for (const box of words.map(textBox)) {
      for (const [from, to] of leaders) expect(enters(from![0], from![1], to![0], to![1], box)).toBe(false);
      for (const number of numbers) expect(overlap(textBox(number), box)).toBe(false);
    }
  });

  it("keep 1 mm from the index, stroke and word, and no leader crosses its stroke", () => {
    expect(index).toMatchObject({ width: 0, height: 8 });
    for (const box of [index, ...words.filter((word) => word.text === "INDEX").map(textBox)]) {
      for (const number of numbers) expect(overlap(grown(textBox(number), 1), box)).toBe(false);
    }
    // Beside the word a number would be read as its own.
    for (const { x, y, width, height } of words.filter((word) => word.text === "INDEX").map(textBox)) {
      const line = { x: x - 5.9, y, width: width + 11.8, height };
      for (const number of numbers) expect(overlap(textBox(number), line)).toBe(false);
    }
    for (const [from, to] of leaders) expect(enters(from![0], from![1], to![0], to![1], index)).toBe(false);
  });

  it("each have a leader from its cut's start to within 1 mm of the number", () => {
    expect(leaders).toHaveLength(cuts.length);
    leaders.forEach((leader, n) => {
      expect(leader[0]![0]).toBeCloseTo(cuts[n]![0]![0], 9);
      expect(leader[0]![1]).toBeCloseTo(cuts[n]![0]![1], 9);
      const [x, y] = leader.at(-1)!;
      const box = textBox(numbers[n]!);
      expect(overlap({ x: x - 1, y: y - 1, width: 2, height: 2 }, box)).toBe(true);
    });
  });

  it("keep 1 mm from another number on their line: 6 beside 32 would be read as 632", () => {
    besideNone(numbers);
  });

  it("lie on no line, on no other number and on no leader", () => {
    const boxes = numbers.map(textBox);
    boxes.forEach((box, n) => {
      expect(lines.filter((line) => touches(line, box))).toEqual([]);
      expect(boxes.filter((other, m) => m !== n && overlap(other, box))).toEqual([]);
      const over = leaders.filter((points) => touches(inkOf({ kind: "polyline", points, style: { line: 0.2 } }), box));
      expect(over).toEqual([]);
    });
  });

  // Where a short cut lies shut in between others the leader alone tells; on a tool of 30 mm all of them are short.
  it.skipIf(name.includes("30 mm"))(
    "are nearer to their own cut than to any other, but for one, or one in a hundred",
    () => {
      const astray = { middle: 0, box: 0 };
      numbers.forEach((number, n) => {
        const box = textBox(number);
        const middle: Point = [box.x + box.width / 2, box.y + box.height / 2];
        const half = Math.hypot(box.width, box.height) / 2;
        const own = { middle: far(middle, cuts[n]!), box: boxFrom(box, cuts[n]!) };
        const others = cuts.filter((cut, m) => m !== n && far(middle, cut) <= own.middle + half);
        if (others.some((cut) => far(middle, cut) <= own.middle)) astray.middle++;
        if (others.some((cut) => boxFrom(box, cut) <= own.box)) astray.box++;
      });
      const allowed = Math.max(1, numbers.length / 100);
      expect(astray.middle).toBeLessThanOrEqual(allowed);
      // A number's end may come near another cut where its middle does not.
      expect(astray.box).toBeLessThanOrEqual(allowed);
    },
  );
});

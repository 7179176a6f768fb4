// What is added to a page lies clear of the drawing, and neighbours agree.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { tilingsOf } from "../../packages/casting-cli/src/pdf/templates.js";
import { grown, inkOf, overlap, type Rect, textBox, touches } from "../../packages/casting-core/src/drawing/ink.js";
import { pageMarks } from "../../packages/casting-core/src/drawing/joins.js";
import type { Page, Tiling } from "../../packages/casting-core/src/drawing/pages.js";
import type { Shape, Text } from "../../packages/casting-core/src/drawing/sheet.js";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";

/** Numbers stand close together on its pages, and hardly anywhere is room for the check squares. */
const STEEP = `
title: steep
units: in
blank: {diameter: 6 1/2 in, curve: concave, radius: 5 1/2 in, thickness: 1 in}
tool: {diameter: 5 1/2 in, rim: 1/8 in}
pieces: {shape: hexagon, across: 1/2 in, thickness: 1/4 in, density: 7.8}
layout: {gap: 5/32 in, seed: 2}
grooves: {cutter: 1/8 in, depth: 1/16 in, clearance: 1/64 in}
plaster: {kind: type-3, fill: 1 1/4 in, cover: 1/2 in}
print: {paper: Letter}
`;

const fixture = (name: string) => [name, readFileSync(`fixtures/${name}.yaml`, "utf8")] as const;
/** The crosses reach farther than what both pages show. */
const NARROW = fixture("sample")[1].replace("overlap: 10 mm", "overlap: 4 mm");

const jobs = [...["sample", "inches", "large-mixed"].map(fixture), ["steep", STEEP], ["narrow", NARROW]] as const;
const tilings = jobs.flatMap(([name, text]) =>
  tilingsOf(makePlan(readJob(text)), true).map(
    (tiling) => [`${name} ${tiling.sheet.name}`, tiling] as [string, Tiling],
  ),
);

/** The page's marks where they lie on the sheet. */
function marksOn(tiling: Tiling, page: Page): Shape[] {
  const [dx, dy] = [page.window.x - page.at[0], page.window.y - page.at[1]];
  const moved = ([x, y]: Point): Point => [x + dx, y + dy];
  return pageMarks(tiling)(page).map((shape) => {
    if (shape.kind === "text") return { ...shape, at: moved(shape.at) };
    if (shape.kind === "polyline" || shape.kind === "polygon") return { ...shape, points: shape.points.map(moved) };
    throw new Error(shape.kind);
  });
}

const isCross = (shape: Shape) => shape.kind === "polyline" && shape.style.dash === undefined;
const isTrim = (shape: Shape) => shape.kind === "polyline" && shape.style.dash !== undefined;
const texts = (shapes: readonly Shape[]) => shapes.filter((shape): shape is Text => shape.kind === "text");
const middles = (shapes: readonly Shape[]) =>
  shapes
    .filter(isCross)
    .map((shape) => inkOf(shape).bounds)
    .map(({ x, y, width, height }) => `${(x + width / 2).toFixed(6)},${(y + height / 2).toFixed(6)}`);

describe.each(tilings.filter(([, { pages }]) => !pages[0]!.whole))("the pages of %s", (_, tiling) => {
  const pages = tiling.pages.map((page) => ({ page, marks: marksOn(tiling, page) }));

  it("have words that lie on nothing drawn and on no other mark", () => {
    for (const { page, marks } of pages) {
      const words = texts(marks);
      expect(words.some(({ text }) => /100 mm.*4 in/.test(text))).toBe(true);
      for (const word of words) {
        const box = textBox(word);
        expect(tiling.drawn.filter((ink) => touches(ink, box))).toEqual([]);
        expect(marks.filter((mark) => mark !== word && touches(inkOf(mark), box))).toEqual([]);
        expect(box.x).toBeGreaterThanOrEqual(page.window.x);
        expect(box.x + box.width).toBeLessThanOrEqual(page.window.x + page.window.width);
      }
    }
  });

  it("have trim lines that stop before the drawing, and crosses that strike no word", () => {
    const solid = tiling.drawn.filter((ink) => ink.solid);
    for (const { marks } of pages) {
      for (const trim of marks.filter(isTrim)) {
        expect(tiling.drawn.filter((ink) => touches(ink, inkOf(trim).bounds))).toEqual([]);
      }
      for (const cross of marks.filter(isCross)) {
        expect(solid.filter((ink) => overlap(ink.bounds, inkOf(cross).bounds))).toEqual([]);
      }
    }
  });

  it("have their crosses at the same places of the sheet as their neighbours", () => {
    for (const { page, marks } of pages) {
      const right = pages.find((other) => other.page.column === page.column + 1 && other.page.row === page.row);
      if (!right) continue;
      const shared = middles(marks).filter((middle) => middles(right.marks).includes(middle));
      expect(new Set(shared).size).toBe(2);
    }
  });

  it("have their check squares where nothing is drawn, if there is such a place", () => {
    for (const { page } of pages) {
      const at = (x: number, y: number) => ({ x: x - 1.5, y: y - 1.5, width: 104.6, height: 104.6 });
      const met = (x: number, y: number) => tiling.drawn.some((ink) => touches(ink, at(x, y)));
      const [x, y] = [page.check[0] - page.at[0] + page.window.x, page.check[1] - page.at[1] + page.window.y];
      if (!met(x, y)) continue;
      // Inside the trim lines, on a grid as coarse as the program's first one.
      for (let right = 10; right <= page.window.width - 111.6; right += 8) {
        for (let down = 10; down <= page.window.height - 111.6; down += 8) {
          expect(met(page.window.x + right, page.window.y + down)).toBe(true);
        }
      }
    }
  });

  it("have no word struck by a side of the check squares, if there is such a place", () => {
    const words = tiling.drawn.filter((ink) => ink.solid).map(({ bounds }) => bounds);
    const struck = (x: number, y: number) =>
      words.some((word) => overlap(word, grown({ x, y, width: 101.6, height: 101.6 }, 1.5)) && !inside(word, x, y));
    const inside = (word: Rect, x: number, y: number) =>
      word.x > x + 2.3 && word.y > y + 2.3 && word.x + word.width < x + 99.3 && word.y + word.height < y + 99.3;
    for (const { page } of pages) {
      if (!struck(page.check[0] - page.at[0] + page.window.x, page.check[1] - page.at[1] + page.window.y)) continue;
      for (let right = 10; right <= page.window.width - 111.6; right += 4) {
        for (let down = 10; down <= page.window.height - 111.6; down += 4) {
          expect(struck(page.window.x + right, page.window.y + down)).toBe(true);
        }
      }
    }
  });
});

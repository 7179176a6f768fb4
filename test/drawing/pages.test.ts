import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { templatesPdf, tilingsOf } from "../../packages/casting-cli/src/pdf/templates.js";
import { CHECK, MARGIN } from "../../packages/casting-core/src/drawing/block.js";
import { FOOTER } from "../../packages/casting-core/src/drawing/paper.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { PAGE } from "../../packages/casting-core/src/papers.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";

const sample = readFileSync("fixtures/sample.yaml", "utf8");
const on = (paper: string, more = "") =>
  makePlan(
    readJob(sample.replace("print: {paper: A4, overlap: 10 mm}", `print: {paper: ${paper}, overlap: 10 mm${more}}`)),
  );
const text = async (plan: ReturnType<typeof on>, force = false) =>
  Buffer.from(await templatesPdf(plan, force)).toString("latin1");

it("the smallest page holds the check squares between margins, and the words", () => {
  const across = Math.ceil(CHECK.inch + 2 * MARGIN);
  expect(PAGE).toMatchObject({ short: across, long: across + FOOTER });
});

describe("tiles", () => {
  it.each(["A4", "Letter", "A3", "A2", "300x400"])(
    "of %s hold every piece whole or on neighbours that overlap by what was asked",
    (paper) => {
      const plan = on(paper);
      const tiling = tilingsOf(plan, true)[0]!;
      const pieces = tiling.sheet.groups.find(({ id }) => id === "pieces")!.shapes;
      for (const shape of pieces) {
        if (shape.kind !== "polygon") continue;
        for (const [x, y] of shape.points) {
          const on = tiling.pages.filter(
            ({ window: w }) => x >= w.x && x <= w.x + w.width && y >= w.y && y <= w.y + w.height,
          );
          expect(on.length).toBeGreaterThan(0);
        }
      }
      for (const { column, row, window, whole, width, height, at, check } of tiling.pages) {
        if (whole) continue;
        expect(at[0] + window.width).toBeLessThanOrEqual(width - 9.99);
        expect(at[1] + window.height).toBeLessThanOrEqual(height - 9.99);
        expect(check[0]).toBeGreaterThanOrEqual(10);
        expect(check[0] + 101.6).toBeLessThanOrEqual(width - 9.99);
        const right = tiling.pages.find((page) => page.column === column + 1 && page.row === row);
        if (right) expect(window.x + window.width - right.window.x).toBeCloseTo(10, 6);
        const below = tiling.pages.find((page) => page.column === column && page.row === row + 1);
        if (below) expect(window.y + window.height - below.window.y).toBeCloseTo(10, 6);
      }
    },
  );

  it("are one page of the sheet's own size for full", () => {
    for (const { pages, sheet } of tilingsOf(on("full"), true)) {
      expect(pages).toHaveLength(1);
      expect(pages[0]).toMatchObject({ width: sheet.width, height: sheet.height, whole: true });
    }
  });
});

describe("templates.pdf", () => {
  it("is drawn in millimetres, the same bytes again, and never scaled by the printer", async () => {
    const first = await text(on("A4"));
    expect(first).toBe(await text(on("A4")));
    expect(first).toContain("/PrintScaling /None");
    // 72 / 25.4 points in a millimetre.
    expect(first).toContain("2.834646 0 0 2.834646 0 0 cm");
  });

  it("is corrected for a printer that is off, and says so", async () => {
    const corrected = await text(on("A4", ", measured: {x: 99.6 mm, y: 100.2 mm}"));
    const factor = (measured: number) => Number(((72 / 25.4) * (100 / measured)).toFixed(6));
    expect(corrected).toContain(`${factor(99.6)} 0 0 ${factor(100.2)} 0 0 cm`);
    expect(corrected).not.toContain("2.834646 0 0 2.834646 0 0 cm");
  });

  it("asks before it takes more than 60 pages", async () => {
    const large = makePlan(
      readJob(
        "blank: {diameter: 1900, radius: 15000}\ntool: {diameter: 1400}\npieces: {shape: square, across: 100, thickness: 12, density: 2.3}\nlayout: {count: 60}\n",
      ),
    );
    await expect(templatesPdf(large, false)).rejects.toThrow(
      /take \d+ pages of A4; choose a larger paper or full, or give --force/,
    );
    expect((await text(large, true)).match(/\/Type \/Page\b/g)!.length).toBeGreaterThan(60);
  });
});

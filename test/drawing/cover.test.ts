// The first printed page, read back from the PDF itself.
import { beforeAll, describe, expect, it } from "vitest";
import { drawCover } from "../../packages/casting-cli/src/pdf/cover.js";
import type { Press } from "../../packages/casting-cli/src/pdf/page.js";
import { tilingsOf } from "../../packages/casting-cli/src/pdf/templates.js";
import { textWidth } from "../../packages/casting-core/src/drawing/letters.js";
import type { Page, Tiling } from "../../packages/casting-core/src/drawing/pages.js";
import { VERSION } from "../../packages/casting-core/src/version.js";
import type { DrawnPage } from "../support/pdf.js";
import { drawn, near, on, paths, words } from "../support/press.js";

let tilings: Tiling[];
let placement: Tiling;
beforeAll(() => {
  tilings = tilingsOf(on("A4"), false);
  placement = tilings[0]!;
});

describe("the cover", () => {
  const covered = async (paper: string, shown: readonly Tiling[], correction?: Press["correction"]) =>
    (await drawn((press) => drawCover(press, shown), correction, on(paper)))[0]!;

  it("says what to do, and has the check squares", async () => {
    const cover = await covered("A4", tilings);
    const said = words(cover).join(" ");
    for (const part of [
      "Größe ??",
      "PRINT AT 100 %, ACTUAL SIZE. Measure: inner square 100 mm, outer 4 in. No fitting, no shrinking; measure before cutting anything.",
      "Join the pages: trim along one dashed line of each shared edge, lay cross on cross, tape. Then measure across the whole sheet.",
      `Seed 1, casting ${VERSION}, paper A4, 7 pages with this one.`,
    ]) {
      expect(said).toContain(part);
    }
    const sides = paths(cover).map(({ points }) => Math.round((points[1]![0] - points[0]![0]) * 1e4) / 1e4);
    expect(sides.slice(0, 2)).toEqual([101.6, 100]);
    expect(paths(cover)[0]!.points[0]![0]).toBeCloseTo(10, 4);
  });

  it.each([
    ["A4", 210, 297],
    ["Letter", 215.9, 279.4],
    ["300x400", 300, 400],
    ["full", 210, 297],
  ])("for %s paper is %d by %d mm, and keeps its margins", async (paper, width, height) => {
    const cover = await covered(paper, tilings);
    expect([cover.width, cover.height]).toEqual([expect.closeTo(width, 4), expect.closeTo(height, 4)]);
    for (const [x, y] of cover.items.flatMap(({ points }) => points)) {
      expect(x).toBeGreaterThanOrEqual(9.99);
      expect(x).toBeLessThanOrEqual(width - 9.99);
      expect(y).toBeGreaterThanOrEqual(9.99);
      expect(y).toBeLessThanOrEqual(height - 9.99);
    }
  });

  it("maps each sheet: a field a page, as the pages lie, of their shape and with their names", async () => {
    const cover = await covered("A4", tilings);
    const fields = paths(cover).slice(2);
    expect(fields).toHaveLength(tilings.reduce((sum, { pages }) => sum + pages.length, 0));
    const names = cover.items.filter(({ kind }) => kind === "text");
    let n = 0;
    for (const { sheet, pages } of tilings) {
      expect(words(cover).join(" ")).toContain(sheet.caption);
      const first = fields[n]!.points;
      const [w, h] = [first[1]![0] - first[0]![0], first[3]![1] - first[0]![1]];
      expect(w / h).toBeCloseTo(pages[0]!.window.width / pages[0]!.window.height, 3);
      for (const page of pages) {
        const field = fields[n++]!;
        expect(field).toMatchObject({ closed: true });
        const [x, y] = [
          first[0]![0] + (page.column - pages[0]!.column) * w,
          first[0]![1] + (page.row - pages[0]!.row) * h,
        ];
        expect(field.points).toEqual(
          near([
            [x, y],
            [x + w, y],
            [x + w, y + h],
            [x, y + h],
          ]),
        );
        // Its name in the middle of it.
        const inside = names.filter(({ points: [[px, py] = [0, 0]] }) => px > x && px < x + w && py > y && py < y + h);
        expect(inside.map(({ text }) => text)).toEqual([page.name === "" ? "1" : page.name]);
        const { size, points } = inside[0]!;
        expect(size).toBeLessThanOrEqual(3.4 + 1e-6);
        expect(size).toBeLessThanOrEqual(0.6 * h + 1e-6);
        // Capitals of Helvetica are 0.72 of the em high.
        expect(points[0]![1] - 0.36 * size!).toBeCloseTo(y + h / 2, 3);
      }
    }
    // No two sheets' fields lie over each other, and captions stand above their fields.
    const boxes = fields.map(({ points: [a, , c] }) => [a!, c!] as const);
    boxes.forEach(([a, c], i) => {
      for (const [b, d] of boxes.slice(i + 1)) {
        const over = Math.min(c[0], d[0]) - Math.max(a[0], b[0]);
        const down = Math.min(c[1], d[1]) - Math.max(a[1], b[1]);
        expect(Math.min(over, down)).toBeLessThan(1e-3);
      }
      for (const { text, points } of names) {
        if (tilings.some(({ sheet }) => sheet.caption.startsWith(text!.slice(0, 10)))) {
          const [x, y] = points[0]!;
          expect(x > a[0] - 1e-3 && x < c[0] && y > a[1] && y < c[1]).toBe(false);
        }
      }
    });
  });

  it("bears a sheet of which nothing is printed", async () => {
    const none = { ...placement, pages: [] };
    expect(paths(await covered("A4", [none]))).toHaveLength(2);
  });

  it("says that it was corrected", async () => {
    expect(words(await covered("A4", tilings, { x: 1, y: 0.99 }))).toContain(
      "Corrected for a measured printer: x 100.00 %, y 99.00 %.",
    );
  });

  describe("of sheets made for it", () => {
    /** A sheet in so many columns and rows of pages, each 100 by 150 mm. */
    const made = (columns: number, rows: number, caption: string, names = true): Tiling => ({
      ...placement,
      columns,
      rows,
      sheet: { ...placement.sheet, caption },
      pages: Array.from({ length: columns * rows }, (_, n): Page => {
        const [column, row] = [n % columns, Math.floor(n / columns)];
        const window = { x: 100 * column, y: 150 * row, width: 100, height: 150 };
        return { ...placement.pages[0]!, name: names ? `P${n}` : "", column, row, window };
      }),
    });
    /** Where the words begin and the fields lie, below the check squares. */
    const maps = (cover: DrawnPage) => {
      const square = paths(cover)[0]!;
      const [top, bottom] = [square.points[0]![1], square.points[2]![1]];
      const below = cover.items.filter(({ points }) => points[0]![1] > bottom);
      return {
        top,
        bottom,
        above: cover.items.map(({ points }) => points[0]![1]).filter((y) => y < top),
        fields: below.filter(({ kind }) => kind === "path"),
        texts: below.filter(({ kind }) => kind === "text"),
      };
    };

    it("has the check squares between what to do and the maps, clear of both", async () => {
      const { top, bottom, above, texts } = maps(await covered("A4", [made(2, 2, "sheet")]));
      // A line's height is free above; the first caption, 3.4 mm high, begins 8 mm below.
      expect(above).toHaveLength(6);
      expect(Math.max(...above)).toBeLessThan(top - 4.6);
      expect(texts[0]!.points[0]![1]).toBeCloseTo(bottom + 8 + 3.4, 3);
    });

    it.each([
      ["A4", 3, 65.333],
      ["136x300", 2, 61],
      ["133x300", 1, 119],
    ])("on %s paper has %i beside each other, and their rows 58 mm apart", async (paper, columns, apart) => {
      const { texts } = maps(
        await covered(paper, ["a", "b", "c", "d"].map((name) => made(1, 1, name)).slice(0, columns + 1)),
      );
      const places = texts.filter(({ text }) => /^[a-d]$/.test(text!)).map(({ points }) => points[0]!);
      const first = places[0]!;
      expect(places).toEqual(
        places.map((_, n) => [
          expect.closeTo(10 + (n % columns) * apart, 2),
          n < columns ? expect.closeTo(first[1], 3) : expect.closeTo(first[1] + 58, 3),
        ]),
      );
    });

    it("has a map as high as its row allows, its fields' names as large as they can bear", async () => {
      const { fields, texts } = maps(await covered("A4", [made(1, 8, "tall"), made(1, 1, "low", false)]));
      const row = texts[0]!.points[0]![1] - 3.4;
      const [h, w] = [(58 - 4 - 2 - 6.4) / 8, (58 - 4 - 2 - 6.4) / 12];
      fields.slice(0, 8).forEach(({ points, line }, n) => {
        expect(points[0]).toEqual([expect.closeTo(10, 3), expect.closeTo(row + 6.4 + n * h, 3)]);
        expect(points[2]).toEqual([expect.closeTo(10 + w, 3), expect.closeTo(row + 6.4 + (n + 1) * h, 3)]);
        expect(line!.width).toBeCloseTo(0.25, 4);
        const name = texts[n + 1]!;
        expect(name.text).toBe(`P${n}`);
        expect(name.size).toBeCloseTo(Math.min(3.4, 0.6 * h), 4);
        expect(name.points[0]![0] + textWidth(name.text!, name.size!) / 2).toBeCloseTo(10 + w / 2, 3);
      });
      expect(texts.at(-1)!.text).toBe("1");
    });

    it("has a map as wide as its column allows, below all lines of its caption", async () => {
      const caption = "a caption that is much too long for a single line of its column";
      const { fields, texts } = maps(await covered("A4", [made(6, 1, caption)]));
      const lines = texts.filter(({ text }) => caption.includes(text!));
      expect(lines.map(({ text }) => text).join(" ")).toBe(caption);
      expect(lines.length).toBeGreaterThan(1);
      lines.slice(1).forEach(({ points }, n) => {
        expect(points[0]![1] - lines[n]!.points[0]![1]).toBeCloseTo(4.6, 4);
      });
      expect(fields[0]!.points[0]![1]).toBeCloseTo(lines.at(-1)!.points[0]![1] + 3, 4);
      expect(fields[5]!.points[2]![0]).toBeCloseTo(10 + 196 / 3 - 6 - 1, 3);
    });

    it.each(["148x210", "122x148"])(
      "on small paper of %s has maps that can be read, each by its caption",
      async (paper) => {
        const shapes = [2, 2, 1, 4, 5, 2].map((columns, n) =>
          made(columns, [2, 2, 1, 1, 4, 3][n]!, "a sheet, seen from the side that is cut"),
        );
        const cover = await covered(paper, shapes);
        const fields = paths(cover).slice(2);
        expect(fields).toHaveLength(4 + 4 + 1 + 4 + 20 + 6);
        for (const { points } of fields) {
          const [w, h] = [points[1]![0] - points[0]![0], points[3]![1] - points[0]![1]];
          expect(w).toBeGreaterThan(1.2);
          expect(h).toBeGreaterThan(1.8);
        }
        for (const [x, y] of cover.items.flatMap(({ points }) => points)) {
          expect(x).toBeLessThanOrEqual(cover.width - 9.9);
          expect(y).toBeLessThanOrEqual(cover.height - 9.9);
        }
      },
    );

    it("keeps to its margins, however many sheets there are", async () => {
      for (const paper of ["A4", "Letter", "150x280"]) {
        const cover = await covered(
          paper,
          Array.from({ length: 14 }, (_, n) => made(1 + (n % 3), 1 + (n % 4), `sheet ${n}`)),
        );
        const right = cover.items.map(({ text, size, points }) =>
          text ? points[0]![0] + textWidth(text, size!) : Math.max(...points.map(([x]) => x)),
        );
        expect(Math.max(...right)).toBeLessThanOrEqual(cover.width - 10 + 1e-3);
        const low = cover.items.flatMap(({ points }) => points.map(([, y]) => y));
        expect(Math.max(...low)).toBeLessThanOrEqual(cover.height - 10 + 1e-3);
        expect(Math.min(...low)).toBeGreaterThanOrEqual(10);
      }
    });
  });
});

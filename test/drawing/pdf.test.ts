// The printed pages, read back from the PDF itself.
import { beforeAll, describe, expect, it } from "vitest";
import { begin, drawPage, type Press } from "../../packages/casting-cli/src/pdf/page.js";
import { drawShape } from "../../packages/casting-cli/src/pdf/shapes.js";
import { correctionOf, templatesPdf, tilingsOf } from "../../packages/casting-cli/src/pdf/templates.js";
import { touches } from "../../packages/casting-core/src/drawing/ink.js";
import { pageMarks } from "../../packages/casting-core/src/drawing/joins.js";
import { textWidth } from "../../packages/casting-core/src/drawing/letters.js";
import { type Page, type Tiling, tile } from "../../packages/casting-core/src/drawing/pages.js";
import { type Shape, type Sheet, THIN } from "../../packages/casting-core/src/drawing/sheet.js";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { latin } from "../../packages/casting-core/src/latin.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";
import { VERSION } from "../../packages/casting-core/src/version.js";
import { type Drawn, pagesOf } from "../support/pdf.js";
import { drawn, near, on, paths, plan, words } from "../support/press.js";

/** One shape on a page of 200 by 300 mm. */
async function shape(shape: Shape, correction?: Press["correction"]): Promise<Drawn> {
  const pages = await drawn((press) => {
    begin(press, 200, 300);
    drawShape(press.pdf, shape);
    press.pdf.restore();
  }, correction);
  expect(pages).toHaveLength(1);
  expect([pages[0]!.width, pages[0]!.height].map((side) => Number(side.toFixed(6)))).toEqual([200, 300]);
  expect(pages[0]!.items).toHaveLength(1);
  return pages[0]!.items[0]!;
}

/** Points along a path's curves. */
function along({ points, pulls }: Drawn): Point[] {
  return pulls.flatMap((pull, n) => {
    const [a, d] = [points[n]!, points[n + 1]!];
    const [b, c] = pull ?? [a, d];
    return [0, 0.25, 0.5, 0.75, 1].map((t): Point => {
      const at = (i: 0 | 1) =>
        (1 - t) ** 3 * a[i] + 3 * t * (1 - t) ** 2 * b[i] + 3 * t * t * (1 - t) * c[i] + t ** 3 * d[i];
      return pull ? [at(0), at(1)] : [a[0] + t * (d[0] - a[0]), a[1] + t * (d[1] - a[1])];
    });
  });
}

describe("a shape on a page", () => {
  const corners: Point[] = [
    [10, 20],
    [110, 20],
    [110.5, 220.25],
  ];

  it("is a line of its width and ink, from corner to corner", async () => {
    const line = await shape({ kind: "polyline", points: corners, style: { line: 0.5, ink: "grey" } });
    expect(line).toMatchObject({ points: near(corners), closed: false });
    expect(line.line).toEqual({ width: expect.closeTo(0.5, 4), dash: [], colour: "119 119 119" });
    expect(line.fill).toBeUndefined();
  });

  it("is closed, dashed, filled where that is asked for", async () => {
    const dashed = await shape({ kind: "polygon", points: corners, style: { line: 0.25, dash: [3, 2] } });
    expect(dashed).toMatchObject({ points: near(corners), closed: true });
    expect(dashed.line).toMatchObject({ dash: [expect.closeTo(3, 4), expect.closeTo(2, 4)], colour: "0 0 0" });
    const both = await shape({ kind: "polygon", points: corners, style: { line: 0.25, ink: "black", fill: "white" } });
    expect(both).toMatchObject({ fill: "255 255 255", line: { dash: [], colour: "0 0 0" } });
    const filled = await shape({ kind: "polygon", points: corners, style: { line: 0, dash: [3, 2], fill: "pale" } });
    expect(filled.fill).toBe("204 204 204");
    expect(filled.line).toBeUndefined();
  });

  it("leaves no dashes to the next one", async () => {
    const [page] = await drawn((press) => {
      begin(press, 200, 300);
      drawShape(press.pdf, { kind: "polyline", points: corners, style: { line: 0.25, dash: [3, 2] } });
      drawShape(press.pdf, { kind: "polyline", points: corners, style: THIN });
      press.pdf.restore();
    });
    expect(page!.items.map(({ line }) => line!.dash.length)).toEqual([2, 0]);
  });

  it("is a circle round all its centre", async () => {
    const circle = await shape({ kind: "circle", centre: [100, 150], radius: 80, style: THIN });
    for (const [x, y] of along(circle)) expect(Math.abs(Math.hypot(x - 100, y - 150) / 80 - 1)).toBeLessThan(3e-4);
    const xs = circle.points.map(([x]) => x);
    const ys = circle.points.map(([, y]) => y);
    expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]).toEqual(
      [20, 180, 70, 230].map((side) => expect.closeTo(side, 3)),
    );
  });

  it.each<[string, { left: boolean; large: boolean }, Point, number]>([
    // From the right of (100, 100) to its top, 50 mm away, about the centre that makes it so; y runs down.
    ["a quarter to the left", { left: true, large: false }, [100, 100], 2],
    ["a quarter to the right", { left: false, large: false }, [150, 50], 2],
    ["three quarters to the left", { left: true, large: true }, [150, 50], 6],
    ["three quarters to the right", { left: false, large: true }, [100, 100], 6],
  ])("is %s along its circle, to 5 millionths", async (_, arc, [cx, cy], parts) => {
    const from: Point = [150, 100];
    const to: Point = [100, 50];
    const style = { line: 0.25, fill: "black" } as const;
    const steps = [{ to: from }, { to, arc: { radius: 50, ...arc } }, { to: [10, 10] as Point }];
    const path = await shape({ kind: "path", steps, style });
    expect(path.closed).toBe(true);
    expect(path.fill).toBe("0 0 0");
    expect(path.points).toHaveLength(parts + 2);
    expect(path.points[0]).toEqual(near([from])[0]);
    expect(path.points.at(-2)).toEqual(near([to])[0]);
    expect(path.points.at(-1)).toEqual(near([[10, 10]])[0]);
    expect(path.pulls.at(-1)).toBeUndefined();
    const curve = along({ ...path, points: path.points.slice(0, -1), pulls: path.pulls.slice(0, -1) });
    for (const [x, y] of curve) expect(Math.abs(Math.hypot(x - cx, y - cy) / 50 - 1)).toBeLessThan(5e-6);
    // On and on the same way round, an eighth of a turn a part; to the left is against the clock.
    const turns = curve.map(([x, y]) => Math.atan2(y - cy, x - cx));
    const swept = turns.slice(1).reduce((sum, turn, n) => {
      const step = turn - turns[n]!;
      return sum + (step > Math.PI ? step - 2 * Math.PI : step < -Math.PI ? step + 2 * Math.PI : step);
    }, 0);
    expect(swept).toBeCloseTo((arc.left ? -1 : 1) * parts * (Math.PI / 4), 4);
  });

  it("goes on from arc to arc and line to line", async () => {
    const steps = [
      { to: [10, 10] as Point },
      { to: [60, 10] as Point },
      { to: [110, 10] as Point, arc: { radius: 25, left: false, large: false } },
      { to: [160, 10] as Point, arc: { radius: 25, left: true, large: false } },
    ];
    const path = await shape({ kind: "path", steps, style: THIN });
    const ys = along(path).map(([, y]) => y);
    expect(Math.min(...ys)).toBeCloseTo(-15, 3);
    expect(Math.max(...ys)).toBeCloseTo(35, 3);
  });

  it.each([
    ["start", 0],
    ["middle", 0.5],
    ["end", 1],
  ] as const)("is words that stand at their %s", async (align, share) => {
    const words = await shape({ kind: "text", at: [100, 60], text: "iiii", size: 10, align });
    // An i of Helvetica is 222 thousandths of the em wide (Adobe font metrics).
    expect(words.points).toEqual(near([[100 - share * 8.88, 60]]));
    expect(words).toMatchObject({ text: "iiii", size: expect.closeTo(10, 4), turn: 0, fill: "0 0 0" });
  });

  it("is words in letters that can be printed", async () => {
    expect(latin("Größe ½ … 日本 a\u0301 \u0000\u202e ü💧")).toBe("Größe ½ … ?? á ?? ü?");
    expect(latin("“fein” ‘und’ „so“ – € 5 — š Œ ™ • λ ≤")).toBe("“fein” ‘und’ „so“ – € 5 — š Œ ™ • ? ?");
    expect((await shape({ kind: "text", at: [1, 9], text: "½ → …", size: 4, align: "start" })).text).toBe("½ ? …");
  });

  it("is words in plainer letters where those say the same", () => {
    expect(latin("Ø 8″ — ½ тест")).toBe('Ø 8" — ½ ????');
    expect(latin("6′ 1⅛″, ⅜ in")).toBe("6' 1 1/8\", 3/8 in");
    expect(latin("⌀ 20 mm − 1⁄2, 3‑ball, 5 μm ⸺")).toBe("Ø 20 mm - 1/2, 3-ball, 5 µm ?");
  });

  it("is corrected for a printer that is off, sideways and down", async () => {
    const line = await shape({ kind: "polyline", points: corners, style: THIN }, { x: 1.01, y: 0.98 });
    expect(line.points).toEqual(near(corners.map(([x, y]): Point => [1.01 * x, 0.98 * y])));
  });
});

let tilings: Tiling[];
let placement: Tiling;
beforeAll(() => {
  tilings = tilingsOf(on("A4"), false);
  placement = tilings[0]!;
});

describe("a page of a tiled sheet", () => {
  let page: Page;
  beforeAll(() => {
    page = placement.pages[1]!;
  });
  const print = async (sheet: Tiling, of: Page, correction?: Press["correction"]) =>
    (await drawn((press) => drawPage(press, sheet, of, pageMarks(sheet)(of), 3), correction))[0]!;

  it("shows its window of the sheet at the true size, cut off at its edges", async () => {
    const printed = await print(placement, page);
    expect(placement.pages.length).toBeGreaterThan(3);
    const clip = printed.items.find(({ clips }) => clips)!;
    const [x, y] = page.at;
    const { width, height } = page.window;
    expect(clip.points).toEqual(
      near([
        [x, y],
        [x + width, y],
        [x + width, y + height],
        [x, y + height],
      ]),
    );
    const pieces = placement.sheet.groups.find(({ id }) => id === "pieces")!.shapes;
    const shown = paths(printed).map(({ points }) => points);
    let outside = 0;
    for (const piece of pieces) {
      if (piece.kind !== "polygon") throw new Error("a hexagon is a polygon");
      const wanted = piece.points.map(([px, py]): Point => [px - page.window.x + x, py - page.window.y + y]);
      const far = (by: number) =>
        wanted.every(([px]) => px < x - by) ||
        wanted.every(([px]) => px > x + width + by) ||
        wanted.every(([, py]) => py < y - by) ||
        wanted.every(([, py]) => py > y + height + by);
      // What a line's width could bring onto the page may be drawn as well.
      if (!far(0)) expect(shown).toContainEqual(near(wanted));
      if (far(2)) expect(shown).not.toContainEqual(near(wanted));
      if (far(2)) outside++;
    }
    expect(outside).toBeGreaterThan(0);
  });

  it("shows the drawing alone of the sheet, with the page's own check squares, once, and its words below", async () => {
    const printed = await print(placement, page);
    const sides = paths(printed).flatMap(({ points, closed, line }) => {
      const side = Math.abs(points[1]![0] - points[0]![0]);
      return closed && points.length === 4 && Math.abs(line!.width - 0.2) < 1e-6 && side > 50
        ? [Math.round(side * 1e4) / 1e4]
        : [];
    });
    expect(sides.sort((a, b) => a - b)).toEqual([100, 101.6]);
    // Drawn last: at the left margin, one below the other, clear of the drawing above and of the margin below.
    const other = printed.items.findLastIndex(
      ({ kind, points: [at] }) => kind === "path" || Math.abs(at![0] - 10) > 1e-3,
    );
    const lines = printed.items.slice(other + 1);
    const below = lines.map(({ text }) => text).join(" ");
    expect(below).toContain(`Page ${page.name}: ${placement.sheet.caption}. Page 3 of 7.`);
    expect(below).toContain("Größe ?? PRINT AT 100 %, ACTUAL SIZE. Measure: inner square 100 mm, outer 4 in.");
    expect(below).toContain(latin(placement.sheet.facts[0]!).split(" ").slice(0, 4).join(" "));
    expect(below).toContain(`Seed 1, casting ${VERSION}.`);
    const heights = lines.map(({ points }) => points[0]![1]);
    expect(Math.min(...heights) - 3.4).toBeGreaterThanOrEqual(page.at[1] + page.window.height);
    expect(Math.max(...heights)).toBeLessThanOrEqual(page.height - 10 + 0.5);
    heights.slice(1).forEach((height, n) => void expect(height - heights[n]!).toBeCloseTo(4.6, 4));
    // Nothing of the sheet's own block.
    expect(words(printed)).not.toContain(`seed 1, casting ${VERSION}`);
  });

  it("without a name says none, and without facts no undefined", async () => {
    const bare: Tiling = { ...placement, sheet: { ...placement.sheet, facts: [] } };
    const said = words(await print(bare, { ...page, name: "" }));
    expect(said.slice(-4)).toEqual([
      `${placement.sheet.caption}. Page 3 of 7.`,
      "Größe ??",
      "PRINT AT 100 %, ACTUAL SIZE. Measure: inner square 100 mm, outer 4 in.",
      `Seed 1, casting ${VERSION}.`,
    ]);
  });

  it("breaks its words off before the right margin", async () => {
    const long = { ...plan, job: { ...plan.job, title: "Größe ".repeat(60) } };
    const narrow = { ...page, width: 150 };
    const [printed] = await drawn(
      (press) => drawPage(press, placement, narrow, pageMarks(placement)(narrow), 3),
      undefined,
      long,
    );
    const ends = printed!.items.flatMap(({ text, size, points: [at] }) =>
      text && Math.abs(at![0] - 10) < 1e-3 ? [at![0] + textWidth(text, size!)] : [],
    );
    expect(ends.length).toBeGreaterThan(5);
    expect(Math.max(...ends)).toBeLessThanOrEqual(140);
    expect(Math.max(...ends)).toBeGreaterThan(120);
  });

  it("says how it was corrected", async () => {
    const corrected = words(await print(placement, page, { x: 1.00402, y: 0.998 }));
    expect(corrected).toContain("Corrected for a measured printer: x 100.40 %, y 99.80 %.");
    expect(words(await print(placement, page)).join(" ")).not.toContain("Corrected");
  });
});

describe("a page with a whole sheet", () => {
  it("has it where it lies, with its own block, and the page's number in the lower right corner", async () => {
    const shapes: Shape[] = [
      { kind: "circle", centre: [50, 40], radius: 30, style: THIN },
      {
        kind: "polyline",
        points: [
          [0, 90],
          [80, 90],
        ],
        style: THIN,
      },
    ];
    const check: Shape[] = [
      {
        kind: "polyline",
        points: [
          [0, 95],
          [80, 95],
        ],
        style: THIN,
      },
    ];
    const sheet: Sheet = {
      name: "test",
      width: 100,
      height: 110,
      caption: "a test",
      facts: ["a fact"],
      bodyHeight: 80,
      groups: [
        { id: "marks", shapes },
        { id: "scale-check", shapes: check },
      ],
    };
    const tiling = tile(sheet, { name: "A4", width: 210, height: 297 }, 10);
    const [printed] = await drawn((press) => drawPage(press, tiling, tiling.pages[0]!, [], 2));
    // Centred on the paper: 55 mm from the left, 93.5 mm from above.
    expect(printed!.items[0]!.points[0]).toEqual(near([[55 + 20, 93.5 + 40]])[0]);
    expect(paths(printed!)).toHaveLength(3);
    expect(printed!.items.some(({ clips }) => clips)).toBe(false);
    expect(words(printed!)).toEqual(["Page 2 of 7."]);
    const at = printed!.items.find(({ kind }) => kind === "text")!;
    expect(at.points[0]![1]).toBeCloseTo(287, 4);
    // Widths of "Page 2 of 7." in Helvetica: 667 + 5 × 556 + 3 × 278 + 278 + 556 … thousandths, by its end at the margin.
    expect(at.points[0]![0]).toBeGreaterThan(200 - 12 * 0.6 * 3.4);
    expect(at.points[0]![0]).toBeLessThan(200 - 12 * 0.4 * 3.4);
  });
});

describe("the whole print", () => {
  it("is the cover, then every page of every sheet in order, numbered to the last", async () => {
    const pdf = await templatesPdf(on("A4"), false);
    const pages = pagesOf(pdf);
    const count = 1 + tilings.reduce((sum, { pages }) => sum + pages.length, 0);
    expect(pages).toHaveLength(count);
    expect(words(pages[0]!).join(" ")).toContain(`${count} pages with this one.`);
    pages.slice(1).forEach((page, n) => {
      expect(words(page).join(" ")).toContain(`Page ${n + 2} of ${count}.`);
    });
    const text = Buffer.from(pdf).toString("latin1");
    expect(text).toContain("/PrintScaling /None");
    expect(text.match(/\n\(casting\)\n/g)).toHaveLength(2);
    expect(text).toContain("\n(D:19700101000000Z)\n");
    // The title in UTF-16, as PDF has it where Latin letters do not do.
    expect(Buffer.from(pdf).includes(Buffer.from("\ufeffGröße 日本", "utf16le").swap16())).toBe(true);
    expect(Buffer.from(await templatesPdf(on("A4"), false)).equals(Buffer.from(pdf))).toBe(true);
  });

  it("joins lines round on every page, and says nothing between a path's points and its painting", async () => {
    const text = Buffer.from(await templatesPdf(on("A4"), false)).toString("latin1");
    const pages = [...text.matchAll(/stream\n(.*?)\nendstream/gs)].map(([, content]) => content!);
    const drawn = pages.filter((content) => / m\n/.test(content));
    expect(drawn.length).toBe(1 + tilings.reduce((sum, { pages }) => sum + pages.length, 0));
    for (const content of drawn) {
      expect(content.indexOf("\n1 j\n")).toBeGreaterThan(-1);
      expect(content.indexOf("\n1 j\n")).toBeLessThan(content.search(/ m\n/));
      // ISO 32000-1, 8.2: a path is begun by m or re and ended by its painting; only its own operators stand between.
      let open = false;
      for (const row of content.split("\n").filter((each) => each !== "")) {
        const operator = row.slice(row.lastIndexOf(" ") + 1);
        if (/^(m|re)$/.test(operator)) open = true;
        else if (/^(S|f|B|n)$/.test(operator)) open = false;
        else if (open) expect(operator).toMatch(/^([lch]|W)$/);
      }
      expect(open).toBe(false);
    }
  });

  it("is corrected by what was measured on the 100 mm square", async () => {
    expect(correctionOf(on("A4"))).toBeUndefined();
    const measured = on("A4", { x: 99.5, y: 100.25 });
    expect(correctionOf(measured)).toEqual({ x: 100 / 99.5, y: 100 / 100.25 });
    const [cover] = pagesOf(await templatesPdf(measured, false));
    const [outer] = paths(cover!);
    expect(outer!.points[1]![0] - outer!.points[0]![0]).toBeCloseTo((101.6 * 100) / 99.5, 3);
    expect(outer!.points[3]![1] - outer!.points[0]![1]).toBeCloseTo((101.6 * 100) / 100.25, 3);
  });

  it("of more than 60 pages is made only with force", () => {
    const pages = [10, 30].map((overlap) => {
      const few = on("125x150");
      const of = { ...few, job: { ...few.job, print: { ...few.job.print, overlap } } };
      const count = 1 + tilingsOf(of, true).reduce((sum, { pages }) => sum + pages.length, 0);
      if (count <= 60) expect(tilingsOf(of, false)).toHaveLength(tilings.length);
      else {
        const message = `print.paper: the templates take ${count} pages of 125x150; choose a larger paper or full, or give --force to print them all`;
        expect(() => tilingsOf(of, false)).toThrow(expect.objectContaining({ kind: "impossible", message }));
      }
      return count;
    });
    expect(pages[0]).toBeLessThanOrEqual(60);
    expect(pages[1]).toBeGreaterThan(60);
  });

  describe("on narrow paper", () => {
    const narrow = makePlan(
      readJob(
        `title: ${"Half-size tool ".repeat(30)}\nblank: {diameter: 500, focal-ratio: 3.3, thickness: 50, bevel: 2}\ntool: {diameter: 200}\npieces: {item: din-934-m10}\nlayout: {count: 5}\nsetup: {stroke: 160}\ncontainer: {shape: round, diameter: 230, height: 240}\nprint: {paper: 148x210 mm}\n`,
      ),
    );
    const onPaper = (paper: string, measured?: { x: number; y: number }) => ({
      ...narrow,
      job: { ...narrow.job, print: { ...narrow.job.print, paper, ...(measured && { measured }) } },
    });

    it.each([
      ["148x210 mm", undefined],
      ["122x148 mm", undefined],
      ["122x148 mm", { x: 99.9, y: 100.1 }],
    ])("%s has all its words on every page, squares and version with them", async (paper, measured) => {
      for (const page of pagesOf(await templatesPdf(onPaper(paper, measured), true))) {
        const said = words(page).join(" ");
        expect(said).toContain(`casting ${narrow.generator.version}`);
        expect(said).toContain("PRINT AT 100 %");
        const shown = page.items.filter(
          ({ kind, points: [at] }) => kind === "text" && at![0] > 0 && at![0] < page.width,
        );
        for (const { points, size } of shown.filter(({ text }) => /casting|PRINT/.test(text!))) {
          expect(points[0]![1]).toBeLessThanOrEqual(page.height - 10);
          expect(size).toBeGreaterThan(1.7);
        }
        const squares = paths(page).filter(({ points: [a, b] }) => b && Math.abs(Math.abs(b[0] - a![0]) - 101.6) < 0.2);
        expect(squares.length).toBeGreaterThan(0);
        for (const [x, y] of squares.flatMap(({ points }) => points)) {
          expect([x >= 9.9, y >= 9.9, x <= page.width - 9.9, y <= page.height - 9.9]).toEqual([true, true, true, true]);
        }
      }
    });

    it("has no page for the cross in the middle of the retainer alone", () => {
      const { pages, columns, rows, drawn } = tilingsOf(narrow, true).find(({ sheet }) => sheet.name === "retainer")!;
      expect(pages.length).toBeLessThan(columns * rows);
      for (const { window } of pages) {
        const own = drawn.filter(({ shape }) => !("aid" in shape)).filter((line) => touches(line, window));
        expect(own.length).toBeGreaterThan(0);
      }
      expect(drawn.filter(({ shape }) => "aid" in shape)).toHaveLength(2);
    });
  });

  it("has no sheet that a job does not need", () => {
    expect(tilings.map(({ sheet }) => sheet.name)).toEqual(["placement", "grooves", "form", "dam"]);
  });
});

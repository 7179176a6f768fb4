import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { groovesSheet } from "../../packages/casting-core/src/drawing/channels.js";
import { textBox } from "../../packages/casting-core/src/drawing/ink.js";
import { textWidth } from "../../packages/casting-core/src/drawing/letters.js";
import { placementSheet } from "../../packages/casting-core/src/drawing/placement.js";
import type { Shape, Sheet, Text } from "../../packages/casting-core/src/drawing/sheet.js";
import { SHEETS } from "../../packages/casting-core/src/drawing/sheets.js";
import { pointToOutline } from "../../packages/casting-core/src/geometry/distance.js";
import { convexContains } from "../../packages/casting-core/src/geometry/polygon.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { pieceKinds } from "../../packages/casting-core/src/pieces/kinds.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";
import { VERSION } from "../../packages/casting-core/src/version.js";
import { casting, contents, emptyFolder } from "../cli/support.js";
import { pointToRect } from "../support/rects.js";

const plan = makePlan(readJob(readFileSync("fixtures/sample.yaml", "utf8")));
const group = (sheet: Sheet, id: string): readonly Shape[] => sheet.groups.find((one) => one.id === id)!.shapes;
const corners = (shape: Shape) => (shape.kind === "polygon" || shape.kind === "polyline" ? shape.points : []);

/** The tool's axis on a sheet: the centre of its edge. */
function axisOf(sheet: Sheet): readonly [number, number] {
  const edge = group(sheet, "tool-edge")[0]!;
  if (edge.kind !== "circle") throw new Error("the tool's edge is a circle");
  expect(edge.radius).toBe(plan.tool.diameter / 2);
  return edge.centre;
}

describe("the placement sheet", () => {
  it("has every piece at its true place and size, y up, as the plan has it", () => {
    const sheet = placementSheet(plan);
    const [x, y] = axisOf(sheet);
    group(sheet, "pieces").forEach((shape, n) => {
      expect(corners(shape).map(([px, py]) => [px - x, y - py].map((value) => Number(value.toFixed(9))))).toEqual(
        plan.layout.pieces[n]!.outline.map((corner) => corner.map((value) => Number(value.toFixed(9)))),
      );
    });
  });

  it("says the least gap that was proved, and what its dashed circles are", () => {
    const { facts } = placementSheet(plan);
    expect(facts.join(" ")).toContain(`least gap ${Number(plan.layout.quality.gapMin!.toFixed(3))} mm`);
    expect(facts.join(" ")).toContain("Dashed: the rim of 3 mm");
  });

  it("has a number in every piece", () => {
    const words = group(placementSheet(plan), "labels").flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));
    for (const { id } of plan.layout.pieces) expect(words).toContain(String(id));
  });
});

describe("the numbers of pieces with a bore", () => {
  const bored = (tool: number, pieces: string) =>
    makePlan(readJob(`blank: {diameter: ${tool + 40}, radius: 3000}\ntool: {diameter: ${tool}}\npieces: ${pieces}\n`));
  it.each([
    [
      "narrow, in triangles",
      bored(260, "{shape: triangle, across: 28.575, thickness: 6, density: 2.4, bore: 3.175}"),
      3,
    ],
    ["of 4 mm, in hexagons", bored(200, "{shape: hexagon, across: 18, thickness: 6, density: 2.4, bore: 4}"), 3],
    ["of nuts", bored(200, "{item: din-934-m10}"), 3],
    ["of washers", bored(200, "{shape: round, diameter: 24, thickness: 3, density: 7.8, bore: 6}"), 3],
    ["of narrow rings", bored(200, "{shape: round, diameter: 24, thickness: 3, density: 7.8, bore: 20}"), 3],
  ])("stand clear of bores %s, inside the piece and of one size", (_, plan, least) => {
    const sheet = placementSheet(plan);
    const edge = group(sheet, "tool-edge")[0]!;
    const [x, y] = edge.kind === "circle" ? edge.centre : [0, 0];
    const numbers = group(sheet, "labels").filter(
      (shape): shape is Text => shape.kind === "text" && /^\d+$/.test(shape.text),
    );
    expect(numbers.map(({ text }) => Number(text))).toEqual(plan.layout.pieces.map(({ id }) => id));
    expect(new Set(numbers.map(({ size }) => size)).size).toBe(1);
    expect(numbers[0]!.size).toBeGreaterThan(least);
    const bore = pieceKinds(plan.job)[0]!.bore / 2;
    numbers.forEach((number, n) => {
      const piece = plan.layout.pieces[n]!;
      const box = textBox(number);
      const corners = [0, 1].flatMap((right) =>
        [0, 1].map((low): [number, number] => [box.x + right * box.width - x, y - box.y - low * box.height]),
      );
      const far = corners.map(([cx, cy]) => Math.hypot(cx - piece.x, cy - piece.y));
      const near = pointToRect([piece.x + x, y - piece.y], box);
      expect(near > bore + 0.3 || Math.max(...far) < bore - 0.1).toBe(true);
      for (const corner of corners) {
        if (near > bore) expect(pointToOutline(corner, piece.outline)).toBeGreaterThan(0.3);
        expect(convexContains(piece.outline, corner)).toBe(true);
      }
    });
  });
});

describe("what may be added to the placement sheet", () => {
  const print = { ...plan.job.print, guides: { sectors: 7, rings: 2 } };
  const guided = { ...plan, job: { ...plan.job, print } };
  const grey = (sheet: Sheet) =>
    group(sheet, "marks").filter((shape) => shape.kind === "polyline" && shape.style.ink === "grey");

  it("is nothing by itself", () => {
    expect(grey(placementSheet(plan))).toEqual([]);
  });

  it("is sector lines and rings that keep 0.6 mm from every piece", () => {
    const sheet = placementSheet(guided);
    const [x, y] = axisOf(sheet);
    const points = grey(sheet).flatMap(corners);
    expect(points.length).toBeGreaterThan(500);
    for (const [px, py] of points) {
      const at: [number, number] = [px - x, y - py];
      for (const piece of plan.layout.pieces) {
        if (Math.hypot(piece.x - at[0], piece.y - at[1]) > 20) continue;
        expect(pointToOutline(at, piece.outline)).toBeGreaterThan(0.599);
      }
    }
  });

  it("is the mirror's edge where the paper is large enough, concentric with the tool", () => {
    const circlesOf = (paper: string) => {
      const sheet = placementSheet({ ...plan, job: { ...plan.job, print: { ...plan.job.print, paper } } });
      const circles = group(sheet, "marks").filter((shape) => shape.kind === "circle" && shape.radius === 200);
      if (circles[0]?.kind === "circle") {
        expect(circles[0].centre).toEqual(axisOf(sheet));
        expect(circles[0].centre[0]).toBeGreaterThanOrEqual(210);
        expect(sheet.bodyHeight).toBeGreaterThanOrEqual(420);
      }
      return circles.length;
    };
    expect(["A4", "A2", "A1", "full"].map(circlesOf)).toEqual([0, 0, 1, 1]);
  });
});

describe("the groove sheet", () => {
  it("says that nothing is to be cut where that is so, not in what order", () => {
    const one = makePlan(
      readJob("{blank: {diameter: 100, radius: 800}, tool: {diameter: 40}, pieces: {item: iso-4032-m16}}"),
    );
    expect(one.grooves.cuts).toEqual([]);
    const facts = groovesSheet(one).facts.join(" ");
    expect(facts).toContain("Nothing is to be cut.");
    expect(facts).not.toMatch(/in the order|dashed/);
    expect(groovesSheet(plan).facts.join(" ")).toMatch(/in the order of their numbers.* Leave the dashed/);
  });

  it("is mirrored left to right, and only that", () => {
    const sheet = groovesSheet(plan);
    const [x, y] = axisOf(sheet);
    const cut = plan.grooves.edges.filter((edge) => edge.cut);
    expect(group(sheet, "grooves")).toHaveLength(cut.length);
    group(sheet, "grooves").forEach((shape, n) => {
      expect(corners(shape).map(([px, py]) => [x - px, y - py].map((value) => Number(value.toFixed(9))))).toEqual(
        cut[n]!.points.map((point) => point.map((value) => Number(value.toFixed(9)))),
      );
    });
  });
});

describe("every sheet", () => {
  it.each(Object.keys(SHEETS))(
    "%s carries the check squares, title, seed, version, and stays inside its margins",
    (name) => {
      const sheet = SHEETS[name as keyof typeof SHEETS](plan);
      if (!sheet) return expect(["readings"]).toContain(name);
      const sides = group(sheet, "scale-check")
        .filter((shape) => shape.kind === "polygon")
        .map((shape) => {
          const xs = corners(shape).map(([x]) => x);
          return Number((Math.max(...xs) - Math.min(...xs)).toFixed(9));
        });
      expect(sides.sort((a, b) => a - b)).toEqual([100, 101.6]);
      const words = group(sheet, "labels")
        .flatMap((shape) => (shape.kind === "text" ? [shape.text] : []))
        .join("\n");
      for (const part of [plan.job.title, "PRINT AT 100 %", "seed 1", `casting ${VERSION}`])
        expect(words).toContain(part);
      for (const { shapes } of sheet.groups) {
        for (const [x, y] of shapes.flatMap(corners)) {
          expect(x).toBeGreaterThanOrEqual(9.99);
          expect(y).toBeGreaterThanOrEqual(9.99);
          expect(x).toBeLessThanOrEqual(sheet.width - 9.99);
          expect(y).toBeLessThanOrEqual(sheet.height - 9.99);
        }
      }
    },
  );
});

describe.each(["sample", "inches", "large-mixed"])("the words on the sheets of %s", (name) => {
  // DejaVu Sans, which many viewers take for lack of Helvetica, was measured up to 14 % wider on these sheets.
  it("stay on the sheet in a wider letter", () => {
    const own = makePlan(readJob(readFileSync(`fixtures/${name}.yaml`, "utf8")));
    for (const draw of Object.values(SHEETS)) {
      const sheet = draw(own);
      for (const shape of sheet?.groups.flatMap(({ shapes }): readonly Shape[] => shapes) ?? []) {
        if (shape.kind !== "text") continue;
        const width = 1.14 * textWidth(shape.text, shape.size);
        const left = shape.at[0] - { start: 0, middle: 0.5, end: 1 }[shape.align] * width;
        expect(left).toBeGreaterThan(0);
        expect(left + width).toBeLessThan(sheet!.width);
      }
    }
  });
});

describe("circles kept clear of pieces", () => {
  const job = readJob(
    readFileSync("fixtures/sample.yaml", "utf8")
      .replace("layout:", "layout:\n  keep-clear: [{x: 60 mm, y: 20 mm, diameter: 30 mm}]")
      .replace("length: 48 mm}", "length: 48 mm, foot: glass}"),
  );
  const kept = makePlan(job);
  const discs = (sheet: Sheet, mirrored: boolean) => {
    const edge = group(sheet, "tool-edge")[0]!;
    const [x, y] = edge.kind === "circle" ? edge.centre : [0, 0];
    return group(sheet, "marks").flatMap((shape) => {
      if (shape.kind !== "circle" || shape.radius > 100) return [];
      const across = shape.centre[0] - x;
      return [[mirrored ? -across : across, y - shape.centre[1], shape.radius].map((value) => Math.round(value) + 0)];
    });
  };

  it("are drawn on both templates, the foot of a socket on the glass among them", () => {
    const wanted = [
      [60, 20, 15],
      [0, 0, 14],
    ];
    expect(discs(placementSheet(kept), false)).toEqual(expect.arrayContaining(wanted));
    expect(discs(groovesSheet(kept), true)).toEqual(wanted);
    // On a page of the PDF a line of its own tells them from round pieces.
    const lines = (id: string) =>
      group(groovesSheet(kept), id).flatMap((shape) =>
        shape.kind === "circle" || shape.kind === "polygon" ? [JSON.stringify(shape.style)] : [],
      );
    expect(lines("marks").filter((style) => lines("outlines").includes(style))).toEqual([]);
    expect(placementSheet(kept).facts.join(" ")).toContain(
      "Dashed: the rim of 3 mm and the job's circles and the socket's foot, kept clear of pieces.",
    );
    expect(groovesSheet(kept).facts.join(" ")).toContain("Grey: the pieces, and the circles kept clear of them.");
  });
});

describe("SVG files", () => {
  it("say the same in millimetres, and bear any title", async () => {
    const folder = emptyFolder();
    const job = readFileSync("fixtures/sample.yaml", "utf8").replace(
      /title: .*/,
      `title: "</title><script>alert(1)</script> & ]]> \\" שלום"`,
    );
    const { writeFileSync } = await import("node:fs");
    writeFileSync(`${folder}/job.yaml`, job);
    expect((await casting("make", `${folder}/job.yaml`, "--quiet")).err).toBe("");
    const files = contents(`${folder}/job`);
    const svg = files["placement.svg"]!;
    const polygons = [...svg.matchAll(/data-piece="(\d+)" points="([^"]+)"/g)];
    expect(polygons).toHaveLength(plan.layout.pieces.length);
    const sheet = placementSheet(plan);
    const drawn = corners(group(sheet, "pieces")[4]!);
    const written = polygons[4]![2]!.split(" ").map((pair) => pair.split(",").map(Number));
    written.forEach(([x, y], n) => {
      expect(x).toBeCloseTo(drawn[n]![0], 3);
      expect(y).toBeCloseTo(drawn[n]![1], 3);
    });
    for (const [name, text] of Object.entries(files))
      if (/svg|html/.test(name)) expect(`${name} ${text.includes("<script")}`).toBe(`${name} false`);
    expect(files["job-sheet.html"]).toContain("&lt;script&gt;");
  });
});

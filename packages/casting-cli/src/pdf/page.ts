import {
  CHECK,
  checkSquares,
  columnName,
  fitted,
  inBody,
  MARGIN,
  type Page,
  type Plan,
  PRINT_WORDS,
  paperOf,
  type Shape,
  type Tiling,
  wrapped,
} from "casting-core";
import type PDFDocument from "pdfkit";
import { drawShape, latin } from "./shapes.js";

/** Points in a millimetre. */
const POINTS = 72 / 25.4;
const SIZE = 3.4;
const LEADING = 4.6;

/** What every page is drawn with. */
export interface Press {
  pdf: PDFDocument;
  plan: Plan;
  /** Pages in all. */
  count: number;
  correction: { x: number; y: number } | undefined;
}

/** One page of a sheet: the part of the drawing in its window, the check squares, marks to join it, and words. */
export function drawPage(press: Press, tiling: Tiling, page: Page, number: number): void {
  const { pdf } = press;
  begin(press, page.width, page.height);
  const { window, at } = page;
  pdf.save();
  if (!page.whole) pdf.rect(at[0], at[1], window.width, window.height).clip();
  pdf.translate(at[0] - window.x, at[1] - window.y);
  for (const { id, shapes } of tiling.sheet.groups) {
    if (!page.whole && id === "scale-check") continue;
    for (const shape of shapes) if (page.whole || inBody(shape, tiling.sheet)) drawShape(pdf, shape);
  }
  pdf.restore();
  if (!page.whole) {
    for (const shape of joins(tiling, page)) drawShape(pdf, shape);
    // The squares alone may lie over the drawing; what they are stands in the words below.
    for (const shape of checkSquares(page.check).shapes) if (shape.kind !== "text") drawShape(pdf, shape);
    words(press, page.width, page.height - MARGIN - 4 * LEADING - 1, [
      `${page.name === "" ? "" : `Page ${page.name}: `}${tiling.sheet.caption}. Page ${number} of ${press.count}.`,
      tiling.sheet.facts[0] ?? "",
      press.plan.job.title,
      PRINT_WORDS.join(" "),
      `${tiling.sheet.facts[1] ?? ""} Seed ${press.plan.layout.seed}, casting ${press.plan.generator.version}.`,
    ]);
  } else {
    const line = `Page ${number} of ${press.count}.`;
    drawShape(pdf, {
      kind: "text",
      at: [page.width - MARGIN, page.height - MARGIN],
      text: line,
      size: SIZE,
      align: "end",
    });
  }
  pdf.restore();
}

/** Trim lines where a neighbour follows, and on each shared edge two crosses that name the neighbour. */
function joins(tiling: Tiling, page: Page): Shape[] {
  const { at, window } = page;
  const { overlap } = tiling;
  const shapes: Shape[] = [];
  const half = overlap / 2;
  const [right, bottom] = [at[0] + window.width, at[1] + window.height];
  const neighbour = (column: number, row: number) =>
    tiling.pages.some((other) => other.column === column && other.row === row)
      ? `${columnName(column)}${row + 1}`
      : undefined;
  const cross = ([x, y]: readonly [number, number], name: string, dx: number, dy: number): void => {
    shapes.push({
      kind: "polyline",
      points: [
        [x - 3, y],
        [x + 3, y],
      ],
      style: { line: 0.25 },
    });
    shapes.push({
      kind: "polyline",
      points: [
        [x, y - 3],
        [x, y + 3],
      ],
      style: { line: 0.25 },
    });
    shapes.push({ kind: "text", at: [x + dx, y + dy], text: name, size: SIZE, align: dx < 0 ? "end" : "start" });
  };
  const sides = [
    { name: neighbour(page.column - 1, page.row), x: at[0] + half, upright: true, dx: 1.5 },
    { name: neighbour(page.column + 1, page.row), x: right - half, upright: true, dx: -1.5 },
    { name: neighbour(page.column, page.row - 1), y: at[1] + half, upright: false, dx: 1.5 },
    { name: neighbour(page.column, page.row + 1), y: bottom - half, upright: false, dx: 1.5 },
  ];
  for (const { name, x, y, dx } of sides) {
    if (name === undefined) continue;
    const dash = { line: 0.2, dash: [1.5, 1.5], ink: "grey" } as const;
    for (const share of [0.25, 0.75]) {
      const spot = [x ?? at[0] + window.width * share, y ?? at[1] + window.height * share] as const;
      cross(spot, `to ${name}`, dx, -1.2);
    }
    if (x !== undefined)
      shapes.push({
        kind: "polyline",
        points: [
          [x, at[1]],
          [x, bottom],
        ],
        style: dash,
      });
    if (y !== undefined)
      shapes.push({
        kind: "polyline",
        points: [
          [at[0], y],
          [right, y],
        ],
        style: dash,
      });
  }
  return shapes;
}

/** The first page: what to do, the check squares, and for each sheet a map of its pages. */
export function drawCover(press: Press, tilings: readonly Tiling[]): void {
  const { plan } = press;
  const paper = paperOf(plan.job.print.paper, plan.job.units);
  const [width, height] = paper.full ? [210, 297] : [paper.width, paper.height];
  begin(press, width, height);
  const room = width - 2 * MARGIN;
  let y = words(press, width, MARGIN + 5, [
    plan.job.title,
    `${PRINT_WORDS.join(" ")} No fitting, no shrinking; measure before cutting anything.`,
    "Join the pages: trim along one dashed line of each shared edge, lay cross on cross, tape. Then measure across the whole sheet.",
    `Seed ${plan.layout.seed}, casting ${plan.generator.version}, paper ${plan.job.print.paper}, ${press.count} pages with this one.`,
  ]);
  for (const shape of checkSquares([MARGIN, y + 2]).shapes) drawShape(press.pdf, shape);
  y += CHECK.inch + 10;
  const columns = Math.max(1, Math.floor((room + 6) / 60));
  const cell = (room + 6) / columns;
  const rowHeight = Math.min(58, (height - MARGIN - y) / Math.ceil(tilings.length / columns));
  tilings.forEach((tiling, index) => {
    map(
      press,
      tiling,
      [MARGIN + (index % columns) * cell, y + Math.floor(index / columns) * rowHeight],
      cell - 6,
      rowHeight - 4,
    );
  });
  press.pdf.restore();
}

/** A small picture of how the pages of a sheet lie. */
function map({ pdf }: Press, tiling: Tiling, [x, y]: readonly [number, number], width: number, height: number): void {
  const { sheet, pages, columns, rows } = tiling;
  const label = fitted(latin(sheet.caption), SIZE, width);
  drawShape(pdf, { kind: "text", at: [x, y + SIZE], text: label, size: SIZE, align: "start" });
  const first = pages[0];
  if (!first) return;
  const scale = Math.min(
    (width - 1) / (columns * first.window.width),
    (height - SIZE - 5) / (rows * first.window.height),
  );
  const [w, h] = [first.window.width * scale, first.window.height * scale];
  for (const page of pages) {
    const corner = [x + page.column * w, y + SIZE + 3 + page.row * h] as const;
    const points = [
      corner,
      [corner[0] + w, corner[1]],
      [corner[0] + w, corner[1] + h],
      [corner[0], corner[1] + h],
    ] as const;
    drawShape(pdf, { kind: "polygon", points: points.map(([a, b]) => [a, b]), style: { line: 0.25 } });
    const name = page.name === "" ? "1" : page.name;
    const size = Math.min(SIZE, h * 0.6);
    drawShape(pdf, {
      kind: "text",
      at: [corner[0] + w / 2, corner[1] + h / 2 + 0.36 * size],
      text: name,
      size,
      align: "middle",
    });
  }
}

/** A page of the given size, in millimetres, corrected for a printer that is off. */
function begin({ pdf, correction }: Press, width: number, height: number): void {
  pdf.addPage({ size: [width * POINTS, height * POINTS], margin: 0 });
  pdf.save();
  pdf.scale(POINTS * (correction?.x ?? 1), POINTS * (correction?.y ?? 1));
}

/** Lines of words from `y` down; returns where they end. */
function words({ pdf, correction }: Press, width: number, y: number, lines: readonly string[]): number {
  const stamp = correction
    ? [`Corrected for a measured printer: x ${percent(correction.x)}, y ${percent(correction.y)}.`]
    : [];
  let down = y;
  for (const line of [...lines, ...stamp]) {
    for (const part of wrapped(fitted(latin(line), SIZE, 6 * width), SIZE, width - 2 * MARGIN)) {
      drawShape(pdf, { kind: "text", at: [MARGIN, down], text: part, size: SIZE, align: "start" });
      down += LEADING;
    }
  }
  return down;
}

function percent(factor: number): string {
  return `${(factor * 100).toFixed(2)} %`;
}

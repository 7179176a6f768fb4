import { CHECK, checkSquares, latin, MARGIN, PRINT_WORDS, paperOf, type Tiling, wrapped } from "casting-core";
import { begin, LEADING, type Press, SIZE, words } from "./page.js";
import { drawShape } from "./shapes.js";

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
  const lines = wrapped(latin(sheet.caption), SIZE, width);
  lines.forEach((text, n) => {
    drawShape(pdf, { kind: "text", at: [x, y + SIZE + n * LEADING], text, size: SIZE, align: "start" });
  });
  const top = y + SIZE + (lines.length - 1) * LEADING + 3;
  const first = pages[0];
  if (!first) return;
  const scale = Math.min(
    (width - 1) / (columns * first.window.width),
    (y + height - top - 2) / (rows * first.window.height),
  );
  const [w, h] = [first.window.width * scale, first.window.height * scale];
  for (const page of pages) {
    const corner = [x + page.column * w, top + page.row * h] as const;
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

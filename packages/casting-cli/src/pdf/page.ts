import {
  fitted,
  grown,
  latin,
  MARGIN,
  overlap,
  type Page,
  type Plan,
  PRINT_WORDS,
  pageMarks,
  type Shape,
  type Tiling,
  wrapped,
} from "casting-core";
import type PDFDocument from "pdfkit";
import { drawShape } from "./shapes.js";

/** Points in a millimetre. */
const POINTS = 72 / 25.4;
export const SIZE = 3.4;
export const LEADING = 4.6;

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
  for (const shape of page.whole ? tiling.sheet.groups.flatMap(({ shapes }) => shapes) : shapesIn(tiling, page))
    drawShape(pdf, shape);
  pdf.restore();
  if (!page.whole) {
    for (const shape of pageMarks(tiling, page)) drawShape(pdf, shape);
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

/** What of the drawing can be seen on a page; with room for a line's width and for letters that hang or run wider. */
function shapesIn({ drawn }: Tiling, { window }: Page): Shape[] {
  return drawn
    .filter(({ bounds, solid }) => overlap(grown(bounds, solid ? bounds.width : 1), window))
    .map(({ shape }) => shape);
}

/** A page of the given size, in millimetres, corrected for a printer that is off. */
export function begin({ pdf, correction }: Press, width: number, height: number): void {
  pdf.addPage({ size: [width * POINTS, height * POINTS], margin: 0 });
  pdf.save();
  pdf.scale(POINTS * (correction?.x ?? 1), POINTS * (correction?.y ?? 1));
}

/** Lines of words from `y` down; returns where they end. */
export function words({ pdf, correction }: Press, width: number, y: number, lines: readonly string[]): number {
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

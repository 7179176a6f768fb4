import {
  FOOTER,
  fitted,
  grown,
  latin,
  MARGIN,
  overlap,
  type Page,
  type Plan,
  PRINT_WORDS,
  type Shape,
  type Tiling,
  wrapped,
} from "casting-core";
import type PDFDocument from "pdfkit";
import { drawShape } from "./shapes.js";

/** Points in a millimetre. */
const POINTS = 72 / 25.4;
/** Size of the words, mm, and from line to line as a share of it. */
export const SIZE = 3.4;
export const LEADING = 4.6 / SIZE;

/** What every page is drawn with. */
export interface Press {
  pdf: PDFDocument;
  plan: Plan;
  /** Pages in all. */
  count: number;
  correction: { x: number; y: number } | undefined;
}

/** One page of a sheet: the part of the drawing in its window, the check squares and marks to join it, and words. */
export function drawPage(press: Press, tiling: Tiling, page: Page, marks: readonly Shape[], number: number): void {
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
    for (const shape of marks) drawShape(pdf, shape);
    const { job, layout, generator } = press.plan;
    const { caption, facts } = tiling.sheet;
    const room = page.width - 2 * MARGIN;
    const foot = lettered(room, FOOTER - 1.5, [
      `${page.name === "" ? "" : `Page ${page.name}: `}${caption}. Page ${number} of ${press.count}.`,
      facts[0] ?? "",
      fitted(latin(job.title), SIZE, room),
      PRINT_WORDS.join(" "),
      `${facts[1] ?? ""} Seed ${layout.seed}, casting ${generator.version}.`,
      ...stamp(press),
    ]);
    write(press, [MARGIN, page.height - MARGIN - 1 - foot.height], foot);
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
  pdf.scale(POINTS * (correction?.x ?? 1), POINTS * (correction?.y ?? 1)).lineJoin("round");
}

/** Lines of words of one size, and how high they are together. */
interface Lettered {
  parts: readonly string[];
  size: number;
  height: number;
}

/** `lines` broken to a width, in letters as large as the height allows: nothing of them is cut off. */
export function lettered(width: number, height: number, lines: readonly string[]): Lettered {
  for (let size = SIZE; ; size *= 0.95) {
    const parts = lines.flatMap((line) => wrapped(latin(line), size, width));
    const high = size * (1 + (parts.length - 1) * LEADING);
    // Below a tenth of a millimetre no room is left at all.
    if (high <= height || size < 0.1) return { parts, size, height: high };
  }
}

/** Words from their upper left corner down. */
export function write({ pdf }: Press, [x, y]: readonly [number, number], { parts, size }: Lettered): void {
  parts.forEach((text, n) => {
    drawShape(pdf, { kind: "text", at: [x, y + size * (1 + n * LEADING)], text, size, align: "start" });
  });
}

/** What a page says that is corrected for a printer. */
export function stamp({ correction }: Press): string[] {
  if (!correction) return [];
  return [`Corrected for a measured printer: x ${percent(correction.x)}, y ${percent(correction.y)}.`];
}

function percent(factor: number): string {
  return `${(factor * 100).toFixed(2)} %`;
}

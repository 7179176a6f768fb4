import type { Point } from "../geometry/types.js";
import { CHECK, MARGIN } from "./block.js";
import { boundsOf, grown, type Ink, inkOf, type Rect, touches } from "./ink.js";
import { FOOTER, type PrintPaper } from "./paper.js";
import type { Shape, Sheet } from "./sheet.js";
import { squaresPlaces } from "./squares-place.js";

/** One page of a sheet. Lengths mm on the paper, y down. */
export interface Page {
  width: number;
  height: number;
  /** Column letter and row number, such as `B2`; empty where the sheet is one page. */
  name: string;
  column: number;
  row: number;
  /** Part of the sheet that is drawn: its upper left corner and size on the sheet. */
  window: Rect;
  /** Where the window's upper left corner lies on the paper. */
  at: Point;
  /** Whether the whole sheet with its block stands on this page. */
  whole: boolean;
  /** Upper left corner of the page's check squares on the paper: the place with least drawn in it. */
  check: Point;
}

/** A shape of a sheet and its lines. */
export interface Drawn extends Ink {
  shape: Shape;
}

/** The pages of one sheet, with those that hold nothing, or only aids, left out. */
export interface Tiling {
  sheet: Sheet;
  columns: number;
  rows: number;
  overlap: number;
  pages: Page[];
  /** The sheet's drawing, its block left out: what is added to a page keeps clear of it. Nothing for one whole page. */
  drawn: readonly Drawn[];
}

/** Half a firm line's width. */
const SPARE = 0.3;

/** Pages of `sheet` on `paper`, turned whichever way takes fewer; neighbours share `overlap` mm. */
export function tile(sheet: Sheet, paper: PrintPaper, overlap: number): Tiling {
  if (paper.full) return single(sheet, sheet.width, sheet.height);
  const ways = [
    [paper.width, paper.height],
    [paper.height, paper.width],
  ] as const;
  for (const [width, height] of ways) {
    // The sheet's own margin is as wide as the page's.
    if (sheet.width <= width && sheet.height <= height) return single(sheet, width, height);
  }
  const lines = inked(sheet);
  const body = grown(boundsOf(cornersOf(lines)), SPARE);
  // Upright every paper holds the check squares and the words below them.
  const [upright, across] = ways
    .filter(([, height]) => height >= CHECK.inch + 2 * MARGIN + FOOTER)
    .map(([width, height]) => gridOf(body, width, height, overlap));
  return tiled(sheet, lines, across && pagesOf(lines, across) < pagesOf(lines, upright!) ? across : upright!);
}

function single(sheet: Sheet, width: number, height: number): Tiling {
  const window = { x: 0, y: 0, width: sheet.width, height: sheet.height };
  const at: Point = [(width - sheet.width) / 2, (height - sheet.height) / 2];
  const page = { width, height, name: "", column: 0, row: 0, window, at, whole: true, check: at };
  return { sheet, columns: 1, rows: 1, overlap: 0, pages: [page], drawn: [] };
}

/** How a drawing is divided into pages of one size. */
interface Grid {
  width: number;
  height: number;
  columns: number;
  rows: number;
  shared: number;
  /** The part of the drawing on one page; `right` and `down` share out what the pages have to spare. */
  window(column: number, row: number, right: number, down: number): Rect;
}

/** Two corners of the rectangle round each line. */
function cornersOf(lines: readonly Ink[]): Point[] {
  const corners: Point[] = [];
  for (const { bounds } of lines) {
    corners.push([bounds.x, bounds.y], [bounds.x + bounds.width, bounds.y + bounds.height]);
  }
  return corners;
}

function gridOf(body: Rect, width: number, height: number, overlap: number): Grid {
  const room = { width: width - 2 * MARGIN, height: height - 2 * MARGIN - FOOTER };
  const shared = Math.min(overlap, room.width / 3, room.height / 3);
  const columns = Math.max(1, Math.ceil((body.width - shared) / (room.width - shared) - 1e-9));
  const rows = Math.max(1, Math.ceil((body.height - shared) / (room.height - shared) - 1e-9));
  const spread = { x: columns * (room.width - shared) + shared, y: rows * (room.height - shared) + shared };
  const slack = { x: spread.x - body.width, y: spread.y - body.height };
  const window = (column: number, row: number, right: number, down: number): Rect => ({
    x: body.x - right * slack.x + column * (room.width - shared),
    y: body.y - down * slack.y + row * (room.height - shared),
    ...room,
  });
  return { width, height, columns, rows, shared, window };
}

/** Pages of the grid that hold anything. */
function pagesOf(lines: readonly Drawn[], { columns, rows, window }: Grid): number {
  let count = 0;
  for (let n = 0; n < columns * rows; n++) {
    const page = window(n % columns, Math.floor(n / columns), 0.5, 0.5);
    if (holdsAny(lines, page)) count++;
  }
  return count;
}

/** Whether a page shows anything that is worth one: more than aids. */
function holdsAny(lines: readonly Drawn[], window: Rect): boolean {
  return lines.some((each) => !("aid" in each.shape) && touches(each, window));
}

function tiled(sheet: Sheet, lines: readonly Drawn[], { width, height, columns, rows, shared, ...grid }: Grid): Tiling {
  const placeIn = squaresPlaces(lines, shared);
  const laid = (right: number, down: number) => {
    const pages: Page[] = [];
    let covered = 0;
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        const window = grid.window(column, row, right, down);
        if (!holdsAny(lines, window)) continue;
        const name = columns * rows === 1 ? "" : `${columnName(column)}${row + 1}`;
        const at: Point = [MARGIN, MARGIN];
        const place = placeIn(window, {
          left: column > 0,
          right: column < columns - 1,
          above: row > 0,
          below: row < rows - 1,
        });
        covered += place.covered;
        const check: Point = [at[0] + place.at[0], at[1] + place.at[1]];
        pages.push({ width, height, name, column, row, window, at, whole: false, check });
      }
    }
    return { pages, covered };
  };
  let best = laid(0.5, 0.5);
  // Where the pages lie in one row, what they have to spare across it may leave room for the squares on one side.
  if (rows === 1 || columns === 1) {
    for (const [right, down] of [rows === 1 ? [0.5, 0] : [0, 0.5], [0, 0]] as const) {
      if (best.covered === 0) break;
      const other = laid(right, down);
      if (other.covered < best.covered) best = other;
    }
  }
  return { sheet, columns, rows, overlap: shared, pages: best.pages, drawn: lines };
}

/** A, B … Z, AA, AB … */
export function columnName(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnName(Math.floor(column / 26) - 1) + letter;
}

/** Every shape of a sheet's drawing that reaches above its block. */
function inked(sheet: Sheet): Drawn[] {
  return sheet.groups
    .filter((group) => group.id !== "scale-check")
    .flatMap((group) => group.shapes)
    .map((shape) => ({ shape, ...inkOf(shape) }))
    .filter(({ bounds }) => bounds.y <= sheet.bodyHeight);
}

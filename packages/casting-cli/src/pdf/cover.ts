import { CHECK, checkSquares, fitted, latin, MARGIN, PRINT_WORDS, paperOf, type Tiling } from "casting-core";
import { begin, LEADING, lettered, type Press, SIZE, stamp, write } from "./page.js";
import { drawShape } from "./shapes.js";

/** Room below the check squares and between rows of maps, mm; lower rows have the words beside the map. */
const APART = 8;
const LOW = 30;
/** Lowest row of maps below the squares: for less they stand inside them. */
const LEAST = 14;

/** The first page: what to do, the check squares, and for each sheet a map of its pages. */
export function drawCover(press: Press, tilings: readonly Tiling[]): void {
  const { plan, count } = press;
  const paper = paperOf(plan.job.print.paper, plan.job.units);
  const [width, height] = paper.full ? [210, 297] : [paper.width, paper.height];
  begin(press, width, height);
  const room = width - 2 * MARGIN;
  const top = MARGIN + 5 - SIZE;
  const gap = LEADING * SIZE + 2;
  const said = lettered(room, height - MARGIN - CHECK.inch - gap - top, [
    fitted(latin(plan.job.title), SIZE, 2 * room),
    `${PRINT_WORDS.join(" ")} No fitting, no shrinking; measure before cutting anything.`,
    "Join the pages: trim along one dashed line of each shared edge, lay cross on cross, tape. Then measure across the whole sheet.",
    `Seed ${plan.layout.seed}, casting ${plan.generator.version}, paper ${plan.job.print.paper}, ${count} pages with this one.`,
    ...stamp(press),
  ]);
  write(press, [MARGIN, top], said);
  const squares = top + said.height + gap;
  for (const shape of checkSquares([MARGIN, squares]).shapes) drawShape(press.pdf, shape);
  const below = squares + CHECK.inch + APART;
  const columns = Math.max(1, Math.floor((room + 6) / 60));
  const place = { x: MARGIN, y: below, width: room + 6, height: height - MARGIN - below, columns };
  const inside = { x: MARGIN + 4, y: squares + 18, width: CHECK.metric, height: CHECK.metric - 18, columns: 2 };
  const rowOf = (area: typeof place) => area.height / Math.ceil(tilings.length / area.columns);
  const area = rowOf(place) < LEAST ? inside : place;
  const rowHeight = Math.min(58, rowOf(area));
  const cell = area.width / area.columns;
  tilings.forEach((tiling, index) => {
    const [column, row] = [index % area.columns, Math.floor(index / area.columns)];
    map(press, tiling, [area.x + column * cell, area.y + row * rowHeight], cell - 6, rowHeight - 4);
  });
  press.pdf.restore();
}

/** A small picture of how the pages of a sheet lie, below what the sheet is, or beside it where there is little height. */
function map(press: Press, tiling: Tiling, [x, y]: readonly [number, number], width: number, height: number): void {
  const { pdf } = press;
  const { sheet, pages, columns, rows } = tiling;
  const low = height + 4 < LOW;
  const caption = lettered(low ? width / 2 - 2 : width, height, [sheet.caption]);
  write(press, [x, y], caption);
  const [left, top, across] = low ? [x + width / 2, y, width / 2] : [x, y + caption.height + 3, width];
  const first = pages[0];
  if (!first) return;
  const scale = Math.min(
    (across - 1) / (columns * first.window.width),
    (y + height - top - 2) / (rows * first.window.height),
  );
  const [w, h] = [first.window.width * scale, first.window.height * scale];
  for (const page of pages) {
    const corner = [left + page.column * w, top + page.row * h] as const;
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

import { CastingError, type Plan, pageMarks, paperOf, SHEETS, type Sheet, type Tiling, tile } from "casting-core";
import { drawCover } from "./cover.js";
import { openDocument } from "./document.js";
import { drawPage, type Press } from "./page.js";

/** So many pages are printed only if asked for twice. */
export const MANY_PAGES = 60;

/** What the printed 100 mm square must be multiplied by to come out true. */
export function correctionOf({ job }: Plan): { x: number; y: number } | undefined {
  const { measured } = job.print;
  return measured && { x: 100 / measured.x, y: 100 / measured.y };
}

/** Every sheet of a plan on the pages of the job's paper. Throws `impossible` above 60 pages unless `force`. */
export function tilingsOf(plan: Plan, force: boolean): Tiling[] {
  const paper = paperOf(plan.job.print.paper, plan.job.units);
  const sheets = Object.values(SHEETS).flatMap((draw): Sheet[] => {
    const sheet = draw(plan);
    return sheet ? [sheet] : [];
  });
  const tilings = sheets.map((sheet) => tile(sheet, paper, plan.job.print.overlap));
  const count = pagesOf(tilings);
  if (count > MANY_PAGES && !force) {
    const text = `the templates take ${count} pages of ${plan.job.print.paper}; choose a larger paper or full, or give --force to print them all`;
    throw new CastingError("impossible", [{ path: ["print", "paper"], text }]);
  }
  return tilings;
}

/** Pages in all, the cover among them. */
function pagesOf(tilings: readonly Tiling[]): number {
  return 1 + tilings.reduce((sum, { pages }) => sum + pages.length, 0);
}

/**
 * All sheets at their true size as one PDF: a cover with the map of the pages, then every page. The same plan gives the
 * same bytes. Throws `impossible` above 60 pages unless `force`.
 */
export async function templatesPdf(plan: Plan, force: boolean): Promise<Uint8Array> {
  const tilings = tilingsOf(plan, force);
  const count = pagesOf(tilings);
  const { pdf, bytes } = await openDocument(plan.job.title);
  const press: Press = { pdf, plan, count, correction: correctionOf(plan) };
  drawCover(press, tilings);
  let number = 1;
  for (const tiling of tilings) {
    const marksOf = pageMarks(tiling);
    for (const page of tiling.pages) {
      number += 1;
      drawPage(press, tiling, page, marksOf(page), number);
    }
  }
  pdf.end();
  return await bytes;
}

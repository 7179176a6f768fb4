import type { Point } from "../geometry/types.js";
import type { Plan } from "../plan/types.js";
import { fitted, wrapped } from "./letters.js";
import { type Group, rectangle, type Shape, text } from "./sheet.js";

/** Printers cannot print the outer 4 to 7 mm: every mark stays this far inside, mm. */
export const MARGIN = 10;
/** Sides of the check squares, mm: 100 mm and 4 in. */
export const CHECK = { metric: 100, inch: 101.6 };
/** Text of the block, mm. */
const SIZE = 4;
const LEADING = 6;
/** Between the check squares and the words beside them, mm. */
const GUTTER = 6;
/** A viewer without Helvetica takes a wider letter: DejaVu Sans by 8 to 14 % (measured on these sheets' words); more is safe. */
const WIDER = 1.2;
/** Least width of the words, mm: the narrowest sheet then fits across A4. */
const WORDS = 82;

/** Least width of a sheet with a block, mm. */
export const BLOCK_WIDTH = 2 * MARGIN + CHECK.inch + GUTTER + WORDS;
/** Height of the block, mm. */
export const BLOCK_HEIGHT = CHECK.inch;

/** What stands on every page that is printed. */
export const PRINT_WORDS = ["PRINT AT 100 %, ACTUAL SIZE.", "Measure: inner square 100 mm, outer 4 in."] as const;

export type BlockPlan = Pick<Plan, "generator" | "job" | "layout" | "tool">;

/**
 * What every printed sheet carries, in a band as wide as the sheet with its upper edge at `top`: the check squares, and
 * beside them the job's title, what the sheet is, which side is up, key figures, seed and version.
 */
export function block(
  plan: BlockPlan,
  top: number,
  width: number,
  words: readonly string[],
): { labels: Shape[]; check: Group; facts: readonly string[] } {
  const left = MARGIN + CHECK.inch + GUTTER;
  const room = (width - left - MARGIN) / WIDER;
  const lines = [
    fitted(plan.job.title, SIZE, room),
    ...words.flatMap((line) => wrapped(line, SIZE, room)),
    ...PRINT_WORDS.flatMap((line) => wrapped(line, SIZE, room)),
    fitted(`seed ${plan.layout.seed}, casting ${plan.generator.version}`, SIZE, room),
  ];
  const leading = Math.min(LEADING, (BLOCK_HEIGHT - SIZE) / Math.max(1, lines.length - 1));
  return {
    facts: words,
    labels: lines.map((line, index) => text([left, top + SIZE + index * leading], line, SIZE)),
    check: checkSquares([MARGIN, top]),
  };
}

/** The two nested squares by the outer one's upper left corner. */
export function checkSquares([x, y]: Point): Group {
  const inset = (CHECK.inch - CHECK.metric) / 2;
  const style = { line: 0.2 };
  return {
    id: "scale-check",
    shapes: [
      rectangle([x, y], CHECK.inch, CHECK.inch, style),
      rectangle([x + inset, y + inset], CHECK.metric, CHECK.metric, style),
      text([x + 4, y + 8], "inner square: 100 mm", SIZE),
      text([x + 4, y + 14], "outer square: 4 in", SIZE),
    ],
  };
}

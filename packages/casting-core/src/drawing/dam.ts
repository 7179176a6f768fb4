import type { Plan } from "../plan/types.js";
import { belowGlass } from "../pour/dam.js";
import { roughLength } from "../units/figure-text.js";
import { lengthText } from "../units/length-text.js";
import { BLOCK_HEIGHT, BLOCK_WIDTH, block, MARGIN } from "./block.js";
import { DASHED, FIRM, line, rectangle, type Shape, type Sheet, THIN, text } from "./sheet.js";

const SIZE = 3.2;

/**
 * The dam as one strip at its true size, with the fill line, the underside of the former and the overlap; for a full-size
 * tool, whose dam goes round the blank itself, with the line where the glass begins.
 */
export function damSheet(plan: Plan): Sheet {
  const { pour, job } = plan;
  const { length, height, formerAt } = pour.dam;
  const left = MARGIN;
  const top = MARGIN + 6;
  const floor = top + height;
  const below = belowGlass(pour.dam, job.blank);
  const glass = floor - below;
  const width = Math.max(BLOCK_WIDTH, length + 2 * MARGIN);
  const bevel = (job.blank.bevel ?? 0) > 0;
  const mm = (value: number) => roughLength(value, job.units);
  const across = (up: number, style = THIN) => line([left, glass - up], [left + length, glass - up], style);
  const shapes: Shape[] = [rectangle([left, top], length, height, FIRM), across(pour.fill.edge)];
  const labels: Shape[] = [
    text([left + 4, glass - pour.fill.edge - 1.5], `FILL LINE ${mm(pour.fill.edge)} above the glass`, SIZE),
  ];
  if (below > 0) {
    shapes.push(across(0));
    labels.push(
      text([left + 4, glass - 1.5], `GLASS: the edge of its face${bevel ? ", over the bevel" : ""}`, SIZE),
      text([left + 4, floor - 2], "this edge down the blank's side", SIZE),
    );
  } else labels.push(text([left + 4, floor - 2], "this edge on the glass", SIZE));
  if (formerAt !== undefined) {
    shapes.push(across(formerAt, DASHED));
    labels.push(text([left + 4, floor - formerAt - 1.5], `underside of the former ${mm(formerAt)}`, SIZE));
  }
  if (job.dam.overlap > 0) {
    const at = left + length - job.dam.overlap;
    shapes.push(line([at, top], [at, floor], DASHED));
    labels.push(text([at + 2, top + SIZE + 1], "overlap", SIZE));
  }
  const {
    labels: words,
    check,
    facts,
  } = block(plan, floor + 8, width, [
    `DAM: cut the strip from flexible sheet and close it round the ${below > 0 ? "blank" : "former"} with tape.`,
    `Length ${mm(length)}, overlap ${lengthText(job.dam.overlap, job.units)} in it, height ${mm(height)}, sheet ${lengthText(job.dam.sheet, job.units)}.`,
    below > 0
      ? `Seen from outside; it grips the blank's side: the glass begins ${mm(below)} above its lower edge.`
      : "Seen from outside; the lower edge stands on the glass.",
  ]);
  return {
    name: "dam",
    width,
    height: floor + 8 + BLOCK_HEIGHT + MARGIN,
    caption: "strip of the dam",
    facts,
    bodyHeight: floor + 8,
    groups: [{ id: "marks", shapes }, { id: "labels", shapes: [...labels, ...words] }, check],
  };
}

import type { Point } from "../geometry/types.js";
import type { Plan } from "../plan/types.js";
import { roughLength, volumeText } from "../units/figure-text.js";
import { lengthText } from "../units/length-text.js";
import { BLOCK_HEIGHT, BLOCK_WIDTH, block, MARGIN } from "./block.js";
import { DASHED, FIRM, line, rectangle, type Shape, type Sheet, THIN, text } from "./sheet.js";

/** Width of one strip of the gauge, mm. */
const STRIP = 64;
const SIZE = 3.2;

/**
 * A strip to stand in the container or tape to it, its lower end on the inside of the floor: a scale in mm and inches
 * with the water line and the mix line of each batch. For a tapered container a second strip runs along the wall.
 * Nothing without a container.
 */
export function gaugeSheet(plan: Plan): Sheet | undefined {
  const { job, pour } = plan;
  const batch = pour.batches[0];
  if (!job.container || batch?.waterMark === undefined || batch.mixMark === undefined) return undefined;
  const upright = { water: batch.waterMark, mix: batch.mixMark, words: "stand upright in the container" };
  const strips = [upright];
  if (batch.waterMarkAlongWall !== undefined && batch.mixMarkAlongWall !== undefined) {
    upright.words = "upright on the axis";
    strips.push({ water: batch.waterMarkAlongWall, mix: batch.mixMarkAlongWall, words: "along the sloping wall" });
  }
  const tallest = Math.max(...strips.map(({ mix }) => mix));
  const height = Math.min(job.container.height, Math.ceil((tallest + 25) / 10) * 10);
  const top = MARGIN + 8;
  const width = Math.max(BLOCK_WIDTH, 2 * MARGIN + strips.length * (STRIP + 10));
  const shapes: Shape[] = [];
  const labels: Shape[] = [];
  strips.forEach((strip, index) => {
    const left = MARGIN + 6 + index * (STRIP + 10);
    const drawn = gauge([left, top + height], height, strip, plan);
    shapes.push(...drawn.shapes);
    labels.push(...drawn.labels);
  });
  const mm = (value: number) => roughLength(value, job.units);
  const many = pour.batches.length > 1 ? ` Each of the ${pour.batches.length} batches alike.` : "";
  const {
    labels: words,
    check,
    facts,
  } = block(plan, top + height + 8, width, [
    "GAUGE for the mixing container: the strip's lower end stands on the floor inside.",
    `Water to ${mm(batch.waterMark)}, then powder until the mix stands at ${mm(batch.mixMark)}: ${volumeText(batch.mix, job.units)}.${many}`,
    "This side to the eye, numbers upright.",
  ]);
  return {
    name: "gauge",
    width,
    height: top + height + 8 + BLOCK_HEIGHT + MARGIN,
    caption: "gauge for the mixing container",
    facts,
    bodyHeight: top + height + 8,
    groups: [{ id: "marks", shapes }, { id: "labels", shapes: [...labels, ...words] }, check],
  };
}

/** One strip by its lower left corner: mm up the left side, inches up the right, the two lines across. */
function gauge(
  [left, floor]: Point,
  height: number,
  strip: { water: number; mix: number; words: string },
  { job }: Plan,
) {
  const right = left + STRIP;
  const shapes: Shape[] = [rectangle([left, floor - height], STRIP, height, FIRM)];
  const labels: Shape[] = [text([left, floor - height - 2], strip.words, SIZE)];
  const taken = [strip.water, strip.mix];
  const free = (up: number) =>
    taken.every((other) => Math.abs(other - up) > SIZE) && up < height - SIZE / 2 && up > SIZE / 2;
  for (let up = 0; up <= height + 1e-9; up += 5) {
    const long = up % 10 === 0;
    shapes.push(line([left, floor - up], [left + (long ? 6 : 3), floor - up], { line: 0.2 }));
    if (long && free(up)) labels.push(text([left + 7, floor - up + 0.36 * SIZE], String(up), SIZE));
  }
  for (let quarter = 0; quarter * 6.35 <= height + 1e-9; quarter++) {
    const up = quarter * 6.35;
    const long = quarter % 4 === 0;
    shapes.push(line([right, floor - up], [right - (long ? 6 : 3), floor - up], { line: 0.2 }));
    if (long && free(up)) labels.push(text([right - 7, floor - up + 0.36 * SIZE], `${quarter / 4} in`, SIZE, "end"));
  }
  const apart = Math.abs(strip.mix - strip.water) > 2 * SIZE;
  for (const [word, up, below] of [
    ["WATER", strip.water, true],
    ["MIX", strip.mix, false],
  ] as const) {
    shapes.push(line([left, floor - up], [right, floor - up], { line: 0.6 }));
    const base = below && !apart ? floor - up + SIZE + 0.6 : floor - up - 1;
    labels.push(text([left + STRIP / 2, base], `${word} ${roughLength(up, job.units)}`, SIZE, "middle"));
  }
  return { shapes, labels };
}

/** The dam as one strip at its true size, with the fill line, the underside of the former and the overlap. */
export function damSheet(plan: Plan): Sheet {
  const { pour, job } = plan;
  const { length, height, formerAt } = pour.dam;
  const left = MARGIN;
  const top = MARGIN + 6;
  const floor = top + height;
  const width = Math.max(BLOCK_WIDTH, length + 2 * MARGIN);
  const mm = (value: number) => lengthText(Math.round(value * 10) / 10, job.units);
  const across = (up: number, style = THIN) => line([left, floor - up], [left + length, floor - up], style);
  const shapes: Shape[] = [rectangle([left, top], length, height, FIRM), across(pour.fill.edge)];
  const labels: Shape[] = [
    text([left + 4, floor - pour.fill.edge - 1.5], `FILL LINE ${mm(pour.fill.edge)} above the glass`, SIZE),
    text([left + 4, floor - 2], "this edge on the glass", SIZE),
  ];
  if (formerAt !== undefined && formerAt < height) {
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
    "DAM: cut the strip from flexible sheet and close it round the former with tape.",
    `Length ${mm(length)}, overlap ${mm(job.dam.overlap)} in it, height ${mm(height)}, sheet ${mm(job.dam.sheet)}.`,
    "Seen from outside; the lower edge stands on the glass.",
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

import type { Point } from "../geometry/types.js";
import type { Plan } from "../plan/types.js";
import { alongWall, sectionsOf } from "../pour/container.js";
import { roughLength, volumeText } from "../units/figure-text.js";
import { BLOCK_HEIGHT, BLOCK_WIDTH, block, MARGIN } from "./block.js";
import { grown, inkOf, overlap, textBox } from "./ink.js";
import { FIRM, line, rectangle, type Shape, type Sheet, type Text, text } from "./sheet.js";

/** Width of one strip of the gauge, mm. */
const STRIP = 64;
const SIZE = 3.2;
/** Length of a tick that bears a number, mm. */
const TICK = 6;
/** Between a number and whatever else is drawn, mm, and steps in which its place is looked for. */
const CLEAR = 0.7;
const STEP = 0.25;

/**
 * A strip to stand in the container or tape to it, its lower end on the inside of the floor: a scale in mm and inches
 * with the water line and the mix line of each batch. A second strip runs along the wall of a tapered container, and is
 * to be taped outside a straight one; a wall that steps, or that marks alone tell of, takes none. Nothing without a container.
 */
export function gaugeSheet(plan: Plan): Sheet | undefined {
  const { job, pour } = plan;
  const batch = pour.batches[0];
  if (!job.container || batch?.waterMark === undefined || batch.mixMark === undefined) return undefined;
  const { height: reach } = job.container;
  const upright = { water: batch.waterMark, mix: batch.mixMark, reach, words: "stand upright in the container" };
  const strips = [upright];
  if (batch.waterMarkAlongWall !== undefined && batch.mixMarkAlongWall !== undefined) {
    upright.words = "upright on the axis";
    strips.push({
      water: batch.waterMarkAlongWall,
      mix: batch.mixMarkAlongWall,
      reach: alongWall(sectionsOf(job.container), reach),
      words: "along the sloping wall",
    });
  } else if (job.container.shape === "round" || job.container.shape === "box")
    strips.push({ ...upright, words: "or tape it outside, 0 at the floor inside" });
  const tallest = Math.max(...strips.map(({ mix }) => mix));
  const heights = strips.map((strip) => Math.min(strip.reach, Math.ceil((tallest + 25) / 10) * 10));
  const height = Math.max(...heights);
  const top = MARGIN + 8;
  const width = Math.max(BLOCK_WIDTH, 2 * MARGIN + strips.length * (STRIP + 10));
  const shapes: Shape[] = [];
  const labels: Shape[] = [];
  strips.forEach((strip, index) => {
    const left = MARGIN + 6 + index * (STRIP + 10);
    const drawn = gauge([left, top + height], heights[index]!, strip, plan);
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
  const apart = strip.mix - strip.water;
  // Two lines that nearly touch are drawn thinner, so that white stays between them.
  const style = { line: Math.min(0.6, Math.max(0.2, apart / 3)) };
  const lines = [strip.water, strip.mix].map((up) => line([left, floor - up], [right, floor - up], style));
  const name = (words: string, base: number): Text => text([left + STRIP / 2, base], words, SIZE, "middle");
  const water = `WATER ${roughLength(strip.water, job.units)}`;
  const mix = `MIX ${roughLength(strip.mix, job.units)}`;
  const over = (up: number) => floor - up - 1;
  const under = (up: number) => floor - up + SIZE + 0.6;
  // A name stands over its line, where the strip's end and the other line leave it room.
  const full = height - strip.mix < SIZE + 1.6;
  const names =
    apart > (full ? 2.6 : 2) * SIZE
      ? [name(water, over(strip.water)), name(mix, full ? under(strip.mix) : over(strip.mix))]
      : full
        ? [name(`upper: ${mix}`, under(strip.water)), name(`lower: ${water}`, under(strip.water) + 1.3 * SIZE)]
        : strip.water > SIZE + 1.6
          ? [name(water, under(strip.water)), name(mix, over(strip.mix))]
          : [name(`lower: ${water}`, over(strip.mix)), name(`upper: ${mix}`, over(strip.mix) - 1.3 * SIZE)];
  const numbers: Shape[] = [];
  const scale = (step: number, each: number, side: 1 | -1, words: (n: number) => string): void => {
    const edge = side === 1 ? left : right;
    const taken = [...lines, ...names].map((shape) => inkOf(shape).bounds);
    for (let n = 0; n * step <= height + 1e-9; n++) {
      const up = n * step;
      const tick = n % each === 0 ? TICK : TICK / 2;
      shapes.push(line([edge, floor - up], [edge + side * tick, floor - up], { line: 0.2 }));
      if (n % each !== 0) continue;
      const from = edge + side * (tick + 1);
      const number = (place: number): Text =>
        text([from + side * 0.4, floor - place + 0.36 * SIZE], words(n / each), SIZE, side === 1 ? "start" : "end");
      const place = beside(up, height, (at) => {
        const room = grown(textBox(number(at)), CLEAR);
        return taken.every((other) => !overlap(other, room));
      });
      if (place !== up) shapes.push(line([edge + side * tick, floor - up], [from, floor - place], { line: 0.2 }));
      numbers.push(number(place));
      // The next number stands higher, whatever room there is below.
      const { y } = textBox(number(place));
      taken.push({ x: left, y, width: STRIP, height: floor - y });
    }
  };
  scale(5, 2, 1, (n) => `${10 * n} mm`);
  scale(25.4 / 4, 4, -1, (n) => `${n} in`);
  return {
    shapes: [...shapes, ...lines],
    labels: [text([left, floor - height - 2], strip.words, SIZE), ...numbers, ...names],
  };
}

/** The height for the middle of a number, nearest to its own, that is free and lies inside the strip. */
function beside(up: number, height: number, free: (place: number) => boolean): number {
  const room = 0.36 * SIZE + CLEAR;
  for (let off = 0; off < height; off += STEP) {
    const place = [up + off, up - off].find((each) => each >= room && each <= height - room && free(each));
    if (place !== undefined) return place;
  }
  return up;
}

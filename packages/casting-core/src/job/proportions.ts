import { type Note, note } from "../notes.js";
import { PI } from "../trig.js";
import { atLeast, atMost } from "../units/bound-text.js";
import { coarseLength, massText, pressureText } from "../units/figure-text.js";
import { lengthText } from "../units/length-text.js";
import { areUsual } from "./limits.js";
import type { Job, JobPiece, JobReadings, Units } from "./types.js";

/** A weight adds mostly around 1 kPa over the tool's circle (20 lb on 15 in: 0.8); what is far off is noted, kPa. */
const LOAD = { least: 0.06, most: 5 };
/** Focal ratios of mirrors, as far as they are usual (common practice). */
const RATIO = { least: 1, most: 16 };
/** Nearer to the centre than this part of the spherometer's size a reading is as good as at the centre. */
const BESIDE = 0.05;

/**
 * Readings of one curve that differ by more than this part of their mean are no curve's: a sphere gives the same reading
 * everywhere, and what a blank is off by is hundredths of it.
 */
const SCATTER = 1 / 3;
/** So many readings are told one by one. */
const TOLD = 4;

type Say = (text: string) => void;

/** Figures that are usual by themselves but not beside each other. */
export function proportions(job: Job): Note[] {
  const { blank, tool, pieces, layout, setup, units } = job;
  const notes: Note[] = [];
  const mm = (value: number) => lengthText(value, units);
  const say = (text: string): void => {
    notes.push(note("warning", "unlikely-proportion", text));
  };
  for (const [name, radius] of [
    ["radius", blank.radius],
    ["wanted radius", blank.target?.radius],
  ] as const) {
    const ratio = radius === undefined || readAlone(blank) ? undefined : radius / (2 * blank.diameter);
    if (ratio !== undefined && isUnusual(ratio, RATIO)) {
      say(
        `A ${name} of ${mm(radius!)} on a blank of ${mm(blank.diameter)} makes a focal ratio of ${Number(ratio.toPrecision(3))}: check both figures and their units.`,
      );
    }
  }
  for (const [name, size] of [
    ["sagitta", blank.sagitta],
    ["wanted sagitta", blank.target?.sagitta],
  ] as const) {
    const share = size === undefined || readAlone(blank) ? undefined : size / (blank["sagitta-over"] ?? blank.diameter);
    if (share !== undefined && (share < 0.0039 || share > 0.0667)) {
      say(
        `A ${name} of ${mm(size!)} is unusual for a blank of ${mm(blank.diameter)}: check both figures and their units.`,
      );
    }
  }
  for (const { x, y, diameter } of layout["keep-clear"]) {
    if (Math.sqrt(x * x + y * y) < (tool.diameter + diameter) / 2) continue;
    say(
      `The circle of ${mm(diameter)} to be kept clear at (${mm(x)}, ${mm(y)}) lies off the tool of ${mm(tool.diameter)} and keeps nothing clear: check its place.`,
    );
  }
  readingProportions(job, mm, say);
  containerProportions(job, mm, say);
  if (tool.diameter < 0.25 * blank.diameter) {
    say(
      `A tool of ${mm(tool.diameter)} is small for a blank of ${mm(blank.diameter)} (mostly three quarters): check both figures and their units.`,
    );
  }
  if (
    blank.thickness !== undefined &&
    (blank.thickness < 0.03 * blank.diameter || blank.thickness > 0.35 * blank.diameter)
  ) {
    say(
      `A thickness of ${mm(blank.thickness)} is unusual for a blank of ${mm(blank.diameter)}: check both figures and their units.`,
    );
  }
  if (setup.given) {
    for (const [name, size] of [
      ["An offset", setup.offset === "tangent" ? 0 : setup.offset],
      ["A stroke", setup.stroke / 2],
    ] as const) {
      if (size > blank.diameter / 2)
        say(`${name} leads off a blank of ${mm(blank.diameter)}: check both figures and their units.`);
    }
    // Where they are what a job gets that names none, nobody wrote a figure to check: the notes on the pass tell their pressure.
    for (const weight of areUsual(setup.weights) ? [] : setup.weights) {
      const pressure = (weight * 9806.65) / ((PI / 4) * tool.diameter * tool.diameter);
      if (weight > 0 && isUnusual(pressure, LOAD))
        say(
          `A weight of ${units === "in" ? massText(weight, units) : `${weight} kg`} presses a tool of ${mm(tool.diameter)} with ${units === "in" ? pressureText(pressure, units) : `${Number(pressure.toPrecision(2))} kPa`}: check both figures and their units.`,
        );
    }
  }
  for (const piece of pieces) {
    if ("item" in piece) continue;
    const sizes = sizesOf(piece);
    const [least, most] = [Math.min(...sizes), Math.max(...sizes)];
    if (most > tool.diameter / 3)
      say(`A piece of ${mm(most)} is large for a tool of ${mm(tool.diameter)}: check both figures and their units.`);
    if (layout.gap >= least)
      say(`A gap of ${mm(layout.gap)} is wider than a piece of ${mm(least)}: check both figures and their units.`);
    if (piece.thickness > 1.5 * least)
      say(
        `A piece of ${mm(least)} is ${mm(piece.thickness)} thick and may tip over: check both figures and their units.`,
      );
  }
  return notes;
}

/** Whether a curve is read without a blank, whose diameter is then no more than what the instrument spans. */
export function readAlone({ diameter, readings }: Job["blank"]): boolean {
  return readings !== undefined && diameter === spanOf(readings.instrument);
}

/** Across the circle that a spherometer stands on, mm: three equal legs `l` apart stand on one of radius l / √3. */
export function spanOf({ ring, legs, bar }: JobReadings["instrument"]): number {
  return legs === undefined ? (ring ?? bar ?? 0) : (2 * legs) / Math.sqrt(3);
}

/** What a spherometer's readings make of the blank, near enough, and whether their places are apart. */
function readingProportions({ blank, units }: Job, mm: (value: number) => string, say: Say): void {
  if (!blank.readings) return;
  const { instrument, zones } = blank.readings;
  const { ring, legs, bar } = instrument;
  const size = ring ?? legs ?? bar ?? 0;
  const reach = spanOf(instrument) / 2;
  const ratioOf = (reading: number) =>
    (reach * reach + reading * reading) / (2 * Math.abs(reading)) / (2 * blank.diameter);
  // Read without a blank: glass under a spherometer is mostly up to five times its size.
  const alone = readAlone(blank);
  const usual = alone ? { ...RATIO, most: 5 * RATIO.most } : RATIO;
  const odd = zones.filter(({ reading }) => reading !== 0 && isUnusual(ratioOf(reading), usual));
  if (odd.length > 0) {
    const { reading } = odd[0]!;
    const more = odd.length > 1 ? `, one of ${odd.length} such,` : "";
    const ratio = ratioOf(reading);
    const makes = alone
      ? `a radius of ${coarseLength(2 * blank.diameter * ratio, units)}: check both figures`
      : `a focal ratio of ${Number(ratio.toPrecision(2))} on a blank of ${mm(blank.diameter)}: check these figures`;
    say(`A reading of ${mm(reading)}${more} over ${mm(size)} makes ${makes} and their units.`);
  }
  // Across the radius a bar's feet stand no farther out than this.
  const out = zones.map(({ at }) => (bar === undefined ? at + reach : Math.sqrt(at * at + reach * reach)));
  const [farthest, face] = [Math.max(...out), blank.diameter / 2 - (blank.bevel ?? 0)];
  if (!alone && farthest > face + 1e-6) {
    say(
      `A spherometer of ${mm(size)} reaches ${atLeast(farthest, units)} from the centre, off the face of the blank, which ends at ${atMost(face, units)}: check where it stood, these figures and their units.`,
    );
  }
  scatter(
    zones.map(({ reading }) => reading),
    units,
    say,
  );
  const beside = zones.find(({ at }) => at > 0 && at < BESIDE * size);
  if (beside) {
    say(
      `A reading at ${mm(beside.at)} is as good as one at the centre for a spherometer of ${mm(size)}: check both figures and their units.`,
    );
  }
}

/** Readings far apart: a decimal comma makes two of one. */
function scatter(readings: readonly number[], units: Units, say: Say): void {
  const mm = (value: number) => lengthText(value, units);
  const [least, most] = [Math.min(...readings), Math.max(...readings)];
  const mean = readings.reduce((sum, reading) => sum + reading, 0) / readings.length;
  if (most - least <= SCATTER * Math.abs(mean)) return;
  const texts = readings.map(mm);
  const told =
    texts.length > TOLD
      ? `${texts.length} readings from ${mm(least)} to ${mm(most)}`
      : `${texts.length} readings, ${texts.slice(0, -1).join(", ")} and ${texts.at(-1)},`;
  const share = mean === 0 ? "" : `, ${Math.round(((most - least) / Math.abs(mean)) * 100)} % of their mean`;
  say(
    `The ${told} spread by ${mm(most - least)}${share}, where a sphere reads the same everywhere: check each, and write decimals with a point, such as 1.5 ${units}.`,
  );
}

function containerProportions({ container }: Job, mm: (value: number) => string, say: Say): void {
  if (container?.shape !== "tapered") return;
  const { bottom, top } = container;
  if (bottom > 1.5 * top || top > 3 * bottom)
    say(
      `A container ${mm(bottom)} wide at the bottom and ${mm(top)} at the top is unusual: check both figures and their units.`,
    );
}

function isUnusual(value: number, { least, most }: { least: number; most: number }): boolean {
  return value < least || value > most;
}

/** The sizes of a piece of the maker's own, mm. */
export function sizesOf(piece: Exclude<JobPiece, { item: string }>): number[] {
  if (piece.shape === "rectangle") return [piece.length, piece.width];
  if (piece.shape === "round") return [piece.diameter];
  if (piece.shape !== "polygon") return [piece.across];
  const [xs, ys] = [piece.points.map(([x]) => x), piece.points.map(([, y]) => y)];
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
}

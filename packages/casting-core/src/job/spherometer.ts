import { atLeast, atMost } from "../units/bound-text.js";
import { coarseLength } from "../units/figure-text.js";
import { mmIn } from "./fault.js";
import { FOCAL_RATIO, isUnusual } from "./limits.js";
import type { Job, JobReadings, Units } from "./types.js";

/** Nearer to the centre than this part of the spherometer's size a reading is as good as at the centre. */
const BESIDE = 0.05;

/**
 * Readings of one curve that differ by more than this part of their mean are no curve's: a sphere gives the same reading
 * everywhere, and what a blank is off by is hundredths of it.
 */
const SCATTER = 1 / 3;
/** So many readings are told one by one. */
const TOLD = 4;
/** Glass that is read without a blank is mostly up to so many times as wide as its spherometer (common practice). */
const WIDER = 5;

/** Whether a curve is read without a blank, whose diameter is then no more than what the instrument spans. */
export function readAlone({ diameter, readings }: Job["blank"]): boolean {
  return readings !== undefined && diameter === spanOf(readings.instrument);
}

/** Across the circle that a spherometer stands on, mm: three equal legs `l` apart stand on one of radius l / √3. */
export function spanOf({ ring, legs, bar }: JobReadings["instrument"]): number {
  return legs === undefined ? (ring ?? bar ?? 0) : (2 * legs) / Math.sqrt(3);
}

/** What a spherometer's readings are told that are unlikely beside each other, beside its size or the blank's. */
export function readingProportions({ blank, units }: Pick<Job, "blank" | "units">): string[] {
  if (!blank.readings) return [];
  const readings = blank.readings.zones.map(({ reading }) => reading);
  return [
    ...curveRead(blank, blank.readings, units),
    ...offTheFace(blank, blank.readings, units),
    ...scatter(readings, units),
    ...besideTheCentre(blank.readings, units),
  ];
}

/** The curve that readings make, near enough. */
function curveRead(blank: Job["blank"], { instrument, zones }: JobReadings, units: Units): string[] {
  const mm = mmIn(units);
  const reach = spanOf(instrument) / 2;
  const ratioOf = (reading: number) =>
    (reach * reach + reading * reading) / (2 * Math.abs(reading)) / (2 * blank.diameter);
  const alone = readAlone(blank);
  const usual = alone ? { ...FOCAL_RATIO, most: WIDER * FOCAL_RATIO.most } : FOCAL_RATIO;
  const odd = zones.filter(({ reading }) => reading !== 0 && isUnusual(ratioOf(reading), usual));
  if (odd.length === 0) return [];
  const { reading } = odd[0]!;
  const more = odd.length > 1 ? `, one of ${odd.length} such,` : "";
  const ratio = ratioOf(reading);
  const makes = alone
    ? `a radius of ${coarseLength(2 * blank.diameter * ratio, units)}: check both figures`
    : `a focal ratio of ${Number(ratio.toPrecision(2))} on a blank of ${mm(blank.diameter)}: check these figures`;
  return [`A reading of ${mm(reading)}${more} over ${mm(sizeOf(instrument))} makes ${makes} and their units.`];
}

/** A spherometer that stood over the edge. */
function offTheFace(blank: Job["blank"], { instrument, zones }: JobReadings, units: Units): string[] {
  if (readAlone(blank)) return [];
  const reach = spanOf(instrument) / 2;
  // Across the radius a bar's feet stand no farther out than this.
  const out = zones.map(({ at }) => (instrument.bar === undefined ? at + reach : Math.sqrt(at * at + reach * reach)));
  const [farthest, face] = [Math.max(...out), blank.diameter / 2 - (blank.bevel ?? 0)];
  if (farthest <= face + 1e-6) return [];
  return [
    `A spherometer of ${mmIn(units)(sizeOf(instrument))} reaches ${atLeast(farthest, units)} from the centre, off the face of the blank, which ends at ${atMost(face, units)}: check where it stood, these figures and their units.`,
  ];
}

/** Readings far apart: a decimal comma makes two of one. */
function scatter(readings: readonly number[], units: Units): string[] {
  const mm = mmIn(units);
  const [least, most] = [Math.min(...readings), Math.max(...readings)];
  const mean = readings.reduce((sum, reading) => sum + reading, 0) / readings.length;
  if (most - least <= SCATTER * Math.abs(mean)) return [];
  const texts = readings.map(mm);
  const told =
    texts.length > TOLD
      ? `${texts.length} readings from ${mm(least)} to ${mm(most)}`
      : `${texts.length} readings, ${texts.slice(0, -1).join(", ")} and ${texts.at(-1)},`;
  const share = mean === 0 ? "" : `, ${Math.round(((most - least) / Math.abs(mean)) * 100)} % of their mean`;
  return [
    `The ${told} spread by ${mm(most - least)}${share}, where a sphere reads the same everywhere: check each, and write decimals with a point, such as 1.5 ${units}.`,
  ];
}

/** A place so near to the centre that it was hardly meant. */
function besideTheCentre({ instrument, zones }: JobReadings, units: Units): string[] {
  const mm = mmIn(units);
  const size = sizeOf(instrument);
  const beside = zones.find(({ at }) => at > 0 && at < BESIDE * size);
  if (!beside) return [];
  return [
    `A reading at ${mm(beside.at)} is as good as one at the centre for a spherometer of ${mm(size)}: check both figures and their units.`,
  ];
}

/** The size that an instrument is named by, mm. */
function sizeOf({ ring, legs, bar }: JobReadings["instrument"]): number {
  return ring ?? legs ?? bar ?? 0;
}

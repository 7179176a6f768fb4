import type { Units } from "../job/types.js";
import { lengthText } from "./length-text.js";
import { parseLength } from "./parse.js";

/** Inches from which on a length is written in so many parts of one. */
const PARTS = [
  { from: 4, parts: 1 },
  { from: 1, parts: 4 },
  { from: 0.25, parts: 8 },
  { from: 0.06, parts: 32 },
] as const;

/**
 * An example of a length, `32 mm`, as a maker of these units would write one of about that size: `1 1/4 in`; a round
 * figure, within a fifth of the length itself.
 */
export function exampleIn(units: Units, example: string): string {
  if (units === "mm") return example;
  const sign = example.startsWith("-") ? "-" : "";
  const inches = parseLength(example.replace("-", ""), "mm") / 25.4;
  const parts = PARTS.find(({ from }) => inches >= from)?.parts;
  const round = parts === undefined ? Number(inches.toPrecision(1)) : Math.round(inches * parts) / parts;
  return `${sign}${parts === undefined ? `${round} in` : lengthText(round * 25.4, units)}`;
}

import { LIMITS } from "../job/limits.js";
import { containerFigures, unlikely } from "../job/notes.js";
import type { JobContainer, Units } from "../job/types.js";
import type { Note } from "../notes.js";
import { atLeast, atMost } from "../units/bound-text.js";
import { lengthText } from "../units/length-text.js";

/** The sizes that a job has too, where its limits for them stand, and how notes call them. */
const SIZES = [
  ["tool", "tool.diameter", "A tool's diameter"],
  ["radius", "blank.radius", "A radius of curvature"],
  ["fill", "plaster.fill", "A fill line"],
] as const;

/** Sizes of a bare tool, mm. */
interface Sizes {
  tool?: number;
  radius?: number;
  fill?: number;
  container?: JobContainer;
}

/** The first size that no job may have, and why; nothing where all are within a job's limits. */
export function impossibleSize(options: Sizes, units: Units): { key: string; text: string } | undefined {
  for (const [key, field] of SIZES) {
    const value = options[key];
    const { least, most } = LIMITS[field];
    if (value === undefined || (value >= least && value <= most)) continue;
    const limit =
      value < least ? `below the least, ${atLeast(least, units)}` : `above the most, ${atMost(most, units)}`;
    return { key, text: `${lengthText(value, units)} is ${limit}; check the figure and its unit` };
  }
  return undefined;
}

/** A slip of unit looks the same here as in a job: what is unusual there is noted here. */
export function unlikelySizes(options: Sizes, units: Units): Note[] {
  const notes = SIZES.flatMap(([key, field, name]) => unlikely(field, options[key], name, units));
  containerFigures(options, (key, value, name, unit) => {
    // A height that is not known.
    if (value !== Infinity) notes.push(...unlikely(key, value, name, units, unit));
  });
  return notes;
}

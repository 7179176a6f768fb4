import type { Plan } from "../plan/types.js";
import { groovesSheet } from "./channels.js";
import { damSheet } from "./dam.js";
import { formSheet } from "./form.js";
import { gaugeSheet } from "./gauge.js";
import { placementSheet } from "./placement.js";
import { readingsSheet } from "./readings.js";
import { retainerSheet } from "./retainer.js";
import type { Sheet } from "./sheet.js";

/** Draws once for each plan: the same sheet goes into a file of its own and onto the pages. A plan never changes. */
function once<T extends Sheet | undefined>(draw: (plan: Plan) => T): (plan: Plan) => T {
  const drawn = new WeakMap<Plan, T>();
  return (plan) => {
    if (!drawn.has(plan)) drawn.set(plan, draw(plan));
    return drawn.get(plan) as T;
  };
}

/** Every sheet of a plan by its file's name without the ending; nothing where it does not apply. */
export const SHEETS = {
  /** Where each piece goes, seen from the back. */
  placement: once(placementSheet),
  /** The channels to cut, mirrored: as seen on the working face. */
  grooves: once(groovesSheet),
  /** The dam's former. */
  form: once(formSheet),
  /** The strip that stands in the container, with its marks. */
  gauge: once(gaugeSheet),
  /** The dam's strip, with its fill line. */
  dam: once(damSheet),
  /** The retainer that holds the blank on the turntable. */
  retainer: once(retainerSheet),
  /** The spherometer's readings, each at its place. */
  readings: once(readingsSheet),
} satisfies Record<string, (plan: Plan) => Sheet | undefined>;

import type { Plan } from "../plan/types.js";
import { groovesSheet } from "./channels.js";
import { damSheet } from "./dam.js";
import { formSheet } from "./form.js";
import { gaugeSheet } from "./gauge.js";
import { readingsSheet, retainerSheet } from "./holding.js";
import { placementSheet } from "./placement.js";
import type { Sheet } from "./sheet.js";

/** Every sheet of a plan by its file's name without the ending; nothing where it does not apply. */
export const SHEETS = {
  /** Where each piece goes, seen from the back. */
  placement: placementSheet,
  /** The channels to cut, mirrored: as seen on the working face. */
  grooves: groovesSheet,
  /** The dam's former. */
  form: formSheet,
  /** The strip that stands in the container, with its marks. */
  gauge: gaugeSheet,
  /** The dam's strip, with its fill line. */
  dam: damSheet,
  /** The retainer that holds the blank on the turntable. */
  retainer: retainerSheet,
  /** The spherometer's readings, each at its place. */
  readings: readingsSheet,
} satisfies Record<string, (plan: Plan) => Sheet | undefined>;

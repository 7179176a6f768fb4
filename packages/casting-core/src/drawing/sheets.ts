import type { Plan } from "../plan/types.js";
import { groovesSheet } from "./channels.js";
import { formSheet } from "./form.js";
import { readingsSheet, retainerSheet } from "./holding.js";
import { placementSheet } from "./placement.js";
import type { Sheet } from "./sheet.js";
import { damSheet, gaugeSheet } from "./strips.js";

/** Every sheet of a plan by its file's name without the ending; nothing where it does not apply. */
export const SHEETS = {
  placement: placementSheet,
  grooves: groovesSheet,
  form: formSheet,
  gauge: gaugeSheet,
  dam: damSheet,
  retainer: retainerSheet,
  readings: readingsSheet,
} satisfies Record<string, (plan: Plan) => Sheet | undefined>;

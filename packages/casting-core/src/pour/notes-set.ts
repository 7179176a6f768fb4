import { type Note, note } from "../notes.js";
import { atMost } from "../units/bound-text.js";
import { riseText, slopeText } from "../units/figure-text.js";
import { isFullSize } from "./dam.js";
import { decimals, lengthWords, type Poured } from "./words.js";

/** How the set cast fits the glass. */
export function fitNotes({ job, tool, pour }: Poured): Note[] {
  const { fit } = pour;
  if (fit.mismatch.most === 0) return [];
  const where =
    fit.meets === "edge"
      ? "the glass is met first at the tool's edge"
      : "the glass is met first at the tool's centre, where the tool rocks at first";
  const bow =
    fit.bow === undefined
      ? ""
      : ` Setting heat of ${riseText(fit.bow.gradient, job.units)} across the glass bows its face toward the tool by ${decimals(fit.bow.sagitta, 1)} µm, which ${fit.meets === "edge" ? "adds to that" : "works against that"}.`;
  return [
    note(
      "info",
      "setting-expansion",
      `The cast grows by up to ${decimals(fit.expansion.most, 2)} %: over ${lengthWords(tool.diameter, job.units)} it comes out up to ${decimals(fit.mismatch.most, 1)} µm flatter than the glass, so ${where}.${bow}`,
    ),
  ];
}

/** What the dam and the blank below it ask for. */
export function damNotes({ job, blank, tool, pour }: Poured): Note[] {
  const notes: Note[] = [];
  const length = (mm: number): string => lengthWords(mm, job.units);
  const { bevel = 0 } = job.blank;
  if (isFullSize(blank, tool)) {
    const over =
      bevel > 0
        ? `the bevel (the face inside it is ${atMost(blank.diameter - 2 * bevel, job.units)} across)`
        : "its edge";
    const text = `The tool is as wide as the blank: there is no former, the dam goes round the blank, and plaster must not run over ${over}.`;
    notes.push(note("info", "full-size-tool", text));
  } else if (pour.dam.centring !== undefined && pour.dam.centring < 0) {
    notes.push(
      note(
        "warning",
        "dam-over-edge",
        `The dam reaches ${length(-pour.dam.centring)} over the mirror's edge: take a thinner sheet or a smaller tool.`,
      ),
    );
  }
  notes.push(
    note(
      "info",
      "level",
      `Level the blank to ${slopeText(pour.dam.level.slope, job.units)}: that leaves a wedge of ${length(pour.dam.level.wedge)} across the back.`,
    ),
  );
  return notes;
}

import { unprinted } from "../latin.js";
import { type Note, note } from "../notes.js";
import { atLeast, atMost, massBound, rangeText, volumeBound } from "../units/bound-text.js";
import { countText, fineLength, massText, shareText, volumeText } from "../units/figure-text.js";
import { lengthText } from "../units/length-text.js";
import { type FieldLimits, LIMITS, type LimitedKey, SPHEROMETER, USUAL_TOOL } from "./limits.js";
import { unusedNotes } from "./notes-unused.js";
import { proportions, sizesOf } from "./proportions.js";
import { readAlone } from "./spherometer.js";
import type { Job, Units } from "./types.js";

/**
 * What a job says that is allowed but unlikely: figures outside what is usual, with what was understood, since a slip of
 * unit (inches for millimetres, metres for millimetres) looks like this.
 */
export function jobNotes(job: Job): Note[] {
  const notes: Note[] = titleNote(job.title);
  const look: Look = (key, value, name, unit = "mm") => {
    notes.push(...unlikely(key, value, name, job.units, unit));
  };
  blankFigures(job, look);
  pieceFigures(job, look);
  const { layout, grooves, plaster, dam, socket, print } = job;
  // What nobody wrote is a share of the blank, but for how numbers are kept.
  if (Math.abs(job.tool.diameter - USUAL_TOOL * job.blank.diameter) > 1e-6)
    look("tool.diameter", job.tool.diameter, "A tool's diameter");
  look("tool.rim", job.tool.rim, "A rim");
  look("layout.gap", layout.gap, "A gap");
  look("layout.hand", layout.hand, "An allowance for the hand");
  for (const { diameter } of layout["keep-clear"])
    look("layout.keep-clear.diameter", diameter, "A circle to be kept clear");
  look("grooves.cutter", grooves.cutter, "A cutter's width");
  look("grooves.depth", grooves.depth, "A channel's depth");
  look("grooves.clearance", grooves.clearance, "A clearance");
  look("grooves.feed", grooves.feed, "A feed");
  if (plaster.fill !== "auto") look("plaster.fill", plaster.fill, "A fill line");
  look("plaster.cover", plaster.cover, "A cover");
  look("dam.sheet", dam.sheet, "A dam's sheet");
  look("dam.overlap", dam.overlap, "A dam's overlap");
  if (socket) {
    look("socket.diameter", socket.diameter, "A socket's diameter");
    look("socket.bore", socket.bore, "A socket's bore");
    look("socket.length", socket.length, "A socket's length");
  }
  containerFigures(job, look);
  if (job.setup.given) {
    if (job.setup.offset !== "tangent") look("setup.offset", job.setup.offset, "An offset");
    look("setup.stroke", job.setup.stroke, "A stroke");
    for (const weight of job.setup.weights) look("setup.weights", weight, "A weight", "kg");
  }
  look("print.overlap", print.overlap, "An overlap of pages");
  look("print.measured", print.measured?.x, "A printed 100 mm");
  look("print.measured", print.measured?.y, "A printed 100 mm");
  return [...notes, ...outerSquareNotes(job), ...sagittaNotes(job), ...unusedNotes(job), ...proportions(job)];
}

/** A note where the printed pages cannot show the title as it is. */
function titleNote(title: string): Note[] {
  const [first, ...more] = unprinted(title);
  if (first === undefined) return [];
  const others = more.length > 0 ? ` and ${countText(more.length, "other letter")}` : "";
  const text = `templates.pdf has a question mark for "${first}"${others} of the title, as it can print Latin letters only; the other files show them.`;
  return [note("info", "title-letters", text)];
}

/** The outer check square, mm, and how far off a printer commonly is, as a share of it (common practice). */
const OUTER = { side: 101.6, off: 0.005 };

/** An inch rule is held to the square of 4 in: what it shows there is no measure of the inner one. */
function outerSquareNotes({ print: { measured }, units }: Job): Note[] {
  const sides = measured ? [measured.x, measured.y] : [];
  const side = sides.find((mm) => Math.abs(mm - OUTER.side) < OUTER.off * OUTER.side);
  if (side === undefined) return [];
  const text = `print.measured of ${fineLength(side, units)} is what the outer check square of 4 in measures where a printer is nearly true: write what the inner one of 100 mm (3.937 in) measures, or the pages come out ${shareText(OUTER.side / 100 - 1)} too small.`;
  return [note("warning", "outer-square", text)];
}

/** A chord ends on the face. A straightedge rests inside the bevel of hollow glass: a sagitta measured under it is not that of the whole diameter. */
function sagittaNotes({ blank, units }: Job): Note[] {
  const { sagitta, bevel = 0, diameter, curve, "sagitta-over": chord = diameter } = blank;
  const inside = diameter - 2 * bevel;
  if (sagitta === undefined || chord <= inside + 1e-6) return [];
  if (chord < diameter) {
    const text = `A chord of ${atLeast(chord, units)} reaches off the face of the blank, which is ${atMost(inside, units)} across inside its bevel: check what the sagitta was measured over, both figures and their units.`;
    return [note("warning", "unlikely-proportion", text)];
  }
  if (curve !== "concave") return [];
  const longer = (diameter * diameter) / (inside * inside) - 1;
  const text = `The sagitta is taken over the whole ${lengthText(diameter, units)}, but a straightedge across the blank rests inside its bevel: if it was measured under one, write sagitta-over: ${atMost(inside, units)}, or the radius comes out ${shareText(longer)} too long.`;
  return [note("info", "sagitta-over-bevel", text)];
}

/** A note where `value`, told as `name`, is not what the figure `key` of a job usually is; none for what is absent or 0. */
export function unlikely(
  key: LimitedKey,
  value: number | undefined,
  name: string,
  units: Units,
  unit: Unit = "mm",
): Note[] {
  if (value === undefined || value === 0) return [];
  const size = Math.abs(value);
  const { usual }: FieldLimits = LIMITS[key];
  if (size >= usual[0] && size <= usual[1]) return [];
  const side = size < usual[0] ? "small" : "large";
  const text = `${name} of ${figureText(value, unit, units)} is unusually ${side} (mostly ${usualText(usual, unit, units)}): check the figure and its unit.`;
  return [note("warning", "unlikely-figure", text)];
}

type Unit = "mm" | "mL" | "kg" | "";
/** Looks at one figure: its key in a job, its value, how a note calls it, its unit (mm if left out). */
type Look = (key: LimitedKey, value: number | undefined, name: string, unit?: Unit) => void;

function figureText(value: number, unit: Unit, units: Units): string {
  if (unit === "mm") return lengthText(value, units);
  if (units === "in" && unit !== "") return unit === "mL" ? volumeText(value, units) : massText(value, units);
  return unit === "mL" ? `${value / 1000} L` : `${value}${unit === "" ? "" : ` ${unit}`}`;
}

function usualText([least, most]: FieldLimits["usual"], unit: Unit, units: Units): string {
  if (unit === "mm") return rangeText(least, most, units);
  if (unit === "") return `${least} to ${most}`;
  const bound = unit === "mL" ? volumeBound : massBound;
  return `${bound(least, units, "least")} to ${bound(most, units, "most")}`;
}

function blankFigures({ blank }: Job, look: Look): void {
  if (!readAlone(blank)) look("blank.diameter", blank.diameter, "A blank's diameter");
  look("blank.radius", blank.radius, "A radius of curvature");
  look("blank.focal-ratio", blank["focal-ratio"], "A focal ratio", "");
  look("blank.sagitta", blank.sagitta, "A sagitta");
  if (blank["sagitta-over"] !== blank.diameter) look("blank.sagitta-over", blank["sagitta-over"], "A chord");
  look("blank.radius", blank.target?.radius, "A wanted radius");
  look("blank.focal-ratio", blank.target?.["focal-ratio"], "A wanted focal ratio", "");
  look("blank.sagitta", blank.target?.sagitta, "A wanted sagitta");
  look("blank.thickness", blank.thickness, "A blank's thickness");
  look("blank.bevel", blank.bevel, "A bevel");
  const { readings } = blank;
  if (!readings) return;
  const { ring, legs, bar, ball, wall, resolution, "zero-error": zero, "size-error": error } = readings.instrument;
  const size = ring ?? legs ?? bar ?? 0;
  // What nobody wrote is a share of the size.
  const own = error === undefined || Math.abs(error - SPHEROMETER.size * size) < 1e-6 * size ? 0 : error;
  look("blank.readings.instrument.ring", size, "A spherometer's size");
  look("blank.readings.instrument.ball", ball, "A spherometer's ball");
  look("blank.readings.instrument.wall", wall, "A ring's wall");
  look("blank.readings.instrument.resolution", resolution, "A dial's step");
  look("blank.readings.instrument.zero-error", zero, "A zero plate's error");
  look("blank.readings.instrument.size-error", own, "The error of a spherometer's size");
  for (const { at, reading } of readings.zones) {
    look("blank.readings.zones.at", at, "A reading's place");
    look("blank.readings.zones.reading", reading, "A reading");
  }
}

function pieceFigures({ pieces }: Job, look: Look): void {
  for (const piece of pieces) {
    if ("item" in piece) continue;
    for (const size of sizesOf(piece)) look("pieces.across", size, "A piece");
    look("pieces.thickness", piece.thickness, "A piece's thickness");
    look("pieces.bore", piece.bore, "A bore");
    look("pieces.density", piece.density, "A piece's density in kg/L", "");
  }
}

/** Looks at every size of a container. */
export function containerFigures({ container }: Pick<Job, "container">, look: Look): void {
  if (!container) return;
  look("container.height", container.height, "A container's height");
  look("container.headroom", container.headroom, "A headroom");
  if (container.shape === "marks") {
    for (const { height, volume } of container.marks) {
      look("container.marks.height", height, "A mark's height");
      look("container.marks.volume", volume, "A mark's volume", "mL");
    }
    return;
  }
  if (container.shape === "stacked") {
    for (const { bottom, top, height } of container.sections) {
      for (const size of [bottom, top]) look("container.diameter", size, "A container's width");
      look("container.section", height, "A section's height");
    }
    return;
  }
  const sizes =
    container.shape === "round"
      ? [container.diameter]
      : container.shape === "box"
        ? [container.length, container.width]
        : [container.bottom, container.top];
  for (const size of sizes) look("container.diameter", size, "A container's width");
}

import type { Blank } from "../blank/types.js";
import { areUsual } from "../job/limits.js";
import type { Job } from "../job/types.js";
import { type Note, note } from "../notes.js";
import { atLeast, atMost } from "../units/bound-text.js";
import { closeLength, fineLength, massText, meanText, pressureText, rpmText, speedText } from "../units/figure-text.js";
import { FAST, isFast, isHeavy, LOAD } from "./first-pass.js";
import { isHard } from "./pass.js";
import type { Load, Removal, Setup, Speed } from "./types.js";
import { renewalText } from "./words.js";

/** Grinding that takes more than this share of the glass is noted (common practice). */
const TAKEN = 1 / 5;

/** What presses too hard on the glass or the pieces, and what turns too fast. */
export function pressureNotes(job: Job, setup: Setup): Note[] {
  const notes: Note[] = [];
  if (setup.overhang > setup.liftsAt) {
    const text = `At an overhang of ${atLeast(setup.overhang, job.units)} the far side of the tool lifts off, from ${atMost(setup.liftsAt, job.units)} on, and the mirror's edge bears ${meanText(setup.edgePressure)}: take less overhang.`;
    notes.push(note("warning", "tool-lifts", text));
  } else if (isHard(setup)) {
    const bare = setup.loads.every(({ weight }) => weight === 0);
    const remedy = bare
      ? "put no weight on the tool, as setup.weights has it"
      : `take less overhang, or write ${massText(0, job.units)} alone under setup.weights`;
    const text = `At an overhang of ${closeLength(setup.overhang, job.units)} the pressure at the mirror's edge is ${meanText(setup.edgePressure)}, which can chip it: ${remedy}.`;
    notes.push(note(bare ? "info" : "warning", "edge-pressure", text));
  }
  notes.push(...loadNotes(job, setup.loads));
  if (job.setup.given) notes.push(...rimNotes(job, setup.speeds));
  return notes;
}

/** Of all speeds at once, with the one that the mirror's edge still holds grit and water at. */
function rimNotes({ units }: Job, speeds: readonly Speed[]): Note[] {
  const fast = speeds.filter(isFast);
  const [least, most] = [fast[0], fast.at(-1)];
  if (!least || !most) return [];
  const both = (text: (speed: Speed) => string) => (least === most ? text(most) : `${text(least)} to ${text(most)}`);
  const turn = both(({ turntable }) => rpmText(turntable));
  const runs = both(({ rim }) => speedText(rim, units));
  const limit = rpmText(Math.floor((10 * FAST * most.turntable) / most.rim) / 10);
  const text = `At ${turn} the mirror's edge runs at ${runs} and throws grit and water: write at most ${limit} under setup.turntable.`;
  return [note("warning", "fast-rim", text)];
}

/** The usual weights, which the job sheet tells of a job that names none, are told too where the tool is too small for them. */
function loadNotes({ units, setup }: Job, loads: readonly Load[]): Note[] {
  const heavy = loads.filter(isHeavy);
  const [least, most] = [heavy[0], heavy.at(-1)];
  if (!least || !most) return [];
  const room = (most.mass * LOAD.usual) / most.worn - (most.mass - most.weight);
  const weight = Math.floor(room * 100) / 100;
  const named = !areUsual(setup.weights);
  const range =
    least === most
      ? `${named ? "a" : "the usual"} weight of ${massText(most.weight, units)} the pieces press with ${pressureText(most.worn, units)}`
      : `${named ? "" : "the usual "}weights of ${massText(least.weight, units)} to ${massText(most.weight, units)} the pieces press with ${pressureText(least.worn, units)} to ${pressureText(most.worn, units)}`;
  const usual = `where up to ${pressureText(LOAD.usual, units)} is usual, and can chip the glass and break pieces out`;
  const remedy =
    weight > 0
      ? `write at most about ${massText(weight, units)} under setup.weights`
      : `write ${massText(0, units)} alone under setup.weights, as the tool is heavy enough by itself`;
  return [note("warning", "heavy-load", `With ${range}, ${usual}: ${remedy}.`)];
}

/** What all grades and the way to the target take of the glass, at the edge and at the centre, where a curve lies. */
export function thicknessNotes(job: Job, blank: Blank, { removal, grains }: Setup): Note[] {
  const thickness = job.blank.thickness;
  if (thickness === undefined) return [];
  const later = grains.reduce((sum, { depth }) => sum + depth, 0);
  const rise = blank.curve === "convex" ? blank.sagitta : -blank.sagitta;
  const at = (where: string, glass: number, zone: Removal["zones"][number] | undefined) => {
    const lost = (later + (zone?.depth ?? 0)) / 1000;
    return { where, glass, lost, share: lost / glass };
  };
  if (thickness + rise <= 0) {
    const text = `The blank is ${closeLength(thickness, job.units)} thick at its edge and its curve ${fineLength(blank.sagitta, job.units)} deep, so that a flat back leaves no glass at the centre: check blank.thickness and the curve.`;
    return [note("warning", "glass-thin", text)];
  }
  const edge = at("edge", thickness, removal?.zones.at(-1));
  const centre = at("centre", thickness + rise, removal?.zones[0]);
  const { where, glass, lost, share } = centre.share > edge.share ? centre : edge;
  if (share <= TAKEN) return [];
  const part = share >= 1 ? "all of" : `${Math.round(100 * share)} % of`;
  const text = `The ${where} loses ${fineLength(lost, job.units)} by all grades${removal ? " and the way to the target" : ""}, ${part} the ${fineLength(glass, job.units)} of glass there (blank.thickness): start with a finer setup.grain, write setup.grades with depths of your own, or take a thicker blank.`;
  return [note("warning", "glass-thin", text)];
}

/** Whether the front bevel lasts. */
export function bevelNotes(job: Job, setup: Setup): Note[] {
  const { now, left, needed, edgeRemoval, renew } = setup.bevel;
  if (now === undefined || left === undefined || now >= needed - 1e-9) return [];
  const remedy = renewalText(setup.bevel, job, renew === setup.grain.name ? "the first pass" : `grain ${renew}`);
  const text = `The front bevel of ${atMost(now, job.units)} loses ${closeLength(edgeRemoval, job.units)} by all grades and is ${left > 0 ? `only ${atMost(left, job.units)}` : "gone"} at the end: ${remedy}.`;
  return [note("warning", "bevel-vanishes", text)];
}

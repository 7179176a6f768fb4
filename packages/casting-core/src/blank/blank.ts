import { CastingError } from "../errors.js";
import type { Job, JobCurve } from "../job/types.js";
import { PI } from "../trig.js";
import { atLeast, atMost } from "../units/bound-text.js";
import { lengthText } from "../units/length-text.js";
import { glassOf } from "./glass.js";
import { radiusFromReadings } from "./readings.js";
import { capVolume, radiusFromSagitta, sagittaOf } from "./sphere.js";
import type { Blank, Tool } from "./types.js";

/**
 * The glass of `job`: its curve as radius and sagitta over the diameter, whichever way the job gives it.
 * Throws `invalid` where the curve cannot belong to a blank of that diameter.
 */
export function blankOf(job: Job): Blank {
  const blank = curveOf(job);
  const mass = massOf(job, blank);
  return mass === undefined ? blank : { ...blank, mass };
}

function curveOf(job: Job): Blank {
  const { diameter, curve, target } = job.blank;
  if (curve === "flat") return { diameter, curve, sagitta: 0 };
  const measured = job.blank.readings && radiusFromReadings(job);
  const found = measured ? measured.radius : givenRadius(job);
  const curveRadius = checkedRadius(found, job, ["blank", givenKey(job.blank)]);
  const blank: Blank = { diameter, curve, curveRadius, sagitta: sagittaOf(curveRadius, diameter / 2) };
  if (measured) blank.measured = measured;
  if (target) {
    const wanted = checkedRadius(radiusOf(target, diameter, diameter), job, ["blank", "target", givenKey(target)]);
    if (Math.abs(wanted - curveRadius) < 1e-9 * curveRadius) {
      const text = "the target is the curve as it stands: nothing is to be removed; correct it, or leave it out";
      throw new CastingError("invalid", [{ path: ["blank", "target", givenKey(target)], text }]);
    }
    blank.target = { curveRadius: wanted, sagitta: sagittaOf(wanted, diameter / 2) };
  }
  return blank;
}

/** Mass of a blank with a flat back, kg: a disc as thick as the edge, less the hollow or with the dome; nothing where it is not known. */
function massOf({ blank: { thickness, material } }: Job, { diameter, curve, curveRadius }: Blank): number | undefined {
  const glass = glassOf(material);
  if (!glass || thickness === undefined) return undefined;
  const half = diameter / 2;
  const cap = curveRadius === undefined ? 0 : capVolume(curveRadius, half);
  // Where the hollow goes through the back there is no such blank.
  if (curve === "concave" && curveRadius !== undefined && sagittaOf(curveRadius, half) >= thickness) return undefined;
  const volume = PI * half * half * thickness + (curve === "convex" ? cap : -cap);
  return (volume * glass.density) / 1e6;
}

/** The tool's circle on `blank`, with the depth of the blank's curve over it. */
export function toolOf(job: Job, blank: Blank): Tool {
  const { diameter, rim } = job.tool;
  const { curveRadius } = blank;
  if (curveRadius === undefined) return { diameter, rim, sagitta: 0 };
  return { diameter, rim, curveRadius, sagitta: sagittaOf(curveRadius, diameter / 2) };
}

function givenRadius({ blank }: Job): number | undefined {
  return radiusOf(blank, blank["sagitta-over"] ?? blank.diameter, blank.diameter);
}

/** Radius of curvature, mm; a focal ratio N means R = 2 N D (f = R / 2, N = f / D). */
function radiusOf(curve: JobCurve, chord: number, diameter: number): number | undefined {
  if (curve.radius !== undefined) return curve.radius;
  if (curve["focal-ratio"] !== undefined) return 2 * curve["focal-ratio"] * diameter;
  if (curve.sagitta !== undefined) return radiusFromSagitta(curve.sagitta, chord / 2);
  return undefined;
}

function givenKey(curve: JobCurve & { readings?: unknown }): string {
  if (curve.readings) return "readings";
  if (curve["focal-ratio"] !== undefined) return "focal-ratio";
  return curve.sagitta !== undefined ? "sagitta" : "radius";
}

function checkedRadius(radius: number | undefined, { blank: { diameter }, units }: Job, path: string[]): number {
  if (radius !== undefined && Number.isFinite(radius) && radius >= diameter / 2) return radius;
  const text =
    radius === undefined
      ? "the curve is not given; write one of radius, focal-ratio, sagitta or readings"
      : `the curve's radius comes out at ${atMost(radius, units)}, but a blank of ${lengthText(diameter, units)} needs at least ${atLeast(diameter / 2, units)}; check the figure and its unit`;
  throw new CastingError("invalid", [{ path, text }]);
}

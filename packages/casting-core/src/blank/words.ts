import type { Units } from "../job/types.js";
import { coarseLength, telling } from "../units/figure-text.js";
import { lengthText } from "../units/length-text.js";
import { sagittaOff } from "./sphere.js";
import type { Blank, Measured } from "./types.js";

/** How a radius is written: one that was measured has no more digits than its uncertainty leaves. */
export function radiusWriter(measured: Measured | undefined): (mm: number, units: Units) => string {
  return measured && measured.uncertainty >= 1 ? coarseLength : lengthText;
}

/** By how much a measured radius may be off: to 0.1 mm or 0.01 in as far as that tells it, in decimals as the radius beside it. */
export function uncertaintyText({ uncertainty }: Measured, units: Units): string {
  const [value, places] = units === "mm" ? [uncertainty, 1] : [uncertainty / 25.4, 2];
  return `${Number(telling(value, places))} ${units}`;
}

/** The standard uncertainty of a measured blank's sagitta, mm; nothing where it was not measured. */
export function sagittaDoubt({ curveRadius, diameter, measured }: Blank): number | undefined {
  return measured && sagittaOff(curveRadius!, diameter / 2, measured.uncertainty);
}

/**
 * The way to the target: by how much the curve is to change, how truly that is known where the curve was measured, and
 * where that glass goes, since it can only be taken off.
 */
export function stillToGo(blank: Blank, write: (mm: number) => string): string {
  const { curve, sagitta, target } = blank;
  const left = target!.sagitta - sagitta;
  const doubt = sagittaDoubt(blank);
  const known = doubt === undefined ? "" : ` give or take ${write(doubt)}`;
  const centre = (curve === "convex" ? -left : left) >= 0;
  return `${write(Math.abs(left))} ${left < 0 ? "shallower" : "deeper"}${known}, taken off at the ${centre ? "centre" : "edge"}`;
}

import type { Units } from "../job/types.js";
import { usMass, usVolume } from "./figure-text.js";
import { lengthText } from "./length-text.js";

/** Whether a figure must be reached, or must not be passed. */
export type Side = "least" | "most";

/** Of a step: what the arithmetic may be off, and no more than any rule of a job forgives. */
const SLACK = 1e-8;

const WHOLE: Record<Side, (steps: number) => number> = {
  least: (steps) => Math.ceil(steps - SLACK),
  most: (steps) => Math.floor(steps + SLACK),
};

/** A length that must be reached or is passed: rounded up, so that what is written suffices. */
export function atLeast(mm: number, units: Units): string {
  return bound(mm, units, WHOLE.least);
}

/** A length that must not be passed or is not reached: rounded down, so that what is written keeps to it. */
export function atMost(mm: number, units: Units): string {
  return bound(mm, units, WHOLE.most);
}

/** The least and the most of a range, read beside each other: in inches in one form, as decimals where one of them is. */
export function rangeText(least: number, most: number, units: Units): string {
  const texts = [atLeast(least, units), atMost(most, units)];
  if (units === "mm" || !texts.some((text) => text.includes("."))) return texts.join(" to ");
  return `${decimal(least / 25.4, 1000, WHOLE.least)} in to ${decimal(most / 25.4, 1000, WHOLE.most)} in`;
}

/** A volume that must be reached or not be passed, as a job may write it; in inches to 0.01 of its unit. */
export function volumeBound(mL: number, units: Units, side: Side): string {
  if (units === "mm") return `${mL / 1000} L`;
  const { name, size } = usVolume(mL);
  return `${decimal(mL / size, 100, WHOLE[side])} ${name}`;
}

/** The same of a mass. */
export function massBound(kg: number, units: Units, side: Side): string {
  if (units === "mm") return `${kg} kg`;
  const { name, size } = usMass(kg);
  return kg === 0 ? "0 lb" : `${decimal(kg / size, 100, WHOLE[side])} ${name}`;
}

/** To 0.01 mm; in inches to 1/64 from an inch on, below that to 0.001 in where it is no 64th already. */
function bound(mm: number, units: Units, whole: (steps: number) => number): string {
  if (units === "mm") return `${decimal(mm, 100, whole)} mm`;
  const parts = (mm / 25.4) * 64;
  if (Math.abs(parts) >= 64 || Math.abs(parts - Math.round(parts)) < SLACK)
    return lengthText((whole(parts) / 64) * 25.4, units);
  return `${decimal(mm / 25.4, 1000, whole)} in`;
}

/** `value` in whole parts of 1/`parts`, in smaller ones where it is less than one, down to 0.000001. */
function decimal(value: number, parts: number, whole: (steps: number) => number): string {
  let fine = parts;
  while (fine < 1e6 && Math.abs(value) * fine < 1 - SLACK) fine *= 10;
  return String(whole(value * fine) / fine + 0);
}

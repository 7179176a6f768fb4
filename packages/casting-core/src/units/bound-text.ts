import type { Units } from "../job/types.js";
import { lengthText } from "./length-text.js";

/** Of a step: what the arithmetic may be off, and no more than any rule of a job forgives. */
const SLACK = 1e-8;

/** A length that must be reached or is passed: rounded up, so that what is written suffices. */
export function atLeast(mm: number, units: Units): string {
  return bound(mm, units, (steps) => Math.ceil(steps - SLACK));
}

/** A length that must not be passed or is not reached: rounded down, so that what is written keeps to it. */
export function atMost(mm: number, units: Units): string {
  return bound(mm, units, (steps) => Math.floor(steps + SLACK));
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

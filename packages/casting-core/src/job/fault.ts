import type { Fault } from "../errors.js";
import { lengthText } from "../units/length-text.js";
import type { Job } from "./types.js";

/** One fault of a job that was read. */
export function fault(path: Fault["path"], text: string): Fault {
  return { path, text };
}

/** Writes a length as a maker of these units reads it. */
export function mmIn(units: Job["units"]): (mm: number) => string {
  return (mm) => lengthText(mm, units);
}

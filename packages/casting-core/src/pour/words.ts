import type { Units } from "../job/types.js";

/** A length for a sentence, in the job's own units. */
export function lengthWords(mm: number, units: Units): string {
  return units === "in" ? `${decimals(mm / 25.4, 2)} in` : `${decimals(mm, 1)} mm`;
}

/** `value` with at most `places` decimals, no trailing zeros. */
export function decimals(value: number, places: number): string {
  return String(Number(value.toFixed(places)));
}

import type { Units } from "../job/types.js";
import { lengthText } from "./length-text.js";

/** mL in a US quart and in a cubic inch; kg in a pound. Exact by definition (NIST SP 811, appendix B). */
const ML_PER_QUART = 946.352946;
const KG_PER_POUND = 0.45359237;

/** A worked-out length, to 0.1 mm or the nearest 1/64 in. */
export function roughLength(mm: number, units: Units): string {
  if (units === "mm") return lengthText(Math.round(mm * 10) / 10, units);
  return lengthText((Math.round((mm / 25.4) * 64) / 64) * 25.4, units);
}

/** A volume to weigh or pour: `1.24 L`, `850 mL`; in inches `1.31 US qt`. */
export function volumeText(mL: number, units: Units): string {
  if (units === "in") return `${fixed(mL / ML_PER_QUART, 2)} US qt`;
  return Math.abs(mL) < 1000 ? `${fixed(mL, 0)} mL` : `${fixed(mL / 1000, 2)} L`;
}

/** A mass to weigh out: `2.431 kg`, `431 g`; in inches `5.36 lb`. */
export function massText(kg: number, units: Units): string {
  if (units === "in") return `${fixed(kg / KG_PER_POUND, 2)} lb`;
  return Math.abs(kg) < 1 ? `${fixed(kg * 1000, 0)} g` : `${fixed(kg, 3)} kg`;
}

/** A share in percent with one decimal: `71.3 %`. */
export function shareText(share: number): string {
  return `${fixed(share * 100, 1)} %`;
}

/** `value` with exactly `places` decimals, never `-0`. */
export function fixed(value: number, places: number): string {
  const text = value.toFixed(places);
  return Number(text) === 0 ? (0).toFixed(places) : text;
}

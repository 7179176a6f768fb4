import type { Units } from "../job/types.js";

/** A fraction of an inch stands for a length that is no further from it than this, mm. */
const FRACTION_TOLERANCE = 0.05;

/**
 * A length as a maker writes it: `12.5 mm` with up to three decimals; in inches `1 1/4 in` where a fraction down to 1/64
 * is within 0.05 mm, else `0.909 in`.
 */
export function lengthText(mm: number, units: Units): string {
  return units === "mm" ? `${trimmed(mm)} mm` : `${inches(mm / 25.4)} in`;
}

/** Lengths to be read beside each other, in one form: fractions of an inch where each is near one, else decimals. */
export function lengthTexts(lengths: readonly number[], units: Units): string[] {
  const texts = lengths.map((mm) => lengthText(mm, units));
  if (units === "mm" || !texts.some((text) => text.includes("."))) return texts;
  return lengths.map((mm) => `${trimmed(mm / 25.4, 10_000)} in`);
}

function inches(value: number): string {
  const size = Math.abs(value);
  const parts = Math.round(size * 64);
  if (parts === 0 || Math.abs(size - parts / 64) * 25.4 > FRACTION_TOLERANCE) return trimmed(value, 10_000);
  const sign = value < 0 ? "-" : "";
  const whole = Math.floor(parts / 64);
  let over = parts % 64;
  let under = 64;
  while (over > 0 && over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  if (over === 0) return `${sign}${whole}`;
  return `${sign}${whole > 0 ? `${whole} ` : ""}${over}/${under}`;
}

/** Up to three decimals, in parts of 1/`finest` where these leave nothing; no trailing zeros, no minus zero. */
function trimmed(value: number, finest = 1000): string {
  const rounded = Math.round(value * 1000) / 1000 || Math.round(value * finest) / finest;
  return String(rounded === 0 ? 0 : rounded);
}

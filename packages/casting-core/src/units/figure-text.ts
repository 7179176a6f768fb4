import type { Units } from "../job/types.js";
import { lengthText, lengthTexts } from "./length-text.js";

/** mL in a US quart and fluid ounce; kg in a pound and ounce. Exact by definition (NIST SP 811, appendix B). */
const ML_PER_QUART = 946.352946;
const ML_PER_FLUID_OUNCE = ML_PER_QUART / 32;
const KG_PER_POUND = 0.45359237;
const KG_PER_OUNCE = KG_PER_POUND / 16;
/** kPa in a pound per square inch (NIST SP 811, appendix B). */
const KPA_PER_PSI = 6.894757;

/** A worked-out length, to 0.1 mm or the nearest 1/64 in. */
export function roughLength(mm: number, units: Units): string {
  if (units === "mm") return lengthText(Math.round(mm * 10) / 10, units);
  return lengthText((Math.round((mm / 25.4) * 64) / 64) * 25.4, units);
}

/** A worked-out length that something fits, to 0.01 mm or 0.001 in. What it must reach or keep below: see atLeast, atMost. */
export function closeLength(mm: number, units: Units): string {
  return closeLengths([mm], units)[0]!;
}

/** The same of several to be read beside each other, in one form. */
export function closeLengths(lengths: readonly number[], units: Units): string[] {
  // Inches are rounded once, as they are written.
  return lengthTexts(units === "mm" ? lengths.map((mm) => Math.round(mm * 100) / 100) : lengths, units);
}

/** A length that is measured, such as a sagitta, to 1 µm or 0.0001 in: never as a fraction. */
export function fineLength(mm: number, units: Units): string {
  return units === "mm" ? `${fixed(mm, 3)} mm` : `${fixed(mm / 25.4, 4)} in`;
}

/** A length known no better than to 1 mm, such as a measured radius: `2521 mm`, `99.27 in`. */
export function coarseLength(mm: number, units: Units): string {
  return units === "mm" ? `${fixed(mm, 0)} mm` : `${Number(fixed(mm / 25.4, 2))} in`;
}

/** A depth of glass: `137 µm`, `10.52 mm`; in inches `0.0054 in`. */
export function depthText(microns: number, units: Units): string {
  if (units === "in") return fineLength(microns / 1000, units);
  if (microns < 1) return `${fixed(microns, 1)} µm`;
  return microns < 999.5 ? `${fixed(microns, 0)} µm` : `${fixed(microns / 1000, 2)} mm`;
}

/** How far readings lie apart: `12.7 µm`; in inches `0.0005 in`. */
export function apartText(microns: number, units: Units): string {
  return units === "in" ? fineLength(microns / 1000, units) : `${fixed(microns, 1)} µm`;
}

/** A slope: `1 mm per m`, `0.012 in per ft`. */
export function slopeText(mmPerMetre: number, units: Units): string {
  return units === "mm" ? `${mmPerMetre} mm per m` : `${fixed(mmPerMetre * 0.012, 3)} in per ft`;
}

/** A speed: `0.63 m/s`; in inches `2.06 ft/s (0.63 m/s)`. */
export function speedText(metres: number, units: Units): string {
  const metric = `${fixed(metres, 2)} m/s`;
  return units === "in" ? `${fixed(metres / 0.3048, 2)} ft/s (${metric})` : metric;
}

/** A speed of turning as it was written: `30 rpm`, `33.3 rpm`. */
export function rpmText(rpm: number): string {
  return `${Number(rpm.toFixed(2))} rpm`;
}

/** The unit that a volume of an inch job is told in, and how much one is, mL: fluid ounces below a quarter of a quart. */
export function usVolume(mL: number): { name: string; size: number } {
  return Math.abs(mL) < ML_PER_QUART / 4
    ? { name: "US fl oz", size: ML_PER_FLUID_OUNCE }
    : { name: "US qt", size: ML_PER_QUART };
}

/** The unit that a mass of an inch job is told in, and how much one is, kg: ounces below a pound. */
export function usMass(kg: number): { name: string; size: number } {
  return Math.abs(kg) < KG_PER_POUND ? { name: "oz", size: KG_PER_OUNCE } : { name: "lb", size: KG_PER_POUND };
}

/**
 * A volume to weigh or pour: `1.24 L`, `850 mL`, `6.3 mL`; in inches `1.31 US qt`, `2.10 US fl oz`, or in the unit that is
 * usual of `beside`, mL, which it is read beside.
 */
export function volumeText(mL: number, units: Units, beside = mL): string {
  const size = Math.abs(mL);
  if (units === "in") {
    const { name, size: one } = usVolume(beside);
    return `${telling(mL / one, 2)} ${name}`;
  }
  return size < 1000 ? `${telling(mL, size < 10 ? 1 : 0)} mL` : `${fixed(mL / 1000, 2)} L`;
}

/** A mass to weigh out: `2.431 kg`, `431 g`, `3.1 g`; in inches `5.36 lb`, `0.44 oz`, or in the unit that is usual of `beside`. */
export function massText(kg: number, units: Units, beside = kg): string {
  const size = Math.abs(kg);
  if (size === 0) return units === "in" ? "0 lb" : "0 kg";
  if (units === "in") {
    const { name, size: one } = usMass(beside);
    return `${telling(kg / one, 2)} ${name}`;
  }
  return size < 1 ? `${telling(kg * 1000, size < 0.01 ? 1 : 0)} g` : `${fixed(kg, 3)} kg`;
}

/** The mass of a small thing, to two digits: `5.4 g`, `0.95 g`; in inches `0.19 oz`. */
export function lightText(grams: number, units: Units): string {
  const value = units === "in" ? grams / 1000 / KG_PER_OUNCE : grams;
  return `${Number(value.toPrecision(2))} ${units === "in" ? "oz" : "g"}`;
}

/** A pressure in both units, the job's own first: `12.3 kPa (1.78 psi)`, `1.78 psi (12.3 kPa)`. */
export function pressureText(kPa: number, units: Units): string {
  const [metric, inch] = [`${telling(kPa, kPa < 1 ? 2 : 1)} kPa`, `${telling(kPa / KPA_PER_PSI, 2)} psi`];
  return units === "in" ? `${inch} (${metric})` : `${metric} (${inch})`;
}

/** No pressure above so many times the mean is told: that near to falling off a tool tips and rocks (common practice). */
export const MOST_TIMES = 10;

/** A pressure over the mean: `1.45 times the mean`, `more than 10 times the mean`. */
export function meanText(times: number): string {
  return `${times < MOST_TIMES ? fixed(times, 2) : `more than ${MOST_TIMES}`} times the mean`;
}

/** The same in a table: `1.45 x`, `over 10 x`. */
export function timesText(times: number): string {
  return times < MOST_TIMES ? `${fixed(times, 2)} x` : `over ${MOST_TIMES} x`;
}

/** A temperature to the degree: `74 °C`; in inches `165 °F (74 °C)`. */
export function temperatureText(celsius: number, units: Units): string {
  const metric = `${fixed(celsius, 0)} °C`;
  return units === "in" ? `${fixed(celsius * 1.8 + 32, 0)} °F (${metric})` : metric;
}

/** A rise in temperature to the degree: `54 K`; in inches `97 °F (54 K)`. */
export function riseText(kelvin: number, units: Units): string {
  const metric = `${fixed(kelvin, 0)} K`;
  return units === "in" ? `${fixed(kelvin * 1.8, 0)} °F (${metric})` : metric;
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

/** `value` with `places` decimals, or to two digits where these would leave nothing of it. */
export function telling(value: number, places: number): string {
  const text = fixed(value, places);
  return Number(text) === 0 && Math.abs(value) >= 1e-6 ? String(Number(value.toPrecision(2))) : text;
}

/** The direction of an axis in whole degrees, of which 180 is 0 again. */
export function axisText(degrees: number): string {
  return fixed(Math.round(degrees) % 180, 0);
}

/** A time: `12 min`, `3 h 40 min`. */
export function minutesText(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${fixed(minutes, minutes < 9.95 ? 1 : 0)} min`;
  return `${Math.floor(whole / 60)} h ${whole % 60} min`;
}

/** From this correlation with the removal wanted on a run follows it; nearer to 0 than HARDLY it hardly does (common practice). */
export const FOLLOWS = 0.5;
export const HARDLY = 0.2;

/**
 * How well a run follows the removal wanted, from its correlation: `follows the target to 92.3 %`, and worse below that,
 * to `leads away from the target (-40.0 %)`.
 */
export function followsText(match: number): string {
  if (match >= FOLLOWS) return `follows the target to ${shareText(match)}`;
  const how =
    match >= HARDLY
      ? "follows the target in part only"
      : match > -HARDLY
        ? "hardly follows the target"
        : "leads away from the target";
  return `${how} (${shareText(match)})`;
}

/** `1 cut`, `2 cuts`: a count and its noun. */
export function countText(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}

import { CastingError } from "../errors.js";
import type { Units } from "../job/types.js";
import { HIDDEN } from "../latin.js";
import { FRACTIONS, LENGTHS, MASSES, VOLUMES } from "./units.js";

/** Longest text of a figure; a longer one is no figure, and is not looked at. */
const LONGEST = 32;

const DECIMAL = "\\d{1,9}(?:\\.\\d{1,20})?|\\.\\d{1,20}";
const NUMBER = new RegExp(`^(?:(${DECIMAL})|(?:(\\d{1,6})(?:\\s+|\\s*-\\s*))?(\\d{1,4})\\s*/\\s*(\\d{1,4}))$`);
const FEET_AND_INCHES =
  /^(\d{1,6})\s*(?:'|ft)(?:\s?|-\s?|\s-\s)(\d[\d./\s-]{0,19}?|\.\d{1,12})\s*(?:"|in|inch|inches)$/;
/** A length a minute. */
const A_MINUTE = /^([\d./ -]{1,20}(?:mm|cm|m|in|ft|"|')) ?\/ ?min$/;
const FIGURE = /^([-+]?[\d./\s-]{1,28}?)\s*([^\d./\s-][^\d./-]{0,10}\d?)?$/;
const COMMA = /^[-+]?(?:\d[\d.,/'"ft\s-]*)?,\d/;
/** Digits in threes, as thousands are parted: `1,600`, `1,250,000`; by points before a decimal comma, `1.600,5`. */
const THOUSANDS = /^[-+]?[1-9]\d{0,2}(?:,\d{3})+(?![\d,])/;
const THOUSANDS_BY_POINTS = /^[-+]?[1-9]\d{0,2}(?:\.\d{3})+,\d+(?![\d.,])/;

/**
 * A length in mm from what a maker writes: `32 mm`, `3.2cm`, `5/8"`, `1 1/4 in`, `1-1/4"`, `1¼"`, `1 ft 2 in`,
 * `1'-2 1/2"`; a bare number is in `units`. Throws `invalid` for all else; the sentence names the text and the remedy,
 * which for a length of one place only is an `example` of it.
 */
export function parseLength(text: string, units: Units, example?: string): number {
  const usual = units === "in" ? ["1 1/4 in", "32 mm"] : ["32 mm", "1 1/4 in"];
  const own = example ?? usual[0]!;
  const plain = tidy(text, "length", own);
  if (/[eE][-+]?\d|0[xXoObB]/.test(plain)) throw refused(text, "length", `it in plain digits, such as ${own}`);
  const minute = A_MINUTE.exec(plain)?.[1];
  if (minute !== undefined) {
    const sentence = `${shown(text)} is a speed, not a length; write how far it goes in a minute, ${minute}`;
    throw new CastingError("invalid", [{ path: [], text: sentence }]);
  }
  const feet = FEET_AND_INCHES.exec(plain);
  if (feet) {
    const inches = numberOf(feet[2]!.trim());
    if (inches === undefined || inches >= 12) throw refused(text, "length", "its inches as a number below 12");
    return exact((Number(feet[1]) * 12 + inches) * 25.4);
  }
  return figure(text, plain, LENGTHS, units === "in" ? 25.4 : 1, "length", example ?? usual.join(" or "));
}

/** A volume in mL; a bare number is in `bare`, litres if left out. Throws `invalid` as parseLength. */
export function parseVolume(text: string, bare: "L" | "mL" = "L"): number {
  return figure(text, tidy(text, "volume", "1.5 L"), VOLUMES, VOLUMES[bare]!, "volume", "1.5 L, 850 mL or 2 qt");
}

/** A mass in kg; a bare number is in kg. Throws `invalid` as parseLength. */
export function parseMass(text: string): number {
  return figure(text, tidy(text, "mass", "4.5 kg"), MASSES, 1, "mass", "4.5 kg, 450 g or 10 lb");
}

/** A share from `10%` or `0.1`, as a number from 0 up. Throws `invalid` as parseLength. */
export function parseShare(text: string): number {
  return figure(text, tidy(text, "share", "10%"), { "%": 0.01 }, 1, "share", "10% or 0.1");
}

/**
 * A number without a unit, such as `example`; what says one within `limits` in another way is told which. Throws `invalid`
 * as parseLength.
 */
export function parseNumber(
  text: string,
  example = "3.8",
  limits: { least: number; most: number } = { least: -Infinity, most: Infinity },
): number {
  const meant = meantNumber(text);
  if (meant !== undefined && meant >= limits.least && meant <= limits.most) {
    throw new CastingError("invalid", [{ path: [], text: `${shown(text)} is not a plain number; write ${meant}` }]);
  }
  return figure(text, tidy(text, "number", example), {}, 1, "number", `a number without a unit, such as ${example}`);
}

/** The number that a text means which says it in another way: 0.3 of `30%`, 5 of `f/5`. */
function meantNumber(text: string): number | undefined {
  const [, percent, ratio] =
    /^\s*(?:(\d{1,9}(?:\.\d{1,20})?)\s*%|f\s*\/?\s*(\d{1,9}(?:\.\d{1,20})?))\s*$/i.exec(text) ?? [];
  return percent !== undefined ? exact(Number(percent) / 100) : ratio !== undefined ? Number(ratio) : undefined;
}

/** One spelling for what has several: quotes, primes, spaces, fractions and the fraction slash. */
function tidy(text: string, what: string, example: string): string {
  if (text.length > LONGEST) {
    throw new CastingError("invalid", [
      { path: [], text: `a ${what} of ${text.length} characters is not one; write for example ${example}` },
    ]);
  }
  return text
    .replace(/[¼½¾⅐-⅞]/g, (letter) => ` ${FRACTIONS[letter] ?? letter} `)
    .replace(/[\u00a0\u2007\u2009\u202f]/g, " ")
    .replace(/\u2044/g, "/")
    .replace(/[″”“]|''|′′|’’/g, '"')
    .replace(/[′’‘]/g, "'")
    .trim()
    .replace(/\s+/g, " ");
}

function figure(
  text: string,
  plain: string,
  units: Record<string, number>,
  bare: number,
  what: string,
  example: string,
): number {
  if (COMMA.test(plain)) throw refused(text, what, withoutComma(plain));
  const match = FIGURE.exec(plain);
  if (!match) throw refused(text, what, example);
  const written = match[1]!.trim();
  if (written.startsWith("-")) {
    throw new CastingError("invalid", [
      { path: [], text: `${shown(text)} is negative; write a ${what} without the minus` },
    ]);
  }
  const value = numberOf(written.replace(/^\+/, ""));
  if (value === undefined) throw refused(text, what, example);
  const unit = match[2]?.trim();
  const scale = unit === undefined ? bare : Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (scale === undefined) {
    const known = Object.keys(units).filter((name) => /^[ -~]+$/.test(name));
    const list = known.length > 0 ? `the units are ${known.join(", ")}` : `write ${example}`;
    throw new CastingError("invalid", [
      { path: [], text: `${shown(text)} has a unit that a ${what} cannot have; ${list}` },
    ]);
  }
  return exact(value * scale);
}

/** What to write instead of a figure with a comma, which stands for a point or parts thousands; both where it may be either. */
export function withoutComma(figure: string): string {
  if (figure.includes(".")) {
    if (THOUSANDS_BY_POINTS.test(figure)) return shown(figure.replaceAll(".", "").replace(",", "."));
    if (THOUSANDS.test(figure)) return shown(figure.replaceAll(",", ""));
    return "it with one decimal point and no comma";
  }
  const point = `with a decimal point, ${shown(figure.replace(",", "."))}`;
  if (!THOUSANDS.test(figure)) return `it ${point}`;
  const whole = `it without a comma, ${shown(figure.replaceAll(",", ""))}`;
  return figure.indexOf(",") < figure.lastIndexOf(",") ? whole : `${whole}, or ${point}`;
}

/** Fifteen digits: 1.5 in are 38.1 mm, not 38.099999999999994. */
function exact(value: number): number {
  return Number(value.toPrecision(15));
}

/** A decimal, a fraction or a whole number and a fraction below 1; nothing for all else. */
function numberOf(text: string): number | undefined {
  const match = NUMBER.exec(text);
  if (!match) return undefined;
  const [, decimal, whole, over, under] = match;
  if (decimal !== undefined) return Number(decimal);
  if (Number(under) === 0 || (whole !== undefined && Number(over) >= Number(under))) return undefined;
  return Number(whole ?? 0) + Number(over) / Number(under);
}

function refused(text: string, what: string, example: string): CastingError {
  return new CastingError("invalid", [{ path: [], text: `${shown(text)} is not a ${what}; write ${example}` }]);
}

/** What was written, safe to show and no longer than a line bears. */
export function shown(text: string): string {
  const plain = text.replace(HIDDEN, "?").replace(/\p{Cf}/gu, "?");
  return `"${plain.length > 40 ? `${plain.slice(0, 39)}…` : plain}"`;
}

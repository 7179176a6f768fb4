import { kept } from "../units/digits.js";

/** Lines of numbers and small records up to this length stand on one line. */
const LINE = 120;

/**
 * The JSON text of a plan or a part of it, ending with a line break. Numbers carry twelve significant digits, never an
 * exponent or `-0`; lists of numbers stand on one line, so that the file can be read and compared line by line.
 */
export function planJson(plan: object): string {
  return `${text(plan, "")}\n`;
}

function text(value: unknown, indent: string): string {
  if (isScalar(value)) return scalar(value);
  if (isFlat(value)) {
    const flat = oneLine(value);
    if (indent.length + flat.length <= LINE || isRow(value)) return flat;
  }
  const deeper = `${indent}  `;
  const [open, close] = Array.isArray(value) ? ["[", "]"] : ["{", "}"];
  const lines = Array.isArray(value)
    ? value.map((item) => deeper + text(item, deeper))
    : entries(value).map(([key, item]) => `${deeper}${JSON.stringify(key)}: ${text(item, deeper)}`);
  return lines.length === 0 ? open + close : `${open}\n${lines.join(",\n")}\n${indent}${close}`;
}

/** What may stand on one line: a list of scalars or of rows, a record of scalars. */
function isFlat(value: object): boolean {
  if (Array.isArray(value)) return value.every((item) => isScalar(item) || isRow(item));
  return Object.values(value).every(isScalar);
}

function oneLine(value: unknown): string {
  if (isScalar(value)) return scalar(value);
  if (Array.isArray(value)) return `[${value.map(oneLine).join(", ")}]`;
  return `{${entries(value)
    .map(([key, item]) => `${JSON.stringify(key)}: ${oneLine(item)}`)
    .join(", ")}}`;
}

/** A list of numbers, or of points. */
function isRow(value: unknown): boolean {
  return Array.isArray(value) && value.every((item) => typeof item === "number" || isRow(item));
}

function isScalar(value: unknown): value is string | number | boolean | null | undefined {
  return typeof value !== "object" || value === null;
}

function scalar(value: unknown): string {
  return typeof value === "number" ? number(value) : JSON.stringify(value ?? null);
}

function entries(value: object): [string, unknown][] {
  return Object.entries(value).filter(([, item]) => item !== undefined);
}

/** A number written in so many letters has no more than twelve digits, its point and its sign told: it stands as it is. */
const SHORT = 12;

function number(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError("a plan holds finite numbers only");
  const exact = String(value);
  if (exact.length <= SHORT && value !== 0 && !exact.includes("e")) return exact;
  const rounded = kept(value);
  if (rounded === 0) return "0";
  const written = String(rounded);
  return written.includes("e") ? plain(rounded) : written;
}

/** Without an exponent: very small ones to fifteen decimals, very large ones in full. */
function plain(value: number): string {
  if (Math.abs(value) >= 1) return BigInt(Math.round(value)).toString();
  const fixed = value.toFixed(15).replace(/0+$/, "").replace(/\.$/, "");
  return fixed === "-0" ? "0" : fixed;
}

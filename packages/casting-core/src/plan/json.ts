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
  const flat = oneLine(value);
  const short = flat !== undefined && indent.length + flat.length <= LINE;
  if (flat !== undefined && (short || typeof value !== "object" || isRow(value))) return flat;
  const deeper = `${indent}  `;
  const [open, close] = Array.isArray(value) ? ["[", "]"] : ["{", "}"];
  const lines = Array.isArray(value)
    ? value.map((item) => deeper + text(item ?? null, deeper))
    : entries(value as object).map(([key, item]) => `${deeper}${JSON.stringify(key)}: ${text(item, deeper)}`);
  return lines.length === 0 ? open + close : `${open}\n${lines.join(",\n")}\n${indent}${close}`;
}

/** A scalar, a list of scalars or of points, a record of scalars: as one line; nothing for all else. */
function oneLine(value: unknown): string | undefined {
  if (typeof value === "number") return number(value);
  if (typeof value !== "object" || value === null) return JSON.stringify(value ?? null);
  const parts: string[] = [];
  const items: [string, unknown][] = Array.isArray(value) ? value.map((item) => ["", item]) : entries(value);
  for (const [key, item] of items) {
    const deep = typeof item === "object" && item !== null && !(Array.isArray(value) && isRow(item));
    const part = deep ? undefined : oneLine(item);
    if (part === undefined) return undefined;
    parts.push(key === "" ? part : `${JSON.stringify(key)}: ${part}`);
  }
  return Array.isArray(value) ? `[${parts.join(", ")}]` : `{${parts.join(", ")}}`;
}

/** A list of numbers, or of points. */
function isRow(value: unknown): boolean {
  return (
    Array.isArray(value) && value.every((item) => typeof item === "number" || (Array.isArray(item) && isRow(item)))
  );
}

function entries(value: object): [string, unknown][] {
  return Object.entries(value).filter(([, item]) => item !== undefined);
}

function number(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError("a plan holds finite numbers only");
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

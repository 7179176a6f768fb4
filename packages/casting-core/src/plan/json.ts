import { kept, thousandths } from "../units/digits.js";

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
  if (typeof value !== "object" || value === null) return scalar(value);
  const deeper = `${indent}  `;
  return Array.isArray(value)
    ? (row(value) ?? enclosed("[]", itemsOf(value, deeper), value.every(isPlain), indent))
    : enclosed("{}", entriesOf(value, deeper), Object.values(value).every(isScalar), indent);
}

/** Parts in brackets: on one line where they are `flat` and fit, else on a line each. */
function enclosed(brackets: string, parts: readonly string[], flat: boolean, indent: string): string {
  const [open, close] = [brackets[0]!, brackets[1]!];
  if (flat) {
    const line = open + parts.join(", ") + close;
    if (indent.length + line.length <= LINE) return line;
  }
  if (parts.length === 0) return brackets;
  return `${open}\n${indent}  ${parts.join(`,\n${indent}  `)}\n${indent}${close}`;
}

function itemsOf(list: readonly unknown[], indent: string): string[] {
  return list.map((item) => text(item, indent));
}

function entriesOf(record: object, indent: string): string[] {
  const parts: string[] = [];
  for (const [key, item] of Object.entries(record)) {
    if (item !== undefined) parts.push(`${JSON.stringify(key)}: ${text(item, indent)}`);
  }
  return parts;
}

/** A list of numbers, or of points, on one line however long it is; nothing of a list that holds anything else. */
function row(list: readonly unknown[]): string | undefined {
  let line = "[";
  for (let i = 0; i < list.length; i++) {
    const item = list[i];
    const part = typeof item === "number" ? number(item) : Array.isArray(item) ? row(item) : undefined;
    if (part === undefined) return undefined;
    line += i === 0 ? part : `, ${part}`;
  }
  return `${line}]`;
}

/** What may stand in a list on one line. */
function isPlain(item: unknown): boolean {
  return isScalar(item) || (Array.isArray(item) && row(item) !== undefined);
}

function isScalar(value: unknown): boolean {
  return typeof value !== "object" || value === null;
}

function scalar(value: unknown): string {
  return typeof value === "number" ? number(value) : JSON.stringify(value ?? null);
}

/** A number written in so many letters has no more than twelve digits, its point and its sign told: it stands as it is. */
const SHORT = 12;

function number(value: number): string {
  const count = Math.round(value * 1000);
  if (count / 1000 === value && Math.abs(value) < 1e6) return thousandths(count);
  if (!Number.isFinite(value)) throw new RangeError("a plan holds finite numbers only");
  const exact = String(value);
  if (exact.length <= SHORT && !exact.includes("e")) return exact;
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

import type { Outline } from "../geometry/types.js";
import { massText, volumeText } from "../units/figure-text.js";
import type { Plan } from "./types.js";

/** One kind of measurement of a saved plan: what does not hold, in one sentence; nothing where it holds. */
export type Look = [what: string, look: (plan: Plan) => string | undefined];

export type Piece = Plan["layout"]["pieces"][number];

/** Lengths are proved to a micrometre's millionth; figures to nine digits. */
export const SHARP = 1e-6;

/** Area of an outline by triangles from its first corner, mm²; positive where it runs counter-clockwise. */
export function areaOf(outline: Outline): number {
  const [ox, oy] = outline[0]!;
  let twice = 0;
  for (let n = 1; n + 1 < outline.length; n++) {
    const [ax, ay] = outline[n]!;
    const [bx, by] = outline[n + 1]!;
    twice += (ax - ox) * (by - oy) - (bx - ox) * (ay - oy);
  }
  return twice / 2;
}

/** Whether two figures agree to nine digits. */
export function same(a: number, b: number, digits = 1e-9): boolean {
  return Math.abs(a - b) <= digits * Math.max(1, Math.abs(a), Math.abs(b));
}

/** How a plan's figures are told: as it keeps them, which in an inch job stands behind inches, quarts and pounds. */
export interface Told {
  /** A length, mm, to so many decimals; in inches to one more. */
  length: (mm: number, digits?: number) => string;
  volume: (mL: number) => string;
  mass: (kg: number) => string;
}

/** Figures as the maker of this job tells them: `3.924 mm`, or `0.1545 in (3.924 mm)`. */
export function toldIn({ job: { units } }: Plan): Told {
  const told = (metric: string, inches: string) => (units === "in" ? `${inches} (${metric})` : metric);
  return {
    length: (mm, digits) =>
      told(`${digits === undefined ? mm : mm.toFixed(digits)} mm`, `${(mm / 25.4).toFixed((digits ?? 3) + 1)} in`),
    volume: (mL) => told(`${mL} mL`, volumeText(mL, "in")),
    mass: (kg) => told(`${kg} kg`, massText(kg, "in")),
  };
}

/** `text` where the condition fails. */
export function must(condition: boolean, text: string): string | undefined {
  return condition ? undefined : text;
}

/** Straight distance, mm. */
export function distance([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): number {
  return Math.sqrt((ax - bx) * (ax - bx) + (ay - by) * (ay - by));
}

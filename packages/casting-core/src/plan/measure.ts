import type { Outline } from "../geometry/types.js";
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

/** `text` where the condition fails. */
export function must(condition: boolean, text: string): string | undefined {
  return condition ? undefined : text;
}

/** Straight distance, mm. */
export function distance([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): number {
  return Math.sqrt((ax - bx) * (ax - bx) + (ay - by) * (ay - by));
}

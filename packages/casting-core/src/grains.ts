import { known } from "./nearest.js";

/** A loose grain by its grit: mean size, µm; for microgrits its allowed spread. */
export interface Grain {
  name: string;
  size: number;
  spread?: number;
  source: string;
}

const MACRO = "FEPA 42-1 and ISO 8486-1, the same as ANSI B74.12 but for F22 and F40; value from memory";
const MICRO = "FEPA 42-2 and ISO 8486-2, median by photosedimentometer; value from memory";

function macro(grit: number, size: number): Grain {
  return { name: `F${grit}`, size, source: MACRO };
}

function micro(grit: number, size: number, spread: number): Grain {
  return { name: `F${grit}`, size, spread, source: MICRO };
}

/** F grits, coarse to fine. P grits of coated paper are other sizes. */
export const GRAINS: readonly Grain[] = [
  macro(16, 1230),
  macro(20, 1040),
  macro(22, 885),
  macro(24, 745),
  macro(30, 625),
  macro(36, 525),
  macro(40, 438),
  macro(46, 370),
  macro(54, 310),
  macro(60, 260),
  macro(70, 218),
  macro(80, 185),
  macro(90, 154),
  macro(100, 129),
  macro(120, 109),
  macro(150, 82),
  macro(180, 69),
  macro(220, 58),
  micro(230, 53, 3),
  micro(240, 44.5, 2),
  micro(280, 36.5, 1.5),
  micro(320, 29.2, 1.5),
  micro(360, 22.8, 1.5),
  micro(400, 17.3, 1),
  micro(500, 12.8, 1),
  micro(600, 9.3, 1),
  micro(800, 6.5, 1),
  micro(1000, 4.5, 0.8),
  micro(1200, 3, 0.5),
  micro(1500, 2, 0.4),
  micro(2000, 1.2, 0.3),
];

/** A size instead of a grit; either sign of micro, or the u of a keyboard without one. */
const SIZE = /^(\d{1,4}(?:\.\d{1,3})?) ?[µμu]m$/;
/** Sizes that a grain may have, µm: a little beyond those of the table. */
const LEAST = 0.5;
const MOST = 2000;

/** The grain called `name`, or of the size that it is: below about F220 each maker may label differently. */
export function grainNamed(name: string): Grain | undefined {
  const size = Number(SIZE.exec(name.trim())?.[1] ?? Number.NaN);
  if (size >= LEAST && size <= MOST) return { name: `${size} µm`, size, source: "size as given" };
  return known(name, GRAINS, (grain) => grain.name);
}

/**
 * How deep a grain of `size` µm breaks the glass, µm: 0.3 L^0.68 to 2 L^0.85 for a grain of L µm (Lambropoulos 2000;
 * value from memory).
 */
export function damageOf(size: number): { least: number; most: number } {
  return { least: 0.3 * power(size, 17, 25), most: 2 * power(size, 17, 20) };
}

/** The finest grain that bridges `off` µm between pieces and glass, unless it breaks more glass than is `left` to go, µm. */
export function bridging(off: number, left = Infinity): Grain | undefined {
  const finest = GRAINS.findLast(({ size }) => size >= off);
  return finest && damageOf(finest.size).least <= left ? finest : undefined;
}

/** base^(over / under) by Newton's method on x^under = base^over, from above: the same digits on every machine. */
function power(base: number, over: number, under: number): number {
  // Scaled by whole parts of the exponent: x = base · y, y^under = base^(over − under).
  const raised = whole(base, over - under);
  let y = Math.max(1, 1 / base);
  for (let n = 0; n < 200; n++) {
    const next = ((under - 1) * y + raised / whole(y, under - 1)) / under;
    if (Math.abs(next - y) <= 1e-15 * y) return base * next;
    y = next;
  }
  return base * y;
}

function whole(base: number, exponent: number): number {
  let value = 1;
  for (let n = 0; n < Math.abs(exponent); n++) value *= base;
  return exponent < 0 ? 1 / value : value;
}

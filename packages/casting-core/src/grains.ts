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

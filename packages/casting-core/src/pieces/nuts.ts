import type { CatalogueItem } from "./catalogue.js";

/** Carbon steel, kg/L (Gere, Mechanics of Materials, 5th ed.). */
export const STEEL = 7.85;

/**
 * ISO 4032 nuts: thread d, pitch P, width across flats s (its maximum, so that gaps hold for every nut), height m
 * (maximum); bearing face d_w (minimum) and countersink d_a (maximum) where known.
 */
const ISO_4032: readonly [d: number, P: number, s: number, m: number, dw?: number, da?: number][] = [
  [5, 0.8, 8, 4.7, 6.9, 5.75],
  [6, 1, 10, 5.2, 8.9, 6.75],
  [8, 1.25, 13, 6.8, 11.6, 8.75],
  [10, 1.5, 16, 8.4, 14.6, 10.8],
  [12, 1.75, 18, 10.8, 16.6, 13],
  [14, 2, 21, 12.8],
  [16, 2, 24, 14.8, 22.5, 17.3],
  [18, 2.5, 27, 15.8],
  [20, 2.5, 30, 18, 27.7, 21.6],
  [22, 2.5, 34, 19.4],
  [24, 3, 36, 21.5, 33.3, 25.9],
];

/** DIN 934 nuts, the older size still sold: d, P, s, m; the heights of M14, M18 and the M22 row are values from memory. */
const DIN_934: readonly [d: number, P: number, s: number, m: number, fromMemory?: true][] = [
  [5, 0.8, 8, 4],
  [6, 1, 10, 5],
  [8, 1.25, 13, 6.5],
  [10, 1.5, 17, 8],
  [12, 1.75, 19, 10],
  [14, 2, 22, 11, true],
  [16, 2, 24, 13],
  [18, 2.5, 27, 15, true],
  [20, 2.5, 30, 16],
  [22, 2.5, 32, 18, true],
  [24, 3, 36, 19],
];

/** ASME B18.2.2 finished hex nuts: name, thread D, threads per inch, basic width F, basic height H; inches. */
const ASME_B18_2_2: readonly [size: string, D: number, tpi: number, F: number, H: number][] = [
  ["1/4", 1 / 4, 20, 7 / 16, 7 / 32],
  ["5/16", 5 / 16, 18, 1 / 2, 17 / 64],
  ["3/8", 3 / 8, 16, 9 / 16, 21 / 64],
  ["7/16", 7 / 16, 14, 11 / 16, 3 / 8],
  ["1/2", 1 / 2, 13, 3 / 4, 7 / 16],
  ["9/16", 9 / 16, 12, 7 / 8, 31 / 64],
  ["5/8", 5 / 8, 11, 15 / 16, 35 / 64],
  ["3/4", 3 / 4, 10, 9 / 8, 41 / 64],
  ["7/8", 7 / 8, 9, 21 / 16, 3 / 4],
  ["1", 1, 8, 3 / 2, 55 / 64],
];

/** Minor diameter of a 60° thread: d − 5√3/8 × pitch (ISO 724; value from memory). */
function minorDiameter(diameter: number, pitch: number): number {
  return diameter - ((5 * Math.sqrt(3)) / 8) * pitch;
}

function nut(across: number, thickness: number, bore: number): CatalogueItem["piece"] {
  return { shape: "hexagon", across, thickness, density: STEEL, bore };
}

/** Hexagon nuts. */
export const NUTS: readonly CatalogueItem[] = [
  ...ISO_4032.map(
    ([d, pitch, s, m, outer, inner]): CatalogueItem => ({
      item: `iso-4032-m${d}`,
      name: `M${d} nut, ISO 4032`,
      piece: nut(s, m, minorDiameter(d, pitch)),
      ...(outer !== undefined && inner !== undefined ? { bearing: { inner, outer } } : { chamfered: true }),
      source: "ISO 4032:2001, grades A and B",
    }),
  ),
  ...DIN_934.map(
    ([d, pitch, s, m, fromMemory]): CatalogueItem => ({
      item: `din-934-m${d}`,
      name: `M${d} nut, DIN 934`,
      piece: nut(s, m, minorDiameter(d, pitch)),
      chamfered: true,
      source: fromMemory ? "DIN 934; value from memory" : "DIN 934",
    }),
  ),
  ...ASME_B18_2_2.map(
    ([size, D, tpi, F, H]): CatalogueItem => ({
      item: `asme-b18.2.2-${size}`,
      name: `${size} in nut, ASME B18.2.2`,
      piece: nut(F * 25.4, H * 25.4, minorDiameter(D, 1 / tpi) * 25.4),
      chamfered: true,
      source: "ASME B18.2.2, finished hex nuts, basic sizes; UNC thread: value from memory",
    }),
  ),
];

import type { CatalogueItem } from "./catalogue.js";
import { STEEL } from "./nuts.js";

/** ISO 7089 flat washers: for thread M…, hole d1, outside d2, height h. */
const ISO_7089: readonly [thread: number, d1: number, d2: number, h: number, fromMemory?: true][] = [
  [5, 5.3, 10, 1],
  [6, 6.4, 12, 1.6],
  [8, 8.4, 16, 1.6],
  [10, 10.5, 20, 2],
  [12, 13, 24, 2.5],
  [14, 15, 28, 2.5],
  [16, 17, 30, 3],
  [18, 19, 34, 3],
  [20, 21, 37, 3],
  [22, 23, 39, 3, true],
  [24, 25, 44, 4],
];

/** Flat washers, normal series. */
export const WASHERS: readonly CatalogueItem[] = ISO_7089.map(([thread, bore, diameter, thickness, fromMemory]) => ({
  item: `iso-7089-m${thread}`,
  name: `M${thread} washer, ISO 7089`,
  piece: { shape: "round", diameter, bore, thickness, density: STEEL },
  source: fromMemory ? "ISO 7089; value from memory" : "ISO 7089, 200 HV and 300 HV, normal series",
}));

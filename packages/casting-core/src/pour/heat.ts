import { BOUND_WATER, converted, freeWater } from "./chemistry.js";
import { plasterNamed } from "./gypsum.js";

/** Heat of hydration, J per g of powder: α 17.15, β 19.24 kJ/mol (NBS tables; β value from memory). */
const HYDRATION = { alpha: 118, beta: 132.5 };
/** Specific heats, J/(g K): gypsum and hemihydrate (BRGM Thermoddem), water. */
const GYPSUM = 1.081;
const HEMIHYDRATE = 0.823;
const WATER = 4.18;

/** The room the rise starts from, and the most that water allows, °C. */
export const ROOM = 20;
const BOILING = 100;

/**
 * How much the setting mix can warm itself when no heat escapes, K, and the temperature that makes from 20 °C, at most
 * 100 °C. A plaster that is not in the table is taken as β, the hotter of the two.
 */
export function heatOf(plaster: { kind: string; water: number }): { rise: number; ceiling: number } {
  const form = plasterNamed(plaster.kind)?.form ?? "beta";
  const set = converted(plaster.water);
  const capacity = set * (1 + BOUND_WATER) * GYPSUM + (1 - set) * HEMIHYDRATE + freeWater(plaster.water) * WATER;
  const rise = (HYDRATION[form] * set) / capacity;
  return { rise, ceiling: Math.min(BOILING, ROOM + rise) };
}

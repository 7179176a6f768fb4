import { BOUND_WATER, converted, freeWater } from "./chemistry.js";
import { plasterNamed } from "./gypsum.js";
import type { Pour, PourPlaster } from "./types.js";

/** Heat of hydration, J per g of powder: α 17.15, β 19.24 kJ/mol (NBS tables; β value from memory). */
const HYDRATION = { alpha: 118, beta: 132.5 };
/** Specific heats, J/(g K): gypsum and hemihydrate (BRGM Thermoddem), water. */
const GYPSUM = 1.081;
const HEMIHYDRATE = 0.823;
const WATER = 4.18;

/** The room the rise starts from, and the most that water allows, °C. */
const ROOM = 20;
const BOILING = 100;

/** Heat to warm what 1 g of powder became once it has set, free water included, J/(g K). */
function setHeatCapacity(water: number): number {
  const set = converted(water);
  return set * (1 + BOUND_WATER) * GYPSUM + (1 - set) * HEMIHYDRATE + freeWater(water) * WATER;
}

/** The same for the whole cast, kJ/(L K). */
export function castHeatCapacity({ water, yield: perKilo }: Pick<PourPlaster, "water" | "yield">): number {
  return (setHeatCapacity(water) * 1000) / perKilo;
}

/**
 * How much the setting mix can warm itself when no heat escapes, K, and the temperature that makes from 20 °C, at most
 * 100 °C. A plaster that is not in the table is taken as β, the hotter of the two.
 */
export function heatOf(plaster: Pick<PourPlaster, "kind" | "water">): Pour["heat"] {
  const form = plasterNamed(plaster.kind)?.form ?? "beta";
  const rise = (HYDRATION[form] * converted(plaster.water)) / setHeatCapacity(plaster.water);
  return { rise, ceiling: Math.min(BOILING, ROOM + rise) };
}

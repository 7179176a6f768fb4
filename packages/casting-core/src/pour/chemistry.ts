/** CaSO₄·½H₂O and H₂O, g/mol (BRGM Thermoddem; IUPAC, value from memory). */
const HEMIHYDRATE = 145.149;
const WATER = 18.015;

/** g of water that 1 g of powder binds: CaSO₄·½H₂O + 1.5 H₂O → CaSO₄·2H₂O. */
export const BOUND_WATER = (1.5 * WATER) / HEMIHYDRATE;

/** Water at 20 °C, kg/L. */
export const WATER_DENSITY = 0.998;

/** Solid density of gypsum powders, kg/L: the mean of what makers' wet densities imply. */
export const POWDER_DENSITY = 2.7;

/** mL of mix from 1 kg of powder at `water` g per g. The set cast keeps the volume of the mix: its shrinkage stays as pores. */
export function yieldOf(water: number, density: number): number {
  return 1000 / density + (1000 * water) / WATER_DENSITY;
}

/** Share of the powder that the water at hand can set, 0 to 1. */
export function converted(water: number): number {
  return Math.min(1, water / BOUND_WATER);
}

/** kg of dry cast from 1 kg of powder. */
export function driedMass(water: number): number {
  return 1 + BOUND_WATER * converted(water);
}

/** Water that is left over and dries off, kg per kg of powder. */
export function freeWater(water: number): number {
  return Math.max(0, water - BOUND_WATER);
}

/** Rings of equal width that the coverage is judged in, and the first and last that count (contract: radialVariation). */
export const RINGS = 60;
export const FIRST_RING = 6;
export const LAST_RING = 55;

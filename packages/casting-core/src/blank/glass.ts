import { known } from "../nearest.js";

/** A glass that blanks are made of: density kg/L, linear expansion 1/K. */
export interface Glass {
  material: string;
  density: number;
  expansion: number;
  source: string;
}

/** Common blank glasses. */
export const GLASSES: readonly Glass[] = [
  { material: "borosilicate", density: 2.23, expansion: 3.3e-6, source: "ISO 3585, borosilicate glass 3.3" },
  { material: "soda-lime", density: 2.5, expansion: 9e-6, source: "EN 572-1; value from memory" },
  {
    material: "crown",
    density: 2.51,
    expansion: 7.1e-6,
    source: "borosilicate crown, maker's data sheet; value from memory",
  },
  { material: "fused-silica", density: 2.2, expansion: 0.55e-6, source: "maker's data sheet; value from memory" },
];

/** The glass called `material`, in any case and with space around it, if it is a common one. */
export function glassOf(material: string | undefined): Glass | undefined {
  return known(material, GLASSES, (glass) => glass.material);
}

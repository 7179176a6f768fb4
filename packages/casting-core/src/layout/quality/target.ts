import { sinCos, TAU } from "../../trig.js";
import type { Field } from "../field.js";
import { RINGS } from "./rings.js";

/** Directions looked at round each ring. */
const DIRECTIONS = 360;

/** How far beside a kept circle pieces leave its edge bare, as a share of their reach. */
const BARE = 0.25;

/** How much denser than elsewhere pieces may be asked to lie beside a kept circle. */
const DENSER = 1.1;

/**
 * What each ring is meant to be covered, as a share of what the others are: 1, but for rings that kept circles take so much
 * of that the rest cannot make up for it. To press pieces there all the same would only squeeze some out.
 */
export function targetOf({ edge, clear }: Field, reach: number): Float64Array {
  const target = new Float64Array(RINGS + 1).fill(1);
  if (clear.length === 0) return target;
  for (let ring = 0; ring < RINGS; ring++) {
    const rho = ((ring + 0.5) * edge) / RINGS;
    let free = 0;
    for (let n = 0; n < DIRECTIONS; n++) {
      const [s, c] = sinCos((TAU * n) / DIRECTIONS);
      const blocked = clear.some(({ x, y, radius }) => {
        const [dx, dy, kept] = [rho * c - x, rho * s - y, radius + BARE * reach];
        return dx * dx + dy * dy < kept * kept;
      });
      if (!blocked) free++;
    }
    target[ring] = Math.min(1, (DENSER * free) / DIRECTIONS);
  }
  return target;
}

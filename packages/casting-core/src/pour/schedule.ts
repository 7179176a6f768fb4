import { plasterNamed } from "./gypsum.js";
import type { PourPlaster, Schedule } from "./types.js";

/** A mix is poured in the first 0.6 of the time it takes to set at its quickest (common practice). */
const WORKING_SHARE = 0.6;
/** The mold stays shut about 45 min, and in any case twice as long as the plaster takes to set (common practice). */
const LEAST_SHUT = 45;
const SHUT_SHARE = 2;
/** Weighing, soaking and stirring one more batch, min (common practice). */
const MIXING = 4;
/** Setting of a plaster that is not in the table, min: that of dental stone; the maker's data sheet comes first. */
const UNKNOWN_SETTING = { least: 8, most: 16 };
/** Heat lost through both faces by air and radiation, W/(m² K) (common practice for still air). */
const COOLING = 20;
/** Closer to the room than this no longer feels warm, K. */
const FELT = 5;

/**
 * When to pour, when to open, and until when warmth is normal: the time in which a slab of the cast's mean `depth` (mm)
 * and `heatCapacity` (kJ per K and L) cools from `rise` K to 5 K above the room.
 */
export function scheduleOf(
  plaster: PourPlaster,
  batches: number,
  rise: number,
  depth: number,
  heatCapacity: number,
): Schedule {
  const setting = plasterNamed(plaster.kind)?.setting ?? UNKNOWN_SETTING;
  const halving = (Math.LN2 * heatCapacity * 1000 * depth) / COOLING / 60;
  return {
    pourBefore: setting.least * WORKING_SHARE,
    openAfter: Math.max(LEAST_SHUT, setting.most * SHUT_SHARE),
    warmUntil: setting.most + halving * halvings(rise / FELT),
    ...(batches > 1 ? { betweenBatches: MIXING } : {}),
  };
}

/** How often `ratio` can be halved until 1 is left, the last step in part. */
function halvings(ratio: number): number {
  let count = 0;
  let left = ratio;
  while (left >= 2) {
    left /= 2;
    count++;
  }
  return count + Math.max(0, left - 1);
}

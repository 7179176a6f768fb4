import { impossible } from "../errors.js";
import type { JobContainer, Units } from "../job/types.js";
import { volumeText } from "../units/figure-text.js";
import { WATER_DENSITY } from "./chemistry.js";
import { alongWall, hasLedge, heightOf, sectionsOf, volumeAt } from "./container.js";
import type { Batch, PourPlaster } from "./types.js";

/** More fillings than this are not one pour any more. */
const MOST_BATCHES = 24;

/** Powder and water for `mix` mL, kg. */
export function recipe(mix: number, plaster: Pick<PourPlaster, "yield" | "water">): { powder: number; water: number } {
  const powder = mix / plaster.yield;
  return { powder, water: powder * plaster.water };
}

/** mL the container takes, its headroom kept free. */
export function capacityOf(container: JobContainer): number {
  return volumeAt(sectionsOf(container), container.height - container.headroom);
}

/**
 * `mix` mL in as few equal batches as the container allows, each with the height of its water and, once the powder is
 * in, of the mix: powder goes in until the level stands there. Without a container one batch without marks. Throws
 * `impossible` where one pour would need too many fillings, with both volumes in `units`.
 */
export function batchesOf(mix: number, plaster: PourPlaster, container?: JobContainer, units: Units = "mm"): Batch[] {
  if (!container) return [{ ...recipe(mix, plaster), mix }];
  const capacity = capacityOf(container);
  const count = Math.max(1, Math.ceil((mix / capacity) * (1 - 1e-12)));
  if (!(count <= MOST_BATCHES)) {
    throw impossible(
      ["container"],
      `the container holds ${volumeText(capacity, units)} below its headroom, but ${volumeText(mix, units)} are to be mixed, more than ${MOST_BATCHES} fillings; take a larger one`,
    );
  }
  const one = mix / count;
  const { powder, water } = recipe(one, plaster);
  const sections = sectionsOf(container);
  const waterMark = heightOf(sections, (water / WATER_DENSITY) * 1000)!;
  const mixMark = heightOf(sections, one)!;
  const batch: Batch = { powder, water, mix: one, waterMark, mixMark };
  if (alongWall(sections, mixMark) > mixMark * (1 + 1e-12) && !hasLedge(sections, mixMark)) {
    batch.waterMarkAlongWall = alongWall(sections, waterMark);
    batch.mixMarkAlongWall = alongWall(sections, mixMark);
  }
  return Array.from({ length: count }, () => ({ ...batch }));
}

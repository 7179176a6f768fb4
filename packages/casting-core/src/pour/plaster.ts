import { CastingError } from "../errors.js";
import type { JobPlaster } from "../job/types.js";
import { nearest } from "../nearest.js";
import { driedMass, POWDER_DENSITY, yieldOf } from "./chemistry.js";
import { PLASTERS, plasterNamed } from "./gypsum.js";
import type { PourPlaster } from "./types.js";

/** Water ratios outside cannot be poured or do not set, g per g. */
const WATER_LIMITS = { least: 0.18, most: 1.5 };

/**
 * The plaster of `job`, its water ratio and densities. Throws `invalid` for a kind that is not in the table, a custom one
 * without water, and a ratio that cannot be mixed.
 */
export function plasterOf(job: Pick<JobPlaster, "kind" | "water" | "density">): PourPlaster {
  const row = plasterNamed(job.kind);
  if (!row && job.kind !== "custom") throw refused("kind", unknown(job.kind));
  const water = job.water ?? row?.water;
  if (water === undefined)
    throw refused("water", "a custom plaster needs its water ratio; write the g of water per g of powder");
  if (!(water >= WATER_LIMITS.least && water <= WATER_LIMITS.most)) {
    throw refused(
      "water",
      `a water ratio of ${water} cannot be mixed; write g of water per g of powder, ${WATER_LIMITS.least} to ${WATER_LIMITS.most}`,
    );
  }
  const density = job.density ?? POWDER_DENSITY;
  const perKilo = yieldOf(water, density);
  return {
    kind: row?.kind ?? job.kind,
    name: row?.name ?? "custom plaster",
    water,
    density,
    yield: perKilo,
    wetDensity: (1000 * (1 + water)) / perKilo,
    dryDensity: (1000 * driedMass(water)) / perKilo,
  };
}

function unknown(kind: string): string {
  const near = nearest(kind, [...PLASTERS.map((row) => row.kind), "custom"]); // biome-ignore format: one thought
  return `"${kind.slice(0, 64)}" is not in the table of plasters; ${near ? `did you mean "${near}"?` : "`casting list plasters` shows it"}`;
}

function refused(key: string, text: string): CastingError {
  return new CastingError("invalid", [{ path: ["plaster", key], text }]);
}

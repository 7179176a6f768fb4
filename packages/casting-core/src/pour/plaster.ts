import { CastingError } from "../errors.js";
import { LIMITS } from "../job/limits.js";
import type { JobPlaster } from "../job/types.js";
import { nearest } from "../nearest.js";
import { driedMass, POWDER_DENSITY, yieldOf } from "./chemistry.js";
import { PLASTERS, plasterNamed } from "./gypsum.js";
import type { PourPlaster } from "./types.js";

/**
 * The plaster of `job`, its water ratio and densities. Throws `invalid` for a kind that is not in the table, a custom one
 * without water, a ratio that cannot be mixed, and a density that no powder has or the table knows.
 */
export function plasterOf(job: Pick<JobPlaster, "kind" | "water" | "density">): PourPlaster {
  const row = plasterNamed(job.kind);
  if (!row && job.kind !== "custom") throw refused("kind", unknown(job.kind));
  const water = job.water ?? row?.water;
  if (water === undefined)
    throw refused("water", "a custom plaster needs its water ratio; write the g of water per g of powder");
  if (!within("plaster.water", water)) {
    throw refused(
      "water",
      `a water ratio of ${water} cannot be mixed; write g of water per g of powder, ${rangeOf("plaster.water")}`,
    );
  }
  if (job.density !== undefined && row)
    throw refused("density", `only a custom plaster has a density of its own; leave it out, or take custom`);
  if (job.density !== undefined && !within("plaster.density", job.density)) {
    throw refused(
      "density",
      `no powder has a density of ${job.density}; write kg per litre without the air in it, ${rangeOf("plaster.density")}`,
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

type Figure = "plaster.water" | "plaster.density";

function within(key: Figure, value: number): boolean {
  return value >= LIMITS[key].least && value <= LIMITS[key].most;
}

function rangeOf(key: Figure): string {
  return `${LIMITS[key].least} to ${LIMITS[key].most}`;
}

function unknown(kind: string): string {
  const near = nearest(kind, [...PLASTERS.map((row) => row.kind), "custom"]); // biome-ignore format: one thought
  return `"${kind.slice(0, 64)}" is not in the table of plasters; ${near ? `did you mean "${near}"?` : "`casting list plasters` shows it"}`;
}

function refused(key: string, text: string): CastingError {
  return new CastingError("invalid", [{ path: ["plaster", key], text }]);
}

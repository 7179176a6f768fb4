import type { Job, JobBlank } from "../job/types.js";
import type { Bevel, Retainer } from "./types.js";

/**
 * Clear distance round the blank, mm: never pinched, for a pinch prints astigmatism (common practice). Round in the job's
 * own units, 1/64 in or 0.5 mm, so that the ring's figures add up as they are written.
 */
const CLEARANCE = { mm: 0.5, in: 25.4 / 64 };
/** The ring ends this far below the bevel as it will be at the end, mm (common practice). */
const BELOW = 3;
/** Width of the ring's wood, and the cushion under the blank, mm (common practice: room for a screw, carpet or felt). */
const WALL = 25;
const CUSHION = 3;
/** Least that the ring must rise over the cushion to stop the blank at all, mm; from a third of the blank on it holds well. */
const LEAST = 2;
/** A thickness where the job gives none: a sixth of the diameter (common practice of full-thickness blanks). */
const THICKNESS = 1 / 6;

/** The thickness that a blank without one is taken to have, mm. */
export function thicknessTaken({ diameter }: Pick<JobBlank, "diameter">): number {
  return diameter * THICKNESS;
}

/** A ring for the turntable: concentric, low enough for the tool's overhang, open to let water and grit out. */
export function retainerOf({ blank, units }: Pick<Job, "blank" | "units">, bevel: Bevel): Retainer {
  const thickness = blank.thickness ?? thicknessTaken(blank);
  const clearance = CLEARANCE[units];
  const inside = blank.diameter + 2 * clearance;
  const outside = inside + 2 * WALL;
  const count = blank.diameter > 300 ? 6 : 4;
  // The face sinks by what the edge loses; the leg that is left stands above the ring.
  const height = CUSHION + thickness - bevel.edgeRemoval - (bevel.left ?? bevel.needed) - BELOW;
  return {
    inside,
    outside,
    height: Math.max(CUSHION + LEAST, height),
    low: height < CUSHION + thickness / 3,
    clearance,
    eccentricity: clearance,
    cushion: CUSHION,
    slots: { count, width: 12 },
    holes: { count, diameter: 6, circle: inside + WALL },
  };
}

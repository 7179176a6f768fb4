import type { Job, JobBlank } from "../job/types.js";
import { KEPT } from "./grades.js";
import type { Bevel, Retainer } from "./types.js";

/**
 * The ring's sizes, mm, round in the job's own units so that its figures add up as they are written and tools of these
 * sizes are at hand (common practice): the clear distance round the blank, never pinched, for a pinch prints astigmatism;
 * how far the ring ends below the bevel as it will be at the end; the wood's width, with room for a screw; the cushion of
 * carpet or felt under the blank; slots that let grit out; holes for screws.
 */
const SIZES = {
  mm: { clearance: 0.5, below: 3, wall: 25, cushion: 3, slot: 12, hole: 6 },
  in: { clearance: 25.4 / 64, below: 25.4 / 8, wall: 25.4, cushion: 25.4 / 8, slot: 25.4 / 2, hole: 25.4 / 4 },
} as const;
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
  const { clearance, below, wall, cushion, slot, hole } = SIZES[units];
  const inside = blank.diameter + 2 * clearance;
  const count = blank.diameter > 300 ? 6 : 4;
  // The face sinks by what the edge loses; the leg that is left, or is kept by renewing it in time, stands above the ring.
  const left = Math.max(KEPT, bevel.left ?? KEPT);
  const height = cushion + thickness - bevel.edgeRemoval - left - below;
  return {
    inside,
    outside: inside + 2 * wall,
    height: Math.max(cushion + LEAST, height),
    low: height < cushion + thickness / 3,
    clearance,
    eccentricity: clearance,
    cushion,
    slots: { count, width: slot },
    holes: { count, diameter: hole, circle: inside + wall },
  };
}

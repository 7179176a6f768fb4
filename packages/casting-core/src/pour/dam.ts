import type { Blank, Tool } from "../blank/types.js";
import type { Job } from "../job/types.js";
import { PI } from "../trig.js";
import type { Pour } from "./types.js";

/** How far the former is raised above the fill line, to see and pour under it; and how much of the sheet it holds, mm. */
const RAISE = 10;
const GRIP = 20;

/**
 * The dam: a strip round the former, or round the blank for a full-size tool (which has no former; the strip then grips
 * the blank's side below its bevel). Length is π × (former + sheet) + overlap, height from the glass.
 */
export function damOf(job: Pick<Job, "dam" | "blank">, blank: Blank, tool: Tool, edge: number): Pour["dam"] {
  const fullSize = tool.diameter >= blank.diameter;
  const formDiameter = fullSize ? blank.diameter : tool.diameter;
  return {
    length: PI * (formDiameter + job.dam.sheet) + job.dam.overlap,
    height: edge + RAISE + GRIP + (fullSize ? (job.blank.bevel ?? 0) : 0),
    formDiameter,
  };
}

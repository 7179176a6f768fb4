import type { Job } from "../../job/types.js";
import type { GrooveEdge } from "../types.js";

/**
 * What the cutter's width may exceed the room by, mm: the layout keeps the gap to a micrometre and a line is within
 * 0.01 mm of the middle, so a gap laid out exactly for the cutter must not fail on rounding.
 */
export const ROOM_SLACK = 0.02;

/** Whether the cutter with its clearance on both sides fits into `room` mm. */
export function cutterFits(room: number, { cutter, clearance }: Job["grooves"]): boolean {
  return room >= cutter + 2 * clearance - ROOM_SLACK;
}

/**
 * How many of the edges that are not cut belong to a rim loop that was not asked for, how many others are too narrow for
 * the cutter, and how many are left out by the job's choice.
 */
export function uncutEdges(
  edges: readonly GrooveEdge[],
  { grooves }: Job,
): { rim: number; narrow: number; chosen: number } {
  const uncut = edges.filter((edge) => !edge.cut);
  const others = uncut.filter(({ between }) => between !== "rim" || grooves["rim-loop"]);
  const chosen = others.filter(({ room }) => cutterFits(room, grooves)).length;
  return { rim: uncut.length - others.length, narrow: others.length - chosen, chosen };
}

/** One sentence on what not to cut, for the maker; nothing where all is cut. */
export function leaveUncut(edges: readonly GrooveEdge[], job: Job): string | undefined {
  const { rim, narrow, chosen } = uncutEdges(edges, job);
  const parts = [
    ...(narrow > 0 ? [`${narrow} too narrow for the cutter`] : []),
    ...(chosen > 0 ? [`${chosen} left out by choice`] : []),
    ...(rim > 0 ? [`${rim} of the loop along the rim, which is cut only with rim-loop: true`] : []),
  ];
  const one = narrow + chosen + rim === 1;
  return parts.length > 0 ? `Leave the dashed ${one ? "one" : "ones"}: ${parts.join(", ")}.` : undefined;
}

import type { Point } from "../../geometry/types.js";
import { openChannels } from "./channels.js";

/**
 * Area, mm², of everything within `width` / 2 of the lines and within `radius` of the origin, overlaps counted once.
 * Lines may cross and meet, but not run back along each other.
 *
 * The channels are a union of discs (round every point) and rectangles (along every straight part). What remains of
 * their outlines after the parts inside others are taken away bounds the union; the area follows from that boundary
 * (Green's theorem), exactly, from arcs and straight parts.
 */
export function channelArea(lines: readonly (readonly Point[])[], width: number, radius: number): number {
  return openChannels(lines).area(width, radius);
}

/**
 * Sine, cosine, arctangent and friends for the whole core (see arc.ts), and what only TypeScript can say.
 */

import { cos, PI, sin } from "./arc.js";

export { acos, asin, atan2, cos, hypot, PI, sin, TAU } from "./arc.js";

/** Sine and cosine of `angle` (radians, |angle| up to about 1e6) as `[sin, cos]`. */
export function sinCos(angle: number): [number, number] {
  return [sin(angle), cos(angle)];
}

export function radians(degrees: number): number {
  return (degrees * PI) / 180;
}

export function degrees(radians: number): number {
  return (radians * 180) / PI;
}

import { sagittaOf } from "../blank/sphere.js";
import type { Tool } from "../blank/types.js";
import type { Point } from "../geometry/types.js";
import type { Curve } from "../job/types.js";
import { hypot } from "../trig.js";

/**
 * Height of the channel's floor at each point, mm to three decimals, along the tool's axis: 0 is the face at the tool's
 * edge, positive out of the face. The face is the glass's own sphere, higher in the middle on a concave blank's tool;
 * the floor lies `depth` below it.
 */
export function floorHeights(points: readonly Point[], tool: Tool, curve: Curve, depth: number): number[] {
  return points.map(([x, y]) => Math.round((faceHeight(hypot(x, y), tool, curve) - depth) * 1000) / 1000 || 0);
}

function faceHeight(fromAxis: number, { curveRadius, sagitta, diameter }: Tool, curve: Curve): number {
  if (curveRadius === undefined || curve === "flat") return 0;
  const below = sagitta - sagittaOf(curveRadius, Math.min(fromAxis, diameter / 2));
  return curve === "concave" ? below : -below;
}

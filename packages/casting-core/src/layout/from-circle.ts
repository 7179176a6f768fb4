import type { Bed } from "./bed.js";
import type { Contact } from "./contact.js";
import { ROW } from "./shapes.js";

/**
 * Clear distance of piece `i`'s core from the middle of a circle, less than 0 inside; `out` gets the core's point that
 * comes closest and the axis from the circle to it.
 */
export function fromCircle(bed: Bed, i: number, circle: { x: number; y: number }, out: Contact): number {
  const { shapes, outline } = bed;
  const k = bed.kind[i]!;
  const n = shapes.corners[k]!;
  const from = i * shapes.stride * ROW;
  let best = -Infinity;
  let edge = -1;
  for (let e = 0; n > 1 && e < n; e++) {
    const at = from + e * ROW;
    const beyond = (circle.x - outline[at]!) * outline[at + 2]! + (circle.y - outline[at + 1]!) * outline[at + 3]!;
    if (beyond > best) {
      best = beyond;
      edge = e;
    }
  }
  let corner = -1;
  if (edge >= 0) {
    const at = from + edge * ROW;
    const t = (circle.y - outline[at + 1]!) * outline[at + 2]! - (circle.x - outline[at]!) * outline[at + 3]!;
    if (best > 0 && t < 0) corner = at;
    else if (best > 0 && t > shapes.edge[k * shapes.stride + edge]!)
      corner = from + (edge + 1 === n ? 0 : edge + 1) * ROW;
    else {
      out.axisX = -outline[at + 2]!;
      out.axisY = -outline[at + 3]!;
      out.pointX = circle.x + best * out.axisX;
      out.pointY = circle.y + best * out.axisY;
      return best;
    }
  }
  out.pointX = corner < 0 ? bed.x[i]! : outline[corner]!;
  out.pointY = corner < 0 ? bed.y[i]! : outline[corner + 1]!;
  const dx = out.pointX - circle.x;
  const dy = out.pointY - circle.y;
  const distance = Math.sqrt(dx * dx + dy * dy);
  out.axisX = distance > 0 ? dx / distance : 1;
  out.axisY = distance > 0 ? dy / distance : 0;
  return distance;
}

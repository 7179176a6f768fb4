import type { Job } from "../job/types.js";
import { lengthText } from "../units/length-text.js";
import { type Field, onlyFoot } from "./field.js";
import type { Shapes } from "./laying/shapes.js";

/** Says that no piece fits, with what stands against it and what would help; `gap` mm, hand included. */
export function noRoom({ field, shapes, gap, job }: { field: Field; shapes: Shapes; gap: number; job: Job }): string {
  const text = (length: number) => lengthText(length, job.units);
  const across = text(2 * Math.min(...shapes.reach));
  const circle = text(Math.max(0, 2 * field.radius));
  const clear = field.clear.length > 0;
  const foot = onlyFoot(job);
  const blocked = foot ? " outside the socket's foot" : clear ? " outside the circles kept clear" : "";
  // A piece wider than the tool itself has no place whatever the rim.
  const rim = Math.min(...shapes.reach) < field.edge;
  const less = foot ? ["a smaller socket", "a socket's foot on the pieces"] : clear ? ["smaller circles"] : [];
  const remedies = ["smaller pieces", ...(rim ? ["a smaller rim"] : []), ...less];
  const last = remedies.pop();
  const remedy = `choose ${remedies.length > 0 ? `${remedies.join(", ")} or ` : ""}${last}`;
  return `no piece fits: the smallest is ${across} across its corners, the circle within the rim ${circle}${blocked}, the gap ${text(gap)}; ${remedy}`;
}

import type { Job } from "../job/types.js";
import { clearCircles } from "../layout/field.js";
import type { Band } from "../layout/quality/hard-coverage.js";
import { loadPressure } from "../layout/quality/pressure.js";
import { hypot } from "../trig.js";
import { isHard } from "./pass.js";
import type { Place } from "./types.js";

/** A run offered takes the mirror's centre so deep under the pieces, as a share of their band's width (common practice). */
const INSIDE = 1 / 20;
/** A run offered is written in whole steps, mm. */
const STEP = { mm: 0.5, in: 25.4 / 32 };

/** Where pieces can stand by the job alone: inside the rim, outside the circles kept clear over the tool's axis. */
export function bandOf(job: Job): Band {
  const clear = clearCircles(job, job.layout.hand).map(({ x, y, radius }) => radius - hypot(x, y));
  return { inner: Math.max(0, ...clear), outer: job.tool.diameter / 2 - job.tool.rim };
}

/** Radius of the glass that is to be ground, inside the bevel. */
export function faceOf({ blank: { diameter, bevel = 0 } }: Pick<Job, "blank">): number {
  return diameter / 2 - bevel;
}

/**
 * The run with the least stroke that brings pieces standing in a `band` both to the mirror's centre and to the end of its
 * face; nothing where that presses too hard on the edge.
 */
export function reachingBoth({ blank, tool, units }: Job, { inner, outer }: Band): Place | undefined {
  const inside = INSIDE * (outer - inner);
  const nearest = outer - inside;
  const farthest = Math.max(faceOf({ blank }) - outer, inner + inside);
  const up = (mm: number) => Math.ceil(mm / STEP[units] - 1e-9) * STEP[units];
  const offset = up((farthest + Math.min(farthest, nearest)) / 2);
  // Rounded up in turn, it comes as near to the centre and as far out as before.
  const stroke = up(2 * Math.max(0, offset - nearest));
  const edgePressure = loadPressure(blank.diameter / 2, tool.diameter / 2, offset + stroke / 2).edge;
  return isHard({ edgePressure }) ? undefined : { offset, stroke };
}

import type { Tool } from "../blank/types.js";
import type { Job } from "../job/types.js";
import { acos, atan2, hypot, PI, TAU } from "../trig.js";

/** Where pieces may lie: inside the circle of `radius`, off the axis, outside the circles kept clear. All mm. */
export interface Field {
  /** Tool radius less rim. */
  radius: number;
  /** Tool radius. */
  edge: number;
  clear: readonly { x: number; y: number; radius: number }[];
}

/** The field of a job: its tool and the circles kept clear, the foot of a socket with what the hand may be off about it. */
export function fieldOf(job: Job, tool: Tool): Field {
  return { radius: tool.diameter / 2 - tool.rim, edge: tool.diameter / 2, clear: clearCircles(job, job.layout.hand) };
}

/** Whether all that is kept clear is the foot of a socket on the glass. */
export function onlyFoot({ socket, layout }: Pick<Job, "socket" | "layout">): boolean {
  return socket?.foot === "glass" && layout["keep-clear"].length === 0;
}

/** What the one circle kept clear leaves all round the foot of a socket on the glass, mm; below 0 where there is none such. */
export function roomRoundFoot({ socket, layout }: Pick<Job, "socket" | "layout">): number {
  const [circle, ...more] = layout["keep-clear"];
  if (!circle || more.length > 0 || socket?.foot !== "glass") return -Infinity;
  return (circle.diameter - socket.diameter) / 2 - hypot(circle.x, circle.y);
}

/** The circles that no piece may enter, mm: those the job names, then the foot of a socket on the glass, `play` wider all round. */
export function clearCircles(job: Job, play = 0): { x: number; y: number; radius: number }[] {
  const clear = job.layout["keep-clear"].map(({ x, y, diameter }) => ({ x, y, radius: diameter / 2 }));
  if (job.socket?.foot === "glass") clear.push({ x: 0, y: 0, radius: job.socket.diameter / 2 + play });
  return clear;
}

/** Rings that the blocked area is summed over: within 0.1 % for circles of a tenth of the field. */
const RINGS = 2000;

/** What kept circles take of the field's circle, mm²: nothing that lies outside it, and nothing twice. */
export function blockedArea({ radius, clear }: Field): number {
  if (clear.length === 0) return 0;
  const width = radius / RINGS;
  let area = 0;
  for (let ring = 0; ring < RINGS; ring++) {
    const rho = (ring + 0.5) * width;
    area += blockedAngle(clear, rho) * rho * width;
  }
  return area;
}

/** Angle of the ring at `rho` mm that lies in kept circles, radians. */
function blockedAngle(clear: Field["clear"], rho: number): number {
  const spans: [number, number][] = [];
  for (const { x, y, radius } of clear) {
    const away = hypot(x, y);
    if (away + rho <= radius) return TAU;
    if (Math.abs(away - rho) >= radius) continue;
    const half = acos((rho * rho + away * away - radius * radius) / (2 * rho * away));
    const from = atan2(y, x) - half;
    // Beside itself one turn on, for spans that pass the end of a turn.
    const start = from < -PI ? from + TAU : from;
    spans.push([start, Math.min(PI, start + 2 * half)]);
    if (start + 2 * half > PI) spans.push([-PI, start + 2 * half - TAU]);
  }
  let [sum, reached] = [0, -PI];
  for (const [from, to] of spans.sort(([a], [b]) => a - b)) {
    if (to > reached) sum += to - Math.max(from, reached);
    reached = Math.max(reached, to);
  }
  return sum;
}

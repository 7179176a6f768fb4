import type { Tool } from "../blank/types.js";
import type { Job } from "../job/types.js";

/** Where pieces may lie: inside the circle of `radius`, off the axis, outside the circles kept clear. All mm. */
export interface Field {
  /** Tool radius less rim. */
  radius: number;
  /** Tool radius. */
  edge: number;
  clear: readonly { x: number; y: number; radius: number }[];
}

/** The field of a job: its tool and the circles kept clear. */
export function fieldOf(job: Job, tool: Tool): Field {
  return { radius: tool.diameter / 2 - tool.rim, edge: tool.diameter / 2, clear: clearCircles(job) };
}

/** Whether all that is kept clear is the foot of a socket on the glass. */
export function onlyFoot({ socket, layout }: Pick<Job, "socket" | "layout">): boolean {
  return socket?.foot === "glass" && layout["keep-clear"].length === 0;
}

/** The circles that no piece may enter, mm: those the job names, then the foot of a socket that stands on the glass. */
export function clearCircles(job: Job): { x: number; y: number; radius: number }[] {
  const clear = job.layout["keep-clear"].map(({ x, y, diameter }) => ({ x, y, radius: diameter / 2 }));
  if (job.socket?.foot === "glass") clear.push({ x: 0, y: 0, radius: job.socket.diameter / 2 });
  return clear;
}

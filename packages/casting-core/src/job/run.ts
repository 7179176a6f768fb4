import type { Job, JobSetup } from "./types.js";

/** Where tool and mirror run, lengths mm; `turns` of the tool per turn of the mirror. */
export interface Run {
  mirror: number;
  offset: number;
  stroke: number;
  turns: number;
}

/** The tool's axis from the mirror's: a length, or the tangent position, where the two edges meet. */
export function offsetOf({ offset }: Pick<JobSetup, "offset">, blank: number, tool: number): number {
  return offset === "tangent" ? (blank - tool) / 2 : offset;
}

/** How mirror and tool of a job run. */
export function runOf({ blank, tool, setup }: Pick<Job, "blank" | "tool" | "setup">): Run {
  const offset = offsetOf(setup, blank.diameter, tool.diameter);
  return { mirror: blank.diameter / 2, offset, stroke: setup.stroke, turns: setup["tool-turns"] };
}

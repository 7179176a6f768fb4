import type { Blank, Tool } from "../blank/types.js";
import type { Job } from "../job/types.js";
import { PI } from "../trig.js";
import type { Dam, Pour } from "./types.js";

/** How far the former is raised above the fill line, to see and pour under it; and how much of the sheet it holds, mm. */
const RAISE = 10;
const GRIP = 20;
/** A common builder's level shows 1 mm per m (common practice). */
const LEVEL = 1;

/**
 * The dam: a strip round the former, or round the blank for a full-size tool (which has no former; the strip then grips
 * the blank's side below its bevel). Length is π × (former + sheet) + overlap, height that of the whole strip.
 */
export function damOf(job: Pick<Job, "dam" | "blank">, blank: Blank, tool: Tool, edge: number): Dam {
  const fullSize = isFullSize(blank, tool);
  const formDiameter = fullSize ? blank.diameter : tool.diameter;
  const { sheet, overlap } = job.dam;
  return {
    length: PI * (formDiameter + sheet) + overlap,
    height: edge + RAISE + GRIP + (fullSize ? (job.blank.bevel ?? 0) : 0),
    formDiameter,
    ...(fullSize ? {} : { formerAt: edge + RAISE, centring: (blank.diameter - formDiameter) / 2 - sheet }),
    level: { slope: LEVEL, wedge: (tool.diameter * LEVEL) / 1000 },
  };
}

/**
 * How far the strip reaches below the glass at the tool's edge, mm: nothing where it stands on the glass; for a full-size
 * tool over the bevel and down the blank's side, which it grips, no further than what the blank lies on.
 */
export function belowGlass({ formerAt }: Dam, { bevel = 0, thickness = Infinity }: Job["blank"]): number {
  return formerAt === undefined ? Math.min(bevel + GRIP, thickness) : 0;
}

/** How far above the fill line what centres the socket lies, mm: the former, or the bar across a full-size tool's dam. */
export function holderAbove(dam: Dam, { edge }: Pour["fill"], blank: Job["blank"]): number {
  return (dam.formerAt ?? dam.height - belowGlass(dam, blank)) - edge;
}

/** Whether the tool is as wide as its blank. */
export function isFullSize(blank: Blank, tool: Tool): boolean {
  return tool.diameter >= blank.diameter;
}

/** The strip cut from sheets of `stock` mm: how many pieces, and the length of each with one overlap. */
export function damPieces(dam: Dam, overlap: number, stock: number): { count: number; length: number } {
  const round = dam.length - overlap;
  const count = Math.max(1, Math.ceil(round / (stock - overlap)));
  return { count, length: round / count + overlap };
}

import type { Tool } from "../blank/types.js";
import { CastingError, type Fault } from "../errors.js";
import type { Job } from "../job/types.js";
import { hasOutline } from "../layout/laid.js";
import { outermost } from "../layout/quality/hard-coverage.js";
import type { Layout } from "../layout/types.js";
import { PI } from "../trig.js";
import { fixed } from "../units/figure-text.js";
import { channelArea } from "./area/area.js";
import { channelsOf } from "./cuts/choice.js";
import { cutsOf } from "./cuts/cuts.js";
import { mainsOf } from "./cuts/mains.js";
import { surroundingsOf } from "./cuts/room.js";
import { roundedWays } from "./cuts/toolpath.js";
import { floorHeights } from "./floor.js";
import { networkOf } from "./network/network.js";
import { sitesOf } from "./network/sites.js";
import { lengthOf } from "./polyline.js";
import type { GrooveEdge, Grooves } from "./types.js";

/**
 * The channels between the pieces of `layout`: their middle lines, which of them the cutter fits, and its ways along
 * them. Lengths mm, seen from the back. Without pieces, or where the cutter fits nowhere, nothing is cut. The pieces are
 * to keep clear of each other, as layOut lays them.
 *
 * @throws CastingError `invalid` where a piece lies outside the tool: its channels would have no end
 */
export function planGrooves(job: Job, tool: Tool, layout: Layout): Grooves {
  const { cutter, depth, pattern, order } = job.grooves;
  if (layout.pieces.length === 0) {
    return { cutter, depth, nodes: [], edges: [], cuts: [], totals: totalsOf(job, [], 0, 0, tool.diameter) };
  }
  refuseStrays(layout, tool);
  const sites = sitesOf(job, tool.diameter, layout);
  const around = surroundingsOf(layout.pieces);
  const network = networkOf(sites, layout.gap + layout.hand);
  const { nodes, channels } = channelsOf(network, sites, job, tool.diameter, layout, around);
  const chosen = pattern === "mains" ? mainsOf(channels, nodes.length, layout.pieces.length, layout.seed) : channels;
  const edges = chosen.map(
    ({ beside: _, ...edge }): GrooveEdge => ({ ...edge, z: floorHeights(edge.points, tool, job.blank.curve, depth) }),
  );
  const { cuts, retraced } = cutsOf(nodes, edges, order);
  return {
    cutter,
    depth,
    nodes,
    edges,
    cuts,
    toolpath: roundedWays(cuts, around, cutter, job.grooves.clearance),
    totals: totalsOf(job, edges, cuts.length, retraced, tool.diameter),
  };
}

/** What the rounding of doubles may put a corner on the tool's edge beyond it, mm. */
const ROUNDING = 1e-6;

/** Throws where a piece has no outline within the tool's edge. */
function refuseStrays({ pieces }: Layout, { diameter }: Tool): void {
  const faults = pieces.flatMap((piece, n): Fault[] => {
    const far = hasOutline(piece) ? outermost(piece) : Infinity;
    if (far <= diameter / 2 + ROUNDING) return [];
    const place = far < Infinity ? `reaches ${fixed(far, 3)} mm from the axis` : "has no outline";
    const text = `piece ${piece.id} ${place}, where the tool ends at ${fixed(diameter / 2, 3)} mm; lay the pieces within the tool`;
    return [{ path: ["layout", "pieces", n], text }];
  });
  if (faults.length > 0) throw new CastingError("invalid", faults);
}

/** What each pattern would come to on the same layout, to choose by; `own`: the totals of the job's own pattern. */
export function patternTotals(
  job: Job,
  tool: Tool,
  layout: Layout,
  own: Grooves["totals"],
): NonNullable<Grooves["patterns"]> {
  return (["all", "mains"] as const).map((pattern) => {
    const other = { ...job, grooves: { ...job.grooves, pattern } };
    return {
      pattern,
      totals: pattern === job.grooves.pattern ? own : planGrooves(other, tool, layout).totals,
    };
  });
}

function totalsOf(
  { grooves: { cutter, depth, feed } }: Job,
  edges: readonly GrooveEdge[],
  cuts: number,
  retraced: number,
  toolDiameter: number,
): Grooves["totals"] {
  const lines = edges.filter((edge) => edge.cut).map((edge) => edge.points);
  const area = channelArea(lines, cutter, toolDiameter / 2);
  const length = lines.reduce((sum, points) => sum + lengthOf(points), 0);
  return {
    length,
    cuts,
    retraced,
    area,
    share: area / ((PI / 4) * toolDiameter * toolDiameter),
    volume: (area * depth) / 1000,
    uncut: edges.length - lines.length,
    ...(feed === undefined ? {} : { minutes: (length + retraced) / feed }),
  };
}

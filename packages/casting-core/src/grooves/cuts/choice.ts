import type { Point } from "../../geometry/types.js";
import type { Job } from "../../job/types.js";
import type { Layout } from "../../layout/types.js";
import { hypot } from "../../trig.js";
import type { MiddleLine, Network } from "../network/network.js";
import type { Site } from "../network/sites.js";
import { rounded } from "../polyline.js";
import type { GrooveEdge } from "../types.js";
import { lineToPiece, type Surroundings } from "./room.js";
import { cutterFits } from "./uncut.js";

/** An edge of the plan with the pieces that it runs between (indices in `layout.pieces`), for choosing among edges. */
export interface Channel extends Omit<GrooveEdge, "z"> {
  beside: number[];
}

/** A junction is as far from the tool's edge as from its pieces, to this, mm; it is worked out to 0.01. */
const JUNCTION = 0.1;

/** Every line of `network` as an edge with its room, and the outlets; nodes on the tool's edge are added to the network's. */
export function channelsOf(
  network: Network,
  sites: readonly Site[],
  job: Job,
  toolDiameter: number,
  layout: Layout,
  around: Surroundings,
): { nodes: Point[]; channels: Channel[] } {
  const nodes = [...network.nodes];
  const fits = (room: number): boolean => cutterFits(room, job.grooves);
  const channels = network.lines.map((line): Channel => {
    const beside = piecesBeside(line, sites);
    // Where pieces all but touch, a junction may come to lie off its place, and another piece be nearer than those beside:
    // it is looked for, no farther than they are; beside no piece, wherever the nearest is.
    const limit = Math.min(...beside.map((piece) => lineToPiece(line.points, layout.pieces[piece]!)));
    const room = 2 * around.within(line.points, limit);
    const kinds = [sites[line.left]!.kind, sites[line.right]!.kind];
    const between = kinds.includes("rim") ? "rim" : kinds.includes("clear") ? "clear" : undefined;
    const cut = fits(room) && (between !== "rim" || job.grooves["rim-loop"]);
    return { a: line.a, b: line.b, points: line.points, room, cut, ...(between && { between }), beside };
  });
  for (const [node, beside] of outletJunctions(channels)) {
    const from = nodes[node]!;
    const out = hypot(from[0], from[1]);
    // Beside a circle kept clear that reaches over the tool's edge, the edge itself may lie behind other pieces.
    if (toolDiameter / 2 - out > around.nearest([from, from]) + JUNCTION) continue;
    const scale = toolDiameter / 2 / out;
    const points = [from, rounded([from[0] * scale, from[1] * scale])];
    const room = 2 * around.nearest(points);
    channels.push({ a: node, b: nodes.length, points, room, cut: fits(room), outlet: true, beside });
    nodes.push(points[1]!);
  }
  return { nodes, channels };
}

function piecesBeside(line: MiddleLine, sites: readonly Site[]): number[] {
  return [line.left, line.right].flatMap((site) => sites[site]!.piece ?? []);
}

/** Junctions of two pieces and the tool's edge, each with its two pieces: where a line between pieces meets the rim loop. */
function outletJunctions(channels: readonly Channel[]): Map<number, number[]> {
  const rim = new Set<number>();
  for (const { a, b, between } of channels) if (between === "rim") rim.add(a).add(b);
  const junctions = new Map<number, number[]>();
  for (const { a, b, between, beside } of channels) {
    if (between !== undefined) continue;
    for (const node of [a, b]) if (rim.has(node) && !junctions.has(node)) junctions.set(node, beside);
  }
  return junctions;
}

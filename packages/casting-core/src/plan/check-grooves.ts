import { pointToOutline, pointToSegment } from "../geometry/distance.js";
import type { Outline, Point } from "../geometry/types.js";
import { distance, type Look, must, type Piece, SHARP, same, toldIn } from "./measure.js";
import { type Near, nearOf } from "./near.js";
import type { Plan } from "./types.js";

/** A channel's middle line is as wide as it says to this, mm (contract of the plan). */
const ROOM = 0.02;

/** What points are written to, mm. */
const MICROMETRE = 1e-3;

/** What of the channels is measured again: their room, the cuts, the totals. */
export const grooveLooks: Look[] = [
  ["channels", channelFault],
  ["cuts", cutFault],
  ["rounded cuts", toolpathFault],
  ["totals", totalFault],
];

function channelFault(plan: Plan): string | undefined {
  const { grooves, layout, job, tool } = plan;
  const { length } = toldIn(plan);
  const needed = grooves.cutter + 2 * job.grooves.clearance - ROOM;
  const near = nearOf(layout.pieces);
  for (const [n, edge] of grooves.edges.entries()) {
    if (!grooves.nodes[edge.a] || !grooves.nodes[edge.b] || edge.points.length < 2)
      return `channel ${n} does not run between two junctions`;
    if (edge.points.some((point) => distance(point, [0, 0]) > tool.diameter / 2 + MICROMETRE))
      return `channel ${n} leaves the tool`;
    if (edge.cut && edge.room < needed - SHARP)
      return `channel ${n} is cut where only ${length(edge.room, 3)} are clear`;
    if (!edge.cut && edge.room >= needed + SHARP && isChosen(edge, job))
      return `channel ${n} is not cut where ${length(edge.room, 3)} are clear`;
    const told = edge.room / 2 + ROOM;
    const found = leastRoom(edge.points, near, told);
    // No piece is as near as the plan tells: how near one truly is takes a look at all.
    const room = 2 * Math.max(0, found > told ? leastRoom(edge.points, near, Infinity) : found);
    if (Math.abs(room - edge.room) > ROOM)
      return `channel ${n} has ${length(room, 3)} of room, not ${length(edge.room)}`;
  }
  return undefined;
}

/** Whether the job wants a channel cut wherever the cutter fits. */
function isChosen({ between }: Plan["grooves"]["edges"][number], { grooves }: Plan["job"]): boolean {
  return grooves.pattern === "all" && (between !== "rim" || grooves["rim-loop"]);
}

/** Least distance from a line to any piece, mm: exact up to `within`, else more than that. */
function leastRoom(points: readonly Point[], near: Near, within: number): number {
  let least = Infinity;
  for (let n = 1; n < points.length; n++) {
    const [from, to] = [points[n - 1]!, points[n]!];
    for (const piece of near([from, to], within)) least = Math.min(least, toPiece(from, to, piece));
  }
  return least;
}

/** Distance from a straight line to a piece, mm; 0 where it cuts through its corners, below 0 through a round. */
function toPiece(from: Point, to: Point, { x, y, radius, outline }: Piece): number {
  if (radius !== undefined) return pointToSegment([x, y], from, to) - radius;
  if (cutsThrough(from, to, outline)) return 0;
  let least = Math.min(pointToOutline(from, outline), pointToOutline(to, outline));
  for (const corner of outline) least = Math.min(least, pointToSegment(corner, from, to));
  return least;
}

/** Whether a straight line goes into a convex outline: what is left of it between all the sides. */
function cutsThrough([ax, ay]: Point, [bx, by]: Point, outline: Outline): boolean {
  let [enters, leaves] = [0, 1];
  outline.forEach(([x, y], n) => {
    const [nextX, nextY] = outline[(n + 1) % outline.length]!;
    const inside = (px: number, py: number) => (nextX - x) * (py - y) - (nextY - y) * (px - x);
    const [from, to] = [inside(ax, ay), inside(bx, by)];
    if (from <= 0 && to <= 0) leaves = -1;
    else if (from < 0) enters = Math.max(enters, from / (from - to));
    else if (to < 0) leaves = Math.min(leaves, from / (from - to));
  });
  return enters < leaves;
}

/** Each cut edge is walked by the cuts, along its own points: once, or again where retracing is counted. */
function cutFault(plan: Plan): string | undefined {
  const { totals, edges, cuts } = plan.grooves;
  const told = toldIn(plan);
  if (cuts.length !== totals.cuts) return `there are ${cuts.length} cuts, not ${totals.cuts}`;
  const steps = new Set(edges.flatMap((edge) => (edge.cut ? stepsOf(edge.points) : [])));
  const walked = new Set(cuts.flatMap(stepsOf));
  for (const [n, cut] of cuts.entries())
    if (!stepsOf(cut).every((step) => steps.has(step))) return `cut ${n + 1} leaves the channels`;
  if (walked.size < steps.size) return "a channel is not cut that should be";
  const length = cuts.reduce((sum, cut) => sum + lengthOf(cut), 0);
  return must(
    Math.abs(length - totals.length - totals.retraced) < 1e-3 * Math.max(1, totals.length / 100),
    `the cuts are ${told.length(length, 3)} long, not ${told.length(totals.length)} and ${told.length(totals.retraced)} again`,
  );
}

/** The straight parts of a line by their ends, whichever way they are walked. */
function stepsOf(points: readonly Point[]): string[] {
  return points.slice(1).map((to, n) => {
    const [a, b] = [`${points[n]}`, `${to}`];
    return a < b ? `${a} ${b}` : `${b} ${a}`;
  });
}

/** The rounded ways keep the clearance as the channels do, and go where the cuts go. */
function toolpathFault(plan: Plan): string | undefined {
  const { grooves, layout, job } = plan;
  const { toolpath, cuts, cutter } = grooves;
  if (!toolpath) return undefined;
  if (toolpath.length !== cuts.length) return `there are ${toolpath.length} rounded cuts, not ${cuts.length}`;
  const needed = (cutter - ROOM) / 2 + job.grooves.clearance - SHARP;
  const near = nearOf(layout.pieces);
  for (const [n, way] of toolpath.entries()) {
    const cut = cuts[n]!;
    if (`${way[0]}` !== `${cut[0]}` || `${way.at(-1)}` !== `${cut.at(-1)}`)
      return `rounded cut ${n + 1} does not run from end to end of its cut`;
    const room = leastRoom(way, near, needed);
    if (room < needed) return `rounded cut ${n + 1} runs ${toldIn(plan).length(room, 3)} from a piece`;
  }
  return undefined;
}

function totalFault(plan: Plan): string | undefined {
  const { grooves } = plan;
  const { totals, edges, depth } = grooves;
  const told = toldIn(plan);
  const length = edges.reduce((sum, edge) => sum + (edge.cut ? lengthOf(edge.points) : 0), 0);
  if (Math.abs(length - totals.length) > 1e-3 * Math.max(1, length / 100))
    return `the channels are ${told.length(length, 3)} long, not ${told.length(totals.length)}`;
  const uncut = edges.filter((edge) => !edge.cut).length;
  if (uncut !== totals.uncut) return `${uncut} channels are left uncut, not ${totals.uncut}`;
  const ends = 0.8 * grooves.cutter * grooves.cutter * (edges.length - uncut);
  if (totals.area > length * grooves.cutter + ends + 1e-6)
    return `the channels' area of ${totals.area} mm² is more than their length and width give`;
  return must(
    same(totals.volume, (totals.area * depth) / 1000, 1e-8),
    `the channels hold ${told.volume((totals.area * depth) / 1000)}, not ${told.volume(totals.volume)}`,
  );
}

function lengthOf(points: readonly Point[]): number {
  return points.reduce((sum, point, n) => (n === 0 ? 0 : sum + distance(points[n - 1]!, point)), 0);
}

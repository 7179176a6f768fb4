import type { Point } from "../geometry/types.js";

/** The channels between the pieces, seen from the back like the layout. */
export interface Grooves {
  cutter: number;
  depth: number;
  nodes: Point[];
  edges: GrooveEdge[];
  /** The cutter's continuous ways, in order, along the edges' own points; no lifts or travel in them. */
  cuts: Point[][];
  /** The ways with their corners rounded as far as the clearance allows; a loop's first point stands again at its end. */
  toolpath?: Point[][];
  totals: GrooveTotals;
  /** Both patterns on this layout, where the channels were asked for by themselves. */
  patterns?: { pattern: "all" | "mains"; totals: GrooveTotals }[];
}

interface GrooveTotals {
  /** Cut edges, each once, mm. */
  length: number;
  cuts: number;
  retraced: number;
  /** Union of the channels inside the tool, mm². */
  area: number;
  /** Area of the channels over that of the tool's circle. */
  share: number;
  /** area × depth, mL. */
  volume: number;
  /** Number of edges not cut. */
  uncut: number;
  /** Minutes along all cuts, retraced parts too, without the lifts between them; only with a feed. */
  minutes?: number;
}

/** One middle line between two nodes: a channel, where it is cut. */
export interface GrooveEdge {
  /** Indices of its end nodes; equal for a loop. */
  a: number;
  b: number;
  /** From node a to node b; straight between them. */
  points: Point[];
  /** Height of the channel's floor at each point, mm: 0 is the face at the tool's edge, positive out of the face. */
  z: number[];
  /** Twice the least distance from the line to any piece, mm. */
  room: number;
  cut: boolean;
  /** `rim`: beside the tool's edge (the rim loop). `clear`: beside a keep-clear circle. Absent between two pieces and on outlets. */
  between?: "rim" | "clear";
  /** Present on the straight radial edges that end on the tool's edge. */
  outlet?: true;
}

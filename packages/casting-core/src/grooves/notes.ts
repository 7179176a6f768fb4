import type { Tool } from "../blank/types.js";
import type { Job } from "../job/types.js";
import type { Layout } from "../layout/types.js";
import { type Note, note } from "../notes.js";
import type { PieceKind } from "../pieces/types.js";
import { degrees, hypot } from "../trig.js";
import { atLeast, atMost } from "../units/bound-text.js";
import { closeLength, countText } from "../units/figure-text.js";
import { networkNotes } from "./notes-network.js";
import { outletGaps } from "./outlets.js";
import type { Grooves } from "./types.js";

/**
 * What the maker should know about the channels. `rimGrowth` is how far the outermost pieces move out as the cast sets,
 * mm (the pour's figure); left out where it is not known.
 */
export function grooveNotes(
  job: Job,
  tool: Tool,
  kinds: readonly PieceKind[],
  layout: Layout,
  grooves: Grooves,
  rimGrowth?: number,
): Note[] {
  if (layout.pieces.length === 0) return [];
  return [
    ...gapNotes(job, layout, grooves),
    ...networkNotes(job, tool, grooves),
    ...depthNotes(job, kinds, layout, grooves),
    ...rimNotes(job, tool, grooves),
    ...outletNotes(job, tool, grooves),
    ...floorNotes(job, tool, grooves),
    ...growthNotes(job, grooves, rimGrowth),
  ];
}

function gapNotes(job: Job, layout: Layout, grooves: Grooves): Note[] {
  const { cutter, clearance } = job.grooves;
  const needed = cutter + 2 * clearance;
  const length = (mm: number): string => closeLength(mm, job.units);
  const wanted = `the cutter of ${length(cutter)} with ${length(clearance)} on each side needs ${atLeast(needed, job.units)}`;
  if (grooves.cuts.length === 0 && layout.pieces.length === 1) {
    return [
      note("info", "no-channels", "A single piece has no neighbours, so there is no channel to cut between any."),
    ];
  }
  if (grooves.cuts.length === 0) {
    return [
      note(
        "warning",
        "no-channels",
        `No channel can be cut: ${wanted}, and no gap is that wide; take a narrower cutter or a wider gap.`,
      ),
    ];
  }
  if (layout.gap + layout.hand >= needed - 1e-9) return [];
  const uncut = uncutBetween(grooves);
  const small = `The gap of ${atMost(layout.gap + layout.hand, job.units)} is too small for every channel: ${wanted}`;
  if (uncut === 0)
    return [note("info", "gap-too-small", `${small}; these pieces stand far enough apart, and none stays uncut.`)];
  const left = `${countText(uncut, "channel")} between pieces ${uncut === 1 ? "stays" : "stay"} uncut`;
  return [note("warning", "gap-too-small", `${small}; ${left}.`)];
}

function uncutBetween(grooves: Grooves): number {
  return grooves.edges.filter((edge) => !edge.cut && !edge.between && !edge.outlet).length;
}

function depthNotes(job: Job, kinds: readonly PieceKind[], layout: Layout, { depth, cuts }: Grooves): Note[] {
  if (cuts.length === 0) return [];
  const laid = new Set(layout.pieces.map((piece) => piece.kind));
  const thinnest = Math.min(...kinds.filter(({ kind }) => laid.has(kind)).map(({ thickness }) => thickness));
  const [over, under] = [(mm: number) => atLeast(mm, job.units), (mm: number) => atMost(mm, job.units)];
  if (depth >= thinnest - 1e-9) {
    const fact =
      depth - thinnest < 1e-9
        ? `The channels are as deep as the thinnest piece is thick, ${closeLength(depth, job.units)}`
        : `The channels are ${over(depth)} deep and the thinnest piece only ${under(thinnest)}`;
    const text = `${fact}: nothing holds it at the sides; cut at most ${under(thinnest / 2)} deep.`;
    return [note("warning", "groove-as-deep-as-piece", text)];
  }
  if (depth <= thinnest / 2 + 1e-9) return [];
  return [
    note(
      "warning",
      "pieces-held-shallow",
      `Below the channels' floor only ${under(thinnest - depth)} of the thinnest piece (${under(thinnest)}) is held, less than half of it: cut at most ${under(thinnest / 2)} deep.`,
    ),
  ];
}

/** A wall beside the rim loop stands that is this many of the channel's depths thick, and this many mm (common practice). */
const WALL = { depths: 2, least: 3 };

function rimNotes(job: Job, tool: Tool, grooves: Grooves): Note[] {
  const loop = grooves.edges.filter((edge) => edge.between === "rim");
  const rim = loop.filter((edge) => edge.cut).flatMap((edge) => edge.points);
  const missing = job.grooves["rim-loop"] ? loop.filter((edge) => !edge.cut).length : 0;
  const bits = (text: string) => note("warning", "rim-loop-in-bits", text);
  if (rim.length === 0) {
    if (missing === 0) return [];
    return [bits("No part of the rim loop is cut, although it is asked for: there is no room for the cutter.")];
  }
  const outermost = rim.reduce((most, [x, y]) => Math.max(most, hypot(x, y)), 0);
  const wall = Math.max(0, tool.diameter / 2 - outermost - grooves.cutter / 2);
  const weak = wall < Math.max(WALL.depths * grooves.depth, WALL.least);
  return [
    ...(weak
      ? [
          note(
            "warning",
            "rim-loop-wall",
            `The rim loop leaves a wall of only ${atMost(wall, job.units)} at the tool's edge beside a channel ${closeLength(grooves.depth, job.units)} deep, which can break off into the grit: leave the loop uncut, or bevel the wall away.`,
          ),
        ]
      : []),
    ...(missing > 0
      ? [
          bits(
            `The rim loop is cut only in bits: ${missing} of its ${loop.length} parts ${missing === 1 ? "stays" : "stay"} uncut; leave the loop uncut, or take a wider rim.`,
          ),
        ]
      : []),
  ];
}

/** A wall of plaster thinner than this at the tool's edge breaks off, mm (common practice). */
const THIN_WALL = 2;

function outletNotes(job: Job, tool: Tool, grooves: Grooves): Note[] {
  const close = outletGaps(grooves).filter(({ angle }) => (angle * tool.diameter) / 2 < grooves.cutter + THIN_WALL);
  if (close.length === 0) return [];
  const places = close.length === 1 ? "one place" : `${close.length} places`;
  const hours = [...new Set(close.map(({ from, angle }) => hourOf(from + angle / 2)))].sort((a, b) => a - b).join(", ");
  const where = `In ${places}, near ${hours} o'clock on the groove template with its index at 12,`;
  const text = `${where} two channels run out over the edge with less than ${atLeast(THIN_WALL, job.units)} of plaster between them, which can break off into the grit: cut one of the two to the edge, and end the other in it.`;
  return [note("warning", "outlets-close", text)];
}

/** The hour to which a direction points on the groove template, which is mirrored: counter-clockwise runs with the clock. */
function hourOf(direction: number): number {
  return 1 + ((Math.round((degrees(direction) - 90) / 30) + 23) % 12);
}

/** Pieces stand at right angles to the glass, the cutter along the tool's axis: the floor is nearer to one side. */
function floorNotes(job: Job, tool: Tool, grooves: Grooves): Note[] {
  if (tool.curveRadius === undefined || grooves.cuts.length === 0) return [];
  const shift = (grooves.depth * tool.diameter) / 2 / tool.curveRadius;
  if (shift < 0.01) return [];
  const side = job.blank.curve === "convex" ? "inner" : "outer";
  return [
    note(
      "info",
      "channel-floor",
      `The clearance holds on the sheet; near the tool's edge the pieces lean by the glass's curve, so that at the channel's floor the ${side} piece is nearer by up to ${atLeast(shift, job.units)}: lean the cutter with the face, or allow for it in the clearance.`,
    ),
  ];
}

function growthNotes(job: Job, grooves: Grooves, rimGrowth: number | undefined): Note[] {
  if (rimGrowth === undefined || rimGrowth < 0.005 || grooves.cuts.length === 0) return [];
  return [
    note(
      "info",
      "map-growth",
      `The set cast has grown: at the tool's edge the pieces lie up to ${closeLength(rimGrowth, job.units)} further out than the groove sheet says; lay the sheet from the centre out, so that the error is shared all round.`,
    ),
  ];
}

import type { Blank, Tool } from "../../blank/types.js";
import { farthest } from "../../geometry/distance.js";
import type { Job } from "../../job/types.js";
import { type Note, note } from "../../notes.js";
import type { PieceKind } from "../../pieces/types.js";
import { atLeast } from "../../units/bound-text.js";
import { closeLength, countText } from "../../units/figure-text.js";
import type { Layout } from "../types.js";
import { standOf } from "./stand.js";

/** What would stand or lie on nothing: a socket between the pieces, a piece over the bevel. */
export function placeNotes(job: Job, blank: Blank, tool: Tool, kinds: readonly PieceKind[], layout: Layout): Note[] {
  return [...socketNotes(job, kinds, layout), ...bevelNotes(job, blank, tool, layout)];
}

function socketNotes({ socket }: Job, kinds: readonly PieceKind[], { pieces }: Layout): Note[] {
  if (!socket || socket.foot === "glass") return [];
  const stands = standOf(socket, kinds, pieces);
  if (stands === "stands") return [];
  const text =
    stands === "hangs"
      ? "No piece as thick as the thickest lies under the socket's foot, so that it stands on nothing and sinks to the glass: write foot: glass under socket, or take one wide enough to stand on pieces round it."
      : "The pieces under the socket's foot lie all to one side of the axis, so that it tips when let go: hold it upright until the plaster has set, or write another seed or foot: glass under socket.";
  return [note("warning", stands === "hangs" ? "socket-hangs" : "socket-tips", text)];
}

/** The narrowest rim that keeps every piece inside the bevel, mm; none is needed where it is 0 or less. */
export function rimInsideBevel({ blank: { bevel = 0 } }: Job, blank: Blank, tool: Tool): number {
  return tool.diameter / 2 - (blank.diameter / 2 - bevel);
}

/** The glass has a face inside its bevels only (common practice). */
function bevelNotes(job: Job, blank: Blank, tool: Tool, { pieces }: Layout): Note[] {
  const { units } = job;
  const { bevel = 0 } = job.blank;
  const rim = rimInsideBevel(job, blank, tool);
  const face = tool.diameter / 2 - rim;
  const out = pieces.map(({ outline }) => farthest(outline)).filter((reach) => reach > face + 1e-6);
  if (out.length === 0) return [];
  const most = Math.max(...out) - face;
  const text = `${out.length} of ${countText(pieces.length, "piece")} ${out.length === 1 ? "reaches" : "reach"} over the bevel of ${closeLength(bevel, units)}, by up to ${closeLength(most, units)}, where the glass has no face: write a tool.rim of at least ${atLeast(rim, units)}.`;
  return [note("warning", "pieces-over-bevel", text)];
}

import type { Tool } from "../blank/types.js";
import type { Job } from "../job/types.js";
import { onlyFoot } from "../layout/field.js";
import { type Note, note } from "../notes.js";
import { linksAt, partsOf } from "./graph.js";
import { onEdge } from "./network.js";
import type { Grooves } from "./types.js";

/** Where the channels do not meet each other, or end before the tool's edge, and what keeps them from it. */
export function networkNotes(job: Job, tool: Tool, grooves: Grooves): Note[] {
  const cut = grooves.edges.filter((edge) => edge.cut);
  const at = linksAt(grooves.nodes.length, cut);
  const parts = partsOf(cut, at).count;
  const notes: Note[] = [];
  const wider = onlyFoot(job)
    ? "a circle wider than the socket's foot, at 0, 0 in layout.keep-clear"
    : "a larger circle";
  // Pieces may touch a circle kept clear, whatever the gap: what its own channels would join is parted by it alone.
  const beside = grooves.edges.filter((edge) => edge.cut || edge.between === "clear");
  const besideAt = linksAt(grooves.nodes.length, beside);
  if (parts > 1) {
    const rest = partsOf(beside, besideAt).count;
    const fall = `The channels fall into ${parts} parts that do not meet`;
    const cutter = "the cutter does not fit everywhere: a narrower cutter or a wider gap joins them";
    const text =
      rest >= parts
        ? `${fall}, because ${cutter}.`
        : `${fall}, because pieces stand too close to circles kept clear: leave room round them (${wider}), or join the channels there by hand${rest > 1 ? `; elsewhere ${cutter}` : ""}.`;
    notes.push(note("warning", "channels-in-parts", text));
  }
  const blind = at.flatMap((links, node) =>
    links.length === 1 && !onEdge(grooves.nodes[node]!, tool.diameter) ? [node] : [],
  );
  const narrow = blind.filter((node) => besideAt[node]!.length === 1).length;
  return [
    ...notes,
    ...blindNotes(
      narrow,
      "where the cutter fits no further",
      (them) => `a narrower cutter or a wider gap opens ${them}`,
    ),
    ...blindNotes(
      blind.length - narrow,
      "where pieces stand too close to a circle kept clear",
      (them) => `ask for ${wider}, and lead ${them} on by hand round what it keeps clear`,
    ),
  ];
}

/** So many channels end blind in such a place; how `them` are opened. */
function blindNotes(count: number, where: string, remedy: (them: string) => string): Note[] {
  if (count === 0) return [];
  const [end, them] = count === 1 ? ["One channel ends", "it"] : [`${count} channels end`, "them"];
  return [note("warning", "blind-channels", `${end} blind ${where}: swarf collects there; ${remedy(them)}.`)];
}

import type { Tool } from "../blank/types.js";
import type { Job } from "../job/types.js";
import { clearCircles, onlyFoot, roomRoundFoot } from "../layout/field.js";
import { type Note, note } from "../notes.js";
import { hypot } from "../trig.js";
import { atLeast } from "../units/bound-text.js";
import { countText } from "../units/figure-text.js";
import { linksAt, partsOf } from "./network/graph.js";
import { onEdge } from "./network/network.js";
import { idleOutlets } from "./outlets.js";
import type { GrooveEdge, Grooves } from "./types.js";

/** Where the channels do not meet each other, or end before the tool's edge, and what keeps them from it. */
export function networkNotes(job: Job, tool: Tool, grooves: Grooves): Note[] {
  const cut = grooves.edges.filter((edge) => edge.cut);
  // Outlets that drain nothing are told among the outlets (see outletsText): they are no parts, and no ends.
  const idle = idleOutlets(grooves);
  const edges = grooves.edges.filter((edge) => !idle.has(edge));
  const led = edges.filter((edge) => edge.cut);
  const at = linksAt(grooves.nodes.length, led);
  const parts = partsOf(led, at).count;
  const notes: Note[] = [];
  const [kept, one] = onlyFoot(job)
    ? ["the socket's foot", "the socket's foot"]
    : ["circles kept clear", "a circle kept clear"];
  // Pieces may touch a circle kept clear, whatever the gap: what its own channels would join is parted by it alone.
  const beside = edges.filter((edge) => edge.cut || edge.between === "clear");
  const besideAt = linksAt(grooves.nodes.length, beside);
  if (parts > 1) {
    const rest = partsOf(beside, besideAt).count;
    const fall = `The channels fall into ${parts} parts that do not meet`;
    const cutter = "the cutter does not fit everywhere: a narrower cutter or a wider gap joins them";
    const byHand = `join the channels there by hand, ${roomInside(job)}`;
    const causes =
      rest >= parts
        ? `because ${cutter}`
        : rest - 1 > (parts - 1) / 2
          ? `mostly because ${cutter}; some because pieces stand close to ${kept}: ${byHand}`
          : `because pieces stand close to ${kept}: ${byHand}${rest > 1 ? `; elsewhere ${cutter}` : ""}`;
    const text = `${fall}, ${causes}.`;
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
      `where pieces stand close to ${one}`,
      (them) => `lead ${them} on by hand, ${roomInside(job)}`,
      isOpen(job) ? "info" : "warning",
    ),
    ...inCircleNotes(job, cut, kept),
  ];
}

/**
 * Where a channel beside a circle is cut by hand. Pieces may touch the circle however wide it is, so that the job alone
 * never opens it.
 */
function roomInside(job: Job): string {
  const { cutter, clearance } = job.grooves;
  if (isOpen(job)) return "inside the circle, which leaves room round the socket's foot";
  const room = (within: number) => atLeast(within + 2 * (cutter + clearance), job.units);
  return onlyFoot(job)
    ? `for which a circle of ${room(job.socket!.diameter)} or more at 0, 0 in layout.keep-clear leaves room round the foot`
    : `inside the circle, which must be wider than what stands in it by ${room(0)} or more`;
}

/** Whether the one circle kept clear has the socket's foot in it, and room for the cutter all round that. */
function isOpen(job: Job): boolean {
  const { cutter, clearance } = job.grooves;
  return roomRoundFoot(job) >= cutter + clearance - GRAZE;
}

/** Less than this the cutter may run into a circle unsaid, mm. */
const GRAZE = 0.01;

/** Channels beside a circle have their room from the pieces alone: what the cutter would take of the circle is told. */
function inCircleNotes(job: Job, cut: readonly GrooveEdge[], kept: string): Note[] {
  const circles = clearCircles(job);
  const into = cut
    .map(({ points }) =>
      Math.max(
        ...points.flatMap(([px, py]) =>
          circles.map(({ x, y, radius }) => radius + job.grooves.cutter / 2 - hypot(px - x, py - y)),
        ),
      ),
    )
    .filter((depth) => depth > GRAZE);
  if (into.length === 0) return [];
  const [run, them] = into.length === 1 ? ["runs", "it"] : ["run", "them"];
  const text = `${countText(into.length, "channel")} of the cutter's width ${run} into ${kept} by up to ${atLeast(Math.max(...into), job.units)}: end ${them} short of what is kept clear.`;
  return [note("warning", "channel-in-circle", text)];
}

/** So many channels end blind in such a place; how `them` are opened. */
function blindNotes(
  count: number,
  where: string,
  remedy: (them: string) => string,
  level: Note["level"] = "warning",
): Note[] {
  if (count === 0) return [];
  const [end, them] = count === 1 ? ["One channel ends", "it"] : [`${count} channels end`, "them"];
  return [note(level, "blind-channels", `${end} blind ${where}: swarf collects there; ${remedy(them)}.`)];
}

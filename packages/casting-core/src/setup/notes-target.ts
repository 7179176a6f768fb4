import type { Blank, Tool } from "../blank/types.js";
import { damageOf, GRAINS } from "../grains.js";
import type { Job } from "../job/types.js";
import { seatOf } from "../layout/notes/seat.js";
import { type Note, note } from "../notes.js";
import type { PieceKind } from "../pieces/types.js";
import { depthText, FOLLOWS, followsText, HARDLY, meanText, shareText } from "../units/figure-text.js";
import { EDGE, isHard, isSame, LEVEL } from "./pass.js";
import type { Setup, SweepRow } from "./types.js";
import { placeText } from "./words.js";

/** Where the pass leads, and which run would follow the target best. */
export function targetNotes(job: Job, blank: Blank, setup: Setup): Note[] {
  const { wear, removal, closest } = setup;
  const { match } = wear;
  if (!removal || !blank.target || match === undefined) return [];
  const first = removal.first;
  const then = (first === "edge") === (blank.curve === "convex") ? "deeper" : "shallower";
  const goes = `The target asks for ${depthText(removal.deepest, job.units)} more off the ${first}`;
  const does = wear.does === "keeps" ? "keeps the curve" : `${wear.does} it`;
  const best =
    closest && isSame(closest, setup)
      ? `Of the runs compared none follows the removal wanted clearly better than this one, to ${shareText(match)}, at a safe pressure on the edge, below ${meanText(EDGE)}.`
      : closest
        ? `Of the runs compared ${runText(job, closest)} follows the removal wanted best, to ${shareText(closest.match!)}, at ${closest.edgePressure.toFixed(2)} times the mean pressure on the edge.`
        : `None of the runs compared follows the removal wanted, to ${100 * FOLLOWS} % or more, at a safe pressure on the edge, below ${meanText(EDGE)}: work the ${first} by itself with a smaller tool, or plan another size of tool.`;
  const other = note("info", "closest-run", best);
  // The middle against the edge is one figure, the shape over all zones another.
  const disagree = wear.toward === "toward" ? match < FOLLOWS : match >= HARDLY;
  const judged = disagree ? `, but it ${followsText(match)} by its shape over all zones, by which runs are judged` : "";
  if (wear.toward === "toward")
    return [note("info", "toward-target", `${goes}; this pass ${does}, which leads toward it${judged}.`), other];
  const level = job.setup.given ? "warning" : "info";
  const remedy = first === "centre" ? lessAtTheEdge(job, setup, then) : moreAtTheEdge(job, setup, then);
  return [
    note(level, "away-from-target", `${goes}; this pass ${does}, which does not lead toward it${judged}: ${remedy}.`),
    other,
  ];
}

/** What takes more off the edge: a run compared that comes there and does, where the edge bears it. */
function moreAtTheEdge(job: Job, setup: Setup, then: string): string {
  const { sweep } = setup;
  if (sweep.every(({ bend }) => bend >= 0))
    return `no offset or stroke compared makes the curve ${then} with this tool; work the edge by itself with a smaller one`;
  const run = bestOf(setup, (row) => row.bend < -LEVEL && comesToEdge(job, row));
  if (!run)
    return `more overhang, which the edge does not bear, would make the curve ${then}; work the edge by itself with a smaller tool`;
  return !isHard(setup)
    ? `it is a safe start, but ${runText(job, run)} has to follow to make the curve ${then}`
    : `take ${runText(job, run)}, to make the curve ${then}`;
}

/** What takes less off the edge: a run compared that does, where there is one. */
function lessAtTheEdge(job: Job, setup: Setup, then: string): string {
  const run = bestOf(setup, ({ bend }) => bend > LEVEL);
  return run
    ? `take ${runText(job, run)} or a smaller tool over the centre, to make the curve ${then}`
    : `no offset or stroke compared makes the curve ${then} with this tool; work the centre by itself with a smaller one`;
}

/** Of the runs compared that do not chip the edge and do what is `wanted`, the one that follows the target best. */
function bestOf({ sweep }: Setup, wanted: (row: SweepRow) => boolean): SweepRow | undefined {
  return sweep.filter((row) => wanted(row) && !isHard(row)).sort((a, b) => b.match! - a.match!)[0];
}

function comesToEdge({ blank, tool }: Job, { offset, stroke }: SweepRow): boolean {
  return offset + stroke / 2 >= (blank.diameter - tool.diameter) / 2 - 1e-6;
}

/** A run compared, as it is written in a job; one that does not come to the edge is told. */
function runText(job: Job, row: SweepRow): string {
  const run = placeText(row, job.units);
  return comesToEdge(job, row) ? run : `${run}, which works the middle alone and leaves the edge,`;
}

/** A way to go that is shorter than this is told as less, µm. */
const HAIR = 3;

/**
 * A grain whose shallowest damage goes deeper than the glass that is to go overshoots the target with its first wet. A
 * finer one is offered where it bridges what pieces and cast stand off the glass.
 */
export function grainNotes(
  { blank, setup: { given }, units }: Job,
  tool: Tool,
  kinds: readonly PieceKind[],
  { removal, grains, grain }: Setup,
): Note[] {
  const [first] = grains;
  if (!removal || !first || removal.deepest >= first.damage.least) return [];
  const left = removal.deepest < HAIR ? `less than ${depthText(HAIR, units)}` : depthText(removal.deepest, units);
  const finer = GRAINS.find(({ size }) => damageOf(size).least <= removal.deepest);
  const hollows = seatOf(blank.curve, tool, kinds, []).hollows.map(({ hollow }) => hollow);
  const remedy =
    finer && finer.size >= Math.max(Math.abs(grain.mismatch), ...hollows)
      ? `write a finer setup.grain, ${finer.name} or beyond, or check the target`
      : "check the target, as no grain is fine enough and still bridges what pieces and cast stand off the glass";
  const text = `The target is ${left} of glass away, and grain ${first.name} breaks the glass ${depthText(first.damage.least, units)} deep or more: this pass overshoots it, so ${remedy}.`;
  return [note(given ? "warning" : "info", "grain-overshoots", text)];
}

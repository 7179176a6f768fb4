import type { Blank, Tool } from "../blank/types.js";
import { impossible } from "../errors.js";
import { grainNamed } from "../grains.js";
import { type Run, runOf } from "../job/run.js";
import type { Job, JobSetup } from "../job/types.js";
import { onlyFoot } from "../layout/field.js";
import { type Band, hardCoverage } from "../layout/quality/hard-coverage.js";
import { liftsAt, loadPressure } from "../layout/quality/pressure.js";
import type { Layout } from "../layout/types.js";
import type { PieceKind } from "../pieces/types.js";
import type { Pour } from "../pour/types.js";
import { atLeast, atMost } from "../units/bound-text.js";
import { closeLength } from "../units/figure-text.js";
import { lengthText } from "../units/length-text.js";
import { driveOf, ladderOf, loadsOf, speedsOf } from "./first-pass.js";
import { bevelOf, gradesFrom } from "./grades.js";
import { closestOf, isSame, passOf, placesOf, sweepOf } from "./pass.js";
import { bandOf, faceOf, reachingBoth } from "./reach.js";
import { removalOf } from "./removal.js";
import { retainerOf } from "./retainer.js";
import { sizesOf } from "./sizes.js";
import { timeTo } from "./time.js";
import type { Place, Setup, SetupWear, SweepRow } from "./types.js";
import { placeText } from "./words.js";

/**
 * The first pass of `job`: where the tool runs, how hard it presses, what it does to the curve, which grains follow, and
 * what holds the blank. Whether it can run at all is told by setupFault.
 *
 * @throws CastingError `invalid` where a piece is of none of `kinds` or has no outline
 */
export function planSetup(
  job: Job,
  blank: Blank,
  tool: Tool,
  kinds: readonly PieceKind[],
  layout: Layout,
  pour: Pour,
): Setup {
  const coverage = hardCoverage(kinds, layout.pieces);
  const run = runOf(job);
  const half = blank.diameter / 2;
  const reach = tool.diameter / 2;
  const farthest = run.offset + run.stroke / 2;
  const overhang = farthest + reach - half;
  const edgePressure = loadPressure(half, reach, farthest).edge;
  const removal = removalOf(job, blank, tool);
  const grains = gradesFrom(job.setup);
  const loads = loadsOf(job, tool, kinds, layout, pour, edgePressure);
  const speeds = speedsOf(job);
  const bevel = bevelOf(job, removal, grains);
  const wear = passOf(blank, coverage, run, removal);
  const reachesCentre = !centreFault(job) && wear.zones[0]!.removal > 0;
  const own = ownRow(run, edgePressure, wear, layout);
  // What a set-up would be refused for, or warned of, is not held out.
  const places = placesToCompare(job, blank, tool).filter(
    (place) => !setupFault(at(job, place)) && (reachesCentre || !isSame(place, run)),
  );
  const sweep = sweepOf(places, own, blank, tool, coverage, run, removal);
  const closest = closestOf(sweep, reachesCentre ? own : undefined);
  const time = timeTo(job, blank, wear);
  const retainer = retainerOf(job, bevel);
  const grain = grainNamed(job.setup.grain)!;
  const mismatch = pour.fit.mismatch.most;
  return {
    offset: run.offset,
    stroke: run.stroke,
    overhang,
    edgePressure,
    liftsAt: liftsAt(half, reach),
    reachesCentre,
    // The blank lies loose in its ring.
    reachesEdge: farthest + coverage.reach + retainer.clearance >= faceOf(job),
    loads,
    speeds,
    drive: driveOf(tool, pour),
    ladder: ladderOf(loads, speeds),
    wear,
    sweep,
    ...(closest ? { closest } : {}),
    ...(removal ? { removal } : {}),
    ...(time ? { time } : {}),
    bevel,
    grains,
    grain: { name: grain.name, size: grain.size, mismatch, bridges: Math.abs(mismatch) <= grain.size },
    sizes: sizesOf(job, blank, tool, kinds, layout, pour),
    retainer,
  };
}

/** The job's own run as one to compare, told as its wear and its layout tell it. */
function ownRow(
  { offset, stroke }: Run,
  edgePressure: number,
  { bend, match }: SetupWear,
  { quality }: Layout,
): SweepRow {
  return { offset, stroke, edgePressure, bend, zoning: quality.zoning, ...(match === undefined ? {} : { match }) };
}

/** The usual places; where the tangent one leaves a button, that which does not beside them. */
function placesToCompare(job: Job, blank: Blank, tool: Tool): Place[] {
  const both = centreFault(at(job, { offset: "tangent", stroke: 0 })) && reachingBoth(job, bandOf(job));
  return [...placesOf(blank, tool), ...(both ? [both] : [])];
}

interface SetupFault {
  key: string;
  text: string;
}

/** What the arithmetic of units may be off, mm. */
const HAIR = 1e-6;

/** Throws `impossible` for a set-up that cannot run, see setupFault. */
export function mustRun(job: Job): void {
  const fault = setupFault(job);
  if (fault) throw impossible(["setup", fault.key], fault.text);
}

/** The same job at another place. */
function at(job: Job, place: Pick<JobSetup, "offset" | "stroke">): Job {
  return { ...job, setup: { ...job.setup, ...place } };
}

/** What keeps a set-up from running, as the key to change and one sentence; nothing where it can. */
export function setupFault(job: Job): SetupFault | undefined {
  const { setup, tool, blank, units } = job;
  const { offset, stroke } = runOf(job);
  const overhang = offset + stroke / 2 + tool.diameter / 2 - blank.diameter / 2;
  if (overhang >= tool.diameter / 2 - HAIR) {
    const lifts = atMost(liftsAt(blank.diameter / 2, tool.diameter / 2), units);
    const text = `the tool hangs over by ${atLeast(overhang, units)}, half of its ${lengthText(tool.diameter, units)} or more, and falls off; write a smaller offset or stroke, for an overhang well below ${lifts}, from where on its far side lifts`;
    return { key: setup.offset === "tangent" ? "stroke" : "offset", text };
  }
  if (offset === 0 && stroke === 0) {
    const text =
      "a tool on the mirror's own axis without a stroke does not cut there and prints rings; write a stroke, or an offset";
    return { key: "stroke", text };
  }
  return centreFault(job);
}

/** What keeps the pieces off the mirror's centre by the job alone: its rim, or a circle kept clear over the tool's axis. */
function centreFault(job: Job): SetupFault | undefined {
  const { setup, tool, units } = job;
  const { offset, stroke } = runOf(job);
  const band = bandOf(job);
  const [near, far] = [offset - stroke / 2, offset + stroke / 2];
  const outside = near >= band.outer - HAIR;
  const inside = band.inner > 0 && far <= band.inner + HAIR;
  // Where no piece can stand at all, the layout says so.
  if (band.inner >= band.outer || !(outside || inside)) return undefined;
  const both = bothText(job, band);
  const key = setup.offset === "tangent" ? "stroke" : "offset";
  const where = outside
    ? `of ${lengthText(tool.diameter, units)}${tool.rim > 0 ? `, with pieces to ${closeLength(band.outer, units)} from its axis,` : ""} whose axis stays ${atLeast(near, units)}`
    : `with ${closeLength(2 * band.inner, units)} kept clear about its axis, which comes no farther than ${atLeast(far, units)}`;
  const smaller = onlyFoot(job)
    ? "a smaller socket.diameter"
    : `a circle kept clear of less than ${atMost(2 * far, units)}`;
  const remedy = outside ? (both ?? "a longer stroke, or a smaller offset") : `${both ? `${both}, or ` : ""}${smaller}`;
  const text = `a tool ${where} from the mirror's never reaches the centre and leaves a button; write ${remedy}`;
  return { key, text };
}

/** What brings pieces standing in a `band` to the mirror's centre and to the end of its face, as it is written in a job. */
export function bothText(job: Job, band: Band): string | undefined {
  const both = reachingBoth(job, band);
  return both && `${placeText(both, job.units)}, which comes to the centre and to the edge`;
}

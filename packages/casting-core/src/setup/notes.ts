import type { Blank, Tool } from "../blank/types.js";
import { bridging } from "../grains.js";
import type { Job } from "../job/types.js";
import { mustBeLaid } from "../layout/laid.js";
import { type Band, hardCoverage, outermostBand } from "../layout/quality/hard-coverage.js";
import { loadPressure } from "../layout/quality/pressure.js";
import type { PlacedPiece } from "../layout/types.js";
import { type Note, note } from "../notes.js";
import type { PieceKind } from "../pieces/types.js";
import { atLeast, atMost } from "../units/bound-text.js";
import { closeLength, depthText, minutesText, shareText } from "../units/figure-text.js";
import { bevelNotes, pressureNotes, thicknessNotes } from "./notes-glass.js";
import { grainNotes, targetNotes } from "./notes-target.js";
import { isHard } from "./pass.js";
import { bothText, setupFault } from "./plan.js";
import { bandOf, faceOf } from "./reach.js";
import { thicknessTaken } from "./retainer.js";
import type { Setup } from "./types.js";
import { isBevel, placeText } from "./words.js";

/** What the maker should know about the first pass, cautions with it. `kinds` and `pieces`: where they are known. */
export function setupNotes(
  job: Job,
  blank: Blank,
  tool: Tool,
  setup: Setup,
  kinds: readonly PieceKind[] = [],
  pieces: readonly PlacedPiece[] = [],
): Note[] {
  mustBeLaid(kinds, pieces);
  // Asked for only where glass is left standing.
  const laid = () => (pieces.length > 0 ? outermostBand(hardCoverage(kinds, pieces)) : bandOf(job));
  return [
    ...faultNotes(job),
    ...reachNotes(job, setup, laid),
    ...targetNotes(job, blank, setup),
    ...grainNotes(job, tool, kinds, setup),
    ...pressureNotes(job, setup),
    ...thicknessNotes(job, blank, setup),
    ...bevelNotes(job, setup),
    ...ruleNotes(job, setup),
    ...fitNotes(job, tool, setup),
    ...rateNotes(job, blank, setup),
    ...retainerNotes(job, setup),
    ...cautions(),
  ];
}

/** Without a set-up of its own a job is not refused for the usual one. */
function faultNotes(job: Job): Note[] {
  const fault = job.setup.given ? undefined : setupFault(job);
  return fault ? [note("warning", "setup-cannot-run", `With the usual set-up (${fault.key}) ${fault.text}.`)] : [];
}

/** Glass that no piece of this set-up comes to is left standing: a button, a ring or a rim. `laid`: where they stand. */
function reachNotes(job: Job, setup: Setup, laid: () => Band): Note[] {
  if (setup.reachesCentre) return [...ringNotes(job, setup), ...edgeNotes(job, setup, laid)];
  // What the job alone says is told by its fault.
  return setupFault(job) ? [] : centreNotes(job, setup, laid);
}

function centreNotes(job: Job, setup: Setup, laid: () => Band): Note[] {
  const worn = setup.wear.zones.find(({ removal }) => removal > 0);
  if (!worn) return [];
  const both = bothText(job, laid());
  const remedy = both ? `write ${both}` : "lay pieces nearer to the tool's axis";
  const text = `With ${placeText(setup, job.units)} no piece of this layout grinds the mirror's centre, and a button about ${closeLength(2 * worn.at, job.units)} across is left standing: ${remedy}.`;
  return [note("warning", "centre-unreached", text)];
}

function ringNotes({ units }: Job, { wear: { zones } }: Setup): Note[] {
  const outermost = zones.findLastIndex(({ removal }) => removal > 0);
  const bare = zones.slice(0, outermost + 1).filter(({ removal }) => removal === 0);
  const [first, last] = [bare[0], bare.at(-1)];
  if (!first || !last) return [];
  const text = `No piece grinds the mirror from about ${closeLength(first.at, units)} to ${closeLength(last.at, units)} from its centre, where glass is left standing: write another offset, or a longer stroke.`;
  return [note("warning", "ring-unreached", text)];
}

/** Where the tool's own edge comes to the mirror's, its rim alone keeps the pieces off it: the usual tangent run. */
function edgeNotes(job: Job, setup: Setup, laid: () => Band): Note[] {
  const { units, blank, tool } = job;
  const { offset, stroke, overhang, retainer } = setup;
  if (setup.reachesEdge) return [];
  const face = faceOf(job);
  const { outer } = laid();
  const reached = offset + stroke / 2 + outer;
  const short = face - reached;
  const share = 1 - (reached * reached) / (face * face);
  const rimAlone = overhang >= 0 && short <= tool.rim + retainer.clearance;
  if (rimAlone && !job.setup.given) return [];
  const longer = `a stroke longer by ${atLeast(2 * short, units)}`;
  // A larger offset would take a small tool off the centre.
  const nearest = face - outer - stroke;
  const either =
    nearest < outer ? `an offset of at least ${atLeast(nearest + stroke / 2, units)}, or ${longer}` : longer;
  const edgePressure = loadPressure(blank.diameter / 2, tool.diameter / 2, face - outer).edge;
  const remedy = isHard({ edgePressure })
    ? "lay pieces nearer to the tool's edge, with a smaller tool.rim"
    : `write ${either}`;
  const bevelled = rimAlone && isBevel(short, job);
  const unless = bevelled ? "so much is bevelled away" : "the middle alone is to be worked";
  const text = `The pieces come no nearer than ${closeLength(short, units)} to ${blank.bevel ? "where the mirror's bevel begins" : "the mirror's edge"}, and leave a ring of ${shareText(share)} of the mirror unground and standing: ${remedy}, unless ${unless}.`;
  return [note(bevelled ? "info" : "warning", "edge-unreached", text)];
}

/** Beside what the published damage asks for, the trade's rule of whole grain sizes takes several times as much. */
function ruleNotes(job: Job, { grains }: Setup): Note[] {
  const given = job.setup.grades;
  const ruled = grains.flatMap((grain, n) =>
    n === 0 || given?.[n - 1]?.depth !== undefined ? [] : [{ rule: grain.depth, damage: grains[n - 1]!.damage.most }],
  );
  if (ruled.length === 0) return [];
  const byRule = ruled.reduce((total, { rule }) => total + rule, 0) / 1000;
  const byDamage = ruled.reduce((total, { damage }) => total + damage, 0) / 1000;
  const each = ruled.length < grains.length - 1 ? "Each grade without a depth of its own" : "Each grade";
  const text = `${each} is reckoned to remove three sizes of the grain before it (a rule of the trade, on the safe side), ${closeLength(byRule, job.units)} altogether; the deepest damage published for these grains comes to ${closeLength(byDamage, job.units)}. Write setup.grades with depths of your own to reckon with less.`;
  return [note("info", "grade-rule", text)];
}

function retainerNotes(job: Job, { retainer }: Setup): Note[] {
  if (!job.setup.given || !retainer.low) return [];
  const taken =
    job.blank.thickness === undefined
      ? ` (taken as ${closeLength(thicknessTaken(job.blank), job.units)}: write blank.thickness if it is not)`
      : "";
  const text = `The retainer can be only ${atMost(retainer.height, job.units)} high to stay below the bevel and the tool, less than a third of the blank's thickness${taken}: grind slowly and without an overhang, or hold the blank on pitch or a sticky mat.`;
  return [note("warning", "retainer-low", text)];
}

function fitNotes(job: Job, tool: Tool, { grain, removal }: Setup): Note[] {
  const notes: Note[] = [];
  if (!grain.bridges) {
    const off = Math.abs(grain.mismatch);
    const coarser = bridging(off, removal?.deepest);
    const remedy = coarser ? `start with a coarser one, such as ${coarser.name}` : "take a plaster that grows less";
    const text = `The grown cast is off the glass by ${Math.round(off)} µm, more than grain ${grain.name} bridges (${grain.size} µm): ${remedy}.`;
    notes.push(note("warning", "mismatch", text));
  }
  if (removal && removal.overTool > 3 * grain.size) {
    const text = `Over the tool of ${closeLength(tool.diameter, job.units)} the curve has ${depthText(removal.overTool, job.units)} to go, more than the pieces and grain ${grain.name} take up: cast again on the way.`;
    notes.push(note("info", "cast-again", text));
  }
  return notes;
}

/** What the maker's measured rate says of the time, and why it may say nothing. */
function rateNotes({ setup: { rate } }: Job, blank: Blank, { time, wear }: Setup): Note[] {
  if (!rate) return [];
  return [...timeNotes(blank, time, wear), ...disagreeNotes(rate.change, wear.does)];
}

/** What was measured counts for more than what is predicted: a pass that does other than it should is not this pass. */
function disagreeNotes(change: number, does: Setup["wear"]["does"]): Note[] {
  const measured = change > 0 ? "deepens" : "flattens";
  if (change === 0 || does === "keeps" || does === measured) return [];
  const text = `The rate was measured on a pass that ${measured} the curve, while this set-up is predicted to ${does === "deepens" ? "deepen" : "flatten"} it: the rate holds for the pass that was measured alone, so check that offset, stroke and overhang are written as they were then.`;
  return [note("warning", "rate-disagrees", text)];
}

function timeNotes(blank: Blank, time: Setup["time"], { toward }: Setup["wear"]): Note[] {
  if (time) {
    const text = `At the rate measured this pass takes ${minutesText(time.minutes)} to the target, ${minutesText(time.least)} to ${minutesText(time.most)} at twice the rate's error, while load, speed and grain stay as they were: measure again half way.`;
    return [note("info", "time-to-target", text)];
  }
  const why = !blank.target
    ? "the job has no target"
    : toward === "away"
      ? "this pass is predicted to lead away from the target"
      : "the pass measured led away from the target, or the curve is there already";
  return [note("info", "no-time", `No time can be told from the rate: ${why}.`)];
}

/** OSHA 29 CFR 1926.1153 sets 50 µg/m³ of respirable crystalline silica over eight hours. Others: common practice. */
function cautions(): Note[] {
  return [
    note(
      "caution",
      "grind-wet",
      "Grind wet and wear a respirator: the US limit for breathable silica is 50 µg/m³ over eight hours (OSHA 29 CFR 1926.1153); local codes come first.",
    ),
    note(
      "caution",
      "spinning",
      "Keep hair, sleeves and mains leads away from what turns; lift the tool off before switching off, pin weights, none above the drive; guards on, clamps and retainer below the bevel and clear of the tool's overhang.",
    ),
    note(
      "caution",
      "sharp-edges",
      "Raw edges cut: bevel first, wet, with eye and ear protection; lean a diamond disc so that the glass drags and does not climb.",
    ),
  ];
}

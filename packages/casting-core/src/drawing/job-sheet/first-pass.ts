import type { Plan } from "../../plan/types.js";
import { isFast, isHeavy } from "../../setup/first-pass.js";
import { bendText, edgeText, keptUp, passText, rateText, renewalText, runEdgeText } from "../../setup/words.js";
import { atLeast, atMost } from "../../units/bound-text.js";
import {
  closeLength,
  closeLengths,
  depthText,
  fixed,
  followsText,
  MOST_TIMES,
  massText,
  minutesText,
  pressureText,
  roughLength,
  rpmText,
  shareText,
  speedText,
} from "../../units/figure-text.js";
import type { Sheet } from "../sheet.js";
import { both } from "./figures.js";
import { figuresTable, gridTable, picture } from "./html.js";
import { removalPicture, wearPicture } from "./removal.js";

/** What stands where the job has no set-up: the usual one is plotted, but not told to be run (contract, section 2). */
const UNGIVEN =
  "<p>The job has no set-up of its own: the plot is for the usual one, the tool's edge at the mirror's. Write setup into the job for pressures, speeds, a safe start, grains, bevel and retainer.</p>\n";

/** A line of a table: what it is, and its figure. */
type Row = [what: string, figure: string];

/** The first pass: the plot of predicted removal and its tables, as HTML. */
export function firstPass(plan: Plan, draw: (sheet: Sheet) => string): string {
  const pictures = plot(plan, draw) + glass(plan, draw);
  if (!plan.job.setup.given) return UNGIVEN + pictures + sizes(plan);
  const tables = [setUp, loads, speeds, start, otherRuns, grains, sizes];
  return pictures + tables.map((table) => table(plan)).join("");
}

function plot(plan: Plan, draw: (sheet: Sheet) => string): string {
  const aimed = plan.setup.wear.zones.some(({ wanted }) => wanted !== undefined);
  const dashed = aimed ? ", dashed: what the target asks for" : "";
  const words = `Predicted removal from the mirror's centre to its edge, relative${dashed}.`;
  return picture(draw(wearPicture(plan)), words, true);
}

/** The glass to be removed; only with a target. */
function glass(plan: Plan, draw: (sheet: Sheet) => string): string {
  const section = removalPicture(plan);
  return section ? picture(draw(section), section.caption, true) : "";
}

function setUp({ setup, job }: Plan): string {
  const { drive, retainer, time } = setup;
  const { units } = job;
  const rows: Row[] = [
    ["Offset of the axes", both(closeLength, setup.offset, job)],
    ["Stroke", both(closeLength, setup.stroke, job)],
    ["Overhang", setup.overhang > 0 ? both(closeLength, setup.overhang, job) : "none"],
    ["Pressure at the mirror's edge", edgeText(setup, units)],
    [
      "Drive point",
      `${roughLength(drive.height, units)} above the face: the leading edge presses ${fixed(drive.leading, 2)} times the mean; keep it low`,
    ],
    ["This pass", passText(setup.wear, job.blank.curve)],
    ...bevelRows(setup.bevel, job),
    ...(time
      ? [["Time to the target", `${minutesText(time.minutes)} of this pass ${rateText(time)}`] satisfies Row]
      : []),
    [
      "Retainer",
      `inside ${roughLength(retainer.inside, units)}, ${atMost(retainer.height, units)} high, the blank loose by ${roughLength(retainer.clearance, units)} all round and never pinched`,
    ],
  ];
  return figuresTable("The set-up", rows);
}

function bevelRows(bevel: Plan["setup"]["bevel"], job: Plan["job"]): Row[] {
  const { needed, face, now, left = 0, renew, back } = bevel;
  const { units } = job;
  const leg = keptUp(needed, job) ?? `${both(atLeast, needed, job)} of leg, ${atLeast(face, units)} of face`;
  const rows: Row[] = [["Front bevel needed now", leg]];
  if (now !== undefined) {
    const lasts = renew ? renewalText(bevel, job, renew) : "it lasts";
    rows.push(["Front bevel now, and at the end", `${atMost(now, units)}, ${atMost(left, units)}; ${lasts}`]);
  }
  rows.push(["Bevel of the back", `${roughLength(back, units)}, only so that it does not cut hands`]);
  return rows;
}

function loads({ setup, job }: Plan): string {
  return gridTable(
    "Pressure on the pieces",
    ["Weight added", "Tool and weight", "Worn in", "Fresh", "At the mirror's edge"],
    setup.loads.map((load) => [
      both(massText, load.weight, job),
      both(massText, load.mass, job),
      `${pressureText(load.worn, job.units)}${isHeavy(load) ? ", too much" : ""}`,
      load.fresh === undefined ? "more, on their chamfered rings" : pressureText(load.fresh, job.units),
      `${setup.edgePressure < MOST_TIMES ? "" : "over "}${pressureText(load.edge, job.units)}`,
    ]),
  );
}

function speeds({ setup, job }: Plan): string {
  return gridTable(
    "Speeds",
    ["Turntable", "Mirror's edge", "Tool"],
    setup.speeds.map((speed) => [
      rpmText(speed.turntable),
      `${speedText(speed.rim, job.units)}${isFast(speed) ? ", too fast" : ""}`,
      `${fixed(speed.tool, 1)} rpm`,
    ]),
  );
}

function start({ setup, job }: Plan): string {
  // Where no speed or no weight will do, there is no start to tell.
  if (setup.ladder.length === 0) return "";
  return gridTable(
    "Starting, step by step",
    ["Step", "Turntable", "Weight", "Why"],
    setup.ladder.map(({ step, turntable, weight, reason }) => [
      String(step),
      rpmText(turntable),
      massText(weight, job.units),
      reason,
    ]),
  );
}

function otherRuns({ setup, job }: Plan): string {
  const { sweep } = setup;
  const [offsets, strokes] = [sweep.map(({ offset }) => offset), sweep.map(({ stroke }) => stroke)].map((lengths) =>
    closeLengths(lengths, job.units),
  ) as [string[], string[]];
  return gridTable(
    "Other offsets and strokes",
    ["Offset", "Stroke", "Pressure at the edge", "Middle against edge", "Zoning", ...(setup.removal ? ["Target"] : [])],
    sweep.map((row, n) => [
      offsets[n]!,
      strokes[n]!,
      runEdgeText(row),
      bendText(row),
      shareText(row.zoning),
      ...(row.match === undefined ? [] : [followsText(row.match)]),
    ]),
  );
}

function grains({ setup, job }: Plan): string {
  return gridTable(
    "Grains down to fine grinding",
    ["Grain", "Mean size", "Removes", "Damage left"],
    setup.grains.map(({ name, size, depth, damage }) => [
      name,
      `${size} µm`,
      depth === 0 ? "as the curve asks" : micronsText([depth], job),
      micronsText([damage.least, damage.most], job),
    ]),
  );
}

/** Depths beside grains, µm: `27 to 553 µm`, and in inches as notes and bevel tell them, `0.0011 to 0.0218 in`. */
function micronsText(depths: readonly number[], { units }: Plan["job"]): string {
  if (units === "mm") return `${depths.map((depth) => fixed(depth, 0)).join(" to ")} µm`;
  return depths
    .map((depth) => depthText(depth, units))
    .join(" to ")
    .replace(" in to", " to");
}

function sizes({ setup, job }: Plan): string {
  return gridTable(
    "Choosing the tool: three sizes",
    [
      "Diameter",
      "Dry mass, as thick as this one",
      "Pieces",
      "Hollow under a piece",
      "Plaster behind the pieces",
      "Why",
    ],
    setup.sizes.map((size) => [
      both(roughLength, size.diameter, job),
      massText(size.mass, job.units),
      String(size.pieces),
      `${fixed(size.hollow, 0)} µm`,
      `at least ${atLeast(size.thickness, job.units)}`,
      size.reason,
    ]),
  );
}

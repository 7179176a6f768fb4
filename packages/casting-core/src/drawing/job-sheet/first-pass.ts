import type { Plan } from "../../plan/types.js";
import { isFast, isHeavy } from "../../setup/first-pass.js";
import { isHard } from "../../setup/pass.js";
import { keptUp, passText, renewalText } from "../../setup/words.js";
import { atLeast, atMost } from "../../units/bound-text.js";
import {
  closeLength,
  closeLengths,
  depthText,
  fixed,
  followsText,
  MOST_TIMES,
  massText,
  meanText,
  minutesText as minutes,
  pressureText,
  roughLength,
  rpmText,
  shareText,
  speedText,
  timesText,
} from "../../units/figure-text.js";
import type { Sheet } from "../sheet.js";
import { both } from "./figures.js";
import { figuresTable, gridTable, picture } from "./html.js";
import { removalPicture, wearPicture } from "./removal.js";

/** What stands where the job has no set-up: the usual one is plotted, but not told to be run (contract, section 2). */
const UNGIVEN =
  "<p>The job has no set-up of its own: the plot is for the usual one, the tool's edge at the mirror's. Write setup into the job for pressures, speeds, a safe start, grains, bevel and retainer.</p>\n";

/** Depths beside grains, µm: `27 to 553 µm`, and in inches as notes and bevel tell them, `0.0011 to 0.0218 in`. */
function micronsText(depths: readonly number[], { units }: Plan["job"]): string {
  if (units === "mm") return `${depths.map((depth) => fixed(depth, 0)).join(" to ")} µm`;
  return depths
    .map((depth) => depthText(depth, units))
    .join(" to ")
    .replace(" in to", " to");
}

/** The first pass: the plot of predicted removal and its tables, as HTML. */
export function firstPass(plan: Plan, draw: (sheet: Sheet) => string): string {
  const { setup, job } = plan;
  const { wear, bevel, retainer, drive } = setup;
  const wanted = wear.zones.some((zone) => zone.wanted !== undefined) ? ", dashed: what the target asks for" : "";
  const plot = picture(
    draw(wearPicture(plan)),
    `Predicted removal from the mirror's centre to its edge, relative${wanted}.`,
    true,
  );
  const section = removalPicture(plan);
  const glass = section ? picture(draw(section), section.caption, true) : "";
  const loads = gridTable(
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
  const ladder = gridTable(
    "Starting, step by step",
    ["Step", "Turntable", "Weight", "Why"],
    setup.ladder.map(({ step, turntable, weight, reason }) => [
      String(step),
      rpmText(turntable),
      massText(weight, job.units),
      reason,
    ]),
  );
  // Where no speed or no weight will do, there is no start to tell.
  const start = setup.ladder.length > 0 ? ladder : "";
  const at = closeLengths(
    setup.sweep.map(({ offset }) => offset),
    job.units,
  );
  const along = closeLengths(
    setup.sweep.map(({ stroke }) => stroke),
    job.units,
  );
  const offsets = gridTable(
    "Other offsets and strokes",
    ["Offset", "Stroke", "Pressure at the edge", "Middle against edge", "Zoning", ...(setup.removal ? ["Target"] : [])],
    setup.sweep.map((row, n) => [
      at[n]!,
      along[n]!,
      `${timesText(row.edgePressure)}${isHard(row) ? ", too much" : ""}`,
      `${row.bend > 0 ? "+" : ""}${shareText(row.bend)}`,
      shareText(row.zoning),
      ...(row.match === undefined ? [] : [followsText(row.match)]),
    ]),
  );
  const sizes = gridTable(
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
  const grains = gridTable(
    "Grains down to fine grinding",
    ["Grain", "Mean size", "Removes", "Damage left"],
    setup.grains.map(({ name, size, depth, damage }) => [
      name,
      `${size} µm`,
      depth === 0 ? "as the curve asks" : micronsText([depth], job),
      micronsText([damage.least, damage.most], job),
    ]),
  );
  const rows: [string, string][] = [
    ["Offset of the axes", both(closeLength, setup.offset, job)],
    ["Stroke", both(closeLength, setup.stroke, job)],
    ["Overhang", setup.overhang > 0 ? both(closeLength, setup.overhang, job) : "none"],
    [
      "Pressure at the mirror's edge",
      `${meanText(setup.edgePressure)}; the far side lifts from ${atMost(setup.liftsAt, job.units)} on`,
    ],
    [
      "Drive point",
      `${roughLength(drive.height, job.units)} above the face: the leading edge presses ${fixed(drive.leading, 2)} times the mean; keep it low`,
    ],
    ["This pass", passText(wear, job.blank.curve)],
    [
      "Front bevel needed now",
      keptUp(bevel.needed, job) ??
        `${both(atLeast, bevel.needed, job)} of leg, ${atLeast(bevel.face, job.units)} of face`,
    ],
    ...(bevel.now === undefined
      ? []
      : ([
          [
            "Front bevel now, and at the end",
            `${atMost(bevel.now, job.units)}, ${atMost(bevel.left ?? 0, job.units)}${bevel.renew ? `; ${renewalText(bevel, job, bevel.renew)}` : "; it lasts"}`,
          ],
        ] as [string, string][])),
    ["Bevel of the back", `${roughLength(bevel.back, job.units)}, only so that it does not cut hands`],
    ...(setup.time
      ? ([
          [
            "Time to the target",
            `${minutes(setup.time.minutes)} of this pass by the rate measured, ${minutes(setup.time.least)} to ${minutes(setup.time.most)} at twice its error`,
          ],
        ] as [string, string][])
      : []),
    [
      "Retainer",
      `inside ${roughLength(retainer.inside, job.units)}, ${atMost(retainer.height, job.units)} high, the blank loose by ${roughLength(retainer.clearance, job.units)} all round and never pinched`,
    ],
  ];
  const speeds = gridTable(
    "Speeds",
    ["Turntable", "Mirror's edge", "Tool"],
    setup.speeds.map((speed) => [
      rpmText(speed.turntable),
      `${speedText(speed.rim, job.units)}${isFast(speed) ? ", too fast" : ""}`,
      `${fixed(speed.tool, 1)} rpm`,
    ]),
  );
  if (!job.setup.given) return UNGIVEN + plot + glass + sizes;
  return plot + glass + figuresTable("The set-up", rows) + loads + speeds + start + offsets + grains + sizes;
}

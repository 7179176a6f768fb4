import {
  apartText,
  axisText,
  countText,
  fineLength,
  fixed,
  lengthText,
  lengthTexts,
  massText,
  minutesText,
  outletsText,
  type PartialPlan,
  type Plan,
  radiusWriter,
  roughLength,
  shareText,
  stillToGo,
  tellsDirections,
  temperatureText,
  uncertaintyText,
  volumeText,
} from "casting-core";
import { setupRows } from "./setup-figures.js";

/** One line of a report: what it is, and its figure. */
export type Row = [what: string, figure: string];

/** The blank and the tool; `bare`: the curve alone, where the diameter is only what an instrument spans. */
function curveRows({ blank, tool, job }: Required<Pick<Plan, "blank" | "tool" | "job">>, bare = false): Row[] {
  const { measured } = blank;
  const text = (mm: number) => lengthText(mm, job.units);
  const radiusText = radiusWriter(measured);
  const curve = (radius: number | undefined, sagitta: number) =>
    radius === undefined
      ? "no curve"
      : `radius ${radiusText(radius, job.units)}, sagitta ${fineLength(sagitta, job.units)}`;
  const rows: Row[] = bare
    ? [["curve", `${blank.curve}, ${curve(blank.curveRadius, blank.sagitta)} over ${text(blank.diameter)}`]]
    : [
        ["blank", `${text(blank.diameter)} ${blank.curve}, ${curve(blank.curveRadius, blank.sagitta)}`],
        ["tool", `${text(tool.diameter)}, ${curve(tool.curveRadius, tool.sagitta)}`],
      ];
  if (measured) rows.push(...measuredRows(measured, blank.curve, job.units));
  if (blank.target) {
    const { curveRadius, sagitta } = blank.target;
    rows.push(["wanted", curve(curveRadius, sagitta)]);
    rows.push(["still to go", stillToGo(blank, (mm) => fineLength(mm, job.units))]);
  }
  return rows;
}

/** What the readings say beside the radius. */
function measuredRows(
  measured: NonNullable<Plan["blank"]["measured"]>,
  curve: Plan["blank"]["curve"],
  units: Plan["job"]["units"],
): Row[] {
  const { readings, spread, astigmatism, zones } = measured;
  const count =
    readings === 1
      ? "one reading, spread unknown"
      : `${readings} readings, standard deviation ${apartText(spread!, units)}`;
  const rows: Row[] = [
    ["readings", `${count}; radius give or take ${uncertaintyText(measured, units)} (one standard uncertainty)`],
  ];
  if (zones.some(({ at, along }) => at > 0 || along !== undefined)) {
    const places = lengthTexts(
      zones.map(({ at }) => at),
      units,
    );
    const radiusText = radiusWriter(measured);
    for (const [n, { angle, along, off, radius }] of zones.entries()) {
      const bar = along === undefined ? "" : `, bar along ${fixed(along, 0)}°`;
      const where = `${places[n]} out${angle === undefined ? "" : ` at ${fixed(angle, 0)}°`}${bar}`;
      const apart = apartText(off, units).replace(/^(?!-)/, "+");
      rows.push(["", `${where}: ${apart}, radius ${radiusText(radius, units)}`]);
    }
  }
  if (astigmatism) {
    const { amount, uncertainty: error, deepest } = astigmatism;
    rows.push([
      "astigmatism",
      `readings swing ${apartText(amount, units)} to either side of their mean, give or take ${apartText(error, units)}, ${curve === "convex" ? "steepest" : "deepest"} along ${axisText(deepest)}°`,
    ]);
  } else if (tellsDirections(zones)) rows.push(["astigmatism", "none beyond the error of the readings"]);
  return rows;
}

/** The layout and how good it is. */
export function layoutRows({ layout, job }: Required<Pick<Plan, "layout" | "job">>): Row[] {
  const { quality, gap, hand, seed } = layout;
  // Of free polygons the lattice is only a lower bound, which a good layout passes.
  const lattice =
    quality.latticeCount && quality.latticeCount >= quality.count
      ? `, ${shareText(quality.count / quality.latticeCount)} of an ordered lattice`
      : "";
  const byHand = hand > 0 ? ` (${lengthText(gap, job.units)} asked + ${lengthText(hand, job.units)} for the hand)` : "";
  return [
    ["pieces", `${quality.count}${lattice}, seed ${seed}`],
    ["coverage", `${shareText(quality.coverage)}, hard ${shareText(quality.hardCoverage)}`],
    [
      "least gap",
      quality.gapMin === undefined ? "a single piece" : `${lengthText(quality.gapMin, job.units)}${byHand}`,
    ],
    [
      "evenness",
      `rings differ by ${shareText(quality.radialVariation)} (standard deviation), likeness when turned ${fixed(quality.symmetry, 3)}`,
    ],
  ];
}

/** The channels. */
function grooveRows({ grooves, job }: Required<Pick<Plan, "grooves" | "job">>): Row[] {
  const { totals, cutter, depth } = grooves;
  const size = `${lengthText(cutter, job.units)} wide, ${lengthText(depth, job.units)} deep`;
  const uncut = totals.uncut > 0 ? `, ${countText(totals.uncut, "way")} left uncut` : "";
  return [
    ["channels", `${countText(totals.cuts, "cut")}, ${roughLength(totals.length, job.units)} altogether${uncut}`],
    [
      "cutter",
      `${size}, ${volumeText(totals.volume, job.units)} of plaster cut away, ${shareText(totals.share)} of the face`,
    ],
    ["outlets", outletsText(grooves)],
    ...(totals.minutes === undefined
      ? []
      : [["cutting", `${minutesText(totals.minutes)} at the feed given, without lifts`] satisfies Row]),
    ...(grooves.patterns ?? []).map((row): Row => {
      const length = `${countText(row.totals.cuts, "cut")}, ${roughLength(row.totals.length, job.units)} altogether`;
      const face = `${shareText(row.totals.share)} of the face, ${volumeText(row.totals.volume, job.units)}`;
      return [
        `pattern ${row.pattern}`,
        `${length}, ${face}${row.pattern === job.grooves.pattern ? ": the job's" : ""}`,
      ];
    }),
  ];
}

/** What is mixed and poured. */
export function pourRows({ pour, job }: { pour: Plan["pour"]; job: { units: Plan["job"]["units"] } }): Row[] {
  const { units } = job;
  const both = units === "mm" ? "in" : "mm";
  const twice = (write: (value: number, as: typeof units) => string, value: number) =>
    `${write(value, units)} (${write(value, both)})`;
  const rows: Row[] = [
    ["fill line", `${twice(roughLength, pour.fill.edge)} above the glass at the tool's edge`],
    ["plaster", `${pour.plaster.name}, ${fixed(pour.plaster.water, 3)} g of water to 1 g of powder`],
    ["mix", `${twice(volumeText, pour.mixVolume)}, of it ${volumeText(pour.castVolume, units)} in the mold`],
  ];
  // Batches are equal.
  const [batch] = pour.batches;
  if (batch) {
    const name = pour.batches.length > 1 ? `each of ${pour.batches.length} batches` : "weigh out";
    rows.push([name, `powder ${twice(massText, batch.powder)}, water ${twice(massText, batch.water)}`]);
    if (batch.waterMark !== undefined && batch.mixMark !== undefined) {
      rows.push([
        "in the container",
        `water to ${twice(roughLength, batch.waterMark)}, mix to ${twice(roughLength, batch.mixMark)}`,
      ]);
    }
  }
  rows.push(["heat", `up to ${temperatureText(pour.heat.ceiling, units)} inside the cast`]);
  rows.push(["whole tool", `${massText(pour.mass.wet, units)} wet, ${massText(pour.mass.dry, units)} dry`]);
  return rows;
}

/** Every part of the plan that is there, in the order of the work. */
export function planRows(plan: PartialPlan, bare = false): Row[] {
  const { job, blank, tool, layout, grooves, pour, setup } = plan;
  return [
    ...(blank && tool ? curveRows({ blank, tool, job }, bare) : []),
    ...(layout ? layoutRows({ layout, job }) : []),
    ...(pour ? pourRows({ pour, job }) : []),
    ...(grooves ? grooveRows({ grooves, job }) : []),
    ...(setup ? firstPassRows({ setup, job }, layout === undefined) : []),
  ];
}

/** The first pass. The usual set-up of a job without one of its own is told only where it is asked for `alone`. */
function firstPassRows({ setup, job }: Required<Pick<Plan, "setup" | "job">>, alone: boolean): Row[] {
  if (alone || job.setup.given) return setupRows({ setup, job }, alone);
  return [["first pass", "the job has no setup; casting setup tells of the usual one"]];
}

/** Rows in two columns, one a line. */
export function table(rows: readonly Row[]): string {
  const width = Math.max(0, ...rows.map(([what]) => what.length));
  return rows.map(([what, figure]) => `${what.padEnd(width)}  ${figure}\n`).join("");
}

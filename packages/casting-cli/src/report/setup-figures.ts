import {
  atLeast,
  atMost,
  bendText,
  closeLength,
  closeLengths,
  countText,
  depthText,
  edgeText,
  fineLength,
  fixed,
  followsText,
  isFast,
  isHeavy,
  isSame,
  keptUp,
  massText,
  minutesText,
  type Plan,
  passText,
  pressureText,
  rateText,
  renewalText,
  roughLength,
  rpmText,
  runEdgeText,
  speedText,
  thicknessTaken,
  volumeText,
} from "casting-core";
import type { Row } from "./figures.js";

/** The first pass; `full`: with other runs and tool sizes to choose from. */
export function setupRows({ setup, job }: Required<Pick<Plan, "setup" | "job">>, full: boolean): Row[] {
  const mm = (value: number) => roughLength(value, job.units);
  // As the notes tell a run.
  const run = (value: number) => closeLength(value, job.units);
  const { wear, removal, bevel, retainer } = setup;
  const where = setup.overhang > 0 ? `overhang ${run(setup.overhang)}` : "no overhang";
  const rows: Row[] = [
    ["offset", `${run(setup.offset)} from axis to axis, ${where}, stroke ${run(setup.stroke)}`],
    ["edge pressure", edgeText(setup, job.units)],
    ...setup.loads.map((load): Row => {
      const { weight, worn, fresh } = load;
      const first =
        fresh === undefined ? "more while fresh, on their chamfered rings" : `${pressureText(fresh, job.units)} fresh`;
      return [
        `weight ${massText(weight, job.units)}`,
        `${pressureText(worn, job.units)} worn in, ${first}${isHeavy(load) ? ": too much" : ""}`,
      ];
    }),
    ...setup.speeds.map(
      (speed): Row => [
        `turntable ${rpmText(speed.turntable)}`,
        `rim ${speedText(speed.rim, job.units)}, tool ${fixed(speed.tool, 1)} rpm${isFast(speed) ? ": too fast" : ""}`,
      ],
    ),
    ["drive", `${mm(setup.drive.height)} above the face: leading edge ${fixed(setup.drive.leading, 2)} times the mean`],
    ["this pass", passText(wear, job.blank.curve)],
  ];
  if (removal) {
    const mass = removal.mass === undefined ? "" : `, ${massText(removal.mass / 1000, job.units)}`;
    rows.push([
      "to remove",
      `${depthText(removal.deepest, job.units)} at the ${removal.first}, ${volumeText(removal.volume, job.units)}${mass} of glass in all`,
    ]);
  }
  const [at, along] = [setup.sweep.map(({ offset }) => offset), setup.sweep.map(({ stroke }) => stroke)].map(
    (lengths) => closeLengths(lengths, job.units),
  ) as [string[], string[]];
  for (const [n, row] of (full ? setup.sweep : []).entries()) {
    const follows = row.match === undefined ? "" : `, ${followsText(row.match)}`;
    rows.push([
      row === setup.sweep[0] ? "other runs" : "",
      `offset ${at[n]}, stroke ${along[n]}: edge ${runEdgeText(row)}, middle ${bendText(row)}${follows}`,
    ]);
  }
  if (setup.closest) {
    const [offset, stroke] = closeLengths([setup.closest.offset, setup.closest.stroke], job.units);
    rows.push(["closest", isSame(setup.closest, setup) ? "this one" : `offset ${offset}, stroke ${stroke}`]);
  }
  if (setup.time) {
    rows.push(["to the target", `${minutesText(setup.time.minutes)} ${rateText(setup.time)}`]);
  }
  for (const size of full ? setup.sizes : []) {
    rows.push([
      size === setup.sizes[0] ? "tool sizes" : "",
      `${mm(size.diameter)}: ${massText(size.mass, job.units)} as thick as this one, ${countText(size.pieces, "piece")}, hollow ${fixed(size.hollow, 0)} µm; ${size.reason}`,
    ]);
  }
  const kept = keptUp(bevel.needed, job);
  const renew = bevel.renew && !kept ? `; ${renewalText(bevel, job, bevel.renew)}` : "";
  rows.push([
    "bevel",
    `${kept ?? `${atLeast(bevel.needed, job.units)} needed now`}; the edge loses ${fineLength(bevel.edgeRemoval, job.units)} by all grades${renew}`,
  ]);
  rows.push(["grains", setup.grains.map(({ name }) => name).join(", ")]);
  const taken =
    job.blank.thickness === undefined ? `, for a blank taken as ${mm(thicknessTaken(job.blank))} thick` : "";
  rows.push(["retainer", `inside ${mm(retainer.inside)}, ${atMost(retainer.height, job.units)} high${taken}`]);
  return rows;
}

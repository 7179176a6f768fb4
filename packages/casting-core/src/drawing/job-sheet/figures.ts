import { radiusWriter, stillToGo, uncertaintyText } from "../../blank/words.js";
import { uncutEdges } from "../../grooves/cuts/uncut.js";
import { outletsText } from "../../grooves/outlets.js";
import { countsOf, pieceKinds } from "../../pieces/kinds.js";
import type { Plan } from "../../plan/types.js";
import {
  apartText,
  countText,
  fineLength,
  fixed,
  massText,
  minutesText,
  pressureText,
  riseText,
  roughLength,
  shareText,
  temperatureText,
  volumeText,
} from "../../units/figure-text.js";
import { lengthText } from "../../units/length-text.js";
import { figuresTable, gridTable } from "./html.js";
import { wholeMinutes } from "./steps.js";

/** A figure in the job's units, with the other in brackets. */
export function both(
  write: (value: number, units: "mm" | "in") => string,
  value: number,
  { units }: Plan["job"],
): string {
  return `${write(value, units)} (${write(value, units === "mm" ? "in" : "mm")})`;
}

/** The kinds of pieces, and how good the layout is. */
export function pieceTable({ layout, job }: Plan): string {
  const { quality } = layout;
  const kinds = pieceKinds(job);
  const counts = countsOf(kinds, layout.pieces);
  const kindsTable = gridTable(
    "Kinds of pieces",
    ["Kind", "Pieces", "Thick", "Bore"],
    kinds.map((kind, n) => [
      kind.name,
      String(counts[n]),
      lengthText(kind.thickness, job.units),
      kind.bore > 0 ? lengthText(kind.bore, job.units) : "none",
    ]),
  );
  const rows: [string, string][] = [
    ["Pieces", String(quality.count)],
    ...(quality.latticeCount !== undefined
      ? ([["Most in an ordered lattice", String(quality.latticeCount)]] as [string, string][])
      : []),
    ["Coverage, by outlines", shareText(quality.coverage)],
    ["Coverage, bores taken out", shareText(quality.hardCoverage)],
    ["Least gap, proved", quality.gapMin === undefined ? "a single piece" : both(lengthText, quality.gapMin, job)],
    ["Least distance to the edge, proved", both(lengthText, quality.rimMin, job)],
    ["Unevenness from ring to ring, standard deviation", shareText(quality.radialVariation)],
    ["Likeness to itself when turned", fixed(quality.symmetry, 3)],
    ["Predicted zoning", shareText(quality.zoning)],
  ];
  return kindsTable + figuresTable("The layout", rows);
}

/** The batches, and the plaster. */
export function mixTables({ pour, job }: Plan): string {
  const count = pour.batches.length;
  // Batches are equal.
  const batches = gridTable(
    count > 1 ? `Each of ${count} batches` : "The batch",
    ["Powder", "Water", "Mix", "Water mark", "Mix mark"],
    pour.batches
      .slice(0, 1)
      .map((batch) => [
        both(massText, batch.powder, job),
        both(massText, batch.water, job),
        both(volumeText, batch.mix, job),
        batch.waterMark === undefined ? "no container given" : both(roughLength, batch.waterMark, job),
        batch.mixMark === undefined ? "no container given" : both(roughLength, batch.mixMark, job),
      ]),
  );
  const rows: [string, string][] = [
    ["Plaster", `${pour.plaster.name}; ${fixed(pour.plaster.water, 3)} g of water to 1 g of powder`],
    ["Mix in all", both(volumeText, pour.mixVolume, job)],
    [
      "Inside temperature at most",
      `${temperatureText(pour.heat.ceiling, job.units)}, a rise of up to ${riseText(pour.heat.rise, job.units)}`,
    ],
    ["Pour before", `${wholeMinutes(pour.schedule.pourBefore)} min after the powder goes in`],
    ["Open after", `${fixed(pour.schedule.openAfter, 0)} min`],
    [
      "Repair mix",
      `${massText(pour.repair.powder, job.units)} of powder, ${massText(pour.repair.water, job.units)} of water`,
    ],
  ];
  return batches + figuresTable("The plaster", rows);
}

/** The mold, the cast and the dam. */
export function moldTable({ pour, job, tool }: Plan): string {
  return figuresTable("The mold and the cast", [
    ["Tool's diameter", both(lengthText, tool.diameter, job)],
    ["Fill line at the edge", both(roughLength, pour.fill.edge, job)],
    ["Height of the cast on the axis", both(roughLength, pour.fill.centre, job)],
    ["Mold", both(volumeText, pour.moldVolume, job)],
    ["Pieces take", both(volumeText, pour.piecesVolume, job)],
    ...(pour.socketVolume > 0
      ? ([["Socket takes", both(volumeText, pour.socketVolume, job)]] as [string, string][])
      : []),
    ["Plaster cast", both(volumeText, pour.castVolume, job)],
    ["Dam strip", `${both(roughLength, pour.dam.length, job)} by ${both(roughLength, pour.dam.height, job)}`],
    ["Dam goes round", both(lengthText, pour.dam.formDiameter, job)],
    ["Whole tool, wet", both(massText, pour.mass.wet, job)],
    ["Whole tool, dry", both(massText, pour.mass.dry, job)],
    ["Pressure on the glass while pouring", pressureText(pour.pressure, job.units)],
  ]);
}

/** The channels. */
export function channelTable({ grooves, job }: Plan): string {
  const { totals } = grooves;
  const { rim, narrow, chosen } = uncutEdges(grooves.edges, job);
  return figuresTable("The channels", [
    ["Width and depth", `${lengthText(grooves.cutter, job.units)} by ${lengthText(grooves.depth, job.units)}`],
    ["Length altogether", both(roughLength, totals.length, job)],
    ["Cuts", String(totals.cuts)],
    ["Not cut: too narrow for the cutter", String(narrow)],
    ["Not cut: left out by choice", String(chosen)],
    ["Not cut: the loop along the rim", String(rim)],
    ["Retraced", both(roughLength, totals.retraced, job)],
    ["Plaster cut away", `${both(volumeText, totals.volume, job)}, ${shareText(totals.share)} of the face`],
    ["Outlets", outletsText(grooves)],
    ...(totals.minutes === undefined
      ? []
      : ([["Time along the cuts", `${minutesText(totals.minutes)} at the feed given, without lifts`]] as [
          string,
          string,
        ][])),
  ]);
}

/** The curve as it is, as it was measured, as it is wanted. */
export function curveTable({ blank, tool, job }: Plan): string {
  const rows: [string, string][] = [
    ["Blank", `${both(lengthText, blank.diameter, job)}, ${blank.curve}`],
    ...(blank.mass === undefined
      ? []
      : ([["Mass of the blank, its back flat", both(massText, blank.mass, job)]] as [string, string][])),
    ...(blank.curveRadius !== undefined
      ? ([
          ["Radius now", both(radiusWriter(blank.measured), blank.curveRadius, job)],
          ["Sagitta of the blank", both(fineLength, blank.sagitta, job)],
          ["Sagitta of the tool", both(fineLength, tool.sagitta, job)],
        ] as [string, string][])
      : []),
    ...(blank.measured
      ? ([
          [
            "Measured",
            `${countText(blank.measured.readings, "reading")}, standard uncertainty of the radius ${uncertaintyText(blank.measured, job.units)}`,
          ],
          ...(blank.measured.spread === undefined
            ? []
            : [["Standard deviation of the readings", apartText(blank.measured.spread, job.units)]]),
        ] as [string, string][])
      : []),
    ...(blank.target
      ? ([
          ["Radius wanted", both(roughLength, blank.target.curveRadius, job)],
          ["Sagitta wanted", both(fineLength, blank.target.sagitta, job)],
          ["Still to go", stillToGo(blank, (mm) => both(fineLength, mm, job))],
        ] as [string, string][])
      : []),
  ];
  return figuresTable("The glass and the tool's curve", rows);
}

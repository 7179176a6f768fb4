import type { Note } from "../../notes.js";
import { pieceKinds } from "../../pieces/kinds.js";
import type { Plan } from "../../plan/types.js";
import { fixed, massText, roughLength, shareText, volumeText } from "../../units/figure-text.js";
import { lengthText } from "../../units/length-text.js";
import type { Sheet } from "../sheet.js";
import { escaped, figuresTable, gridTable, list, picture, section } from "./html.js";
import { bucketPicture, channelsPicture, layoutPicture, sectionPicture, wearPicture } from "./pictures.js";
import { stagesOf } from "./steps.js";
import { STYLE } from "./style.js";

/** Nothing is loaded and nothing runs. */
export const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

/**
 * The whole job on one page of HTML, complete in itself: pictures, figures, steps to tick, cautions, what to buy, notes.
 * `draw` turns a picture into the text of an SVG element.
 */
export function jobSheetHtml(plan: Plan, draw: (sheet: Sheet) => string): string {
  const title = escaped(plan.job.title.length > 200 ? `${plan.job.title.slice(0, 199)}…` : plan.job.title);
  const bucket = bucketPicture(plan);
  const body = [
    `<header>\n<h1>${title}</h1>\n<p class="quiet">Seed ${plan.layout.seed}, casting ${escaped(plan.generator.version)}</p>\n</header>\n`,
    `<main>\n${keyFigures(plan)}`,
    `<p class="caution"><b>First:</b> local codes, the makers' data sheets and trained people come before this page.</p>\n`,
    notesOf(plan.notes, "warning", "Warnings"),
    section(
      "pieces",
      "The pieces",
      picture(draw(layoutPicture(plan)), "The pieces as they are laid, seen from the back; the index at the top.") +
        pieceTable(plan),
    ),
    section(
      "mix",
      "The mix",
      mixTables(plan) + (bucket ? picture(draw(bucket), "The container with its two marks, to scale.", true) : ""),
    ),
    section(
      "mold",
      "The mold",
      picture(
        draw(sectionPicture(plan)),
        "Section on the axis, to scale; heights above the glass at the tool's edge.",
      ) + moldTable(plan),
    ),
    section(
      "channels",
      "The channels",
      picture(
        draw(channelsPicture(plan)),
        "The channels on the working face, mirrored left to right; the index at the top.",
      ) + channelTable(plan),
    ),
    section("first-pass", "The first pass", firstPass(plan, draw)),
    section("steps", "The work, step by step", steps(plan)),
    section("shopping", "To buy or have at hand", shopping(plan)),
    section("curve", "The curve", curveTable(plan)),
    notesOf(plan.notes, "info", "Good to know"),
    section("assumed", "What was assumed", list(assumed(plan))),
    "</main>\n",
  ];
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<title>${title}</title>
<style>${STYLE}</style>
</head>
<body>
${body.join("")}</body>
</html>
`;
}

/** A figure in the job's units, with the other in brackets. */
function both(write: (value: number, units: "mm" | "in") => string, value: number, { units }: Plan["job"]): string {
  return `${write(value, units)} (${write(value, units === "mm" ? "in" : "mm")})`;
}

function keyFigures({ pour, layout, job }: Plan): string {
  const batch = pour.batches[0]!;
  const { units } = job;
  const each = pour.batches.length > 1 ? ` in each of ${pour.batches.length} batches` : "";
  const items = [
    [String(layout.pieces.length), "pieces"],
    [massText(batch.powder, units), `powder${each}`],
    [massText(batch.water, units), `water${each}`],
    ...(batch.mixMark !== undefined && batch.waterMark !== undefined
      ? [
          [roughLength(batch.waterMark, units), "water mark in the container"],
          [roughLength(batch.mixMark, units), "mix mark in the container"],
        ]
      : []),
    [roughLength(pour.fill.edge, units), "fill line above the glass"],
  ];
  return `<ul class="key">\n${items.map(([figure, what]) => `<li><b>${escaped(figure!)}</b> ${escaped(what!)}</li>\n`).join("")}</ul>\n`;
}

function pieceTable({ layout, job }: Plan): string {
  const { quality } = layout;
  const kinds = gridTable(
    "Kinds of pieces",
    ["Kind", "Pieces", "Thick", "Bore"],
    pieceKinds(job).map((kind) => [
      kind.name,
      String(layout.pieces.filter((piece) => piece.kind === kind.kind).length),
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
    ["Unevenness from ring to ring", shareText(quality.radialVariation)],
    ["Likeness to itself when turned", fixed(quality.symmetry, 3)],
    ["Predicted zoning", shareText(quality.zoning)],
  ];
  return kinds + figuresTable("The layout", rows);
}

function mixTables({ pour, job }: Plan): string {
  const batches = gridTable(
    pour.batches.length > 1 ? "Batches, all alike" : "The batch",
    ["Batch", "Powder", "Water", "Mix", "Water mark", "Mix mark"],
    pour.batches.map((batch, n) => [
      String(n + 1),
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
    ["Inside temperature at most", `${fixed(pour.heat.ceiling, 0)} °C, a rise of up to ${fixed(pour.heat.rise, 0)} K`],
    ["Pour before", `${fixed(pour.schedule.pourBefore, 0)} min after the powder goes in`],
    ["Open after", `${fixed(pour.schedule.openAfter, 0)} min`],
    [
      "Repair mix",
      `${massText(pour.repair.powder, job.units)} of powder, ${massText(pour.repair.water, job.units)} of water`,
    ],
  ];
  return batches + figuresTable("The plaster", rows);
}

function moldTable({ pour, job, tool }: Plan): string {
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
    ["Pressure on the glass while pouring", `${fixed(pour.pressure, 2)} kPa`],
  ]);
}

function channelTable({ grooves, job }: Plan): string {
  const { totals } = grooves;
  return figuresTable("The channels", [
    ["Width and depth", `${lengthText(grooves.cutter, job.units)} by ${lengthText(grooves.depth, job.units)}`],
    ["Length in all", both(roughLength, totals.length, job)],
    ["Cuts", String(totals.cuts)],
    ["Ways too narrow to cut, or left out", String(totals.uncut)],
    ["Retraced", both(roughLength, totals.retraced, job)],
    ["Plaster cut away", both(volumeText, totals.volume, job)],
  ]);
}

function curveTable({ blank, tool, job }: Plan): string {
  const rows: [string, string][] = [
    ["Blank", `${both(lengthText, blank.diameter, job)}, ${blank.curve}`],
    ...(blank.curveRadius !== undefined
      ? ([
          ["Radius now", both(roughLength, blank.curveRadius, job)],
          ["Sagitta of the blank", both(lengthText, blank.sagitta, job)],
          ["Sagitta of the tool", both(lengthText, tool.sagitta, job)],
        ] as [string, string][])
      : []),
    ...(blank.measured
      ? ([
          [
            "Measured",
            `${blank.measured.readings} readings, standard uncertainty of the radius ${roughLength(blank.measured.uncertainty, job.units)}`,
          ],
          ...(blank.measured.spread === undefined
            ? []
            : [["Spread of the readings", `${fixed(blank.measured.spread, 1)} µm`]]),
        ] as [string, string][])
      : []),
    ...(blank.target
      ? ([
          ["Radius wanted", both(roughLength, blank.target.curveRadius, job)],
          ["Sagitta wanted", both(lengthText, blank.target.sagitta, job)],
          ["Still to go at the centre", both(lengthText, Math.abs(blank.target.sagitta - blank.sagitta), job)],
        ] as [string, string][])
      : []),
  ];
  return figuresTable("The glass and the tool's curve", rows);
}

function firstPass(plan: Plan, draw: (sheet: Sheet) => string): string {
  const { setup, job } = plan;
  const { wear, bevel, retainer, drive } = setup;
  const wanted = wear.zones.some((zone) => zone.wanted !== undefined) ? ", dashed: what the target asks for" : "";
  const plot = picture(
    draw(wearPicture(plan)),
    `Predicted removal from the mirror's centre to its edge, relative${wanted}.`,
    true,
  );
  const loads = gridTable(
    "Pressure on the pieces",
    ["Weight added", "Tool and weight", "Worn in", "Fresh", "At the mirror's edge"],
    setup.loads.map((load) => [
      both(massText, load.weight, job),
      both(massText, load.mass, job),
      `${fixed(load.worn, 1)} kPa (${fixed(load.worn / PSI, 2)} psi)`,
      `${fixed(load.fresh, 1)} kPa (${fixed(load.fresh / PSI, 2)} psi)`,
      `${fixed(load.edge, 1)} kPa`,
    ]),
  );
  const start = gridTable(
    "Starting, step by step",
    ["Step", "Turntable", "Weight", "Why"],
    setup.ladder.map(({ step, turntable, weight, reason }) => [
      String(step),
      `${fixed(turntable, 0)} rpm`,
      massText(weight, job.units),
      reason,
    ]),
  );
  const offsets = gridTable(
    "Other offsets and strokes",
    ["Offset", "Stroke", "Pressure at the edge", "Middle against edge", "Zoning"],
    setup.sweep.map((row) => [
      roughLength(row.offset, job.units),
      roughLength(row.stroke, job.units),
      `${fixed(row.edgePressure, 2)} x`,
      `${row.bend > 0 ? "+" : ""}${shareText(row.bend)}`,
      shareText(row.zoning),
    ]),
  );
  const grains = gridTable(
    "Grains down to fine grinding",
    ["Grain", "Mean size", "Removes", "Damage left"],
    setup.grains.map(({ name, size, depth, damage }) => [
      name,
      `${size} µm`,
      depth === 0 ? "as the curve asks" : `${fixed(depth, 0)} µm`,
      `${fixed(damage.least, 0)} to ${fixed(damage.most, 0)} µm`,
    ]),
  );
  const rows: [string, string][] = [
    ["Offset of the axes", both(roughLength, setup.offset, job)],
    ["Stroke", both(roughLength, setup.stroke, job)],
    ["Overhang", setup.overhang > 0 ? both(roughLength, setup.overhang, job) : "none"],
    [
      "Pressure at the mirror's edge",
      `${fixed(setup.edgePressure, 2)} times the mean; the far side lifts from ${roughLength(setup.liftsAt, job.units)} on`,
    ],
    [
      "Drive point",
      `${roughLength(drive.height, job.units)} above the face: the leading edge presses ${fixed(drive.leading, 2)} times the mean; keep it low`,
    ],
    [
      "This pass",
      `${wear.does} the curve${wear.toward ? `; ${wear.toward === "neither" ? "neither toward nor away from" : wear.toward === "away" ? "away from" : "toward"} the target` : ""}`,
    ],
    [
      "Front bevel needed now",
      `${both(roughLength, bevel.needed, job)} of leg, ${roughLength(bevel.face, job.units)} of face`,
    ],
    ...(bevel.now === undefined
      ? []
      : ([
          [
            "Front bevel now, and at the end",
            `${roughLength(bevel.now, job.units)}, ${roughLength(bevel.left ?? 0, job.units)}`,
          ],
        ] as [string, string][])),
    [
      "Retainer",
      `inside ${roughLength(retainer.inside, job.units)}, ${roughLength(retainer.height, job.units)} high, the blank loose by ${roughLength(retainer.clearance, job.units)} all round and never pinched`,
    ],
  ];
  const speeds = gridTable(
    "Speeds",
    ["Turntable", "Mirror's edge", "Tool"],
    setup.speeds.map(({ turntable, rim, tool }) => [
      `${fixed(turntable, 0)} rpm`,
      `${fixed(rim, 2)} m/s`,
      `${fixed(tool, 1)} rpm`,
    ]),
  );
  return plot + figuresTable("The set-up", rows) + loads + speeds + start + offsets + grains;
}

/** kPa in a pound per square inch (NIST SP 811, appendix B). */
const PSI = 6.894757;

function steps(plan: Plan): string {
  return stagesOf(plan)
    .map(({ heading, cautions, steps }) => {
      const warned = cautions.map((text) => `<p class="caution"><b>Caution:</b> ${escaped(text)}</p>\n`).join("");
      const boxes = steps
        .map((step) => `<li><span class="box" aria-hidden="true"></span>${escaped(step)}</li>\n`)
        .join("");
      return `<h3>${escaped(heading)}</h3>\n${warned}<ol class="steps">\n${boxes}</ol>\n`;
    })
    .join("");
}

function shopping({ pour, job }: Plan): string {
  const { shopping } = pour;
  const mm = (value: number) => roughLength(value, job.units);
  return list([
    ...shopping.pieces.map(
      ({ name, count, spares, mass }) =>
        `${count + spares} of ${name} (${count} and ${spares} spare), ${massText(mass, job.units)}`,
    ),
    `${massText(shopping.powder, job.units)} of ${pour.plaster.name}, the repair mix in it`,
    `film, at least ${mm(shopping.film)} square`,
    `flexible sheet for the dam, ${mm(shopping.dam.length)} by ${mm(shopping.dam.height)}, ${lengthText(shopping.dam.sheet, job.units)} thick`,
    ...(shopping.socket
      ? [
          `a drive socket, ${lengthText(shopping.socket.diameter, job.units)} by ${lengthText(shopping.socket.length, job.units)}`,
        ]
      : []),
    "tape, clay, grease, a dust mask, eye protection, gloves",
  ]);
}

function assumed({ job, pour }: Plan): string[] {
  return [
    "Glass, pieces and sheets as given in the job; measure your own, since pieces vary.",
    `Figures of the plaster from the table: ${pour.plaster.name}; the bag's own come first.`,
    `Heat without any loss to glass, pieces or air, from 20 °C: the cast stays below the figure.`,
    job.container
      ? "The container measured inside, its floor flat."
      : "No container was given: one batch, no marks, no gauge.",
    "The pieces as flat prisms that stand on the glass; bores fill with plaster.",
  ];
}

/** The notes of one level, each text once. */
function notesOf(notes: readonly Note[], level: Note["level"], heading: string): string {
  const texts = [...new Set(notes.filter((note) => note.level === level).map((note) => note.text))];
  return texts.length > 0 ? section(`notes-${level}`, heading, list(texts)) : "";
}

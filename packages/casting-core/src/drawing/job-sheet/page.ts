import type { Note } from "../../notes.js";
import type { Plan } from "../../plan/types.js";
import { thicknessTaken } from "../../setup/retainer.js";
import { atLeast } from "../../units/bound-text.js";
import { closeLength, massText, roughLength, temperatureText } from "../../units/figure-text.js";
import { lengthText } from "../../units/length-text.js";
import type { Sheet } from "../sheet.js";
import { bucketPicture } from "./bucket.js";
import { channelTable, curveTable, mixTables, moldTable, pieceTable } from "./figures.js";
import { firstPass } from "./first-pass.js";
import { escaped, htmlPage, list, picture, section, shortTitle } from "./html.js";
import { channelsPicture, layoutPicture } from "./pictures.js";
import { sectionPicture } from "./section.js";
import { stagesOf } from "./steps.js";

/**
 * The whole job on one page of HTML, complete in itself: pictures, figures, steps to tick, cautions, what to buy, notes.
 * `draw` turns a picture into the text of an SVG element.
 */
export function jobSheetHtml(plan: Plan, draw: (sheet: Sheet) => string): string {
  const title = shortTitle(plan.job.title);
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
    section("mix", "The mix", mixTables(plan) + (bucket ? picture(draw(bucket), bucket.caption, true) : "")),
    section(
      "mold",
      "The mold",
      picture(
        draw(sectionPicture(plan)),
        "Section on the axis, to scale; heights above the glass at the tool's edge.",
        true,
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
  return htmlPage(title, body.join(""));
}

function keyFigures({ pour, layout, job }: Plan): string {
  const batch = pour.batches[0]!;
  const { units } = job;
  const each = pour.batches.length > 1 ? ` in each of ${pour.batches.length} batches` : "";
  const items = [
    [String(layout.pieces.length), layout.pieces.length === 1 ? "piece" : "pieces"],
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
    `film, at least ${atLeast(shopping.film, job.units)} square`,
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
    `Heat without any loss to glass, pieces or air, from ${temperatureText(20, job.units)}: the cast stays below the figure.`,
    job.container
      ? "The container measured inside, its floor flat."
      : "No container was given: one batch, no marks, no gauge.",
    "The pieces as flat prisms that stand on the glass; bores fill with plaster.",
    ...(job.blank.thickness === undefined
      ? [
          `The blank ${closeLength(thicknessTaken(job.blank), job.units)} thick, a sixth of its diameter, for the retainer's height: write blank.thickness if it is not.`,
        ]
      : []),
  ];
}

/** The notes of one level, each text once. */
function notesOf(notes: readonly Note[], level: Note["level"], heading: string): string {
  const texts = [...new Set(notes.filter((note) => note.level === level).map((note) => note.text))];
  return texts.length > 0 ? section(`notes-${level}`, heading, list(texts)) : "";
}

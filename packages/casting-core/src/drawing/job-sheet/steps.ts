import { leaveUncut } from "../../grooves/cuts/uncut.js";
import { pieceKinds } from "../../pieces/kinds.js";
import type { Plan } from "../../plan/types.js";
import {
  countText,
  fixed,
  massText,
  minutesText,
  roughLength,
  slopeText,
  temperatureText,
  volumeText,
} from "../../units/figure-text.js";
import { lengthText } from "../../units/length-text.js";
import { kindsLaid } from "../placement.js";

/** Pieces from this density on are of metal, kg/L: no tile or glass is as heavy. */
const METAL = 4;

/** A stage of the work: its steps to tick, and what can hurt a person in it. */
export interface Stage {
  heading: string;
  cautions: string[];
  steps: string[];
}

/** The work in order, fitted to this plan: what does not apply is left out. Common practice. */
export function stagesOf(plan: Plan): Stage[] {
  return [beforeLaying(plan), laying(plan), mixing(plan), opening(plan), channels(plan), firstPass(plan)];
}

/** The plan's cautions of these kinds: each is worded in one place. */
function cautionsOf({ notes }: Plan, ...codes: string[]): string[] {
  return notes.filter(({ code }) => codes.includes(code)).map(({ text }) => text);
}

function beforeLaying(plan: Plan): Stage {
  const { job, layout } = plan;
  const kinds = pieceKinds(job);
  const metal = kinds.filter((kind) => kind.density >= METAL);
  const nuts = metal.every((kind) => kind.item !== undefined && /^(iso-4032|din-934|asme)/.test(kind.item));
  const tiles = kinds.length > metal.length;
  return {
    heading: "Before laying",
    cautions: cautionsOf(plan, "sharp-edges"),
    steps: [
      "See that the blank is bevelled, front and back, before anything is laid on it.",
      "Print the templates at 100 % and measure the check squares: 100 mm and 4 in.",
      "Bring glass, plaster, water and pieces to room temperature.",
      `Level the blank: across the rim no more than ${slopeText(plan.pour.dam.level.slope, job.units)}.`,
      ...(metal.length > 0
        ? [`Degrease the ${nuts ? "nuts" : "metal pieces"}. Take none that are galvanised: zinc sheds and smears.`]
        : []),
      ...(tiles
        ? [
            "Degrease the tiles and soak porous ones; glaze, cushioned edges and, where the sides slope, the wider face up, away from the glass, so that the plaster holds them.",
          ]
        : []),
      ...(kinds.length > 1
        ? ["See that all kinds are of the same hardness: the harder ones would stand proud later."]
        : []),
      `Lay the placement template on the glass, index away from you, its circle centred; trim and butt the paper, overlaps make steps under the ${layout.pieces.length === 1 ? "piece" : "pieces"}.`,
      "Stretch the film over it without a crease: creases print in the face.",
    ],
  };
}

function laying(plan: Plan): Stage {
  const { job, layout } = plan;
  const mm = (value: number) => lengthText(value, job.units);
  const gap = layout.quality.gapMin ?? layout.gap;
  return {
    heading: "Laying the pieces",
    cautions: [],
    steps: [
      `Lay the pieces in the order of their numbers: ${kindsLaid(plan).join(", ")}.`,
      layout.hand > 0
        ? `Lay each within ${mm(layout.hand)} of its outline: of the least gap of ${mm(gap)} one piece off leaves ${mm(gap - layout.hand)}, two off toward each other leave less.`
        : `Lay each on its outline: the least gap is ${mm(gap)}, with nothing added for the hand.`,
      "Count them: no number may be left uncovered.",
      ...(plan.pour.pieces.some((piece) => piece.slides)
        ? [
            "Tack the light pieces to the film, or brush a thin first coat of the mix over them before the rest is poured: they slide in it.",
          ]
        : []),
    ],
  };
}

function mixing(plan: Plan): Stage {
  const { job, pour } = plan;
  const { units } = job;
  const batch = pour.batches[0]!;
  const several = pour.batches.length > 1;
  const marks =
    batch.waterMark !== undefined && batch.mixMark !== undefined
      ? [
          `Fill water to the water mark, ${roughLength(batch.waterMark, units)}, then sift powder in until the mix stands at ${roughLength(batch.mixMark, units)}.`,
        ]
      : [];
  return {
    heading: "Dam and pour",
    cautions: cautionsOf(
      plan,
      "setting-heat",
      "powder-dust",
      "drain",
      "hot-plaster-on-glass",
      "heavy-bucket",
      "custom-heat",
    ),
    steps: [
      `Grease ${greased(plan)}.`,
      pour.dam.formerAt === undefined
        ? `Put the dam round the blank itself: a strip of ${roughLength(pour.dam.length, units)} by ${roughLength(pour.dam.height, units)}, closed with tape.`
        : `Put the dam round the former: a strip of ${roughLength(pour.dam.length, units)} by ${roughLength(pour.dam.height, units)}, closed with tape; raise the former to ${roughLength(pour.dam.formerAt, units)} above the glass.`,
      ...(pour.dam.centring !== undefined
        ? [`Centre it: ${roughLength(pour.dam.centring, units)} from the dam to the mirror's edge, equal all round.`]
        : []),
      "Seal the dam's foot with clay from outside.",
      ...(job.socket ? [`Stand the socket upright on the axis${job.socket.plugged ? ", plugged" : ""}.`] : []),
      `Weigh out ${several ? "for each batch " : ""}${massText(batch.powder, units)} of powder and ${massText(batch.water, units)} of water.`,
      ...marks,
      ...(several ? [`Mix ${pour.batches.length} equal batches, each poured while the one before is still wet.`] : []),
      `Pour within ${wholeMinutes(pour.schedule.pourBefore)} min of the powder going in, up to the fill line ${roughLength(pour.fill.edge, units)} above the glass at the edge: ${volumeText(pour.castVolume, units)} in the mold.`,
    ],
  };
}

/** What plaster must not stick to: a full-size tool's dam has no former. */
function greased({ pour, job }: Plan): string {
  const dam = pour.dam.formerAt === undefined ? ["dam"] : ["dam", "former"];
  return job.socket ? `${dam.join(", ")} and the socket's threads` : dam.join(" and ");
}

function opening(plan: Plan): Stage {
  const { pour, job } = plan;
  return {
    heading: "After setting",
    cautions: cautionsOf(plan, "heavy"),
    steps: [
      `Leave it alone for ${fixed(pour.schedule.openAfter, 0)} min; it is warm for about ${minutesText(Math.ceil(pour.schedule.warmUntil / 10) * 10)}.`,
      // The template lies under the film: once the tool is lifted off, nothing tells where its index was.
      "Mark the dam at the template's index; open the dam and carry the index to the tool's edge while it still lies on the template.",
      `Lift the tool off, peel the film; fill cavities with a repair mix: ${massText(pour.repair.powder, job.units)} of powder, ${massText(pour.repair.water, job.units)} of water.`,
      "Brush plaster, the repair mix too, a little below the faces of the pieces.",
      "Stone burrs off, round the back edge, rinse: cavities and bores keep grit.",
      "Carry the index from the tool's edge to its face.",
    ],
  };
}

function channels(plan: Plan): Stage {
  const { grooves, layout, job } = plan;
  const left = leaveUncut(grooves.edges, job);
  const mm = (value: number) => lengthText(value, job.units);
  return {
    heading: "Channels",
    cautions: [
      "Scrape wet while the plaster is green, clamp the tool and protect the eyes: dust holds silica, and a powered cutter that meets a piece kicks.",
    ],
    steps:
      grooves.cuts.length === 0
        ? [
            layout.pieces.length === 1
              ? "Nothing is to be cut: a single piece has no neighbours."
              : "No channel fits between these pieces with this cutter: see the notes.",
          ]
        : [
            "Lay the groove template on the working face, ink up, index to index, from the centre out: it is mirrored already.",
            `Cut ${countText(grooves.totals.cuts, "way")}, ${roughLength(grooves.totals.length, job.units)} altogether, ${mm(grooves.cutter)} wide and ${mm(grooves.depth)} deep.`,
            ...(left === undefined ? [] : [left]),
          ],
  };
}

function firstPass(plan: Plan): Stage {
  const { pour, job, grooves } = plan;
  const mass = (kilos: number) => massText(kilos, job.units);
  // What the channels took away is no longer on the scales, nor does it dry.
  const cutAway = (density: number) => (grooves.totals.volume * density) / 1000;
  const from = pour.mass.wet - cutAway(pour.plaster.wetDensity);
  const to = pour.mass.dry - cutAway(pour.plaster.dryDensity);
  return {
    heading: "Drying and first pass",
    cautions: cautionsOf(plan, "grind-wet", "spinning", "heavy"),
    steps: [
      `Dry it at ${temperatureText(pour.drying.temperature, job.units)}, never above ${temperatureText(pour.drying.limit, job.units)}, until it has lost ${mass(from - to)}: ${grooves.cuts.length > 0 ? "with its channels cut " : ""}from ${mass(from)} to ${mass(to)}.`,
      "Seal back, sides and channels, not the faces of the pieces, before the tool first gets wet: soaked plaster has about half its dry strength.",
      "Pencil the face, lay the tool on and turn: high pieces and rocking show.",
      `Start with grain ${job.setup.grain}; one tool, one range of grain.`,
      "Lift the tool off whenever you stop, and never leave it standing on the glass: it seizes.",
    ],
  };
}

/** A deadline in whole minutes, never later than it is. */
export function wholeMinutes(minutes: number): number {
  return Math.max(1, Math.floor(minutes));
}

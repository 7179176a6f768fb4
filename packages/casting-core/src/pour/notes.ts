import type { Blank, Tool } from "../blank/types.js";
import { USUAL_COVER } from "../job/limits.js";
import { type Note, note } from "../notes.js";
import type { PieceKind } from "../pieces/types.js";
import { atLeast, atMost } from "../units/bound-text.js";
import { closeLength, lightText, roughLength } from "../units/figure-text.js";
import { cautions } from "./cautions.js";
import { BOUND_WATER } from "./chemistry.js";
import { holderAbove, isFullSize } from "./dam.js";
import { plasterNamed } from "./gypsum.js";
import { damNotes, fitNotes } from "./notes-set.js";
import type { PourJob } from "./pour.js";
import type { Pour } from "./types.js";
import { decimals, lengthWords, type Poured } from "./words.js";

/** What the maker should know about the pour: cautions first, then what can spoil the tool, then what is good to know. */
export function pourNotes(job: PourJob, blank: Blank, tool: Tool, kinds: readonly PieceKind[], pour: Pour): Note[] {
  const poured: Poured = { job, blank, tool, kinds, pour };
  return [
    ...cautions(poured),
    ...depthNotes(poured),
    ...socketNotes(poured),
    ...waterNotes(poured),
    ...pieceNotes(poured),
    ...batchNotes(poured),
    ...fitNotes(poured),
    ...damNotes(poured),
  ];
}

/** The edge is thin below a twentieth of the tool, and in any case below 15 mm (common practice). */
function depthNotes({ job, tool, pour }: Poured): Note[] {
  const notes: Note[] = [];
  const [reach, only] = [(mm: number) => atLeast(mm, job.units), (mm: number) => atMost(mm, job.units)];
  const { fill } = pour;
  const { cover } = job.plaster;
  if (fill.cover < cover - 1e-9) {
    const wanted = closeLength(cover, job.units);
    notes.push(
      note(
        "warning",
        "thin-cover",
        `The thickest piece is covered by only ${only(fill.cover)} of plaster at the shallowest place, less than the ${cover === USUAL_COVER ? `usual cover of ${wanted}` : `${wanted} asked for`}: raise the fill line to ${reach(fill.edge + cover - fill.cover)} or more.`,
      ),
    );
  }
  const least = Math.max(15, tool.diameter / 20);
  if (fill.edge < least - 1e-9) {
    notes.push(
      note(
        "warning",
        "thin-edge",
        `The tool is ${only(fill.edge)} thick at its edge; below ${reach(least)} it may break there: raise the fill line.`,
      ),
    );
  }
  return notes;
}

/** A socket holds if half of it is in the plaster (common practice). */
function socketNotes({ job, blank, tool, pour }: Poured): Note[] {
  const { socket } = pour;
  if (!socket || !job.socket) return [];
  const length = (mm: number): string => lengthWords(Math.abs(mm), job.units);
  const notes: Note[] = [];
  const holder = isFullSize(blank, tool) ? "bar across the dam" : "former";
  const above = holderAbove(pour.dam, pour.fill, job.blank);
  const out = roughLength(Math.abs(socket.projecting), job.units);
  const flush = out === roughLength(0, job.units);
  // In less plaster than stands up to what holds it none is both held upright and half in.
  const deep = pour.fill.centre - socket.foot > above;
  if (socket.projecting > above) {
    notes.push(
      note(
        "info",
        "socket-projects",
        `The socket stands ${length(socket.projecting)} out of the back: the ${holder} needs a hole for it.`,
      ),
    );
  } else if (flush || socket.projecting > 0) {
    notes.push(
      note(
        "warning",
        "socket-unheld",
        `The socket ${flush ? "ends flush with the back" : `stands only ${out} out of the back`}, and the ${holder}, ${roughLength(above, job.units)} above the fill line, does not reach it to hold it upright: ${deep ? "" : "raise the fill line and "}take a longer one${job.socket.bore === undefined ? "" : ", or let a rod in its bore stand up through the hole"}.`,
      ),
    );
  } else {
    notes.push(
      note(
        "warning",
        "socket-below-fill",
        `The socket ends ${length(socket.projecting)} below the fill line: plug it well and mark its place, or take a longer one.`,
      ),
    );
  }
  if (socket.embedded < job.socket.length / 2) {
    notes.push(
      note(
        "warning",
        "socket-shallow",
        `Only ${length(socket.embedded)} of the socket's ${length(job.socket.length)} is in the plaster: raise the fill line${deep ? " or take a shorter one" : ""}, or it may tear out.`,
      ),
    );
  }
  return notes;
}

function waterNotes({ pour }: Poured): Note[] {
  const notes: Note[] = [];
  const { water, kind } = pour.plaster;
  if (water < 0.186) {
    notes.push(
      note(
        "warning",
        "water-below-bound",
        `A water ratio of ${decimals(water, 3)} is less than the ${decimals(BOUND_WATER, 3)} that the powder binds: part of it stays powder, and the mix is stiff.`,
      ),
    );
  }
  const table = plasterNamed(kind)?.water;
  if (table !== undefined && Math.abs(water - table) > table * 0.1 + 1e-12) {
    const more = water > table;
    notes.push(
      note(
        "warning",
        "water-off-table",
        `A water ratio of ${decimals(water, 3)} is more than a tenth ${more ? "above" : "below"} the table's ${decimals(table, 3)}: ${more ? "the cast loses much of its strength" : "the mix may be too stiff to flow between the pieces"}. Leave plaster.water out for the table's, unless the bag says so.`,
      ),
    );
  }
  return notes;
}

function pieceNotes({ job, pour, kinds }: Poured): Note[] {
  const notes = pour.pieces
    .filter((piece) => piece.slides)
    .map((piece) =>
      note(
        "warning",
        "pieces-slide",
        `Each ${kinds[piece.kind]!.name} weighs ${lightText(piece.mass, job.units)}, in the mix only ${lightText(piece.massInMix, job.units)}, and slides: tack the pieces down, brush on a thin first coat, and pour beside them.`,
      ),
    );
  if (new Set(pour.pieces.map(({ kind }) => kinds[kind]!.density)).size > 1) {
    notes.push(
      note(
        "warning",
        "mixed-materials",
        "Pieces of different materials wear unevenly, and the hard ones come to stand proud: mix kinds of equal hardness only.",
      ),
    );
  }
  return notes;
}

function batchNotes({ job, pour }: Poured): Note[] {
  if (!job.container) {
    return [
      note(
        "info",
        "no-container",
        "No container is given, so there are no marks for water and mix, and no gauge is drawn: give one, measured inside, to have them.",
      ),
    ];
  }
  const count = pour.batches.length;
  const { betweenBatches, pourBefore } = pour.schedule;
  if (betweenBatches === undefined) return [];
  const late = betweenBatches > pourBefore;
  return [
    note(
      "warning",
      "several-batches",
      late
        ? `${count} fillings are needed ${betweenBatches} min apart, but this plaster must be poured within ${decimals(pourBefore, 1)} min: mix in several buckets at once, or take a larger one.`
        : `${count} equal fillings are needed: pour each as a layer while the one before is still wet, about ${betweenBatches} min apart, or mix in several buckets at once.`,
    ),
  ];
}

import type { Blank, Tool } from "../../blank/types.js";
import { bridging, grainNamed } from "../../grains.js";
import type { Job } from "../../job/types.js";
import { type Note, note } from "../../notes.js";
import { countsOf } from "../../pieces/kinds.js";
import type { PieceKind } from "../../pieces/types.js";
import { atLeast, atMost } from "../../units/bound-text.js";
import { closeLength, countText, roughLength, shareText } from "../../units/figure-text.js";
import { mustBeLaid } from "../laid.js";
import type { Layout } from "../types.js";
import { figureNotes } from "./notes-figures.js";
import { placeNotes, rimInsideBevel } from "./notes-place.js";
import { turnNotes } from "./notes-turns.js";
import { type Seat, seatOf } from "./seat.js";

/** A difference between film and plane that is worth a word, mm. */
const FILM = 0.1;

/**
 * What the maker should know about the layout and how its pieces sit on the glass.
 *
 * @throws CastingError `invalid` where a piece is of none of `kinds` or has no outline
 */
export function layoutNotes(job: Job, blank: Blank, tool: Tool, kinds: readonly PieceKind[], layout: Layout): Note[] {
  mustBeLaid(kinds, layout.pieces);
  const seat = seatOf(blank.curve, tool, kinds, layout.pieces);
  return [
    ...stockNotes(job, kinds, layout),
    ...figureNotes(job, tool, kinds, layout, Math.max(seat.film, rimInsideBevel(job, blank, tool))),
    ...turnNotes(job),
    ...seatNotes(job, blank, kinds, layout, seat),
    ...placeNotes(job, blank, tool, kinds, layout),
    ...handNotes(job, layout),
  ];
}

function stockNotes(job: Job, kinds: readonly PieceKind[], { pieces, unplaced }: Layout): Note[] {
  const counts = countsOf(kinds, pieces);
  const why = job.layout.count === "max" ? "found no place" : "are more than layout.count asks for";
  const left = unplaced.map(({ kind, count }) =>
    note("info", "unplaced", `${count} of ${kinds[kind]!.name} ${why}: they stay in stock.`),
  );
  const none = kinds.flatMap(({ kind, name, share }) => {
    if (counts[kind]! > 0 || (share === undefined && unplaced.some((left) => left.kind === kind))) return [];
    const laid = countText(pieces.length, "piece");
    const why =
      share === undefined
        ? `the other kinds come first and take all of ${laid}; give it a share`
        : `its share, ${Number((100 * share).toPrecision(3))} % of ${laid}, comes to less than one; write a larger share`;
    return [note("warning", "kind-left-out", `No ${name} is laid: ${why}, or leave it out.`)];
  });
  const short = kinds.flatMap(({ kind, name, stock, share }) => {
    const asked = share === undefined ? undefined : Math.round(share * pieces.length);
    if (stock === undefined || asked === undefined || counts[kind]! < stock || asked <= stock) return [];
    const text = `The stock of ${stock} of ${name} is less than its share of ${asked}: all are laid, and the others fill the rest.`;
    return [note("warning", "stock-below-share", text)];
  });
  return [...left, ...none, ...short];
}

function seatNotes(job: Job, blank: Blank, kinds: readonly PieceKind[], layout: Layout, seat: Seat): Note[] {
  const notes: Note[] = [];
  const mm = (value: number) => closeLength(value, job.units);
  const grain = grainNamed(job.setup.grain);
  const toGo = blank.target && Math.abs(blank.target.sagitta - blank.sagitta) * 1000;
  for (const { kind, hollow, rocks } of seat.hollows) {
    if (!grain || hollow <= grain.size) continue;
    const how = rocks ? "touches the glass in its middle only and rocks" : "stands on its outermost points";
    const coarser = bridging(hollow, toGo);
    const text = `A flat ${kinds[kind]!.name} ${how}: the hollow of ${Math.round(hollow)} µm is more than grain ${grain.name} bridges (${grain.size} µm); take smaller pieces${coarser ? ` or a coarser grain, such as ${coarser.name}` : ""}.`;
    notes.push(note("warning", "hollow", text));
  }
  if (seat.lean >= (layout.quality.gapMin ?? Infinity)) {
    const text = `On this curve a piece and its nearest neighbour lean together by up to ${mm(seat.lean)} at their backs, and can touch: take a wider gap or thinner pieces.`;
    notes.push(note("warning", "backs-touch", text));
  } else if (seat.lean > 0.1) {
    notes.push(
      note(
        "info",
        "lean",
        `On this curve a piece and its nearest neighbour lean together by up to ${mm(seat.lean)} at their backs.`,
      ),
    );
  }
  if (seat.film > FILM) {
    const remedy =
      seat.film > layout.quality.rimMin
        ? `. The rim of ${atMost(job.tool.rim, job.units)} cannot take that up: write a tool.rim of at least ${atLeast(seat.film, job.units)}.`
        : ` and let the rim, ${atMost(layout.quality.rimMin, job.units)}, take it up.`;
    const text = `Pressed ${blank.curve === "convex" ? "onto the dome" : "into the bowl"} the film is ${atLeast(seat.film, job.units)} longer from the axis to the outermost pieces than on the sheet: lay from the middle out${remedy}`;
    notes.push(note(seat.film > layout.quality.rimMin ? "warning" : "info", "film", text));
  }
  return notes;
}

function handNotes(job: Job, { quality, gap }: Layout): Note[] {
  const { byHand } = quality;
  if (byHand?.gapMin === undefined) return [];
  const mm = (value: number) => closeLength(value, job.units);
  // What is about so much stands in the form of what was asked for.
  const about = job.units === "in" ? roughLength(byHand.gapMin, job.units) : mm(byHand.gapMin);
  const text = `Laid by hand to ${mm(job.layout.hand)}, the least gap becomes about ${about} and the unevenness from ring to ring ${shareText(byHand.radialVariation)}.`;
  const tight =
    byHand.gapMin < gap
      ? [
          note(
            "warning",
            "hand-eats-gap",
            `${text} Two pieces off toward each other can come nearer than the ${mm(gap)} asked for: look along the channels before pouring.`,
          ),
        ]
      : [note("info", "by-hand", text)];
  return tight;
}

import type { Blank, Tool } from "../../blank/types.js";
import { GRAINS, grainNamed } from "../../grains.js";
import type { Job } from "../../job/types.js";
import { type Note, note } from "../../notes.js";
import { countsOf } from "../../pieces/kinds.js";
import type { PieceKind } from "../../pieces/types.js";
import { atLeast, atMost } from "../../units/bound-text.js";
import { closeLength, countText, shareText } from "../../units/figure-text.js";
import { fieldOf, onlyFoot } from "../field.js";
import { orientationOrder } from "../quality/orientation.js";
import { FIRST_RING, LAST_RING, RINGS, ringCoverage } from "../quality/rings.js";
import { ringLikeness } from "../quality/symmetry.js";
import { targetOf } from "../quality/target.js";
import { latticeGuess, meanCell } from "../room.js";
import type { Layout, PlacedPiece } from "../types.js";
import { placeNotes } from "./notes-place.js";
import { turnNotes } from "./notes-turns.js";
import { type Seat, seatOf } from "./seat.js";
import { mayTouch } from "./touching.js";

/** A tool this uneven, or this like itself when turned, can print it into the glass (common practice). */
const UNEVEN = 0.04;
const ALIKE = 0.1;
/** Pieces turned alike to more than this make one crystal of the tool; of fewer than MANY of a kind chance does as much. */
const ORDERED = 0.3;
const MANY = 30;
/** Rings that circles leave less of than this, and fewer pieces than this part of what fits, cannot be even (common practice). */
const BLOCKED = 0.9;
const FEW = 0.8;
/** A difference between film and plane that is worth a word, mm. */
const FILM = 0.1;
/** No grain of the table bridges more, µm. */
const COARSEST = Math.max(...GRAINS.map(({ size }) => size));
/** What makes rounds even that were packed for their number. */
const LOOSER = "rounds that may touch fall into rings and rosettes with any seed, so write a layout.gap, however small";
/** So few pieces make no pattern, and no seed makes them even: with one in the middle, a single ring of a small tool. */
const HANDFUL = 7;
/** Variation falls about as 4 / count whatever the gap (measured): of fewer pieces than this few seeds are even. */
const SEEDS_HELP = 90;

/** What the maker should know about the layout and how its pieces sit on the glass. */
export function layoutNotes(job: Job, blank: Blank, tool: Tool, kinds: readonly PieceKind[], layout: Layout): Note[] {
  return [
    ...stockNotes(job, kinds, layout),
    ...figureNotes(job, tool, kinds, layout),
    ...turnNotes(job),
    ...seatNotes(job, blank, kinds, layout, seatOf(blank.curve, tool, kinds, layout.pieces)),
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

function figureNotes(job: Job, tool: Tool, kinds: readonly PieceKind[], { quality, pieces }: Layout): Note[] {
  const notes: Note[] = [];
  const { diameter } = tool;
  const few = pieces.length <= HANDFUL;
  const other = packedTight(job, kinds, pieces.length) ? LOOSER : undefined;
  if (quality.radialVariation > UNEVEN) {
    const causes = unevenCauses(job, tool, kinds, pieces);
    const remedy =
      causes.length > 0
        ? causes.join("; ")
        : few
          ? `${pieces.length === 1 ? "a single piece" : "so few pieces"} cannot cover all rings alike, so take smaller pieces and more of them, or a larger tool`
          : (other ??
            (pieces.length < SEEDS_HELP
              ? "few seeds lay so few pieces more evenly, so take smaller pieces and more of them"
              : "try other seeds, smaller pieces or a smaller gap"));
    const text = `The coverage differs by ${shareText(quality.radialVariation)} from ring to ring, which can print zones: ${remedy}.`;
    notes.push(note("warning", "uneven", text));
  }
  // Of a few pieces a turn brings one onto another whatever the seed: there is no pattern to speak of.
  if (few) return notes;
  // A hole about the axis is alike whichever way it is turned: only what comes on top of that prints a pattern.
  if (quality.symmetry - ringLikeness(ringCoverage(pieces, diameter / 2, RINGS)) > ALIKE) {
    const remedy = ringsBlocked(job, tool, kinds)
      ? `few seeds escape that round so wide a ${onlyFoot(job) ? "socket's foot on the glass, so write foot: pieces under socket" : "circle kept clear, so make it smaller"}, or take smaller pieces and more of them`
      : (other ?? "try other seeds");
    const text = `The layout is alike to ${shareText(quality.symmetry)} when turned, which can print a pattern: ${remedy}.`;
    notes.push(note("warning", "alike", text));
  }
  const order = orientationOrder(kinds, pieces, MANY);
  if (order > ORDERED) {
    const text = `The pieces lie turned alike to ${shareText(order)}, as in one crystal, which can print a direction: try other seeds.`;
    notes.push(note("warning", "ordered", text));
  }
  return notes;
}

/** Whether rounds that may touch were packed for their number alone: every seed gives the same rings and rosettes. */
function packedTight({ layout }: Job, kinds: readonly PieceKind[], count: number): boolean {
  const there = kinds.reduce((sum, { stock = Infinity }) => sum + stock, 0);
  return layout.count === "max" && count < there && mayTouch(kinds, layout.gap + layout.hand, count);
}

/** What the job itself keeps from being even, each with its remedy; nothing where another layout may be better. */
function unevenCauses(job: Job, tool: Tool, kinds: readonly PieceKind[], pieces: readonly PlacedPiece[]): string[] {
  const causes: string[] = [];
  if (ringsBlocked(job, tool, kinds))
    causes.push(
      onlyFoot(job)
        ? "the socket's foot on the glass takes much of some rings, so write foot: pieces under socket, or take a narrower one"
        : "circles kept clear take much of some rings, so make them fewer or smaller",
    );
  const limited = job.layout.count !== "max" || kinds.every(({ stock }) => stock !== undefined);
  const gap = job.layout.gap + job.layout.hand;
  const cell = meanCell(
    kinds,
    Int32Array.from(pieces, ({ kind }) => kind),
    gap,
  );
  const room = Math.floor(latticeGuess(fieldOf(job, tool), cell, gap));
  if (limited && pieces.length < FEW * room)
    causes.push(
      `${pieces.length === 1 ? "a single piece lies" : `${pieces.length} pieces lie`} where about ${room} have room, so lay more (layout.count, or the stock)`,
    );
  return causes;
}

/** Whether circles kept clear take so much of some ring that its pieces cannot make up for it. */
function ringsBlocked(job: Job, tool: Tool, kinds: readonly PieceKind[]): boolean {
  const target = targetOf(fieldOf(job, tool), Math.min(...kinds.map(({ reach }) => reach)));
  return target.subarray(FIRST_RING, LAST_RING + 1).some((share) => share < BLOCKED);
}

function seatNotes(job: Job, blank: Blank, kinds: readonly PieceKind[], layout: Layout, seat: Seat): Note[] {
  const notes: Note[] = [];
  const mm = (value: number) => closeLength(value, job.units);
  const grain = grainNamed(job.setup.grain);
  for (const { kind, hollow, rocks } of seat.hollows) {
    if (!grain || hollow <= grain.size) continue;
    const how = rocks ? "touches the glass in its middle only and rocks" : "stands on its outermost points";
    const text = `A flat ${kinds[kind]!.name} ${how}: the hollow of ${Math.round(hollow)} µm is more than grain ${grain.name} bridges (${grain.size} µm); take smaller pieces${hollow <= COARSEST ? " or a coarser grain" : ""}.`;
    notes.push(note("warning", "hollow", text));
  }
  if (seat.lean >= (layout.quality.gapMin ?? Infinity)) {
    const text = `On this curve neighbours lean together by ${mm(seat.lean)} at their backs, and would touch: take a wider gap or thinner pieces.`;
    notes.push(note("warning", "backs-touch", text));
  } else if (seat.lean > 0.1) {
    notes.push(
      note("info", "lean", `On this curve neighbours lean together by up to ${mm(seat.lean)} at their backs.`),
    );
  }
  if (seat.film > FILM) {
    const remedy =
      seat.film > layout.quality.rimMin
        ? `. The rim of ${atMost(job.tool.rim, job.units)} cannot take that up: write a tool.rim of at least ${atLeast(seat.film, job.units)}.`
        : ` and let the rim, ${atMost(layout.quality.rimMin, job.units)}, take it up.`;
    const text = `Pressed into the ${blank.curve === "convex" ? "dome" : "bowl"} the film is ${atLeast(seat.film, job.units)} longer from the axis to the outermost pieces than on the sheet: lay from the middle out${remedy}`;
    notes.push(note(seat.film > layout.quality.rimMin ? "warning" : "info", "film", text));
  }
  return notes;
}

function handNotes(job: Job, { quality, gap }: Layout): Note[] {
  const { byHand } = quality;
  if (byHand?.gapMin === undefined) return [];
  const mm = (value: number) => closeLength(value, job.units);
  const text = `Laid by hand to ${mm(job.layout.hand)}, the least gap becomes about ${mm(byHand.gapMin)} and the unevenness from ring to ring ${shareText(byHand.radialVariation)}.`;
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

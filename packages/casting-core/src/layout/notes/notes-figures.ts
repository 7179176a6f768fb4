import type { Tool } from "../../blank/types.js";
import type { Job } from "../../job/types.js";
import { type Note, note } from "../../notes.js";
import type { PieceKind } from "../../pieces/types.js";
import { atMost } from "../../units/bound-text.js";
import { shareText } from "../../units/figure-text.js";
import { clearCircles, fieldOf, onlyFoot, roomRoundFoot } from "../field.js";
import { orientationOrder } from "../quality/orientation.js";
import { FIRST_RING, LAST_RING, RINGS, ringCoverage } from "../quality/rings.js";
import { ringLikeness } from "../quality/symmetry.js";
import { targetOf } from "../quality/target.js";
import { latticeGuess, meanCell } from "../room.js";
import { mayTouch } from "../touching.js";
import type { Layout, PlacedPiece } from "../types.js";

/** A tool this uneven, or this like itself when turned, can print it into the glass (common practice). */
const UNEVEN = 0.04;
const ALIKE = 0.1;
/** Pieces turned alike to more than this make one crystal of the tool; of fewer than MANY of a kind chance does as much. */
const ORDERED = 0.3;
const MANY = 30;
/**
 * So many reaches from where the rim begins the pieces cover a ring no worse than farther in; nearer than the other the last
 * ring that counts stays half bare (measured on 120 layouts of four shapes, 41 to 480 pieces).
 */
const EVEN_FROM = 0.75;
const BARE_WITHIN = 0.6;
/** The narrowest rim that is usual, mm: nearer to its edge pieces break out of the plaster (common practice). */
const LEAST_RIM = 0.5;
/** Rings that circles leave less of than this, and fewer pieces than this part of what fits, cannot be even (common practice). */
const BLOCKED = 0.9;
const FEW = 0.8;
/** What makes rounds even that were packed for their number. */
const LOOSER = "rounds that may touch fall into rings and rosettes with any seed, so write a layout.gap, however small";
/** So few pieces make no pattern, and no seed makes them even: with one in the middle, a single ring of a small tool. */
const HANDFUL = 7;
/** Variation falls about as 4 / count whatever the gap (measured): of fewer pieces than this few seeds are even. */
const SEEDS_HELP = 90;

/**
 * What of the layout may print on the glass: uneven rings, a pattern that comes back when turned, one direction; each with
 * what helps. No rim narrower than `rimNeeded`, which bevel or film ask for, mm, is advised.
 */
export function figureNotes(
  job: Job,
  tool: Tool,
  kinds: readonly PieceKind[],
  { quality, pieces }: Layout,
  rimNeeded: number,
): Note[] {
  const notes: Note[] = [];
  const { diameter } = tool;
  const few = pieces.length <= HANDFUL;
  const other = packedTight(job, kinds, pieces.length) ? LOOSER : undefined;
  if (quality.radialVariation > UNEVEN) {
    const causes = unevenCauses(job, tool, kinds, pieces, rimNeeded);
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
      ? `few seeds escape that round so wide a ${keptClear(job).join(", so ")}, or take smaller pieces and more of them`
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

/** What is kept clear in one place, and what makes it smaller. */
function keptClear(job: Job): [what: string, remedy: string] {
  if (onlyFoot(job)) return ["socket's foot on the glass", "take a narrower one"];
  return roomRoundFoot(job) >= 0
    ? ["circle kept clear round the socket's foot", "take a narrower socket, and a circle smaller by as much"]
    : ["circle kept clear", "make it smaller"];
}

/** What the job itself keeps from being even, each with its remedy; nothing where another layout may be better. */
function unevenCauses(
  job: Job,
  tool: Tool,
  kinds: readonly PieceKind[],
  pieces: readonly PlacedPiece[],
  rimNeeded: number,
): string[] {
  const causes: string[] = [];
  if (ringsBlocked(job, tool, kinds))
    causes.push(
      clearCircles(job).length > 1 && roomRoundFoot(job) < 0
        ? "circles kept clear take much of some rings, so make them fewer or smaller"
        : `the ${keptClear(job).join(" takes much of some rings, so ")}`,
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
  if (causes.length === 0 && pieces.length > HANDFUL) causes.push(...bareEdge(job, tool, kinds, rimNeeded));
  return causes;
}

/** What the rim has to do with it, where it keeps the pieces off the outermost rings that count. */
function bareEdge({ units }: Job, { diameter, rim }: Tool, kinds: readonly PieceKind[], rimNeeded: number): string[] {
  const last = ((RINGS - LAST_RING - 0.5) / RINGS) * (diameter / 2);
  const reach = Math.max(...kinds.map(({ reach }) => reach));
  if (last - rim >= BARE_WITHIN * reach) return [];
  const narrower = last - EVEN_FROM * reach;
  const remedy =
    narrower >= Math.max(LEAST_RIM, rimNeeded)
      ? `write a tool.rim of at most ${atMost(narrower, units)}, or take smaller pieces`
      : `take smaller pieces${rimNeeded > LEAST_RIM ? "" : " and a narrower tool.rim"}`;
  return [`the rim leaves the outermost of the rings half bare, so ${remedy}`];
}

/** Whether circles kept clear take so much of some ring that its pieces cannot make up for it. */
function ringsBlocked(job: Job, tool: Tool, kinds: readonly PieceKind[]): boolean {
  const target = targetOf(fieldOf(job, tool), Math.min(...kinds.map(({ reach }) => reach)));
  return target.subarray(FIRST_RING, LAST_RING + 1).some((share) => share < BLOCKED);
}

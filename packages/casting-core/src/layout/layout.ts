import type { Tool } from "../blank/types.js";
import { impossible } from "../errors.js";
import type { Job } from "../job/types.js";
import type { PieceKind } from "../pieces/types.js";
import { random } from "../random.js";
import { lengthText } from "../units/length-text.js";
import { effortFor, hasteOf } from "./effort.js";
import { type Field, fieldOf, onlyFoot } from "./field.js";
import { lay } from "./lay.js";
import { mixOf } from "./mix.js";
import { inLayingOrder } from "./order.js";
import { qualityOf } from "./quality.js";
import { jamShare, latticeGuess, meanCell, roomFor, spreadFor } from "./room.js";
import { score } from "./score.js";
import { type Shapes, shapesOf } from "./shapes.js";
import { targetOf } from "./target.js";
import { mayTouch, packMost } from "./touching.js";
import type { Layout, PlacedPiece } from "./types.js";

/** Most pieces that one tool may hold: above it a run takes minutes, and nobody lays that many. */
const MOST_PIECES = 20_000;

/** Share of the guessed lattice that is surely more than fits: best-known packings of 91 circles reach 1.07 of it. */
const HOPELESS = 1.08;

/** Starts more where the best is poor: few seeds need one. */
const SECOND_CHANCES = 2;

/** What a layout takes besides the job. */
export interface LayOutOptions {
  /** Called now and then with the share done, 0 to 1. */
  progress?: (share: number) => void;
}

/**
 * The layout of a job: its pieces laid and proved, and how good it is.
 *
 * @throws CastingError `impossible`, see layPieces
 */
export function layOut(job: Job, tool: Tool, kinds: readonly PieceKind[], options: LayOutOptions = {}): Layout {
  const { pieces, unplaced } = layPieces(job, tool, kinds, options.progress);
  const { seed, gap, hand } = job.layout;
  return { seed, gap, hand, pieces, unplaced, quality: qualityOf(job, tool, kinds, pieces) };
}

export interface Laid {
  pieces: PlacedPiece[];
  unplaced: { kind: number; count: number }[];
}

interface Task {
  job: Job;
  kinds: readonly PieceKind[];
  shapes: Shapes;
  field: Field;
  gap: number;
  progress: ((share: number) => void) | undefined;
}

/**
 * Lays `kinds` in the tool's circle: as many as fit, or `job.layout.count` of them spread over the whole tool. The same
 * job and seed give the same pieces on every machine. Ids follow the laying order (see inLayingOrder). `unplaced` lists
 * what is left of a stock that was to be used up first.
 *
 * @param progress called now and then with the share done, 0 to 1
 * @throws CastingError `impossible` where no piece fits, fewer fit than asked for, or more than 20 000 would
 */
export function layPieces(job: Job, tool: Tool, kinds: readonly PieceKind[], progress?: (share: number) => void): Laid {
  const gap = job.layout.gap + job.layout.hand;
  const task: Task = { job, kinds, shapes: shapesOf(kinds), field: fieldOf(job, tool), gap, progress };
  const asked = job.layout.count;
  const pieces = asked === "max" ? layMost(task) : layCount(task, asked);
  const pitch = Math.sqrt(meanCell(kinds, mixOf(kinds, pieces.length), gap));
  return { pieces: inLayingOrder(pieces, pitch), unplaced: leftOver(kinds, pieces) };
}

/** As many pieces as fit; all of the stock, spread over the tool, where that is less. */
function layMost(task: Task): PlacedPiece[] {
  const { kinds, field, gap } = task;
  // Long enough to tell that more than the most would fit, although a jam holds fewer than the lattice.
  const mix = mixOf(kinds, Math.round(1.5 * MOST_PIECES));
  const room = roomFor(kinds, mix, field, gap);
  const jammed = jamShare(kinds, mix.subarray(0, Math.ceil(room))) * room;
  const count = Math.round(jammed * hasteOf(effortFor(jammed).sweeps));
  if (count > MOST_PIECES) {
    throw impossible(
      ["layout", "count"],
      `more than ${MOST_PIECES} pieces would fit, the most that one tool may hold; give a smaller count or larger pieces`,
    );
  }
  if (room >= mix.length) return layBest(task, mix, mix.length);
  const pieces = mayTouch(kinds, gap, room)
    ? layTight(task, mix, room)
    : layBest(task, mix.subarray(0, Math.ceil(HOPELESS * room) + 1), Math.max(1, count));
  if (pieces.length === 0) throw impossible(["pieces"], noRoom(task));
  return pieces;
}

/** The most of rounds that may touch. */
function layTight({ job, shapes, field, gap, progress }: Task, mix: Int32Array, room: number): PlacedPiece[] {
  return packMost(room, mix.length, (count, sweeps, n, of) => {
    const share = progress && ((done: number) => progress((n + done) / of));
    const start = { shapes, field, gap, spread: gap, mix, count, sweeps, tight: true, progress: share };
    return lay(start, random(job.layout.seed, n));
  });
}

/** Exactly `count` pieces, spread over the whole tool. */
function layCount(task: Task, count: number): PlacedPiece[] {
  const { kinds, field, gap } = task;
  const mix = mixOf(kinds, Math.min(count, MOST_PIECES + 1));
  const hopeful = count <= HOPELESS * latticeGuess(field, meanCell(kinds, mix, gap), gap) + 1;
  if (count > MOST_PIECES && hopeful) {
    throw impossible(
      ["layout", "count"],
      `${count} pieces were asked for, more than the ${MOST_PIECES} that one tool may hold; ask for at most ${MOST_PIECES}`,
    );
  }
  if (mix.length < count && mix.length <= MOST_PIECES) {
    throw impossible(
      ["layout", "count"],
      `${count} pieces were asked for, but the stock holds ${mix.length}; ask for at most ${mix.length} or raise the stock`,
    );
  }
  const pieces = hopeful ? layBest(task, mix, count) : [];
  if (pieces.length === count) return pieces;
  const fit = Math.max(pieces.length, layMost(task).length);
  // A full tool may hold the count where the spread-out start did not.
  if (fit >= count) {
    const packed = layBest(task, mix, count, gap);
    if (packed.length === count) return packed;
  }
  const most = fitFrom(task, Math.min(fit, count - 1), count);
  throw impossible(
    ["layout", "count"],
    `${count} pieces were asked for, but room was found for ${most} only; ask for at most ${most}, or choose another seed, a smaller gap or smaller pieces`,
  );
}

/** Counts that are tried beyond what is known to fit, before fewer than asked for are told to be the most. */
const MORE = 3;

/** How many pieces surely fit, from `fit` on, below `count`: a full tool sometimes holds one or two less than may be spread. */
function fitFrom(task: Task, fit: number, count: number): number {
  for (let more = Math.min(count - 1, fit + MORE); more > fit; more--) {
    if (layBest(task, mixOf(task.kinds, more), more).length === more) return more;
  }
  return fit;
}

/**
 * The best of several starts, each with one piece more than the best so far holds. Their number and length depend on
 * the count alone, but for second chances, with no piece more, where the best is still poor.
 */
function layBest(task: Task, mix: Int32Array, count: number, spread?: number): PlacedPiece[] {
  const { job, kinds, shapes, field, gap, progress } = task;
  const { starts, sweeps } = effortFor(count);
  const target = targetOf(field, Math.min(...shapes.reach));
  let best: PlacedPiece[] = [];
  let judged = { score: -Infinity, poor: true };
  let aim = count;
  for (let n = 0; n < starts + (judged.poor ? SECOND_CHANCES : 0); n++) {
    const wide = spread ?? spreadFor(kinds, mix.subarray(0, aim), field, gap);
    const share = progress && ((done: number) => progress(Math.min(0.99, (n + done) / starts)));
    const start = { shapes, field, gap, spread: wide, mix, count: aim, sweeps, progress: share };
    const pieces = lay(start, random(job.layout.seed, n));
    const found = score(pieces, field.edge, target);
    if (found.score > judged.score) {
      best = pieces;
      judged = found;
    }
    aim = Math.min(mix.length, Math.max(1, best.length + (n + 1 < starts ? 1 : 0)));
  }
  return best;
}

/** What is left of stocks, but where shares say how many of each are laid. */
function leftOver(kinds: readonly PieceKind[], pieces: readonly PlacedPiece[]): { kind: number; count: number }[] {
  if (kinds.length > 1 && kinds.some((kind) => kind.share !== undefined)) return [];
  return kinds.flatMap(({ kind, stock }) => {
    const count = (stock ?? 0) - pieces.filter((piece) => piece.kind === kind).length;
    return count > 0 ? [{ kind, count }] : [];
  });
}

function noRoom({ field, shapes, gap, job }: Task): string {
  const text = (length: number) => lengthText(length, job.units);
  const across = text(2 * Math.min(...shapes.reach));
  const circle = text(Math.max(0, 2 * field.radius));
  const clear = field.clear.length > 0;
  const foot = onlyFoot(job);
  const blocked = foot ? " outside the socket's foot" : clear ? " outside the circles kept clear" : "";
  // A piece wider than the tool itself has no place whatever the rim.
  const rim = Math.min(...shapes.reach) < field.edge;
  const less = foot ? ["a smaller socket", "a socket's foot on the pieces"] : clear ? ["smaller circles"] : [];
  const remedies = ["smaller pieces", ...(rim ? ["a smaller rim"] : []), ...less];
  const last = remedies.pop();
  const remedy = `choose ${remedies.length > 0 ? `${remedies.join(", ")} or ` : ""}${last}`;
  return `no piece fits: the smallest is ${across} across its corners, the circle within the rim ${circle}${blocked}, the gap ${text(gap)}; ${remedy}`;
}

import type { Tool } from "../blank/types.js";
import { impossible } from "../errors.js";
import type { Job } from "../job/types.js";
import { countsOf } from "../pieces/kinds.js";
import type { PieceKind } from "../pieces/types.js";
import { random } from "../random.js";
import { effortFor, hasteOf } from "./effort.js";
import { type Field, fieldOf } from "./field.js";
import { lay } from "./laying/lay.js";
import type { Proved } from "./laying/prove.js";
import { type Shapes, shapesOf } from "./laying/shapes.js";
import { mixOf } from "./mix.js";
import { noRoom } from "./no-room.js";
import { inLayingOrder } from "./order.js";
import { type Pattern, patternOf } from "./quality/pattern.js";
import { qualityOf } from "./quality/quality.js";
import { targetOf } from "./quality/target.js";
import { jamShare, latticeGuess, meanCell, roomFor, spreadFor } from "./room.js";
import { score } from "./score.js";
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
  const { unplaced, ...laid } = layPieces(job, tool, kinds, options.progress);
  const { seed, gap, hand } = job.layout;
  const { pieces } = laid;
  return { seed, gap, hand, pieces, unplaced, quality: qualityOf(job, tool, kinds, pieces, laid) };
}

/** Proved pieces in laying order, and their pattern. */
interface Found extends Proved {
  pattern: Pattern;
}

export interface Laid extends Found {
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
  const laid = asked === "max" ? layMost(task) : layCount(task, asked);
  return { ...laid, unplaced: leftOver(kinds, laid.pieces) };
}

/** As many pieces as fit; all of the stock, spread over the tool, where that is less. */
function layMost(task: Task): Found {
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
  const laid = mayTouch(kinds, gap, room)
    ? layTight(task, mix, room)
    : layBest(task, mix.subarray(0, Math.ceil(HOPELESS * room) + 1), Math.max(1, count));
  if (laid.pieces.length === 0) throw impossible(["pieces"], noRoom(task));
  return laid;
}

/** The most of rounds that may touch. */
function layTight(task: Task, mix: Int32Array, room: number): Found {
  const { job, shapes, field, gap, progress } = task;
  const most = packMost(room, mix.length, (count, sweeps, n, of) => {
    const share = progress && ((done: number) => progress((n + done) / of));
    const start = { shapes, field, gap, spread: gap, mix, count, sweeps, tight: true, progress: share };
    return lay(start, random(job.layout.seed, n));
  });
  return found(task, most);
}

/** Pieces as they are found: put in laying order, their pattern measured. */
function found({ kinds, gap, field }: Task, proved: Proved): Found {
  const pieces = inLayingOrder(proved.pieces, Math.sqrt(meanCell(kinds, mixOf(kinds, proved.pieces.length), gap)));
  return { ...proved, pieces, pattern: patternOf(pieces, field.edge) };
}

/** Exactly `count` pieces, spread over the whole tool. */
function layCount(task: Task, count: number): Found {
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
  const spread = hopeful ? layBest(task, mix, count) : undefined;
  if (spread?.pieces.length === count) return spread;
  const fit = Math.max(spread?.pieces.length ?? 0, layMost(task).pieces.length);
  // A full tool may hold the count where the spread-out start did not.
  if (fit >= count) {
    const packed = layBest(task, mix, count, gap);
    if (packed.pieces.length === count) return packed;
  }
  const most = fitFrom(task, Math.min(fit, count - 1), count);
  throw impossible(
    ["layout", "count"],
    `${count} pieces were asked for, but room was found for ${most} only; ask for ${most}, or choose another seed, a smaller gap or smaller pieces`,
  );
}

/** Counts that are tried beyond what is known to fit, before fewer than asked for are told to be the most. */
const MORE = 3;

/** How many pieces surely fit, from `fit` on, below `count`: a full tool sometimes holds one or two less than may be spread. */
function fitFrom(task: Task, fit: number, count: number): number {
  for (let more = Math.min(count - 1, fit + MORE); more > fit; more--) {
    if (layBest(task, mixOf(task.kinds, more), more).pieces.length === more) return more;
  }
  return fit;
}

/**
 * The best of several starts, each with one piece more than the best so far holds. Their number and length depend on
 * the count alone, but for second chances, with no piece more, where the best is still poor.
 */
function layBest(task: Task, mix: Int32Array, count: number, spread?: number): Found {
  const { job, kinds, shapes, field, gap, progress } = task;
  const { starts, sweeps } = effortFor(count);
  const target = targetOf(field, Math.min(...shapes.reach));
  let best: Found | undefined;
  let judged = { score: -Infinity, poor: true };
  let aim = count;
  for (let n = 0; n < starts + (judged.poor ? SECOND_CHANCES : 0); n++) {
    const wide = spread ?? spreadFor(kinds, mix.subarray(0, aim), field, gap);
    const share = progress && ((done: number) => progress(Math.min(0.99, (n + done) / starts)));
    const start = { shapes, field, gap, spread: wide, mix, count: aim, sweeps, progress: share };
    const next = found(task, lay(start, random(job.layout.seed, n)));
    const judgement = score(next.pieces.length, next.pattern, target);
    if (!best || judgement.score > judged.score) {
      best = next;
      judged = judgement;
    }
    aim = Math.min(mix.length, Math.max(1, best.pieces.length + (n + 1 < starts ? 1 : 0)));
  }
  return best!;
}

/** What is left of stocks, but where shares say how many of each are laid. */
function leftOver(kinds: readonly PieceKind[], pieces: readonly PlacedPiece[]): { kind: number; count: number }[] {
  if (kinds.length > 1 && kinds.some((kind) => kind.share !== undefined)) return [];
  const counts = countsOf(kinds, pieces);
  return kinds.flatMap(({ kind, stock }) => {
    const count = (stock ?? 0) - counts[kind]!;
    return count > 0 ? [{ kind, count }] : [];
  });
}

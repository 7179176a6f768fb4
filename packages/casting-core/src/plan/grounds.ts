import { blankOf, toolOf } from "../blank/blank.js";
import type { Blank, Tool } from "../blank/types.js";
import { CastingError, type Fault, Gathered } from "../errors.js";
import { type ReadOptions, readJobWith } from "../job/read.js";
import type { Job } from "../job/types.js";
import { kindsInto } from "../pieces/kinds.js";
import type { PieceKind } from "../pieces/types.js";
import { pouredInto } from "../pour/pour.js";
import { mustRun } from "../setup/plan.js";

/** What every later stage stands on. */
export interface Grounds {
  blank: Blank;
  tool: Tool;
  kinds: PieceKind[];
}

/** What is looked at beside the glass and the pieces: the pour, and whether the set-up can run. */
export interface Looks {
  pour: boolean;
  run: (job: Job) => boolean;
}

/**
 * The glass, the tool and the kinds of pieces of `job`. All that can be told before anything is laid is told at once.
 *
 * @throws CastingError with every fault: `invalid` where the job is wrong, `impossible` where it cannot be done
 */
export function groundsOf(job: Job, { pour, run }: Looks): Grounds {
  const faults = new Gathered();
  const blank = faults.of(() => blankOf(job));
  const tool = blank && faults.of(() => toolOf(job, blank));
  const kinds = faults.of(() => kindsInto(job, faults)) ?? [];
  const glass: [Blank, Tool] | undefined = blank && tool ? [blank, tool] : faults.of(() => shallowest(job));
  if (pour) pouredInto(job, glass, kinds, faults, thickestOwn(job, faults));
  faults.of(() => run(job) && mustRun(job));
  faults.tell();
  return { blank: blank!, tool: tool!, kinds };
}

/** The thickest piece of the maker's own, whatever else is wrong with it. */
function thickestOwn(job: Job, faults: Gathered): number {
  const length = faults.of(() => job.pieces.length) ?? 0;
  const thickness = (index: number) => {
    const piece = job.pieces[index]!;
    return "item" in piece ? 0 : piece.thickness;
  };
  return Math.max(0, ...Array.from({ length }, (_, index) => faults.of(() => thickness(index)) ?? 0));
}

/** In place of glass that is not known: no hollow makes a fill line lower than it is over a flat. A dome does. */
function shallowest({ blank: { curve } }: Job): [Blank, Tool] | undefined {
  if (curve === "convex") return undefined;
  return [
    { diameter: Infinity, curve: "flat", sagitta: 0 },
    { diameter: Infinity, rim: 0, sagitta: 0 },
  ];
}

/**
 * The job that `text` (YAML 1.2 or JSON) says: every figure in mm, mL, kg and plain numbers, every default filled in.
 * Throws one `invalid` error with every fault found, each with key, line and column; among them, where the job is wrong
 * already, what only making its plan would tell of the rest.
 */
export function readJob(text: string, options: ReadOptions = {}): Job {
  return readJobWith(text, options, laterFaults);
}

function laterFaults(job: Job): readonly Fault[] {
  try {
    groundsOf(job, { pour: true, run: ({ setup }) => setup.given });
    return [];
  } catch (error) {
    if (error instanceof CastingError) return error.faults;
    throw error;
  }
}

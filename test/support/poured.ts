import { blankOf, toolOf } from "../../packages/casting-core/src/blank/blank.js";
import type { Job } from "../../packages/casting-core/src/job/types.js";
import type { PlacedPiece } from "../../packages/casting-core/src/layout/types.js";
import { pieceKinds } from "../../packages/casting-core/src/pieces/kinds.js";
import { pourNotes } from "../../packages/casting-core/src/pour/notes.js";
import { planPour } from "../../packages/casting-core/src/pour/pour.js";
import { exampleJob } from "./jobs.js";

/** The pour of an example job with `count` pieces of each kind somewhere in the tool, and its notes. */
export function poured(changes: Partial<Job> = {}, count = 20) {
  const job = exampleJob(changes);
  const blank = blankOf(job);
  const tool = toolOf(job, blank);
  const kinds = pieceKinds(job);
  const pieces = kinds.flatMap(({ kind, outline }) =>
    Array.from({ length: count }, (_, i): PlacedPiece => ({ id: i + 1, kind, x: 0, y: 0, angle: 0, outline })),
  );
  const pour = planPour(job, blank, tool, kinds, { pieces });
  const notes = pourNotes(job, blank, tool, kinds, pour);
  return { job, blank, tool, kinds, pour, notes, codes: notes.map((note) => note.code) };
}

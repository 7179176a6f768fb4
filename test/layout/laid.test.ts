// Layouts that were put together by hand: what is no piece is told in a sentence, wherever it would be worked with.
import { expect, it } from "vitest";
import {
  blankOf,
  hardCoverage,
  layoutNotes,
  type PlacedPiece,
  pieceKinds,
  planGrooves,
  planPour,
  planSetup,
  setupNotes,
  toolOf,
} from "../../packages/casting-core/src/index.js";
import { exampleJob } from "../support/jobs.js";
import { layoutOf, regular } from "../support/layouts.js";

const job = exampleJob({ pieces: [{ item: "iso-4032-m12" }] });
const blank = blankOf(job);
const tool = toolOf(job, blank);
const kinds = pieceKinds(job);
const layout = layoutOf([regular(6, 10, 0, 5, 0), regular(6, 10, 40, 0, 0)], 4);
const pour = planPour(job, blank, tool, kinds, layout);
const setup = planSetup(job, blank, tool, kinds, layout, pour);

/** The layout with its second piece changed. */
function changed(change: object) {
  const [first, second] = layout.pieces;
  return { ...layout, pieces: [first!, { ...second!, ...change } as PlacedPiece] };
}

const WORKED: [name: string, work: (laid: typeof layout) => unknown][] = [
  ["hardCoverage", (laid) => hardCoverage(kinds, laid.pieces)],
  ["layoutNotes", (laid) => layoutNotes(job, blank, tool, kinds, laid)],
  ["planPour", (laid) => planPour(job, blank, tool, kinds, laid)],
  ["planSetup", (laid) => planSetup(job, blank, tool, kinds, laid, pour)],
  ["setupNotes", (laid) => setupNotes(job, blank, tool, setup, kinds, laid.pieces)],
];

it.each(WORKED)("%s refuses a piece of no kind or without an outline", (_, work) => {
  work(layout);
  for (const kind of [1, -1, Number.NaN]) {
    const text = `layout.pieces[1].kind: piece 2 is of kind ${kind}; write the place of its kind in the job's pieces, counted from 0`;
    expect(() => work(changed({ kind }))).toThrow(text);
  }
  const nowhere = [
    { outline: undefined },
    { outline: [] },
    {
      outline: [
        [0, 0],
        [1, 0],
      ],
    },
    {
      outline: [
        [0, 0],
        [1, 0],
        [0, Number.NaN],
      ],
    },
    { radius: 0 },
    { radius: 5, x: Number.NaN },
  ];
  for (const change of nowhere) {
    const text = "layout.pieces[1].outline: piece 2 has no outline; give it three corners or more, in mm";
    expect(() => work(changed(change))).toThrow(text);
    expect(() => planGrooves(job, tool, changed(change))).toThrow("layout.pieces[1]: piece 2 has no outline");
  }
});

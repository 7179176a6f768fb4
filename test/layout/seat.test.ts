import { describe, expect, it } from "vitest";
import { blankOf, toolOf } from "../../packages/casting-core/src/blank/blank.js";
import type { Job } from "../../packages/casting-core/src/job/types.js";
import { layOut } from "../../packages/casting-core/src/layout/layout.js";
import { layoutNotes } from "../../packages/casting-core/src/layout/notes/notes.js";
import { seatOf } from "../../packages/casting-core/src/layout/notes/seat.js";
import { pieceKinds } from "../../packages/casting-core/src/pieces/kinds.js";
import { exampleJob, hexagon } from "../support/jobs.js";

function seated(changes: Partial<Job>) {
  const job = exampleJob(changes);
  const blank = blankOf(job);
  const tool = toolOf(job, blank);
  const kinds = pieceKinds(job);
  const layout = layOut(job, tool, kinds);
  return {
    job,
    layout,
    seat: seatOf(blank.curve, tool, kinds, layout.pieces),
    notes: layoutNotes(job, blank, tool, kinds, layout),
  };
}

const few = { gap: 4, seed: 1, count: 20, hand: 0, "keep-clear": [] } as const;

describe("pieces on curved glass", () => {
  it("leave a hollow of the bearing radius squared over twice the radius", () => {
    // A 20 mm hexagon bears at its corners, 11.547 mm out: 133.33 / 6120 = 21.8 µm.
    const { seat } = seated({ layout: { ...few, "keep-clear": [] } });
    expect(seat.hollows[0]!.hollow).toBeCloseTo(21.786, 2);
    expect(seat.hollows[0]!.rocks).toBe(false);
  });

  it("lean together on concave glass, apart on convex, and neither on a flat", () => {
    const lean = (curve: "concave" | "convex") =>
      seated({ blank: { diameter: 400, curve, radius: 1000 }, layout: { ...few, "keep-clear": [] } }).seat.lean;
    expect(lean("concave")).toBeGreaterThan(0.1);
    expect(lean("convex")).toBeLessThan(-0.1);
    expect(
      seated({ blank: { diameter: 400, curve: "flat" }, layout: { ...few, "keep-clear": [] } }).seat,
    ).toMatchObject({ lean: 0, film: 0 });
  });

  it("are noted where the film is longer than the sheet, or the hollow more than the grain", () => {
    const steep = seated({
      blank: { diameter: 400, curve: "concave", radius: 600 },
      layout: { ...few, "keep-clear": [] },
      pieces: [hexagon(40)],
    });
    expect(steep.seat.film).toBeGreaterThan(0.5);
    expect(steep.notes.map((note) => note.code)).toContain("film");
    const fine = seated({
      blank: { diameter: 400, curve: "convex", radius: 600 },
      layout: { ...few, "keep-clear": [] },
      setup: { ...exampleJob().setup, grain: "F220" },
    });
    expect(fine.notes.find((note) => note.code === "hollow")?.text).toMatch(
      /rocks: the hollow of 111 µm is more than grain F220/,
    );
  });
});

describe("a layout laid by hand", () => {
  it("is told beside the exact one, the same for the same seed, and absent for a hand of 0", () => {
    const by = (hand: number) => seated({ layout: { ...few, hand, "keep-clear": [] } }).layout.quality;
    const [first, again] = [by(0.5), by(0.5)];
    expect(first.byHand).toEqual(again.byHand);
    expect(first.byHand!.gapMin).toBeGreaterThan(first.gapMin! - 2 * 0.5);
    expect(first.byHand!.gapMin).not.toBe(first.gapMin);
    expect(by(0).byHand).toBeUndefined();
  });

  it("has its gap in an inch job told about to a 64th, as hand and gap were asked for", () => {
    const { notes } = seated({ units: "in", layout: { ...few, gap: 4.7625, hand: 0.79375, "keep-clear": [] } });
    expect(notes.map(({ text }) => text).join("\n")).toMatch(
      /^Laid by hand to 1\/32 in, the least gap becomes about (?:\d+ )?\d+\/\d+ in and /m,
    );
  });
});

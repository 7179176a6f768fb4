// What would stand or lie on nothing: a socket between pieces, a piece over the bevel.
import { describe, expect, it } from "vitest";
import { blankOf, toolOf } from "../../packages/casting-core/src/blank/blank.js";
import type { Job } from "../../packages/casting-core/src/job/types.js";
import { placeNotes } from "../../packages/casting-core/src/layout/notes/notes-place.js";
import { standOf } from "../../packages/casting-core/src/layout/notes/stand.js";
import { pieceKinds } from "../../packages/casting-core/src/pieces/kinds.js";
import { exampleJob, hexagon } from "../support/jobs.js";
import { layoutOf, regular } from "../support/layouts.js";

const socket = { diameter: 28, length: 48, foot: "pieces", plugged: true } as const;
// Hexagons 20 mm across flats, 11.547 mm to a corner, their middles so far from the axis.
const ring = (count: number, distance: number, from = 0, turn = 360 / count) =>
  layoutOf(
    Array.from({ length: count }, (_, n) => {
      const angle = ((from + n * turn) * Math.PI) / 180;
      return regular(6, 11.547, distance * Math.cos(angle), distance * Math.sin(angle), 0);
    }),
    4,
  );

function notes(changes: Partial<Job>, layout: ReturnType<typeof ring>): string[] {
  const job = exampleJob(changes);
  const blank = blankOf(job);
  return placeNotes(job, blank, toolOf(job, blank), pieceKinds(job), layout).map(
    ({ code, text }) => `${code}: ${text}`,
  );
}

describe("a socket on the pieces", () => {
  it("stands where pieces bear it all round, or one lies under the axis", () => {
    expect(notes({ socket }, ring(3, 14))).toEqual([]);
    expect(notes({ socket }, ring(1, 3))).toEqual([]);
  });

  it("hangs where none reaches under its foot", () => {
    expect(notes({ socket }, ring(6, 26))).toEqual([
      expect.stringMatching(/^socket-hangs: No piece as thick .* foot: glass/),
    ]);
    expect(notes({ socket: { ...socket, foot: "glass" } }, ring(6, 26))).toEqual([]);
    expect(notes({}, ring(6, 26))).toEqual([]);
  });

  it("tips where they all lie to one side", () => {
    expect(notes({ socket }, ring(2, 18, 0, 70))).toEqual([
      expect.stringMatching(/^socket-tips: .* one side of the axis/),
    ]);
  });

  it("stands on the ring between its bore and its outside, on the thickest pieces, and not on their bores", () => {
    const kinds = pieceKinds(exampleJob());
    const [kind] = kinds;
    const centred = ring(1, 0).pieces;
    expect(standOf({ diameter: 28 }, kinds, centred)).toBe("stands");
    expect(standOf({ diameter: 28, bore: 24 }, kinds, centred)).toBe("hangs");
    // A foot of 10 mm over a bore of 12 mm.
    expect(standOf({ diameter: 10 }, [{ ...kind!, bore: 12 }], centred)).toBe("hangs");
    const two = [...ring(3, 14).pieces.map((piece) => ({ ...piece, kind: 1 })), ...ring(1, 60).pieces];
    expect(
      standOf(
        { diameter: 28 },
        [
          { ...kind!, thickness: 6.1 },
          { ...kind!, kind: 1 },
        ],
        two,
      ),
    ).toBe("hangs");
  });
});

describe("pieces of a full-size tool", () => {
  const full: Partial<Job> = {
    blank: { diameter: 200, curve: "concave", radius: 1500, bevel: 5 },
    tool: { diameter: 200, rim: 0.5 },
    pieces: [hexagon(20)],
  };

  it("are told of where they reach over the bevel, with the rim that keeps them off it", () => {
    // Corners at 88 + 11.547 = 99.547 mm, the face ends at 95 mm.
    expect(notes(full, ring(6, 88))).toEqual([
      "pieces-over-bevel: 6 of 6 pieces reach over the bevel of 5 mm, by up to 4.55 mm, where the glass has no face: write a tool.rim of at least 5 mm.",
    ]);
    expect(notes(full, ring(6, 83))).toEqual([]);
  });

  it("are not where the blank has no bevel", () => {
    const { bevel: _, ...blank } = full.blank!;
    expect(notes({ ...full, blank }, ring(6, 88))).toEqual([]);
  });
});

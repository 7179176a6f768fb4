// What is said of a layout that is uneven, and of what makes it so.
import { describe, expect, it, test } from "vitest";
import { blankOf, toolOf } from "../../packages/casting-core/src/blank/blank.js";
import { makePlan, readJob } from "../../packages/casting-core/src/index.js";
import type { Job } from "../../packages/casting-core/src/job/types.js";
import { layoutNotes } from "../../packages/casting-core/src/layout/notes/notes.js";
import { pieceKinds } from "../../packages/casting-core/src/pieces/kinds.js";
import { exampleJob, hexagon } from "../support/jobs.js";
import { layoutOf, regular } from "../support/layouts.js";

/** The note on a layout of `count` pieces that differs by 7 % from ring to ring. */
function uneven(count: number, changes: Partial<Job["layout"]> = {}, more: Partial<Job> = {}): string | undefined {
  const job = exampleJob({ layout: { ...exampleJob().layout, ...changes }, ...more });
  const blank = blankOf(job);
  // Where the pieces lie in the tool does not matter to what the job asks for.
  const laid = layoutOf(
    Array.from({ length: count }, (_, n) => regular(6, 11, n, 0, 0)),
    4,
  );
  const layout = { ...laid, quality: { ...laid.quality, radialVariation: 0.07 } };
  const notes = layoutNotes(job, blank, toolOf(job, blank), pieceKinds(job), layout);
  return notes.find(({ code }) => code === "uneven")?.text;
}

const START = "The coverage differs by 7.0 % from ring to ring, which can print zones: ";
const CIRCLE = "the circle kept clear takes much of some rings, so make it smaller";
// About 114 of 20 mm hexagons, 4 mm apart, fit a tool of 300 mm.
const full = 114;

describe("a layout that is uneven", () => {
  it("is told to try others where nothing in the job stands against it", () => {
    const others = `${START}try other seeds, smaller pieces or a smaller gap.`;
    expect(uneven(full)).toBe(others);
    expect(uneven(full, { count: full })).toBe(others);
    // A small circle takes too little of any ring, one at the centre none that counts.
    expect(uneven(full, { "keep-clear": [{ x: 90, y: 0, diameter: 6 }] })).toBe(others);
    expect(uneven(full, { "keep-clear": [{ x: 0, y: 0, diameter: 20 }] })).toBe(others);
    // Fewer than fit, but as many as were found room for.
    expect(uneven(90)).toBe(others);
  });

  it("is told of circles kept clear, a hole in the middle and a socket on the glass", () => {
    const text = `${START}${CIRCLE}.`;
    expect(uneven(full, { "keep-clear": [{ x: 0, y: 0, diameter: 80 }] })).toBe(text);
    expect(uneven(full, { "keep-clear": [{ x: 60, y: 0, diameter: 80 }] })).toBe(text);
    const socket = { diameter: 80, length: 40, foot: "glass", plugged: false } as const;
    const foot = `${START}the socket's foot on the glass takes much of some rings, so take a narrower one.`;
    expect(uneven(full, {}, { socket })).toBe(foot);
    const circles = `${START}circles kept clear take much of some rings, so make them fewer or smaller.`;
    expect(uneven(full, { "keep-clear": [{ x: 60, y: 0, diameter: 80 }] }, { socket })).toBe(circles);
    const round = `${START}the circle kept clear round the socket's foot takes much of some rings, so take a narrower socket, and a circle smaller by as much.`;
    expect(uneven(full, { "keep-clear": [{ x: 0, y: 0, diameter: 90 }] }, { socket })).toBe(round);
    expect(uneven(full, { "keep-clear": [{ x: 0, y: 0, diameter: 80 }] }, { socket })).toBe(round);
    expect(uneven(full, {}, { socket: { ...socket, foot: "pieces" } })).not.toBe(foot);
  });

  it("of one or few pieces is told to take more of them, not other seeds", () => {
    const remedy = "cannot cover all rings alike, so take smaller pieces and more of them, or a larger tool.";
    expect(uneven(1)).toBe(`${START}a single piece ${remedy}`);
    expect(uneven(7)).toBe(`${START}so few pieces ${remedy}`);
    for (const count of [8, 89])
      expect(uneven(count)).toBe(
        `${START}few seeds lay so few pieces more evenly, so take smaller pieces and more of them.`,
      );
  });

  it("of rounds packed for their number is told to take a gap, which other seeds do not make up for", () => {
    const rounds = { shape: "round", diameter: 20, thickness: 6, density: 7.85 } as const;
    const gap =
      "rounds that may touch fall into rings and rosettes with any seed, so write a layout.gap, however small";
    expect(uneven(100, { gap: 0 }, { pieces: [rounds] })).toBe(`${START}${gap}.`);
    expect(uneven(100, { gap: 0, hand: 0.5 }, { pieces: [rounds] })).toContain("try other seeds");
    expect(uneven(100, { gap: 0 })).toContain("try other seeds");
    expect(uneven(100, { gap: 0 }, { pieces: [{ ...rounds, stock: 100 }] })).not.toContain(gap);
  });

  it("is told of a rim that leaves the outermost rings half bare, with one that does not", () => {
    const bare = `${START}the rim leaves the outermost of the rings half bare, so`;
    const tool = (rim: number, diameter = 300) => ({ tool: { diameter, rim } });
    expect(uneven(full, {}, tool(8))).toBe(`${bare} write a tool.rim of at most 2.58 mm, or take smaller pieces.`);
    expect(uneven(full, {}, { ...tool(8), units: "in" })).toContain("at most 0.101 in, or");
    // The last ring that counts stands 11.25 mm from the edge, a reach is 11.55 mm.
    expect(uneven(full, {}, tool(4.4))).toContain("half bare");
    expect(uneven(full, {}, tool(4.3))).toContain("try other seeds");
    expect(uneven(60, {}, tool(3, 240))).toBe(`${bare} take smaller pieces and a narrower tool.rim.`);
    expect(uneven(7, {}, tool(8))).toContain("so few pieces cannot");
    expect(uneven(full, { "keep-clear": [{ x: 0, y: 0, diameter: 80 }] }, tool(8))).toBe(`${START}${CIRCLE}.`);
  });

  it("is told of no rim narrower than bevel or film ask for", () => {
    const smaller = `${START}the rim leaves the outermost of the rings half bare, so take smaller pieces.`;
    const tool = { diameter: 300, rim: 8 };
    const blank = { diameter: 305, curve: "concave", radius: 3060, bevel: 5 } as const;
    // The face begins 2.5 mm inside the tool's edge, then 2.6 mm; a rim of 2.58 mm has the rings even.
    expect(uneven(full, {}, { tool, blank })).toContain("at most 2.58 mm");
    expect(uneven(full, {}, { tool, blank: { ...blank, bevel: 5.1 } })).toBe(smaller);
    // Pieces up to 130 mm out on film that is 5.2 mm longer.
    const job = exampleJob({ tool, blank: { diameter: 400, curve: "concave", radius: 275 } });
    const glass = blankOf(job);
    const laid = layoutOf(
      Array.from({ length: full }, (_, n) => regular(6, 11, n === 0 ? 130 : 0, 0, 0)),
      4,
    );
    const layout = { ...laid, quality: { ...laid.quality, radialVariation: 0.07, rimMin: 8 } };
    const notes = layoutNotes(job, glass, toolOf(job, glass), pieceKinds(job), layout);
    const text = (code: string) => notes.find((each) => each.code === code)?.text;
    expect([text("uneven"), text("film")]).toEqual([smaller, expect.stringContaining("is 5.")]);
  });

  it.each(["hexagon", "square"] as const)("is even with the rim it is told: %ss on 160 mm", (shape) => {
    const small = (rim: number) => ({
      blank: { diameter: 200, radius: 1600 },
      tool: { diameter: 160, rim },
      pieces: [{ shape, across: 8, thickness: 5, density: 2.4 }],
      layout: { gap: 1.5 },
      grooves: { cutter: 1, clearance: 0.2 },
    });
    const said = (rim: number) =>
      makePlan(readJob(JSON.stringify(small(rim)))).notes.find(({ code }) => code === "uneven")?.text;
    const rim = /tool\.rim of at most ([\d.]+) mm/.exec(said(7) ?? "")?.[1];
    expect(rim).toBeDefined();
    expect(said(Number(rim))).toBeUndefined();
  });

  it("is told of a count or a stock well below what fits", () => {
    const few = /: 40 pieces lie where about 1\d\d have room, so lay more \(layout\.count, or the stock\)\.$/;
    expect(uneven(40, { count: 40 })).toMatch(few);
    expect(uneven(40, {}, { pieces: [{ ...hexagon(20), stock: 40 }] })).toMatch(few);
    // Where there is hardly room for more, the count is no cause.
    expect(uneven(80, { count: 80 })).toContain(": 80 pieces lie where");
    expect(uneven(100, { count: 100 })).toBe(`${START}try other seeds, smaller pieces or a smaller gap.`);
    expect(uneven(1, { count: 1 })).toMatch(/: a single piece lies where/);
    expect(uneven(40, { count: 40, "keep-clear": [{ x: 0, y: 0, diameter: 80 }] })).toMatch(
      /: the circle kept clear .* smaller; 40 pieces lie where about \d+ have room/,
    );
  });
});

describe("a pattern that comes back", () => {
  it("is none of a handful of pieces", () => {
    const job = exampleJob();
    const blank = blankOf(job);
    const codes = (count: number) => {
      const laid = layoutOf(
        Array.from({ length: count }, (_, n) => regular(6, 11, 25 * n, 0, 0)),
        4,
      );
      const layout = { ...laid, quality: { ...laid.quality, symmetry: 0.9 } };
      return layoutNotes(job, blank, toolOf(job, blank), pieceKinds(job), layout).map(({ code }) => code);
    };
    expect(codes(1)).not.toContain("alike");
    expect(codes(8)).toContain("alike");
  });

  it("is met by other seeds, and round a wide circle kept clear by that or the pieces", () => {
    const said = (clear: Job["layout"]["keep-clear"]) => {
      const job = exampleJob({ layout: { ...exampleJob().layout, "keep-clear": clear } });
      const blank = blankOf(job);
      const laid = layoutOf(
        Array.from({ length: 18 }, (_, n) => regular(6, 11, 25 * n, 0, 0)),
        4,
      );
      const layout = { ...laid, quality: { ...laid.quality, symmetry: 0.9 } };
      const notes = layoutNotes(job, blank, toolOf(job, blank), pieceKinds(job), layout);
      return notes.find(({ code }) => code === "alike")?.text;
    };
    expect(said([])).toContain("which can print a pattern: try other seeds.");
    expect(said([{ x: 0, y: 0, diameter: 80 }])).toContain(
      "few seeds escape that round so wide a circle kept clear, so make it smaller, or take smaller pieces and more of them.",
    );
  });
});

test.each([
  [1, "turns once per turn"],
  [2, "turns 2 times per turn"],
  [0.5, "turns 1/2 times per turn"],
])("a tool of %d turns per turn", (turns, words) => {
  const job = exampleJob({ setup: { ...exampleJob().setup, "tool-turns": turns } });
  const blank = blankOf(job);
  const notes = layoutNotes(job, blank, toolOf(job, blank), pieceKinds(job), layoutOf([regular(6, 11, 0, 0, 0)], 4));
  expect(notes.find(({ code }) => code === "repeated-track")?.text).toContain(words);
});

describe("kinds of pieces", () => {
  const kinds = (count: number | "max", share: number) =>
    exampleJob({
      layout: { ...exampleJob().layout, count },
      pieces: [{ ...hexagon(20), share }, { ...hexagon(12) }],
    });
  const said = (job: Job, unplaced: { kind: number; count: number }[]) => {
    const blank = blankOf(job);
    const laid = layoutOf(
      Array.from({ length: 20 }, (_, n) => regular(6, 11, 25 * n, 0, 0)),
      4,
    );
    const layout = { ...laid, pieces: laid.pieces.map((piece) => ({ ...piece, kind: 1 })), unplaced };
    return layoutNotes(job, blank, toolOf(job, blank), pieceKinds(job), layout).map(
      ({ code, text }) => `${code}: ${text}`,
    );
  };

  it("that no piece is laid of are told, with the share that came to nothing", () => {
    for (const [share, shown] of [
      [0.01, "1 %"],
      [0.0001, "0.01 %"],
    ] as const)
      expect(said(kinds(20, share), [])).toContainEqual(
        expect.stringMatching(
          `^kind-left-out: No .* is laid: its share, ${shown} of 20 pieces, comes to less than one`,
        ),
      );
  });

  it("that no piece is laid of without a share of their own are told, once", () => {
    const bare = { ...kinds(20, 1), pieces: [hexagon(12), hexagon(20)] };
    const laid = said({ ...bare, pieces: [hexagon(20), { ...hexagon(12), stock: 50 }] }, [{ kind: 1, count: 30 }]);
    expect(laid.filter((text) => text.startsWith("kind-left-out"))).toEqual([
      "kind-left-out: No hexagon 20 mm x 6 mm is laid: the other kinds come first and take all of 20 pieces; give it a share, or leave it out.",
    ]);
    // All of its stock is told already.
    const unused = said({ ...bare, pieces: [{ ...hexagon(20), stock: 9 }, hexagon(12)] }, [{ kind: 0, count: 9 }]);
    expect(unused.filter((text) => text.startsWith("kind-left-out"))).toEqual([]);
  });

  it("that stay in stock are told why: no room, or no more asked for", () => {
    const left = (count: number | "max") =>
      said(kinds(count, 0.5), [{ kind: 1, count: 5 }]).find((text) => text.startsWith("unplaced"));
    expect(left("max")).toMatch(/found no place: they stay in stock/);
    expect(left(20)).toMatch(/are more than layout.count asks for: they stay in stock/);
  });
});

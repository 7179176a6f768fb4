// Whether a run brings pieces to the mirror's centre and edge: one truth in fault, plan, notes and what is held out.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blankOf, toolOf } from "../../packages/casting-core/src/blank/blank.js";
import type { Job } from "../../packages/casting-core/src/job/types.js";
import { loadPressure } from "../../packages/casting-core/src/layout/quality/pressure.js";
import { pieceKinds } from "../../packages/casting-core/src/pieces/kinds.js";
import { makePart } from "../../packages/casting-core/src/plan/make.js";
import { setupNotes } from "../../packages/casting-core/src/setup/notes.js";
import { planSetup, setupFault } from "../../packages/casting-core/src/setup/plan.js";
import { placeText } from "../../packages/casting-core/src/setup/words.js";
import { parseLength } from "../../packages/casting-core/src/units/parse.js";
import { exampleJob } from "../support/jobs.js";
import { layoutOf } from "../support/layouts.js";

const HALF = 10;
/** A 400 mm blank under a tool of round pieces, with a hole kept about its axis. */
function job(tool: number, hole: number, run: Partial<Job["setup"]>, changes: Partial<Job> = {}): Job {
  return exampleJob({
    blank: { ...exampleJob().blank, target: { radius: 2900 } },
    tool: { diameter: tool, rim: 3 },
    pieces: [{ shape: "round", diameter: 2 * HALF, thickness: 6, density: 2.35 }],
    layout: { ...exampleJob().layout, count: 30, "keep-clear": hole > 0 ? [{ x: 0, y: 0, diameter: hole }] : [] },
    setup: { ...exampleJob().setup, given: true, ...run },
    ...changes,
  });
}

const { pour } = makePart(job(300, 0, {}), "pour");

/** What is planned and told of a job whose pieces stand at places given in parts of what the job leaves them. */
function planned(of: Job, places: readonly (readonly [number, number])[]) {
  const [blank, kinds] = [blankOf(of), pieceKinds(of)];
  const tool = toolOf(of, blank);
  const [inner, outer] = [(of.layout["keep-clear"][0]?.diameter ?? 0) / 2 + HALF, tool.diameter / 2 - 3 - HALF];
  const layout = layoutOf(
    places.map(([out, turn]) => {
      const rho = inner + out * (outer - inner);
      return { x: rho * Math.cos(turn), y: rho * Math.sin(turn), radius: HALF };
    }),
    4,
  );
  const setup = planSetup(of, blank, tool, kinds, layout, pour!);
  return { ...setup, codes: setupNotes(of, blank, tool, setup, kinds, layout.pieces).map(({ code }) => code) };
}

const places = fc.array(
  fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 6.28, noNaN: true })),
  { minLength: 1, maxLength: 12 },
);
const tools = fc.integer({ min: 60, max: 390 });
const holes = fc.integer({ min: 0, max: 8 }).map((part) => part / 10);
const runs = fc.record({ offset: fc.integer({ min: 0, max: 220 }), stroke: fc.integer({ min: 0, max: 160 }) });

/** The first run that a text tells to write. */
function told(text: string, units: Job["units"]) {
  const found = /an offset of (.*? (?:mm|in)) with (?:no stroke|a stroke of (.*? (?:mm|in))),/.exec(text);
  return found && { offset: parseLength(found[1]!, units), stroke: found[2] ? parseLength(found[2], units) : 0 };
}

describe("whether pieces come to the mirror's centre", () => {
  it("is one truth in fault, plan and notes, whatever job and layout", () => {
    fc.assert(
      fc.property(tools, holes, runs, places, (tool, share, run, laid) => {
        // Room for a piece between hole and rim.
        const hole = Math.floor(share * (tool - 6 - 4 * HALF));
        const of = job(tool, hole, run);
        const { reachesCentre, wear, codes } = planned(of, laid);
        const fault = setupFault(of)?.text ?? "";
        const worn = wear.zones.map(({ removal }) => removal > 0);
        // What lies beyond the outermost zone that is worn is told as the mirror's edge.
        worn.length = worn.lastIndexOf(true) + 1;
        if (reachesCentre) expect(worn[0]).toBe(true);
        else expect(!worn[0] || fault !== "").toBe(true);
        if (fault.includes("leaves a button")) expect(reachesCentre).toBe(false);
        // Whatever stays unworn is told, once.
        if (fault === "" && worn.some(Boolean))
          expect(codes.filter((code) => code === "centre-unreached" || code === "ring-unreached")).toEqual(
            worn[0] ? (worn.every(Boolean) ? [] : ["ring-unreached"]) : ["centre-unreached"],
          );
      }),
      { numRuns: 80 },
    );
  });

  it("holds of every run compared or held out: written into the job it is neither refused nor warned of", () => {
    fc.assert(
      fc.property(tools, holes, runs, places, (tool, share, run, laid) => {
        const hole = Math.floor(share * (tool - 6 - 4 * HALF));
        const { sweep, closest } = planned(job(tool, hole, run), laid);
        for (const { offset, stroke } of [...sweep, ...(closest ? [closest] : [])]) {
          const own = job(tool, hole, { offset, stroke });
          expect(setupFault(own)).toBeUndefined();
          expect(planned(own, laid).reachesCentre).toBe(true);
        }
      }),
      { numRuns: 8 },
    );
  });

  it.each(["mm", "in"] as const)("or not is cured by the run that the fault tells, in %s", (units) => {
    fc.assert(
      fc.property(tools, holes, runs, fc.integer({ min: 0, max: 6 }), (tool, share, run, bevel) => {
        const hole = Math.floor(share * (tool - 6 - 4 * HALF));
        const blank = { ...exampleJob().blank, bevel };
        const text = setupFault(job(tool, hole, run, { units, blank }))?.text ?? "";
        const cure = told(text, units);
        fc.pre(cure !== null);
        expect(setupFault(job(tool, hole, cure!, { units, blank }))).toBeUndefined();
        // Pieces all the way from the hole to the rim.
        const band = Array.from({ length: 21 }, (_, n) => [n / 20, n] as const);
        const full = planned(job(tool, hole, cure!, { units, blank }), band);
        expect([full.reachesCentre, full.reachesEdge]).toEqual([true, true]);
        expect(full.edgePressure).toBeLessThan(1.5);
      }),
      { numRuns: 40 },
    );
  });

  it("is refused under a hole that the run never leaves, with a smaller one that would do", () => {
    const text = setupFault(job(300, 120, { offset: "tangent" }))!.text;
    expect(text).toBe(
      "a tool with 120 mm kept clear about its axis, which comes no farther than 50 mm from the mirror's never reaches the centre and leaves a button; write an offset of 64.5 mm with no stroke, which comes to the centre and to the edge, or a circle kept clear of less than 100 mm",
    );
    expect(setupFault(job(300, 99, { offset: "tangent" }))).toBeUndefined();
    const foot = job(300, 0, { offset: 10 }, { socket: { diameter: 28, length: 48, foot: "glass", plugged: true } });
    expect(setupFault(foot)?.text).toMatch(/, or a smaller socket\.diameter$/);
  });

  it("is told of a layout that leaves it out, with a run that does not", () => {
    // All pieces at the rim of the field, 127 to 147 mm from the axis.
    const ring = [0, 1, 2, 3, 4, 5].map((turn) => [1, turn] as const);
    const of = job(300, 0, { offset: "tangent" });
    const setup = planned(of, ring);
    expect([setup.reachesCentre, setup.wear.zones[0]!.removal]).toEqual([false, 0]);
    expect(setup.codes).toContain("centre-unreached");
    expect(setup.closest).toBeUndefined();
    // What leaves the centre is not among the runs to choose from, the job's own neither.
    expect(setup.sweep.filter(({ offset, stroke }) => offset === 50 && stroke === 0)).toEqual([]);
  });
});

describe("a real layout", () => {
  it.each([
    [190, 0],
    [300, 120],
  ])("of a %i mm tool with a hole of %i mm is cured as the fault tells", (tool, hole) => {
    const text = setupFault(job(tool, hole, { offset: "tangent" }))!.text;
    const max = { layout: { ...job(tool, hole, {}).layout, count: "max" as const } };
    const { setup, notes } = makePart(job(tool, hole, told(text, "mm")!, max), "setup");
    expect([setup!.reachesCentre, setup!.reachesEdge]).toEqual([true, true]);
    expect(notes.filter(({ code }) => code.endsWith("-unreached"))).toEqual([]);
  });
});

describe("an overhang toward half the tool", () => {
  it("is refused from exactly half on, in any unit", () => {
    const half = (units: Job["units"], stroke: number) =>
      setupFault(
        exampleJob({
          units,
          blank: { diameter: 16 * 25.4, curve: "concave", "focal-ratio": 4.5 },
          tool: { diameter: 6 * 25.4, rim: 3 },
          setup: { ...exampleJob().setup, given: true, stroke: stroke * 25.4 },
        }),
      )?.text;
    expect(half("in", 6)).toMatch(
      /^the tool hangs over by 3 in, half of its 6 in or more, and falls off; .* below 1 7\/16 in/,
    );
    expect(half("in", 6.001)).toMatch(/falls off/);
    expect(half("mm", 5.99)).toBeUndefined();
  });

  it("has no pressure at the edge beyond what statics can tell", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 1.2, noNaN: true }),
        (reach, part) => {
          const { edge } = loadPressure(200, reach, 200 - reach + part * reach);
          // Strips come within 1e-4 of the closed forms.
          expect(edge).toBeGreaterThan(1 - 1e-3);
          expect(edge).toBeLessThanOrEqual(10);
        },
      ),
      { numRuns: 200 },
    );
    expect(loadPressure(200, 75, 199.999999).edge).toBe(10);
    const { edgePressure, codes } = planned(job(150, 0, { offset: 125, stroke: 148 }), [
      [0.2, 0],
      [1, 2],
    ]);
    expect(edgePressure).toBe(10);
    expect(codes).toContain("tool-lifts");
  });
});

it("tells a run in inches in one form: fractions where both are near one, else decimals", () => {
  expect(placeText({ offset: 76.2, stroke: 91.44 }, "in")).toBe("an offset of 3 in with a stroke of 3.6 in");
  expect(placeText({ offset: 38.1, stroke: 91.44 }, "in")).toBe("an offset of 1.5 in with a stroke of 3.6 in");
  expect(placeText({ offset: 38.1, stroke: 3.175 }, "in")).toBe("an offset of 1 1/2 in with a stroke of 1/8 in");
  expect(placeText({ offset: 38.1, stroke: 0 }, "in")).toBe("an offset of 1 1/2 in with no stroke");
});

import { describe, expect, it } from "vitest";
import { jobNotes } from "../../packages/casting-core/src/job/notes.js";
import type { Note } from "../../packages/casting-core/src/notes.js";
import { readJob } from "../../packages/casting-core/src/plan/grounds.js";
import { makePlan, planAround } from "../../packages/casting-core/src/plan/make.js";

type Keys = Record<string, unknown>;

/** A small job, with keys of its blocks changed. */
function job(changes: Record<string, Keys | string> = {}) {
  const base: Keys = {
    blank: { diameter: "150 mm", radius: "1200 mm" },
    tool: { diameter: "110 mm" },
    pieces: { shape: "square", across: "25 mm", thickness: "6 mm", density: 2.35 },
  };
  for (const [key, value] of Object.entries(changes))
    base[key] = typeof value === "string" ? value : { ...(base[key] as Keys), ...value };
  return readJob(JSON.stringify(base));
}

const { layout } = makePlan(job());

/** What a job with the changes is told, by code, all pieces lying as in the plain one. */
function told(changes: Record<string, Keys | string>): (code: string) => Note | undefined {
  const { notes } = planAround(job(changes), layout);
  return (code) => notes.find((note) => note.code === code);
}

/** The first match of a pattern's group in a note. */
function figure(pattern: RegExp, note: Note | undefined): string {
  return pattern.exec(note?.text ?? "")![1]!;
}

describe("What a note advises, followed as it is written,", () => {
  it("is a chord within the bevel, also in inches", () => {
    const inches = (more: Keys) =>
      jobNotes(
        job({
          units: "in",
          blank: { diameter: "4.037 in", radius: undefined, sagitta: "0.0407 in", bevel: "0.0267 in", ...more },
          tool: { diameter: "3 in" },
        }),
      );
    const chord = figure(
      /sagitta-over: (.*?),/,
      inches({}).find(({ code }) => code === "sagitta-over-bevel"),
    );
    expect(inches({ "sagitta-over": chord }).filter(({ text }) => /chord|straightedge/.test(text))).toEqual([]);
  });

  it("is a rim that takes up what the film is longer by", () => {
    const steep = (rim: string) =>
      makePlan(job({ blank: { radius: "76 mm" }, tool: { diameter: "140 mm", rim } })).notes.find(
        ({ code }) => code === "film",
      );
    expect(steep("0.1 mm")).toMatchObject({
      level: "warning",
      text: expect.stringMatching(/The rim of 0\.1 mm cannot/),
    });
    const rim = figure(/write a tool\.rim of at least (.*?)\.$/, steep("0.1 mm"));
    expect(steep(rim)?.level).not.toBe("warning");
  });

  it("is no coarser grain where none bridges the hollow", () => {
    const hollow = (radius: string) =>
      told({ blank: { radius }, setup: { grain: "F220", stroke: "10 mm" } })("hollow")?.text;
    expect(hollow("130 mm")).toMatch(/take smaller pieces or a coarser grain, such as F16\.$/);
    expect(hollow("76 mm")).toMatch(/hollow of 2\d{3} µm is .* take smaller pieces\.$/);
  });

  it("is no finer grain where the pieces ask for a coarser one", () => {
    const near = (grain: string) =>
      told({ blank: { target: { radius: "1200.01 mm" } }, setup: { grain, stroke: "10 mm" } })("grain-overshoots")
        ?.text;
    expect(near("F24")).toMatch(/so check the target, as no grain is fine enough and still bridges/);
    const far = (grain: string) =>
      told({ blank: { target: { radius: "1210 mm" } }, setup: { grain, stroke: "10 mm" } });
    const finer = figure(/finer setup\.grain, (F\d+) or beyond/, far("F24")("grain-overshoots"));
    expect(far(finer)("grain-overshoots")).toBeUndefined();
    expect(far(finer)("hollow")).toBeUndefined();
  });

  it.each(["hollow", "mismatch"])("of a %s is a grain that bridges it, and none that overshoots the target", (code) => {
    const expansion = code === "mismatch" ? "gypsum-cement-45" : "type-3";
    const grain = code === "mismatch" ? "1 µm" : "F220";
    const near = (radius: string | undefined, first: string) =>
      told({
        blank: radius === undefined ? {} : { target: { radius } },
        plaster: { kind: expansion },
        setup: { grain: first, stroke: "10 mm" },
      });
    for (const radius of [undefined, "1350 mm"]) {
      const coarser = figure(/coarser (?:grain|one), such as (F\d+)\.$/, near(radius, grain)(code));
      const then = near(radius, coarser);
      expect([then(code), then("grain-overshoots")]).toEqual([undefined, undefined]);
    }
    const there = near("1200.001 mm", grain);
    expect(there("grain-overshoots")?.text).toMatch(/check the target, as no grain is fine enough/);
    expect(there(code)?.text).toMatch(/take (smaller pieces|a plaster that grows less)\.$/);
  });

  it("clears an edge pressed too hard by taking the weights off", () => {
    const pressed = (weights: string[]) => told({ setup: { offset: "40 mm", weights } })("edge-pressure");
    expect(pressed(["0 kg", "1 kg"])).toMatchObject({
      level: "warning",
      text: expect.stringMatching(/write 0 kg alone/),
    });
    expect(pressed(["0 kg"])).toMatchObject({
      level: "info",
      text: expect.stringMatching(/put no weight on the tool/),
    });
  });

  it("asks of a socket in little plaster for no length that another note forbids", () => {
    const socket = (length: string, cover: string) =>
      told({ plaster: { cover, fill: undefined }, socket: { diameter: "30 mm", length } });
    const shallow = socket("40 mm", "8 mm")("socket-shallow");
    expect(shallow?.text).toMatch(/raise the fill line, or it may tear out/);
    expect(socket("13 mm", "8 mm")("socket-unheld")?.text).toMatch(/: raise the fill line and take a longer one/);
    expect(socket("60 mm", "20 mm")("socket-shallow")?.text).toMatch(/raise the fill line or take a shorter one/);
  });

  it("is a run that leads toward the target, where one does at a safe pressure", () => {
    const run = (target: string, setup: Keys) => told({ blank: { target: { radius: target } }, setup });
    const away = run("1100 mm", { offset: "38 mm", stroke: "40 mm" })("away-from-target");
    const [, offset, stroke] = /take an offset of (.*?mm) with a stroke of (.*?mm) or/.exec(away!.text)!;
    const then = run("1100 mm", { offset, stroke });
    expect(then("away-from-target")).toBeUndefined();
    expect(then("edge-pressure")).toBeUndefined();
    // More overhang would only chip the edge.
    const none = run("1350 mm", { offset: "5 mm", stroke: "0 mm" })("away-from-target");
    expect(none?.text).toMatch(/: more overhang, which the edge does not bear, would make the curve shallower; work/);
  });
});

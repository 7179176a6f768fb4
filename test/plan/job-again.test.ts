// The job that a plan repeats is a job: read again, it makes the same plan.
import { readdirSync, readFileSync } from "node:fs";
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import { jobJsonSchema } from "../../packages/casting-core/src/job/describe.js";
import { jobNotes } from "../../packages/casting-core/src/job/notes.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { planJson } from "../../packages/casting-core/src/plan/json.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";

const jobSchema = new Ajv({ allErrors: true, strict: false }).compile(jobJsonSchema());

/** Jobs that say what no fixture does, by what it is. */
const MORE: Record<string, string> = {
  "a sagitta beside a bevel": `blank: {diameter: 200, sagitta: 3.1, bevel: 2}
pieces: {item: iso-4032-m10}
layout: {count: 3}
`,
  "a wide bar": `blank: {diameter: 1000, readings: {instrument: {bar: 611}, zones: [{at: 0, reading: 10}]}}
tool: {diameter: 200}
pieces: {item: iso-4032-m10}
layout: {count: 3}
`,
  "a stacked container in inches": `units: in
blank: {diameter: 8, focal-ratio: 5}
pieces: {shape: round, diameter: 3/4, thickness: 1/4, density: 2.4}
container:
  shape: stacked
  sections: [{bottom: 6, top: 6 1/3, height: 2.1}, {bottom: 7, top: 8, height: 4}]
  headroom: 1/2
print: {paper: 8.5x14, measured: {x: 3.93, y: 3 15/16}}
setup: {offset: 1.1, stroke: 1, weights: [2 lb], grades: [{grain: F60, depth: 0.004 in}], rate: {minutes: 20, change: -0.002}}
`,
  "an empty set-up of its own": `blank: {diameter: 200, radius: 1600}
pieces: {item: iso-4032-m10}
setup: {}
`,
};

const JOBS: [string, string][] = [
  ...readdirSync("fixtures")
    .filter((name) => name.endsWith(".yaml"))
    .map((name): [string, string] => [name, readFileSync(`fixtures/${name}`, "utf8")]),
  ...Object.entries(MORE),
];

describe.each(JOBS)("the job in the plan of %s", (_, text) => {
  const plan = planJson(makePlan(readJob(text)));
  const job: unknown = JSON.parse(plan).job;

  it("makes the very same plan", () => {
    expect(planJson(makePlan(readJob(JSON.stringify(job))))).toBe(plan);
  });

  it("satisfies the schema of a job", () => {
    jobSchema(job);
    expect(jobSchema.errors ?? []).toEqual([]);
  });
});

describe("the job in a plan", () => {
  const LEAST = "blank: {diameter: 200, radius: 1600}\npieces: {item: iso-4032-m10}\n";

  it("has the water of its plaster as a job would give it, and says in what its figures are", () => {
    expect(readJob(LEAST).plaster).toEqual({ kind: "type-3", water: 0.3, fill: "auto", cover: 20, spare: 0.1 });
    expect(readJob(`${LEAST}plaster: {kind: type-4}\n`).plaster.water).toBe(0.23);
    expect(readJob(`${LEAST}plaster: {water: 0.33}\n`).plaster.water).toBe(0.33);
    expect(readJob(LEAST).bare).toBe("mm");
  });

  it("has the chord of a sagitta, and how truly a spherometer reads, as they were taken", () => {
    const blank = (text: string) => readJob(`blank: {diameter: 200, ${text}}\npieces: {item: iso-4032-m10}\n`).blank;
    expect(Object.entries(blank("sagitta: 3, bevel: 1")).slice(2)).toEqual([
      ["sagitta", 3],
      ["sagitta-over", 200],
      ["bevel", 1],
    ]);
    expect(blank("sagitta: 3, sagitta-over: 190")["sagitta-over"]).toBe(190);
    expect(blank("radius: 1600")).not.toHaveProperty("sagitta-over");
    const instrument = (more: string) =>
      blank(`readings: {instrument: {${more}}, zones: [{at: 0, reading: 0.5}]}`).readings!.instrument;
    expect(instrument("ring: 80")).toEqual({ ring: 80, resolution: 0.001, "zero-error": 0.002, "size-error": 0.16 });
    const own = { legs: 80, resolution: 0.01, "zero-error": 0, "size-error": 0.05 };
    expect(instrument("legs: 80, resolution: 0.01, zero-error: 0, size-error: 0.05")).toEqual(own);
    // What nobody wrote is not doubted.
    const wide = readJob(
      "blank: {diameter: 1000, readings: {instrument: {bar: 600}, zones: [{at: 0, reading: 10}]}}\npieces: {item: iso-4032-m10}\n",
    );
    const small = readJob("blank: {diameter: 30, sagitta: 0.5}\npieces: {item: iso-4032-m5}\n");
    const doubted = [wide, small].flatMap(jobNotes).map(({ text }) => text);
    expect(doubted.filter((text) => /error of a spherometer|chord/i.test(text))).toEqual([]);
  });

  it("is not stopped by a set-up that is not its own", () => {
    expect(readJob(`${LEAST}setup: {given: false}\n`).setup.given).toBe(false);
    expect(readJob(`${LEAST}setup: {stroke: 20}\n`).setup.given).toBe(true);
    expect(readJob(LEAST).setup.given).toBe(false);
  });

  it("has a set-up of its own once a value is changed beside what the plan wrote", () => {
    const { setup } = readJob(LEAST);
    const again = (change: object) => readJob(`${LEAST}setup: ${JSON.stringify({ ...setup, ...change })}\n`).setup;
    expect(again({})).toEqual(setup);
    expect(again({ stroke: 20 })).toEqual({ ...setup, given: true, stroke: 20 });
    expect(Object.keys(again({ grain: "F60" }))).toEqual(Object.keys(setup));
    const faulty = `${LEAST}setup: ${JSON.stringify({ ...setup, offset: 300 })}\n`;
    expect(() => makePlan(readJob(faulty))).toThrow(/setup.offset: the tool hangs over by 275 mm/);
  });

  it("reads bare numbers in mm and mL where it says so, whatever its units", () => {
    const marks = "container: {shape: marks, height: 200, marks: [{height: 100, volume: 1500}]}\n";
    const { blank, container } = readJob(`units: in\nbare: mm\n${LEAST}${marks}`);
    expect([blank.diameter, container?.height]).toEqual([200, 200]);
    expect(container?.shape === "marks" && container.marks).toEqual([{ height: 100, volume: 1500 }]);
    expect(() => readJob(`bare: cm\n${LEAST}`)).toThrow(/bare: "cm" is not known here/);
  });

  it("takes a stack's height where it is the sum, and refuses another", () => {
    const stack = (height: string) =>
      `${LEAST}container: {shape: stacked, sections: [{bottom: 150, top: 160, height: 120}], height: ${height}}\n`;
    expect(readJob(stack("120")).container?.height).toBe(120);
    expect(() => readJob(stack("130"))).toThrow(/container.height: it is not the sum/);
  });
});

import { describe, expect, test } from "vitest";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { changeJob, scaleJob, scaleNotes } from "../../packages/casting-core/src/job/scale.js";

const JOB = `# my big tool
title: Coarse   # as ground
blank: {diameter: 400 mm, radius: 3060 mm}
tool:
  diameter: 300 mm   # three quarters
  rim: 3 mm
pieces:
  - item: iso-4032-m12

layout: {gap: 4 mm}
`;

describe("a job for another tool size", () => {
  test("differs in the diameter alone", () => {
    expect(scaleJob(JOB, "200mm")).toBe(JOB.replace("300 mm", "200mm"));
  });

  test.each(["tool: {diameter: 12 in}\n", "tool:\n  rim: 1/8 in\n", ""])(
    "keeps weights as they are written: %j",
    (tool) => {
      const weights = "setup:\n  weights:\n    - 0\n    - 32 oz\n    - 7 1/2 lb\n";
      expect(scaleJob(weights + tool, "8 in")).toContain(weights);
    },
  );

  test.each([
    ['7 7/8"', '"7 7/8\\""'],
    ["200", "200"],
    [" 20 cm ", "20 cm"],
    ["20 #", '"20 #"'],
    ["x: [", '"x: ["'],
  ])("takes %j as text that YAML reads as it is written", (diameter, written) => {
    expect(scaleJob(JOB, diameter)).toBe(JOB.replace("300 mm", written));
  });

  test.each([
    ["title: a # mine\npieces: []\n", "title: a # mine\npieces: []\ntool:\n  diameter: 200 mm\n"],
    ["tool:\n  rim: 2 mm # thin\n", "tool:\n  rim: 2 mm # thin\n  diameter: 200 mm\n"],
    ["tool:\npieces: []\n", "tool:\n  diameter: 200 mm\npieces: []\n"],
    ["tool:\n  diameter:\n  rim: 2 mm\n", "tool:\n  diameter: 200 mm\n  rim: 2 mm\n"],
    ["tool: {diameter: }\n", "tool: { diameter: 200 mm }\n"],
    ["title: a # mine", "title: a # mine\ntool:\n  diameter: 200 mm\n"],
  ])("gains a diameter where it had none, and keeps its comments: %j", (before, after) => {
    expect(scaleJob(before, "200 mm")).toBe(after);
  });

  test.each([
    ["a: {b:   1}   # one\n# end\n", "a: {b:   1}   # one\ntool:\n  diameter: 200 mm\n# end\n"],
    ["a: 1\r\nb: 2\r\n", "a: 1\r\nb: 2\r\ntool:\r\n  diameter: 200 mm\r\n"],
    ["\ufeffa: 1", "\ufeffa: 1\ntool:\n  diameter: 200 mm\n"],
    [
      "tool:\n    rim: 2 mm   # thin\n    # inner\n\nb:   2\n",
      "tool:\n    rim: 2 mm   # thin\n    diameter: 200 mm\n    # inner\n\nb:   2\n",
    ],
  ])("gains a diameter with every other letter and line end as it was: %j", (before, after) => {
    expect(scaleJob(before, "200 mm")).toBe(after);
  });

  test.each([
    ["5", "5 in"],
    ["5 1/4", "5 1/4 in"],
    ["130 mm", "130 mm"],
  ])("takes a bare %j in the job's inches where the job is a plan's", (diameter, written) => {
    const plan = JSON.stringify({ units: "in", bare: "mm", tool: { diameter: 234.95 }, layout: { seed: 1 } });
    expect(JSON.parse(scaleJob(plan, diameter)).tool.diameter).toBe(written);
    expect(JSON.parse(changeJob(plan, "layout", "seed", "7")).layout.seed).toBe(7);
    expect(JSON.parse(scaleJob(plan.replace('"in"', '"mm"'), "5")).tool.diameter).toBe(5);
  });

  test("stays JSON where it was JSON", () => {
    const json = JSON.stringify({ tool: { diameter: 300, rim: "3 mm" }, pieces: [] }, null, 2);
    expect(JSON.parse(scaleJob(json, "200 mm"))).toEqual({ tool: { diameter: "200 mm", rim: "3 mm" }, pieces: [] });
  });

  test.each([
    ['{"pieces": []}', '{"tool": {"diameter": "7 7/8\\""}, "pieces": []}'],
    ['{\n  "pieces": []\n}\n', '{\n  "tool": {"diameter": "7 7/8\\""},\n  "pieces": []\n}\n'],
    ['{"tool": {"rim": 4}}', '{"tool": {"diameter": "7 7/8\\"", "rim": 4}}'],
    ['{"tool": {}}', '{"tool": {"diameter": "7 7/8\\""}}'],
    ["{}", '{"tool": {"diameter": "7 7/8\\""}}'],
  ])("gains a diameter as JSON, laid out as it was: %j", (before, after) => {
    expect(scaleJob(before, '7 7/8"')).toBe(after);
    expect(JSON.parse(after).tool.diameter).toBe('7 7/8"');
    expect(JSON.parse(scaleJob(before, "007")).tool.diameter).toBe("007");
  });

  test("gains a diameter in the braces of a block, comments and all", () => {
    expect(scaleJob("tool: {rim: 4}   # thin\npieces:   []\n", "200 mm")).toBe(
      'tool: {"diameter": "200 mm", rim: 4}   # thin\npieces:   []\n',
    );
  });

  test("keeps a count, and says how many would lie as densely", () => {
    const told = (count: string, tool: number) => {
      const text = JOB.replace("gap: 4 mm", `gap: 4 mm, count: ${count}`);
      return scaleNotes(readJob(text), readJob(scaleJob(text, `${tool} mm`))).map(({ text }) => text);
    };
    expect(told("60", 380)).toEqual([
      "The count of 60 pieces stays as it is on a tool of 380 mm, where about 96 would lie as densely: write layout.count: 96, or max.",
    ]);
    expect(told("1", 400)).toEqual([
      expect.stringContaining("of 1 piece stays as it is on a tool of 400 mm, where about 2"),
    ]);
    expect(told("1", 30)).toEqual([]);
    expect(told("60", 300)).toEqual([]);
    expect(told("max", 380)).toEqual([]);
  });

  test.each(["", "- a\n", "a: [\n", "just words"])("is refused for %j", (text) => {
    expect(() => scaleJob(text, "200 mm")).toThrow(/casting new|the text ends before the \[/);
  });
});

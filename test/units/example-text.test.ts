// Examples in the sentences that refuse a figure are written as the job's maker writes.
import { describe, expect, it } from "vitest";
import type { CastingError } from "../../packages/casting-core/src/errors.js";
import { type FieldLimits, LIMITS } from "../../packages/casting-core/src/job/limits.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { containerFromText } from "../../packages/casting-core/src/pour/container-text.js";
import { exampleIn } from "../../packages/casting-core/src/units/example-text.js";
import { parseLength } from "../../packages/casting-core/src/units/parse.js";

/** The sentences on a job, told by key. */
function told(units: "mm" | "in", rest: string): string[] {
  try {
    readJob(`units: ${units}\nblank: {diameter: 400 mm, radius: 3060 mm}\npieces: {item: iso-4032-m12}\n${rest}\n`);
  } catch (error) {
    return (error as CastingError).faults.map(({ path, text }) => `${path.join(".")}: ${text}`);
  }
  return [];
}

describe("an example of a length", () => {
  it.each([
    ["400 mm", "16 in"],
    ["32 mm", "1 1/4 in"],
    ["20 mm", "3/4 in"],
    ["-40 mm", "-1 1/2 in"],
    ["2.5 mm", "3/32 in"],
    ["0.5 mm", "0.02 in"],
    ["0.001 mm", "0.00004 in"],
  ])("of %s is %s in inches, and itself in mm", (example, inches) => {
    expect(exampleIn("in", example)).toBe(inches);
    expect(exampleIn("mm", example)).toBe(example);
  });

  it("is of about the same size, and what a field may be and usually is", () => {
    const lengths = Object.entries(LIMITS as Record<string, FieldLimits>).filter(([, { example }]) =>
      / mm$/.test(example),
    );
    expect(lengths.length).toBeGreaterThan(30);
    for (const [key, { example, usual }] of lengths) {
      const inches = parseLength(exampleIn("in", example), "in");
      expect(Math.abs(inches / parseLength(example, "mm") - 1), key).toBeLessThan(1 / 5);
      expect(inches >= usual[0] && inches <= usual[1], key).toBe(true);
    }
  });
});

describe("a job in inches", () => {
  it.each([
    ["tool: {rim: [3]}", "tool.rim: a list is not a length such as 1/8 in; write a length such as 1/8 in"],
    ["tool: {rim: x}", 'tool.rim: "x" is not a length; write 1/8 in'],
    ["tool: {rim: 2e3}", 'tool.rim: "2e3" is not a length; write it in plain digits, such as 1/8 in'],
    ["setup: {weights: [[1]]}", "setup.weights.0: a list is not a mass such as 10 lb; write a mass such as 10 lb"],
    [
      "setup: {weights: [3000]}",
      'setup.weights.0: "3000" is above the most, 2204.62 lb; check the figure and its unit',
    ],
    [
      "print: {paper: 3x4}",
      "print.paper: paper of 3x4 is too small for the check squares; it takes 4 13/16 in x 5 53/64 in or more, so check its unit",
    ],
    [
      "print: {paper: zzzzzz}",
      'print.paper: "zzzzzz" is not a paper that is known; casting list papers shows what there is, or write WIDTHxHEIGHT such as 8.5x11 or 210x297mm',
    ],
    [
      "container: {shape: marks, height: 9, marks: [{height: 3, volume: [1]}]}",
      "container.marks.0.volume: a list is not a volume such as 2 qt; write a volume such as 2 qt",
    ],
  ])("%s is answered in its units", (rest, sentence) => {
    expect(told("in", rest)).toEqual([sentence]);
  });

  it("has marks of a container named in its units", () => {
    expect(() => containerFromText("marks 3", "in")).toThrow("such as 2in=1qt");
    expect(() => containerFromText("marks", "mm")).toThrow("such as marks 50mm=1L 100mm=2.1L");
  });
});

describe("a negative figure", () => {
  it.each([
    ["mm", "tool: {diameter: -300}", 'tool.diameter: "-300" is negative; write a length of 5 mm or more'],
    ["in", "grooves: {cutter: -1/8}", 'grooves.cutter: "-1/8" is negative; write a length of 0.004 in or more'],
    ["mm", "tool: {rim: -3 mm}", 'tool.rim: "-3 mm" is negative; write a length of 0 mm or more'],
    ["mm", "plaster: {water: -0.3}", 'plaster.water: "-0.3" is negative; write a number of 0.18 or more'],
    ["mm", "plaster: {spare: -10%}", 'plaster.spare: "-10%" is negative; write a share of 0 % or more'],
    ["mm", "plaster: {fill: -3}", 'plaster.fill: "-3" is negative; write auto, or a length of 0.5 mm or more'],
    ["mm", "setup: {weights: [-4 kg]}", 'setup.weights.0: "-4 kg" is negative; write a mass of 0 kg or more'],
    ["mm", "layout: {seed: -1}", 'layout.seed: "-1" is not a whole number; write a whole number from 0 to 4294967295'],
  ] as const)("%s: %s is answered with what may be", (units, rest, sentence) => {
    expect(told(units, rest)).toEqual([sentence]);
  });

  it("is refused for its unit first", () => {
    expect(told("mm", "tool: {rim: -3 kg}")[0]).toMatch(/^tool.rim: "-3 kg" has a unit that a length cannot have/);
  });
});

// What is said of a figure that is refused, word by word, and the edges at which one way of writing turns into another.
import { describe, expect, it } from "vitest";
import { CastingError } from "../../packages/casting-core/src/errors.js";
import {
  followsText,
  massText,
  minutesText,
  roughLength,
  volumeText,
} from "../../packages/casting-core/src/units/figure-text.js";
import {
  parseLength,
  parseMass,
  parseNumber,
  parseShare,
  parseVolume,
  shown,
} from "../../packages/casting-core/src/units/parse.js";

/** The one fault of a figure: of the whole, invalid. */
function refusal(act: () => number): string {
  try {
    return `read as ${act()}`;
  } catch (error) {
    expect(error).toBeInstanceOf(CastingError);
    const { kind, faults } = error as CastingError;
    expect({ kind, paths: faults.map(({ path }) => path) }).toEqual({ kind: "invalid", paths: [[]] });
    return faults[0]!.text;
  }
}

describe("the sentence on a figure that is refused", () => {
  const mm = (text: string) => parseLength(text, "mm");
  it.each([
    [mm, "x", '"x" is not a length; write 32 mm or 1 1/4 in'],
    [parseVolume, "x", '"x" is not a volume; write 1.5 L, 850 mL or 2 qt'],
    [parseMass, "x", '"x" is not a mass; write 4.5 kg, 450 g or 10 lb'],
    [parseShare, "x", '"x" is not a share; write 10% or 0.1'],
    [parseNumber, "x", '"x" is not a number; write a number without a unit, such as 3.8'],
    [mm, "1".repeat(33), "a length of 33 characters is not one; write for example 32 mm"],
    [parseVolume, "1".repeat(33), "a volume of 33 characters is not one; write for example 1.5 L"],
    [parseMass, "1".repeat(33), "a mass of 33 characters is not one; write for example 4.5 kg"],
    [parseShare, "1".repeat(33), "a share of 33 characters is not one; write for example 10%"],
    [parseNumber, "1".repeat(33), "a number of 33 characters is not one; write for example 3.8"],
    [mm, "-3 mm", '"-3 mm" is negative; write a length without the minus'],
    [mm, "40 in/min", '"40 in/min" is a speed, not a length; write how far it goes in a minute, 40 in'],
    [mm, "1.5 m / min", '"1.5 m / min" is a speed, not a length; write how far it goes in a minute, 1.5 m'],
    [mm, "x/min", '"x/min" is not a length; write 32 mm or 1 1/4 in'],
    [mm, "2e3", '"2e3" is not a length; write it in plain digits, such as 32 mm'],
    [mm, "2e-3", '"2e-3" is not a length; write it in plain digits, such as 32 mm'],
    [mm, "2E3 mm", '"2E3 mm" is not a length; write it in plain digits, such as 32 mm'],
    [mm, "0x10", '"0x10" is not a length; write it in plain digits, such as 32 mm'],
    [mm, "1 ft 12 in", '"1 ft 12 in" is not a length; write its inches as a number below 12'],
    [mm, "1 ft 1/0 in", '"1 ft 1/0 in" is not a length; write its inches as a number below 12'],
    [parseNumber, "30%", '"30%" is not a plain number; write 0.3'],
    [mm, "32,5 mm", '"32,5 mm" is not a length; write it with a decimal point, "32.5 mm"'],
    [mm, "+32,55 mm", '"+32,55 mm" is not a length; write it with a decimal point, "+32.55 mm"'],
    [
      mm,
      "3 kg",
      `"3 kg" has a unit that a length cannot have; the units are mm, cm, m, um, in, inch, inches, ", ft, '`,
    ],
    [
      parseVolume,
      "3 mm",
      '"3 mm" has a unit that a volume cannot have; the units are mL, ml, L, l, in3, cu in, US fl oz, fl oz, US qt, qt',
    ],
    [parseMass, "3 mm", '"3 mm" has a unit that a mass cannot have; the units are kg, g, oz, lb'],
    [parseShare, "3 mm", '"3 mm" has a unit that a share cannot have; the units are %'],
    [parseNumber, "3 mm", '"3 mm" has a unit that a number cannot have; write a number without a unit, such as 3.8'],
    [mm, "1 4/4 in", '"1 4/4 in" is not a length; write 32 mm or 1 1/4 in'],
    [mm, "a 2,5", '"a 2,5" is not a length; write 32 mm or 1 1/4 in'],
    [mm, "3 +4 mm", '"3 +4 mm" is not a length; write 32 mm or 1 1/4 in'],
    [mm, "x1 ft 2 in", '"x1 ft 2 in" is not a length; write 32 mm or 1 1/4 in'],
  ])("%o %s", (parse, text, sentence) => {
    expect(refusal(() => parse(text))).toBe(sentence);
  });

  it("shows what was written, safely and no longer than a line bears", () => {
    expect(shown("a\u0007b\u202ec")).toBe('"a?b?c"');
    expect(shown("x".repeat(40))).toBe(`"${"x".repeat(40)}"`);
    expect(shown("x".repeat(41))).toBe(`"${"x".repeat(39)}…"`);
  });
});

describe("every spelling", () => {
  it.each([
    ["¼", 1 / 4],
    ["½", 1 / 2],
    ["¾", 3 / 4],
    ["⅐", 1 / 7],
    ["⅑", 1 / 9],
    ["⅒", 1 / 10],
    ["⅓", 1 / 3],
    ["⅔", 2 / 3],
    ["⅕", 1 / 5],
    ["⅖", 2 / 5],
    ["⅗", 3 / 5],
    ["⅘", 4 / 5],
    ["⅙", 1 / 6],
    ["⅚", 5 / 6],
    ["⅛", 1 / 8],
    ["⅜", 3 / 8],
    ["⅝", 5 / 8],
    ["⅞", 7 / 8],
  ])("%s is its fraction", (letter, value) => {
    expect(parseLength(`${letter} in`, "mm")).toBeCloseTo(value * 25.4, 9);
    expect(parseLength(`2${letter} in`, "mm")).toBeCloseTo((2 + value) * 25.4, 9);
  });

  it.each([
    ["32\u00a0mm", 32],
    ["32\u202fmm", 32],
    ["+32 mm", 32],
    ["5\u20448 in", 15.875],
    ["4/4 in", 25.4],
    ["12 ft 2 in", 12 * 304.8 + 50.8],
    ["1 ft - 2 in", 355.6],
    ["1 ft-2 in", 355.6],
    ["1 ft .25 in", 311.15],
    ["1 ft 11.99 in", 304.8 + 11.99 * 25.4],
    [`${"0".repeat(3)}32${" ".repeat(25)}mm`, 32],
  ])("%s is %d mm", (text, mm) => expect(parseLength(text, "mm")).toBeCloseTo(mm, 9));
});

describe("the edges of a way of writing", () => {
  it("of volumes and masses", () => {
    expect([volumeText(9.94, "mm"), volumeText(10, "mm"), volumeText(1000, "mm")]).toEqual([
      "9.9 mL",
      "10 mL",
      "1.00 L",
    ]);
    expect(volumeText(946.352946 / 4, "in")).toBe("0.25 US qt");
    expect([massText(0, "mm"), massText(0.01, "mm"), massText(1, "mm")]).toEqual(["0 kg", "10 g", "1.000 kg"]);
  });

  it("of times", () => {
    expect([9.94, 9.95, 12.4, 59.4].map(minutesText)).toEqual(["9.9 min", "10 min", "12 min", "59 min"]);
    expect([59.5, 60, 220.2].map(minutesText)).toEqual(["1 h 0 min", "1 h 0 min", "3 h 40 min"]);
  });

  it("of worked-out lengths: 64ths in inches, tenths in mm", () => {
    expect([roughLength(10.03, "in"), roughLength(10.03, "mm")]).toEqual(["25/64 in", "10 mm"]);
  });

  it("of what a run leads to", () => {
    expect([0.923, 0.5, 0.499, 0.2, 0.073, 0, -0.19, -0.2].map(followsText)).toEqual([
      "follows the target to 92.3 %",
      "follows the target to 50.0 %",
      "follows the target in part only (49.9 %)",
      "follows the target in part only (20.0 %)",
      "hardly follows the target (7.3 %)",
      "hardly follows the target (0.0 %)",
      "hardly follows the target (-19.0 %)",
      "leads away from the target (-20.0 %)",
    ]);
  });
});

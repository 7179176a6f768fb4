import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lengthText } from "../../packages/casting-core/src/units/length-text.js";
import {
  parseLength,
  parseMass,
  parseNumber,
  parseShare,
  parseVolume,
} from "../../packages/casting-core/src/units/parse.js";

describe("lengths", () => {
  it.each([
    ["32 mm", 32],
    ["3.2cm", 32],
    ["0.4 m", 400],
    ["250 µm", 0.25],
    ["250 μm", 0.25],
    ["250um", 0.25],
    ["1.25 in", 31.75],
    ['5/8"', 15.875],
    ["5/8 in", 15.875],
    ["1 1/4 in", 31.75],
    ['1-1/4"', 31.75],
    ['1¼"', 31.75],
    ["1 ¼ in", 31.75],
    ["½ in", 12.7],
    ["⅝″", 15.875],
    ["7⅞ in", 200.025],
    ["1 ft 2 in", 355.6],
    ["1ft2in", 355.6],
    [`1'-2 1/2"`, 368.3],
    [`1' 2½"`, 368.3],
    [`1'-2½"`, 368.3],
    [`1'-½"`, 317.5],
    ["1’ 2”", 355.6],
    ["2 ft", 609.6],
    ["2'", 609.6],
    ["12", 12],
    [" 12 ", 12],
    [".5 in", 12.7],
    ["1/2", 0.5],
    ["1⁄2 in", 12.7],
    ["1.5 inch", 38.1],
    ["12\u00a0mm", 12],
    ["0", 0],
    ["0.001 mm", 0.001],
  ])("%j is %d mm", (text, mm) => {
    expect(parseLength(text, "mm")).toBe(mm);
  });

  it("takes a bare number in the job's units", () => {
    expect(parseLength("12", "in")).toBe(304.8);
    expect(parseLength("5/8", "in")).toBe(15.875);
    expect(parseLength("12 mm", "in")).toBe(12);
  });

  // None of these may come out as a number: each could be read two ways, or not at all.
  it.each(
    [
      "",
      " ",
      "mm",
      "1,5 mm",
      "1.5,2 mm",
      "1,500 mm",
      "1 500 mm",
      "1.5.2 mm",
      "--3 mm",
      "-3 mm",
      "- 3 mm",
      "3-",
      "3 -mm",
      "1e3",
      "1E3 mm",
      "1e999",
      "0x10",
      "0b1",
      "0o7",
      "NaN",
      "nan mm",
      ".nan",
      "Infinity",
      ".inf",
      "∞ mm",
      "١٢ mm",
      "１２ mm",
      "twelve",
      "12 furlong",
      "12 m m",
      "12 mm mm",
      "12 mm 3",
      "3 4",
      "3 4 mm",
      "1/2/3 in",
      "1/0 in",
      "0/0",
      "5/4/2",
      "1 5/4 in",
      "1-2-3",
      "1 1.5/2 in",
      "1.5 1/2 in",
      "1/2 1/2 in",
      "¼¼ in",
      "1¼½ in",
      "1 ft 13 in",
      "1 ft -2 in",
      "1 ft 2 ft",
      "1 in 2 ft",
      "1'2'",
      `1"2"`,
      `1'2"3`,
      "12 mm in",
      "12 kg",
      "12 L",
      "12 %",
      "12%",
      "12°",
      "$12",
      "12 mm; rm",
      "<b>12</b>",
      "12\nmm 3",
      "1_000",
      "1.",
      ".",
      "/",
      "1/",
      "/2",
      "+",
      "+-3",
      "12 mmm",
      "12 MM",
      "12 In",
      "9".repeat(400),
      `${"0".repeat(40)}1 mm`,
      "12\u200b mm",
      "\u202e21 mm",
      "12mm12",
      "true",
      "null",
      "{}",
      "[1]",
    ].map((text) => [text]),
  )("%j is refused", (text) => {
    expect(() => parseLength(text, "mm")).toThrow(/write|unit|negative/);
  });

  it("hints at the decimal point", () => {
    expect(() => parseLength("2,5 mm", "mm")).toThrow(
      '"2,5 mm" is not a length; write it with a decimal point, "2.5 mm"',
    );
  });

  it("reads back what it writes, to 1e-9 of what was written", () => {
    const millimetres = fc.integer({ min: 0, max: 5_000_000 }).map((n) => n / 1000);
    fc.assert(
      fc.property(millimetres, (mm) => {
        expect(parseLength(lengthText(mm, "mm"), "mm")).toBeCloseTo(mm, 9);
      }),
    );
    const parts = fc.integer({ min: 0, max: 20_000 }).map((n) => (n / 64) * 25.4);
    fc.assert(
      fc.property(parts, (mm) => {
        expect(parseLength(lengthText(mm, "in"), "in")).toBeCloseTo(mm, 9);
      }),
    );
  });

  it("reads whole inches and fractions in every spelling alike", () => {
    const fraction = fc.record({ whole: fc.integer({ min: 0, max: 99 }), over: fc.integer({ min: 1, max: 63 }) });
    fc.assert(
      fc.property(fraction, ({ whole, over }) => {
        const value = (whole + over / 64) * 25.4;
        const spellings = [`${whole} ${over}/64 in`, `${whole}-${over}/64"`, `${whole}  ${over} / 64 in`];
        for (const text of spellings) expect(parseLength(text, "mm")).toBeCloseTo(value, 9);
      }),
    );
  });
});

describe("volumes, masses, shares, numbers", () => {
  it.each([
    ["1.5 L", 1500],
    ["850 mL", 850],
    ["850ml", 850],
    ["2 qt", 1892.705892],
    ["2 US qt", 1892.705892],
    ["8 fl oz", 236.5882365],
    ["10 in³", 163.87064],
    ["10 in3", 163.87064],
    ["2", 2000],
  ])("%j is %d mL", (text, mL) => expect(parseVolume(text)).toBeCloseTo(mL, 9));

  it.each([
    ["4.5 kg", 4.5],
    ["450 g", 0.45],
    ["10 lb", 4.5359237],
    ["8 oz", 0.226796185],
    ["3", 3],
  ])("%j is %d kg", (text, kg) => expect(parseMass(text)).toBeCloseTo(kg, 9));

  it.each([
    ["10%", 0.1],
    ["10 %", 0.1],
    ["0.1", 0.1],
    ["12.5%", 0.125],
  ])("%j is the share %d", (text, share) => expect(parseShare(text)).toBeCloseTo(share, 12));

  it("refuses units of another kind", () => {
    expect(() => parseVolume("2 gal")).toThrow(/unit that a volume cannot have/);
    expect(() => parseVolume("3 ML")).toThrow();
    expect(() => parseMass("3 mm")).toThrow();
    expect(() => parseShare("3 mm")).toThrow();
    expect(() => parseNumber("3 mm")).toThrow(/write a number without a unit/);
  });
});

describe("a comma", () => {
  it.each([
    ["2,5 mm", 'write it with a decimal point, "2.5 mm"'],
    ["0,642 mm", 'write it with a decimal point, "0.642 mm"'],
    ["1234,567 mm", 'write it with a decimal point, "1234.567 mm"'],
    ["1,6000 mm", 'write it with a decimal point, "1.6000 mm"'],
    ["1,600 mm", 'write it without a comma, "1600 mm", or with a decimal point, "1.600 mm"'],
    ["1,250,000 um", 'write it without a comma, "1250000 um"'],
    ["1,234.5 mm", 'write "1234.5 mm"'],
    ["1.234,5 mm", 'write "1234.5 mm"'],
    ["1,5.5 mm", "write it with one decimal point and no comma"],
    [",5 mm", 'write it with a decimal point, ".5 mm"'],
    ["1 ft 2,5 in", 'write it with a decimal point, "1 ft 2.5 in"'],
    [`1'-2,5"`, `write it with a decimal point, "1'-2.5""`],
  ])("%s is answered with every reading that it may have", (text, remedy) => {
    expect(() => parseLength(text, "mm")).toThrow(`"${text}" is not a length; ${remedy}`);
  });
});

// Conversions against a general-purpose library of units, convert.
import { convert } from "convert";
import { expect, test } from "vitest";
import { catalogueItem } from "../../packages/casting-core/src/pieces/catalogue.js";
import { plasterNamed } from "../../packages/casting-core/src/pour/gypsum.js";
import { mixFromOptions } from "../../packages/casting-core/src/pour/without-job.js";
import { lengthText } from "../../packages/casting-core/src/units/length-text.js";
import { parseLength, parseMass, parseVolume } from "../../packages/casting-core/src/units/parse.js";

test("inch nuts in mm", () => {
  const half = catalogueItem("asme-b18.2.2-1/2")!.piece;
  expect(half).toMatchObject({ across: convert(0.75, "in").to("mm"), thickness: convert(7 / 16, "in").to("mm") });
});

test("strengths printed in psi", () => {
  const pascal = convert(10000, "psi").to("Pa");
  expect(plasterNamed("gypsum-cement-32")!.strength / (pascal / 1e6)).toBeCloseTo(1, 6);
});

test("volumes in mL from lengths in mm", () => {
  const { moldVolume } = mixFromOptions({ tool: 100, fill: 10 }).pour;
  expect(moldVolume / convert(Math.PI * 50 * 50 * 10, "mm3").to("mL")).toBeCloseTo(1, 12);
});

test("lengths printed in inches", () => {
  for (const inches of [0.125, 0.75, 3, 0.123]) {
    const [whole = "", fraction] = lengthText(convert(inches, "in").to("mm"), "in").replace(" in", "").split(" ");
    const value = [whole, fraction ?? "0"].map((part) =>
      part
        .split("/")
        .map(Number)
        .reduce((a, b) => a / b),
    );
    expect(value[0]! + value[1]!).toBeCloseTo(inches, 2);
  }
});

test("lengths, volumes and masses as a maker writes them", () => {
  const near = (found: number, wanted: number) => expect(found / wanted).toBeCloseTo(1, 9);
  near(parseLength("5/8 in", "mm"), convert(0.625, "in").to("mm"));
  near(parseLength("1 ft 2 1/2 in", "mm"), convert(14.5, "in").to("mm"));
  near(parseLength("2 ft", "mm"), convert(2, "ft").to("mm"));
  near(parseLength("3.2 cm", "mm"), convert(3.2, "cm").to("mm"));
  near(parseLength("0.4 m", "mm"), convert(0.4, "m").to("mm"));
  near(parseLength("250 um", "mm"), convert(250, "µm").to("mm"));
  near(parseVolume("2 qt"), convert(2, "US liquid quart").to("mL"));
  near(parseVolume("8 fl oz"), convert(8, "US fluid ounce").to("mL"));
  near(parseVolume("10 in3"), convert(10, "in3").to("mL"));
  near(parseMass("10 lb"), convert(10, "lb").to("kg"));
  near(parseMass("8 oz"), convert(8, "oz").to("kg"));
});

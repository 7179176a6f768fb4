// Conversions against a general-purpose library of units, convert.
import { convert } from "convert";
import { expect, test } from "vitest";
import { catalogueItem } from "../../packages/casting-core/src/pieces/catalogue.js";
import { plasterNamed } from "../../packages/casting-core/src/pour/gypsum.js";
import { mixFromOptions } from "../../packages/casting-core/src/pour/without-job.js";

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

import { expect, test } from "vitest";
import { lengthText, lengthTexts } from "../../packages/casting-core/src/units/length-text.js";

test.each([
  [12.5, "12.5 mm", "0.492 in"],
  [25.4, "25.4 mm", "1 in"],
  [31.75, "31.75 mm", "1 1/4 in"],
  [15.875, "15.875 mm", "5/8 in"],
  [300, "300 mm", "11 13/16 in"],
  [0.3, "0.3 mm", "0.012 in"],
  [0, "0 mm", "0 in"],
  [-0.0001, "0 mm", "0 in"],
  [0.0033, "0.003 mm", "0.0001 in"],
  [-31.75, "-31.75 mm", "-1 1/4 in"],
  [0.396875, "0.397 mm", "1/64 in"],
])("%d mm", (mm, metric, inch) => {
  expect([lengthText(mm, "mm"), lengthText(mm, "in")]).toEqual([metric, inch]);
});

test("lengths beside each other are all fractions of an inch, or all decimals", () => {
  expect(lengthTexts([25.4, 15.875], "in")).toEqual(["1 in", "5/8 in"]);
  expect(lengthTexts([2.11, 1.19], "in")).toEqual(["0.083 in", "0.047 in"]);
  expect(lengthTexts([25.4, 12.5], "in")).toEqual(["1 in", "0.492 in"]);
  expect(lengthTexts([25.4, 12.5], "mm")).toEqual(["25.4 mm", "12.5 mm"]);
});

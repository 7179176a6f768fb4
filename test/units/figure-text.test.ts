import { describe, expect, it } from "vitest";
import {
  axisText,
  closeLength,
  coarseLength,
  depthText,
  fineLength,
  fixed,
  lightText,
  massText,
  pressureText,
  riseText,
  roughLength,
  rpmText,
  shareText,
  slopeText,
  speedText,
  temperatureText,
  volumeText,
} from "../../packages/casting-core/src/units/figure-text.js";

describe("figures for people", () => {
  it("writes volumes and masses in the job's units", () => {
    expect(volumeText(849.6, "mm")).toBe("850 mL");
    expect(volumeText(2345.6, "mm")).toBe("2.35 L");
    expect(volumeText(946.352946, "in")).toBe("1.00 US qt");
    expect(massText(0.4312, "mm")).toBe("431 g");
    expect(massText(2.4312, "mm")).toBe("2.431 kg");
    expect(massText(0.45359237, "in")).toBe("1.00 lb");
    expect([volumeText(6.26, "mm"), volumeText(29.5735295625, "in")]).toEqual(["6.3 mL", "1.00 US fl oz"]);
    expect([massText(0.0031, "mm"), massText(0.0283495231, "in"), massText(0, "in")]).toEqual([
      "3.1 g",
      "1.00 oz",
      "0 lb",
    ]);
  });

  it("writes a speed of turning as it was given", () => {
    expect([30, 33.3, 16.666_667].map(rpmText)).toEqual(["30 rpm", "33.3 rpm", "16.67 rpm"]);
  });

  it("rounds worked-out lengths to what a bench can use", () => {
    expect(roughLength(123.4567, "mm")).toBe("123.5 mm");
    expect(roughLength(31.76, "in")).toBe("1 1/4 in");
  });

  it("rounds a length once, in the unit it is told in", () => {
    // 15.2146 mm are 0.599 in; rounded to 15.21 mm first it would be 0.5988.
    expect([closeLength(15.2146, "in"), closeLength(15.2146, "mm")]).toEqual(["0.599 in", "15.21 mm"]);
    expect([coarseLength(2521.399, "in"), coarseLength(2521.399, "mm")]).toEqual(["99.27 in", "2521 mm"]);
    expect(coarseLength(2540, "in")).toBe("100 in");
  });

  it("tells a depth of glass in µm while it is small, in inches in an inch job", () => {
    expect([137, 999.4, 999.5, 10517].map((depth) => depthText(depth, "mm"))).toEqual([
      "137 µm",
      "999 µm",
      "1.00 mm",
      "10.52 mm",
    ]);
    expect(depthText(137, "in")).toBe("0.0054 in");
    expect([0.3, 1].map((depth) => depthText(depth, "mm"))).toEqual(["0.3 µm", "1 µm"]);
  });

  it("tells slopes, speeds and small pieces in the maker's units", () => {
    expect([slopeText(1, "mm"), slopeText(1, "in")]).toEqual(["1 mm per m", "0.012 in per ft"]);
    expect([speedText(0.6283, "mm"), speedText(0.3048, "in")]).toEqual(["0.63 m/s", "1.00 ft/s (0.30 m/s)"]);
    expect([5.36, 0.946, 0.0312].map((grams) => lightText(grams, "mm"))).toEqual(["5.4 g", "0.95 g", "0.031 g"]);
    expect(lightText(5.36, "in")).toBe("0.19 oz");
  });

  it("never makes a fraction of what was measured", () => {
    expect([fineLength(1.19, "in"), fineLength(6.5434, "mm")]).toEqual(["0.0469 in", "6.543 mm"]);
  });

  it("brings the direction of an axis back to 0 after half a turn", () => {
    expect([0, 44.6, 179.4, 179.6, 180].map(axisText)).toEqual(["0", "45", "179", "0", "0"]);
  });

  it("writes no minus zero", () => {
    expect(fixed(-0.0001, 2)).toBe("0.00");
    expect([massText(0.00003, "mm"), massText(0.0001, "in")]).toEqual(["0.03 g", "0.0035 oz"]);
    expect([volumeText(0.04, "mm"), volumeText(0.1, "in"), volumeText(0, "in")]).toEqual([
      "0.04 mL",
      "0.0034 US fl oz",
      "0.00 US fl oz",
    ]);
    expect(shareText(0.71349)).toBe("71.3 %");
  });
});

it("tells amounts beside each other in the unit of the larger", () => {
  expect([massText(0.3, "in"), massText(0.3, "in", 2), massText(0.3, "mm", 2)]).toEqual([
    "10.58 oz",
    "0.66 lb",
    "300 g",
  ]);
  expect([volumeText(200, "in"), volumeText(200, "in", 500)]).toEqual(["6.76 US fl oz", "0.21 US qt"]);
});

describe("pressures and temperatures", () => {
  it("are told in the maker's unit, with the other beside", () => {
    // NIST SP 811: 1 psi = 6.894757 kPa; °F = 1.8 °C + 32.
    expect(pressureText(6.894757, "in")).toBe("1.00 psi (6.9 kPa)");
    expect(pressureText(6.894757, "mm")).toBe("6.9 kPa (1.00 psi)");
    expect(pressureText(0.42, "mm")).toBe("0.42 kPa (0.06 psi)");
    expect(pressureText(0.03, "in")).toBe("0.0044 psi (0.03 kPa)");
    expect(temperatureText(100, "in")).toBe("212 °F (100 °C)");
    expect(temperatureText(40, "mm")).toBe("40 °C");
    expect(riseText(50, "in")).toBe("90 °F (50 K)");
    expect(riseText(50, "mm")).toBe("50 K");
  });
});

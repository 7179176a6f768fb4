import { describe, expect, it } from "vitest";
import {
  fineLength,
  fixed,
  massText,
  pressureText,
  riseText,
  roughLength,
  shareText,
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

  it("rounds worked-out lengths to what a bench can use", () => {
    expect(roughLength(123.4567, "mm")).toBe("123.5 mm");
    expect(roughLength(31.76, "in")).toBe("1 1/4 in");
  });

  it("never makes a fraction of what was measured", () => {
    expect([fineLength(1.19, "in"), fineLength(6.5434, "mm")]).toEqual(["0.0469 in", "6.543 mm"]);
  });

  it("writes no minus zero", () => {
    expect(fixed(-0.0001, 2)).toBe("0.00");
    expect(shareText(0.71349)).toBe("71.3 %");
  });
});

describe("pressures and temperatures", () => {
  it("are told in the maker's unit, with the other beside", () => {
    // NIST SP 811: 1 psi = 6.894757 kPa; °F = 1.8 °C + 32.
    expect(pressureText(6.894757, "in")).toBe("1.00 psi (6.9 kPa)");
    expect(pressureText(6.894757, "mm")).toBe("6.9 kPa (1.00 psi)");
    expect(pressureText(0.42, "mm")).toBe("0.42 kPa (0.06 psi)");
    expect(temperatureText(100, "in")).toBe("212 °F (100 °C)");
    expect(temperatureText(40, "mm")).toBe("40 °C");
    expect(riseText(50, "in")).toBe("90 °F (50 K)");
    expect(riseText(50, "mm")).toBe("50 K");
  });
});

import { expect, test } from "vitest";
import { capVolume, radiusFromSagitta, sagittaOf } from "../../packages/casting-core/src/blank/sphere.js";

test("caps of the mathematical tables", () => {
  // V = π s² (3R − s) / 3 (CRC Standard Mathematical Tables); R 10, s 3 has the base radius √51.
  expect(capVolume(10, Math.sqrt(51))).toBeCloseTo(254.469, 4);
  expect(capVolume(5, 4)).toBeCloseTo(54.4543, 4);
  expect(capVolume(5, 5)).toBeCloseTo(261.7994, 4);
});

test("a contact lens of 7.8 mm over 1.0 mm", () => {
  // Benjamin & Rosenblum, Int. Contact Lens Clinic 19 (1992) 76–83, table 1, first row: 0.016 mm.
  expect(sagittaOf(7.8, 0.5)).toBeCloseTo(0.016, 3);
});

test.each([
  [200, 2000, 2.501564, 39302.68],
  [150, 1800, 1.563179, 13813.82],
  [300, 2400, 4.692087, 165886.1],
  [203.2, 2032, 2.541589, 41219.55],
])("a mirror of %d mm with R %d mm", (diameter, radius, sagitta, volume) => {
  // Pure geometry, worked out apart from this code to seven digits: s = R − √(R² − r²), V = π s² (3R − s) / 3.
  expect(sagittaOf(radius, diameter / 2)).toBeCloseTo(sagitta, 6);
  expect(capVolume(radius, diameter / 2) / volume).toBeCloseTo(1, 6);
});

test("two plastic mirrors measured by ruler", () => {
  // Chord 56 cm, sagitta 14.5 cm and 12 cm: R 34.28 and 38.67 cm, by R = (a² + h²) / 2h (Oxford Dictionary of Physics, "spherometer").
  expect(radiusFromSagitta(145, 280)).toBeCloseTo(342.845, 3);
  expect(radiusFromSagitta(120, 280)).toBeCloseTo(386.667, 3);
});

test("a long radius keeps its digits", () => {
  // r²/2R (1 + r²/4R² + …): at R = 1 km over 100 mm the series ends after two terms within double precision.
  const series = (50 * 50) / 2e6 + 50 ** 4 / (8 * 1e18);
  expect(sagittaOf(1e6, 50) / series).toBeCloseTo(1, 14);
});

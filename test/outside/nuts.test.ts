import { describe, expect, test } from "vitest";
import { catalogueItem } from "../../packages/casting-core/src/pieces/catalogue.js";

function nut(item: string) {
  const piece = catalogueItem(item)?.piece;
  if (piece?.shape !== "hexagon") throw new Error(`${item} is no nut`);
  return piece;
}

describe("ISO 4032:2001 (thread minor diameters: ISO 724)", () => {
  test.each([
    ["m5", 8, 4.7, 4.134],
    ["m6", 10, 5.2, 4.917],
    ["m8", 13, 6.8, 6.647],
    ["m10", 16, 8.4, 8.376],
    ["m12", 18, 10.8, 10.106],
    ["m14", 21, 12.8, 11.835],
    ["m16", 24, 14.8, 13.835],
    ["m18", 27, 15.8, 15.294],
    ["m20", 30, 18, 17.294],
    ["m22", 34, 19.4, 19.294],
    ["m24", 36, 21.5, 20.752],
  ])("%s: s %d, m %d, hole %d", (size, across, height, hole) => {
    const piece = nut(`iso-4032-${size}`);
    expect([piece.across, piece.thickness]).toEqual([across, height]);
    expect(Math.abs(piece.bore! - hole)).toBeLessThan(0.0007);
  });
});

describe("DIN 934, where it differs", () => {
  test.each([
    ["m10", 17, 8],
    ["m12", 19, 10],
    ["m16", 24, 13],
    ["m24", 36, 19],
  ])("%s: s %d, m %d", (size, across, height) => {
    const piece = nut(`din-934-${size}`);
    expect([piece.across, piece.thickness]).toEqual([across, height]);
  });
});

describe("ASME B18.2.2 finished hex nuts, inches", () => {
  test.each([
    ["1/4", 0.505, 0.226, 0.212, 0.196],
    ["5/16", 0.577, 0.273, 0.258, 0.252],
    ["3/8", 0.65, 0.337, 0.32, 0.307],
    ["7/16", 0.794, 0.385, 0.365, 0.36],
    ["1/2", 0.866, 0.448, 0.427, 0.417],
    ["9/16", 1.01, 0.496, 0.473, 0.472],
    ["5/8", 1.083, 0.559, 0.535, 0.527],
    ["3/4", 1.299, 0.665, 0.617, 0.642],
    ["7/8", 1.516, 0.776, 0.724, 0.755],
    ["1", 1.732, 0.887, 0.831, 0.865],
  ])("%s: corners %d, height %d to %d, hole %d", (size, corners, highest, lowest, hole) => {
    const piece = nut(`asme-b18.2.2-${size}`);
    // The greatest width across corners is that of sharp corners on the basic width.
    expect(Math.abs((piece.across * 2) / Math.sqrt(3) / 25.4 - corners)).toBeLessThan(0.001);
    expect(piece.thickness / 25.4).toBeGreaterThan(lowest);
    expect(piece.thickness / 25.4).toBeLessThan(highest);
    expect(Math.abs(piece.bore! / 25.4 - hole)).toBeLessThan(0.0011);
  });
});

test.each([
  ["m5", 5.3, 10, 1],
  ["m8", 8.4, 16, 1.6],
  ["m12", 13, 24, 2.5],
  ["m24", 25, 44, 4],
])("ISO 7089 washer %s: %d / %d x %d", (size, bore, diameter, height) => {
  expect(catalogueItem(`iso-7089-${size}`)?.piece).toMatchObject({ bore, diameter, thickness: height });
});

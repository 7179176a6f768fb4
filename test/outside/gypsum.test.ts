import { describe, expect, test } from "vitest";
import { BOUND_WATER, driedMass, freeWater, WATER_DENSITY } from "../../packages/casting-core/src/pour/chemistry.js";
import { castHeatCapacity, heatOf } from "../../packages/casting-core/src/pour/heat.js";
import { plasterOf } from "../../packages/casting-core/src/pour/plaster.js";

/** lb/ft³ in kg/L, from the international pound and foot. */
const POUND_PER_CUBIC_FOOT = 0.45359237 / (0.3048 * 0.3048 * 0.3048 * 1000);

describe("makers' data sheets of plasters by consistency: wet within 1 %, dry within 1.5 %", () => {
  test.each([
    ["hobby-65", 0.65, 100, 72.5],
    ["pottery-70", 0.7, 99, 69],
    ["pottery-74", 0.74, 97.6, 66],
    ["gypsum-cement-45", 0.45, 110.6, 90],
    ["gypsum-cement-40", 0.4, 113, 96],
    ["gypsum-cement-38", 0.38, 115, 99],
    ["gypsum-cement-32", 0.32, 119.4, 108.7],
    ["gypsum-cement-22", 0.22, 129, 127.1],
  ])("%s", (kind, water, wet, dry) => {
    const plaster = plasterOf({ kind });
    expect(plaster.water).toBe(water);
    expect(Math.abs(plaster.wetDensity / POUND_PER_CUBIC_FOOT / wet - 1)).toBeLessThan(0.01);
    expect(Math.abs(plaster.dryDensity / POUND_PER_CUBIC_FOOT / dry - 1)).toBeLessThan(0.015);
  });
});

test("1 kg of hemihydrate binds 186.2 g of water", () => {
  // Molar masses: BRGM Thermoddem, bassanite 145.149, gypsum 172.172 g/mol.
  expect(Math.abs(1000 * BOUND_WATER - 186.2)).toBeLessThan(0.3);
  expect(Math.abs(1000 * driedMass(0.5) - (1000 * 172.172) / 145.149)).toBeLessThan(0.3);
});

test("drying a cast of consistency 70 loses 30.3 % of its wet mass", () => {
  // Maker's data sheet: 99.0 lb/ft³ wet, 69.0 dry.
  expect(Math.abs((100 * freeWater(0.7)) / 1.7 - 30.3)).toBeLessThan(0.3);
});

test("water at 20 °C weighs 0.998 kg/L", () => {
  // CRC Handbook of Chemistry and Physics: 0.99821; value from memory.
  expect(Math.abs(WATER_DENSITY - 0.99821)).toBeLessThan(0.0003);
});

describe("adiabatic rise", () => {
  test.each([
    ["pottery-70", 0.7, 38.6],
    ["type-2", 0.5, 51.1],
    ["gypsum-cement-40", 0.4, 54.3],
    ["type-3", 0.3, 67.2],
    ["type-4", 0.22, 82.9],
  ])("%s at %d: %d K", (kind, water, rise) => {
    // NBS tables of enthalpies of solution and formation with the specific heats of BRGM Thermoddem, worked out apart.
    expect(Math.abs(heatOf({ kind, water }).rise - rise)).toBeLessThan(0.15);
  });

  test("measured temperatures stay below the ceiling and near it", () => {
    // 46.9–50.8 °C in 5 L of art plaster (DGUV/IFA project 3148, 2018), mixed like pottery plaster.
    const art = heatOf({ kind: "pottery-70", water: 0.7 }).ceiling;
    expect(art).toBeGreaterThan(50.8);
    expect(art).toBeLessThan(50.8 * 1.25);
    // 70 °C in dental plaster at 0.50 (Burns 1982, doi 10.1016/0305-4179(82)90135-8).
    const dental = heatOf({ kind: "type-2", water: 0.5 }).ceiling;
    expect(dental).toBeGreaterThan(70);
    expect(dental).toBeLessThan(72);
  });
});

describe("heat of hydration, kJ per mol of hemihydrate", () => {
  test.each([
    ["alpha", "type-3", 17.1],
    ["beta", "pottery-70", 19.2],
  ])(
    "%s (NBS tables: enthalpies of solution −18 275 and −1 130 J/mol for α; β value from memory)",
    (_, kind, molar) => {
      const plaster = plasterOf({ kind });
      const perKilo = (heatOf(plaster).rise * castHeatCapacity(plaster) * plaster.yield) / 1000;
      expect(Math.abs((perKilo * 145.149) / 1000 - molar)).toBeLessThan(0.2);
    },
  );
});

import { expect, test } from "vitest";
import { heatOf } from "../../packages/casting-core/src/pour/heat.js";
import { poured } from "../support/poured.js";

test("no mix gets hotter than boiling water", () => {
  const { rise, ceiling } = heatOf({ kind: "custom", water: 0.2 });
  expect(rise).toBeGreaterThan(80);
  expect(ceiling).toBe(100);
});

test("with too little water the rest of the powder only has to be warmed", () => {
  // At 0.18 a share of 0.18 / 0.18617 sets: 118 × 0.96686 J, into 1.18 g at 1.081 less the dry powder's lower 0.823.
  const set = 0.18 / 0.186171;
  const capacity = set * 1.186171 * 1.081 + (1 - set) * 0.823;
  expect(heatOf({ kind: "type-5", water: 0.18 }).rise).toBeCloseTo((118 * set) / capacity, 3);
});

test("a thicker cast and a hotter mix stay warm longer", () => {
  const warm = (fill: number, kind = "type-3") =>
    poured({ plaster: { kind, fill, cover: 20, spare: 0.1 } }).pour.schedule.warmUntil;
  expect(warm(64)).toBeGreaterThan(warm(32) * 1.5);
  // About three hours for the sample: cooling by half in 50 min, from 67 K to 5 K.
  expect(warm(32)).toBeGreaterThan(120);
  expect(warm(32)).toBeLessThan(300);
});

test("the mold stays shut for 45 min, or twice the setting of a slow plaster", () => {
  expect(poured().pour.schedule).toMatchObject({ pourBefore: expect.closeTo(4.8, 9), openAfter: 45 });
  const cement = poured({ plaster: { kind: "gypsum-cement-40", fill: 32, cover: 20, spare: 0.1 } }).pour.schedule;
  expect(cement).toMatchObject({ pourBefore: 9, openAfter: 60 });
  expect(cement).not.toHaveProperty("betweenBatches");
});

test("forced drying: 45 °C, never above 49", () => {
  expect(poured().pour.drying).toMatchObject({ temperature: 45, limit: 49 });
});

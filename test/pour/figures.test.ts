// Figures of the pour by hand, each from its own formula.
import { describe, expect, test } from "vitest";
import type { Job, JobContainer } from "../../packages/casting-core/src/job/types.js";
import { batchesOf, capacityOf, recipe } from "../../packages/casting-core/src/pour/batches.js";
import { driedMass, freeWater } from "../../packages/casting-core/src/pour/chemistry.js";
import { alongWall, heightOf, sectionsOf, volumeAt } from "../../packages/casting-core/src/pour/container.js";
import { containerFromText } from "../../packages/casting-core/src/pour/container-text.js";
import { damPieces } from "../../packages/casting-core/src/pour/dam.js";
import { heatOf } from "../../packages/casting-core/src/pour/heat.js";
import { plasterOf } from "../../packages/casting-core/src/pour/plaster.js";
import { scheduleOf } from "../../packages/casting-core/src/pour/schedule.js";
import { shoppingOf } from "../../packages/casting-core/src/pour/shopping.js";
import { liftOf, mixPressure, piecesInMix } from "../../packages/casting-core/src/pour/weights.js";
import { mixFromOptions } from "../../packages/casting-core/src/pour/without-job.js";
import { hexagonKind } from "../support/kinds.js";
import { poured } from "../support/poured.js";

const near = (value: number, digits = 9) => expect.closeTo(value, digits);
const stone = plasterOf({ kind: "type-3" });
const plaster = { kind: "type-3", fill: 32, cover: 20, spare: 0.1 } as const;

describe("the dam", () => {
  test("of a former: 10 mm over the fill line, 20 mm held, clear of the mirror's edge by its own sheet", () => {
    expect(poured().pour.dam).toEqual({
      length: near(Math.PI * 301 + 40),
      height: 62,
      formDiameter: 300,
      formerAt: 42,
      centring: 49,
      level: { slope: 1, wedge: 0.3 },
    });
  });

  test("round a blank without a bevel", () => {
    expect(poured({ tool: { diameter: 400, rim: 3 } }).pour.dam).toEqual({
      length: near(Math.PI * 401 + 40),
      height: 62,
      formDiameter: 400,
      level: { slope: 1, wedge: 0.4 },
    });
  });

  test("from sheets that just reach, and that just do not", () => {
    const { dam } = poured().pour;
    const round = dam.length - 40;
    expect(damPieces(dam, 40, round + 40)).toEqual({ count: 1, length: near(dam.length) });
    expect(damPieces(dam, 40, round + 39)).toEqual({ count: 2, length: near(round / 2 + 40) });
    expect(damPieces(dam, 40, 5000).count).toBe(1);
  });
});

describe("the fit", () => {
  test("of a flat is even, whatever the plaster; only the rim moves out", () => {
    const { fit } = poured({ blank: { diameter: 400, curve: "flat" } }).pour;
    expect(fit).toEqual({
      expansion: { least: 0, most: 0.2 },
      mismatch: { least: 0, most: 0 },
      meets: "even",
      rimGrowth: { least: 0, most: near(0.294) },
    });
  });

  test("of a plaster that always grows has a least", () => {
    const { fit } = poured({ plaster: { ...plaster, kind: "type-5" } }).pour;
    expect(fit.expansion).toEqual({ least: 0.16, most: 0.3 });
    // The sagitta of 3.6787 mm less that of a radius 0.16 % longer, to first order 0.16 % of it.
    expect(Math.abs(fit.mismatch.least - 5.88)).toBeLessThan(0.02);
    expect(Math.abs(fit.mismatch.most - 11.02)).toBeLessThan(0.02);
    expect(fit.rimGrowth).toEqual({ least: near(0.2352), most: near(0.441) });
  });

  test("of a plaster that is not in the table is taken as up to 0.3 %", () => {
    const { fit } = poured({ plaster: { ...plaster, kind: "custom", water: 0.3 } }).pour;
    expect(fit.expansion).toEqual({ least: 0, most: 0.3 });
    expect(fit.mismatch.least).toBe(0);
  });

  test("has no bow without a thickness, or for a glass that is not known", () => {
    const glass = { diameter: 400, curve: "concave", radius: 3060 } as const;
    expect(poured({ blank: { ...glass, material: "borosilicate" } }).pour.fit).not.toHaveProperty("bow");
    expect(poured({ blank: { ...glass, thickness: 45 } }).pour.fit).not.toHaveProperty("bow");
    expect(poured({ blank: { ...glass, thickness: 45, material: "granite" } }).pour.fit).not.toHaveProperty("bow");
  });
});

describe("batches", () => {
  const round: JobContainer = { shape: "round", diameter: 200, height: 110, headroom: 10 };
  const full = Math.PI * 10 * 10 * 10;

  test("are one where the container just takes it, else as few equal ones as go", () => {
    expect(capacityOf(round)).toBeCloseTo(full, 9);
    expect(batchesOf(full, stone, round)).toHaveLength(1);
    expect(batchesOf(full * 1.001, stone, round)).toHaveLength(2);
    expect(batchesOf(full * 2, stone, round).map(({ mix }) => mix)).toEqual([near(full), near(full)]);
    expect(batchesOf(full * 24, stone, round)).toHaveLength(24);
    expect(() => batchesOf(full * 24.001, stone, round)).toThrow(/more than 24 fillings/);
    expect(() => batchesOf(full * 25, stone, round, "in")).toThrow(/ US qt below its headroom, but [\d.]+ US qt are/);
    expect(batchesOf(1, stone, round)).toHaveLength(1);
  });

  test("have their powder by the plaster's yield, their water by its ratio, and marks in the container", () => {
    const [batch] = batchesOf(full, stone, round);
    expect(batch).toEqual({
      powder: near(full / stone.yield),
      water: near((0.3 * full) / stone.yield),
      mix: near(full),
      mixMark: near(100),
      waterMark: near(((0.3 * full) / stone.yield / 0.998) * (1000 / (Math.PI * 100 * 100)) * 1000),
    });
    expect(batchesOf(full, stone)).toEqual([{ ...recipe(full, stone), mix: full }]);
    expect(recipe(1000, { yield: 500, water: 0.4 })).toEqual({ powder: 2, water: 0.8 });
  });

  test("have marks along the wall only where it leans", () => {
    const tapered: JobContainer = { shape: "tapered", bottom: 120, top: 200, height: 300, headroom: 0 };
    const [batch] = batchesOf(2000, stone, tapered);
    const lean = Math.hypot(300, 40) / 300;
    expect(batch!.mixMarkAlongWall).toBeCloseTo(batch!.mixMark! * lean, 9);
    expect(batch!.waterMarkAlongWall).toBeCloseTo(batch!.waterMark! * lean, 9);
    for (const upright of [round, { shape: "box", length: 100, width: 100, height: 300, headroom: 0 } as const]) {
      expect(batchesOf(1000, stone, upright)[0]).not.toHaveProperty("mixMarkAlongWall");
    }
  });

  test("have marks along a wall that leans further up alone", () => {
    const sections = [
      { bottom: 120, top: 120, height: 30 },
      { bottom: 120, top: 240, height: 150 },
    ];
    const [batch] = batchesOf(1000, stone, { shape: "stacked", sections, height: 180, headroom: 0 });
    expect(batch!.mixMarkAlongWall).toBeCloseTo(30 + (batch!.mixMark! - 30) * Math.hypot(1, 60 / 150), 9);
    expect(batchesOf(300, stone, { shape: "stacked", sections, height: 180, headroom: 0 })[0]).not.toHaveProperty(
      "mixMarkAlongWall",
    );
  });

  test("have none along a wall that steps below the mix", () => {
    const lower = { bottom: 100, top: 114, height: 50 };
    const stacked = (bottom: number): JobContainer => {
      const sections = [lower, { bottom, top: 140, height: 100 }];
      return { shape: "stacked", sections, height: 150, headroom: 0 };
    };
    expect(batchesOf(600, stone, stacked(127))[0]).not.toHaveProperty("mixMarkAlongWall");
    expect(batchesOf(600, stone, stacked(114))[0]!.mixMarkAlongWall).toBeGreaterThan(60);
    expect(batchesOf(300, stone, stacked(127))[0]!.mixMarkAlongWall).toBeGreaterThan(30);
  });

  test("are told with what the container holds, where its height is known", () => {
    expect(poured({ container: round }).pour.container).toEqual({ capacity: near(full) });
    expect(poured({ container: { ...round, height: Infinity } }).pour).not.toHaveProperty("container");
  });
});

describe("a container", () => {
  const stack = sectionsOf({
    shape: "stacked",
    sections: [
      { bottom: 60, top: 60, height: 40 },
      { bottom: 60, top: 120, height: 40 },
    ],
    height: 80,
    headroom: 0,
  });

  test("is measured along its wall section by section, to its top and no farther", () => {
    expect(alongWall(stack, 30)).toBe(30);
    expect(alongWall(stack, 40)).toBe(40);
    expect(alongWall(stack, 60)).toBeCloseTo(40 + 25, 9);
    expect(alongWall(stack, 80)).toBeCloseTo(40 + 50, 9);
    expect(alongWall(stack, 200)).toBeCloseTo(90, 9);
    expect(alongWall(stack, 0)).toBe(0);
  });

  test("holds nothing below its floor, and no more than its whole", () => {
    const lower = Math.PI * 3 * 3 * 4;
    const upper = (Math.PI * 4 * (9 + 18 + 36)) / 3;
    expect(volumeAt(stack, -5)).toBe(0);
    expect(volumeAt(stack, 40)).toBeCloseTo(lower, 9);
    expect(volumeAt(stack, 80)).toBeCloseTo(lower + upper, 9);
    expect(volumeAt(stack, 500)).toBeCloseTo(lower + upper, 9);
    expect(heightOf(stack, 0)).toBe(0);
    expect(heightOf(stack, lower)).toBeCloseTo(40, 9);
    expect(heightOf(stack, lower + upper)).toBeCloseTo(80, 6);
    expect(heightOf(stack, (lower + upper) * 1.00001)).toBeUndefined();
    const box = sectionsOf({ shape: "box", length: 100, width: 50, height: 40, headroom: 0 });
    expect(heightOf(box, 200)).toBe(40);
    expect(heightOf(box, 200 * (1 + 1e-10))).toBe(40);
    const can = sectionsOf({ shape: "round", diameter: 100, height: 40, headroom: 0 });
    expect(heightOf(can, Math.PI * 100 * (1 + 1e-10))).toBe(40);
    expect(
      heightOf(sectionsOf({ shape: "tapered", bottom: 100, top: 50, height: 40, headroom: 0 }), 100),
    ).toBeGreaterThan(heightOf(can, 100)!);
  });
});

describe("a container on one line", () => {
  test.each<[string, "mm" | "in", object]>([
    ["  ROUND 230 MM".toLowerCase(), "mm", { shape: "round", diameter: 230, height: Infinity, headroom: 0 }],
    ["round 9", "in", { shape: "round", diameter: 228.6, height: Infinity, headroom: 0 }],
    ["round 9-1/4 x 12", "in", { shape: "round", diameter: 234.95, height: 304.8, headroom: 0 }],
    ["round 10 11/16 in", "mm", { shape: "round", diameter: 271.4625, height: Infinity, headroom: 0 }],
    ["round 1/2ft, 10.5in 1in", "mm", { shape: "round", diameter: 152.4, height: 266.7, headroom: 25.4 }],
    ["round 9\"x1'", "mm", { shape: "round", diameter: 228.6, height: 304.8, headroom: 0 }],
    ["round 230×240×0", "mm", { shape: "round", diameter: 230, height: 240, headroom: 0 }],
    ["box 30cm 20cm 0.25m 2cm", "mm", { shape: "box", length: 300, width: 200, height: 250, headroom: 20 }],
    ["tapered 180 220 250", "mm", { shape: "tapered", bottom: 180, top: 220, height: 250, headroom: 0 }],
    [
      "marks  2=1qt   4=2qt ",
      "in",
      {
        shape: "marks",
        marks: [
          { height: 50.8, volume: near(946.352946, 6) },
          { height: 101.6, volume: near(1892.705892, 6) },
        ],
        height: 101.6,
        headroom: 0,
      },
    ],
  ])("%s", (text, units, container) => {
    expect(containerFromText(text, units)).toEqual(container);
  });

  test.each([
    ["rond 230mm", '"rond 230mm" has no known shape; did you mean round?'],
    ["mark 50mm=1L", '"mark 50mm=1L" has no known shape; did you mean marks?'],
    ["", '"" has no known shape; write round, tapered, box or marks first'],
    ["12 round", '"12 round" has no known shape; write round, tapered, box or marks first'],
    ["round", '"round" is not a round container; write round and its inside diameter, then height, headroom if wanted'],
    [
      "tapered 180 220",
      '"tapered 180 220" is not a tapered container; write tapered and its inside bottom, top, height, then headroom if wanted',
    ],
    [
      "box 1 2 3 4 5",
      '"box 1 2 3 4 5" is not a box container; write box and its inside length, width, then height, headroom if wanted',
    ],
    [
      "round 230mm!",
      '"round 230mm!" is not a round container; write round and its inside diameter, then height, headroom if wanted',
    ],
    ["round 0mm", 'its diameter of "0mm" is not more than 0; write the inside size'],
    ["round 9 0", 'its height of "0" is not more than 0; write the inside size'],
    ["round 9 8 8", "the headroom leaves nothing of the container's height; write less headroom"],
    ["marks", "the marks are missing; write them as HEIGHT=VOLUME, such as marks 50mm=1L 100mm=2.1L"],
    ["marks 50mm", '"50mm" is not a mark; write HEIGHT=VOLUME, such as 50mm=1L'],
    ["marks =1L", '"=1L" is not a mark; write HEIGHT=VOLUME, such as 50mm=1L'],
    ["marks 5mm=", '"5mm=" is not a mark; write HEIGHT=VOLUME, such as 50mm=1L'],
    ["marks 5mm=1L=2L", '"5mm=1L=2L" is not a mark; write HEIGHT=VOLUME, such as 50mm=1L'],
    ["marks 5mm=1L 5mm=2L", "mark 2 does not rise above the one before; write each with more height and volume"],
    ["marks 5mm=1L 9mm=1L", "mark 2 does not rise above the one before; write each with more height and volume"],
    ["marks 0mm=1L", "mark 1 does not rise above the one before; write each with more height and volume"],
  ])("%j is refused", (text, words) => {
    let error: unknown;
    try {
      containerFromText(text, "mm");
    } catch (thrown) {
      error = thrown;
    }
    expect(error).toMatchObject({ kind: "invalid", message: `container: ${words}` });
  });
});

describe("water", () => {
  test("below what the powder binds is all bound, and none is left to dry off", () => {
    expect(driedMass(0.1)).toBeCloseTo(1.1, 12);
    expect(freeWater(0.1)).toBe(0);
    expect(driedMass(0.5) + freeWater(0.5)).toBeCloseTo(1.5, 12);
  });
});

describe("times", () => {
  test("halve the warmth as often as it is above 5 K", () => {
    // 2 kJ/(L K) and 40 mm: ln 2 × 2000 × 40 / 20 / 60 = 46.21 min a halving; stone sets in at most 16 min.
    const warm = (rise: number) => scheduleOf(stone, 1, rise, 40, 2).warmUntil;
    expect(warm(80)).toBeCloseTo(16 + 4 * 46.2098, 2);
    expect(warm(10)).toBeCloseTo(16 + 46.2098, 3);
    expect(warm(15)).toBeCloseTo(16 + 1.5 * 46.2098, 3);
    expect(warm(5)).toBe(16);
    expect(warm(1)).toBe(16);
  });

  test("of a plaster that is not in the table are those of stone", () => {
    const custom = plasterOf({ kind: "custom", water: 0.3 });
    expect(scheduleOf(custom, 2, 5, 40, 2)).toEqual({
      pourBefore: near(4.8),
      openAfter: 45,
      warmUntil: 16,
      betweenBatches: 4,
    });
    expect(scheduleOf(custom, 1, 5, 40, 2)).not.toHaveProperty("betweenBatches");
  });

  test("of a custom plaster are as hot as the hotter crystal", () => {
    expect(heatOf({ kind: "custom", water: 0.7 })).toEqual(heatOf({ kind: "pottery-70", water: 0.7 }));
    const { rise, ceiling } = heatOf({ kind: "type-3", water: 0.3 });
    expect(ceiling).toBeCloseTo(rise + 20, 12);
  });
});

describe("weights", () => {
  test("one lifts 23 kg close by, less the farther out", () => {
    expect(liftOf(100, 23)).toEqual({ guideline: 23, people: 1 });
    expect(liftOf(100, 23.1).people).toBe(2);
    expect(liftOf(600, 11.5)).toEqual({ guideline: 11.5, people: 1 });
    expect(liftOf(600, 34.6).people).toBe(4);
  });

  test("a metre of water presses with 9.8 kPa", () => {
    expect(mixPressure(1, 1000)).toBeCloseTo(9.80665, 9);
  });

  test("a piece slides below 3 g in the mix, and floats where it is no denser", () => {
    // 10 mL each, in a mix of 2 kg/L.
    const kind = (density: number) => hexagonKind(20, { area: 1000, thickness: 10, density });
    expect(piecesInMix([kind(2.3), kind(2.301), kind(2.299)], 2)).toEqual([
      { kind: 0, mass: near(23), massInMix: near(3), slides: expect.any(Boolean) },
      { kind: 0, mass: near(23.01), massInMix: near(3.01), slides: false },
      { kind: 0, mass: near(22.99), massInMix: near(2.99), slides: true },
    ]);
    expect(() => piecesInMix([kind(2)], 2)).toThrow(/floats/);
  });
});

describe("what is bought", () => {
  const { blank, pour, job } = poured();
  const kinds = [
    hexagonKind(20, { area: 1000, thickness: 10, density: 2 }),
    hexagonKind(12, { kind: 1, name: "small" }),
  ];
  const buy = (counts: number[], more: Partial<Job> = {}) =>
    shoppingOf(kinds, counts, 4.5, blank, pour.dam, { ...job, ...more });

  test("is each kind with one spare in twenty, powder, film and sheet", () => {
    expect(buy([20])).toEqual({
      pieces: [
        // 21 of 20 g.
        { kind: 0, name: "tile", count: 20, spares: 1, mass: near(0.42) },
        { kind: 1, name: "small", count: 0, spares: 0, mass: 0 },
      ],
      powder: 4.5,
      film: 500,
      dam: { length: pour.dam.length, height: 62, sheet: 1 },
    });
    expect(buy([21, 1]).pieces.map(({ spares }) => spares)).toEqual([2, 1]);
  });

  test("is a socket where one is asked for", () => {
    const socket = { diameter: 28, length: 48, foot: "glass", plugged: true } as const;
    expect(buy([20], { socket }).socket).toEqual({ diameter: 28, length: 48 });
  });
});

describe("the whole pour", () => {
  test("adds up by hand: 20 hexagons of 20 mm, a plugged pipe on the glass, a film of 0.2 mm", () => {
    const socket = { diameter: 30, length: 60, foot: "glass", plugged: false } as const;
    const { pour } = poured({
      blank: { diameter: 400, curve: "flat" },
      plaster: { ...plaster, fill: 40, film: 0.2 },
      socket,
    });
    const hexagons = (20 * (Math.sqrt(3) / 2) * 400 * 6) / 1000;
    const pipe = Math.PI * 1.5 * 1.5 * 3.98;
    expect(pour).toMatchObject({
      fill: { edge: 40, centre: 40, cover: near(33.8) },
      moldVolume: near(Math.PI * 15 * 15 * 3.98),
      piecesVolume: near(hexagons),
      socketVolume: near(pipe),
      castVolume: near(Math.PI * 15 * 15 * 3.98 - hexagons - pipe),
      socket: { foot: 0.2, embedded: near(39.8), projecting: near(20.2) },
      repair: { depth: 1 },
      drying: { temperature: 45, limit: 49 },
    });
    const { castVolume, mixVolume } = pour;
    expect(mixVolume).toBeCloseTo(1.1 * castVolume, 9);
    const powder = castVolume / stone.yield;
    const steel = Math.PI * 1.5 * 1.5 * 6 * 7.85e-3;
    const tiles = (hexagons * 2.35) / 1000;
    expect(pour.mass).toEqual({
      wet: near(1.3 * powder + steel + tiles),
      dry: near(1.186171 * powder + steel + tiles, 4),
      pieces: near(tiles),
      socket: near(steel),
    });
    expect(pour.drying.freeWater).toBeCloseTo((0.3 - 0.186171) * powder, 4);
    expect(pour.pressure).toBeCloseTo((stone.wetDensity * 9.80665 * 40) / 1000, 9);
    const face = Math.PI * 150 * 150 - 20 * (Math.sqrt(3) / 2) * 400;
    expect(pour.repair.mix).toBeCloseTo(face / 1000, 9);
    expect(pour.repair.powder).toBeCloseTo(face / 1000 / stone.yield, 9);
    expect(pour.repair.water).toBeCloseTo(0.3 * pour.repair.powder, 9);
    expect(pour.shopping.powder).toBeCloseTo(1.1 * powder + pour.repair.powder, 9);
    // The mean depth, in a slab that cools from its rise.
    const depth = (castVolume * 1000) / (Math.PI * 150 * 150);
    const slab = scheduleOf(stone, 1, pour.heat.rise, depth, 1);
    const twice = scheduleOf(stone, 1, pour.heat.rise, depth, 2);
    expect(pour.schedule.warmUntil).toBeGreaterThan(slab.warmUntil);
    expect(pour.schedule.warmUntil).toBeGreaterThan(twice.warmUntil * 0.9);
  });

  test("on convex glass is deepest at the edge", () => {
    const { pour, tool } = poured({ blank: { diameter: 400, curve: "convex", radius: 3060 } });
    expect(pour.fill.centre).toBeCloseTo(32 - tool.sagitta, 12);
    expect(pour.fill.cover).toBeCloseTo(26 - tool.sagitta, 12);
    expect(pour.pressure).toBeCloseTo((stone.wetDensity * 9.80665 * 32) / 1000, 9);
  });

  test("puts the cover over the thickest of several kinds", () => {
    const pieces = [{ shape: "square", across: 25, thickness: 6, density: 2.35 }, { item: "iso-4032-m12" }] as const;
    const { pour } = poured({ pieces: [...pieces], plaster: { ...plaster, fill: "auto" } });
    expect(pour.fill).toMatchObject({ edge: near(30.8), cover: near(20) });
  });

  test("counts each kind by itself", () => {
    const kinds = [
      { shape: "square", across: 20, thickness: 6, density: 2.35 },
      { shape: "square", across: 10, thickness: 5, density: 7.85 },
    ] as const;
    const { pour } = poured({ pieces: [...kinds] });
    expect(pour.piecesVolume).toBeCloseTo(20 * (2.4 + 0.5), 9);
    expect(pour.mass.pieces).toBeCloseTo((20 * (2.4 * 2.35 + 0.5 * 7.85)) / 1000, 9);
    expect(pour.shopping.pieces.map(({ count }) => count)).toEqual([20, 20]);
  });

  test("leaves no less than a fiftieth of the mold for plaster", () => {
    const tile = { shape: "square", across: 20, thickness: 10, density: 2.35 } as const;
    const flat = { diameter: 400, curve: "flat" } as const;
    // π 15² × 1.1 cm = 777.5 mL, less tiles of 4 mL: 190 leave 17.5 mL, 191 leave 13.5 mL; a fiftieth is 15.6 mL.
    const of = (count: number) =>
      poured({ blank: flat, pieces: [tile], plaster: { ...plaster, fill: 11 } }, count).pour;
    expect(of(190).castVolume).toBeCloseTo(Math.PI * 225 * 1.1 - 760, 9);
    expect(() => of(191)).toThrow(/^plaster\.fill: pieces and socket take 764 mL of the mold's 778 mL/);
  });

  test("without pieces stands on the glass", () => {
    const { pour } = mixFromOptions({ tool: 300, fill: 32 });
    expect(pour.fill).toEqual({ edge: 32, centre: 32, cover: 32 });
    expect(pour.pieces).toEqual([]);
    expect(pour.dam.formDiameter).toBe(300);
    // The blank is taken as a third wider than the tool.
    expect(pour.dam.centring).toBeCloseTo(49, 9);
    expect(pour.shopping.film).toBeCloseTo(500, 9);
    const curved = mixFromOptions({ tool: 300, fill: 32, radius: 3060 }).pour;
    expect(curved.dam.centring).toBeCloseTo(49, 9);
    expect(curved.shopping.film).toBeCloseTo(500, 9);
    expect(mixFromOptions({ tool: 300, fill: 32, curve: "flat" }).pour).toEqual(pour);
  });
});

describe("powder at hand", () => {
  test("on convex glass makes a tool no wider than where the glass meets the fill line", () => {
    // R 500 mm and 20 mm: r² = 20 × 980.
    const widest = 2 * Math.sqrt(20 * 980);
    const most = mixFromOptions({ fill: 20, radius: 500, curve: "convex", powder: 0.5 });
    expect(most.tool).toBeLessThan(widest);
    expect(() => mixFromOptions({ fill: 20, radius: 500, curve: "convex", powder: 5 })).toThrow(
      `a tool of ${Math.floor(widest)} mm takes`,
    );
    // A fill deeper than the radius: only the sphere itself is the limit.
    expect(() => mixFromOptions({ fill: 60, radius: 50, curve: "convex", powder: 500 })).toThrow(
      "a tool of 100 mm takes",
    );
    expect(() => mixFromOptions({ fill: 20, radius: 50, powder: 500 })).toThrow("a tool of 100 mm takes");
    expect(() => mixFromOptions({ fill: 20, radius: 5000, powder: 50_000 })).toThrow("a tool of 3000 mm takes");
  });

  test("finds the flat's fill and width in closed form", () => {
    const volume = (3 * stone.yield) / 1.25;
    const deep = mixFromOptions({ tool: 300, powder: 3, spare: 0.25 });
    expect(deep.fill).toBeCloseTo((volume * 1000) / (Math.PI * 150 * 150), 9);
    expect(deep.tool).toBe(300);
    const wide = mixFromOptions({ fill: 32, powder: 3, spare: 0.25 });
    expect(wide.tool).toBeCloseTo(2 * Math.sqrt((volume * 1000) / Math.PI / 32), 6);
    expect(wide.fill).toBe(32);
  });

  test("counts by the plaster asked for", () => {
    const weak = mixFromOptions({ tool: 300, powder: 3, plaster: "pottery-70" });
    const dense = mixFromOptions({ tool: 300, powder: 3, plaster: "custom", water: 0.7, density: 5 });
    expect(weak.fill).toBeGreaterThan(mixFromOptions({ tool: 300, powder: 3 }).fill);
    expect(dense.fill / weak.fill).toBeCloseTo((200 + 700 / 0.998) / (1000 / 2.7 + 700 / 0.998), 9);
    expect(mixFromOptions({ tool: 300, powder: 3, plaster: "type-3", water: 0.3 })).toEqual(
      mixFromOptions({ tool: 300, powder: 3 }),
    );
  });

  test("a spare of all or nothing is still a share", () => {
    for (const spare of [0, 1]) {
      const { pour } = mixFromOptions({ tool: 300, fill: 32, spare });
      expect(pour.mixVolume / pour.castVolume).toBeCloseTo(1 + spare, 12);
    }
  });
});

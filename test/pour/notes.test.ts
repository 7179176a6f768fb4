import { describe, expect, test } from "vitest";
import { poured } from "../support/poured.js";

const plaster = { kind: "type-3", fill: 32, cover: 20, spare: 0.1 } as const;
const socket = { diameter: 28, bore: 21, length: 48, foot: "pieces", plugged: true } as const;

describe("the pour speaks up", () => {
  test.each<[string, Parameters<typeof poured>[0]]>([
    ["thin-cover", { plaster: { ...plaster, fill: 20 } }],
    ["thin-edge", { plaster: { ...plaster, fill: 12 } }],
    ["socket-projects", { socket }],
    ["socket-below-fill", { socket: { ...socket, length: 10 } }],
    ["socket-shallow", { socket: { ...socket, length: 90 } }],
    ["water-below-bound", { plaster: { ...plaster, kind: "type-5", water: 0.182 } }],
    ["water-off-table", { plaster: { ...plaster, water: 0.34 } }],
    ["pieces-slide", { pieces: [{ shape: "square", across: 25, thickness: 6, density: 2.35 }] }],
    ["mixed-materials", { pieces: [{ item: "iso-4032-m12" }, { item: "mosaic-square-1in" }] }],
    ["custom-heat", { plaster: { ...plaster, kind: "custom", water: 0.4, density: 2.6 } }],
    ["full-size-tool", { tool: { diameter: 400, rim: 3 } }],
    ["dam-over-edge", { tool: { diameter: 399.5, rim: 3 } }],
    ["heavy", { tool: { diameter: 390, rim: 3 }, plaster: { ...plaster, fill: 120 } }],
  ])("%s", (code, changes) => {
    const { notes, codes } = poured(changes);
    expect(codes).toContain(code);
    // And it is silent about the same thing where there is no reason.
    expect(poured({ pieces: [{ item: "iso-4032-m12" }] }).codes).not.toContain(code);
    for (const { text } of notes) {
      expect(text).toMatch(/^[A-Z0-9][^\n]*\.$/);
      expect(text).not.toMatch(/NaN|Infinity|undefined|e-\d/);
    }
  });
});

test("the cautions come first, in every job", () => {
  const { codes } = poured();
  expect(codes.slice(0, 4)).toEqual(["setting-heat", "powder-dust", "drain", "hot-plaster-on-glass"]);
});

test("a tenth off the table is still silent, on both sides", () => {
  for (const water of [0.27, 0.33])
    expect(poured({ plaster: { ...plaster, water } }).codes).not.toContain("water-off-table");
});

test("more than a tenth off the table is not, on either side", () => {
  for (const water of [0.269, 0.331])
    expect(poured({ plaster: { ...plaster, water } }).codes).toContain("water-off-table");
});

test("water ratios that cannot be mixed are refused by key", () => {
  for (const water of [0, 0.179, 1.51, 5]) {
    expect(() => poured({ plaster: { ...plaster, water } })).toThrow(/^plaster\.water: /);
  }
  for (const water of [0.18, 1.5])
    expect(poured({ plaster: { ...plaster, water } }).pour.castVolume).toBeGreaterThan(0);
});

test("a piece lighter than the mix is refused by key", () => {
  const cork = { shape: "round", diameter: 20, thickness: 6, density: 1.9 } as const;
  expect(() => poured({ pieces: [cork] })).toThrow(/pieces\[0\]\.density: the piece floats/);
});

test("a light tile keeps a sixth of its weight in the mix", () => {
  // 25 x 25 x 6 mm of porcelain weighs 8.8 g, in the mix 1.5 g (common practice).
  const { pour } = poured({ pieces: [{ shape: "square", across: 25, thickness: 6, density: 2.35 }] });
  expect(pour.pieces[0]!.mass).toBeCloseTo(8.8, 1);
  expect(pour.pieces[0]!.massInMix).toBeCloseTo(1.5, 1);
});

test("the grown tool meets concave glass at its edge, convex glass at its centre", () => {
  const concave = poured().pour.fit;
  const convex = poured({ blank: { diameter: 400, curve: "convex", radius: 3060 } }).pour.fit;
  expect([concave.meets, convex.meets]).toEqual(["edge", "centre"]);
  // ε r² / 2R to first order: 0.2 % of 3.676 mm.
  expect(concave.mismatch.most).toBeCloseTo(7.35, 1);
  expect(concave.rimGrowth.most).toBeCloseTo(0.294, 9);
});

test("the bow of the blank follows its glass and thickness", () => {
  const glass = { diameter: 400, curve: "concave", radius: 3060, material: "borosilicate" } as const;
  expect(poured({ blank: glass }).pour.fit.bow).toBeUndefined();
  const { bow } = poured({ blank: { ...glass, thickness: 45 } }).pour.fit;
  // α ΔT r² / 2t = 3.3e-6 × 10 × 150² / 90 = 8.25 µm.
  expect(bow).toEqual({ gradient: 10, sagitta: expect.closeTo(8.25, 9) });
});

test("a full-size tool has no former: the dam goes round the blank and holds on below the bevel", () => {
  const { dam } = poured({
    tool: { diameter: 400, rim: 3 },
    blank: { diameter: 400, curve: "concave", radius: 3060, bevel: 2 },
  }).pour;
  expect(dam.formDiameter).toBe(400);
  expect(dam.length).toBeCloseTo(Math.PI * 401 + 40, 9);
  expect(dam).not.toHaveProperty("formerAt");
  expect(dam.height).toBe(32 + 30 + 2);
});

test("what is bought covers what is poured", () => {
  const { pour } = poured({}, 50);
  expect(pour.shopping.powder).toBeGreaterThan(pour.batches[0]!.powder);
  expect(pour.shopping.pieces[0]).toMatchObject({ count: 50, spares: 3 });
  expect(pour.shopping.pieces[0]!.mass).toBeCloseTo((53 * pour.pieces[0]!.mass) / 1000, 9);
  // 1 mm over the plaster between the pieces: the tool's circle less 50 hexagons of 20 mm.
  expect(pour.repair.mix).toBeCloseTo((Math.PI * 150 * 150 - 50 * (Math.sqrt(3) / 2) * 400) / 1000, 9);
  expect(pour.shopping.powder).toBeCloseTo(pour.batches[0]!.powder + pour.repair.powder, 9);
});

test("wet less dry is the free water", () => {
  const { pour } = poured({ pieces: [{ item: "din-934-m10" }], socket });
  expect(pour.mass.wet - pour.mass.dry).toBeCloseTo(pour.drying.freeWater, 9);
});

test("a steel socket's bore is air: 28 / 21 mm, 48 mm long, weighs 101.5 g", () => {
  const { mass } = poured({ socket }).pour;
  expect(mass.socket).toBeCloseTo((Math.PI / 4) * (2.8 * 2.8 - 2.1 * 2.1) * 4.8 * 7.85e-3, 9);
  expect(mass.wet - poured().pour.mass.wet).toBeLessThan(mass.socket);
});

import fc from "fast-check";
import { expect, test } from "vitest";
import { CastingError } from "../../packages/casting-core/src/errors.js";
import { damPieces } from "../../packages/casting-core/src/pour/dam.js";
import { type MixOptions, mixFromOptions } from "../../packages/casting-core/src/pour/without-job.js";

test("the deepest fill and the largest tool use just the powder at hand", () => {
  const curve = fc.constantFrom("concave" as const, "convex" as const);
  fc.assert(
    fc.property(fc.double({ min: 0.5, max: 12, noNaN: true }), curve, (powder, curve) => {
      const deep = mixFromOptions({ tool: 200, radius: 3000, curve, powder });
      expect(deep.pour.batches[0]!.powder).toBeCloseTo(powder, 8);
      const wide = mixFromOptions({ fill: 35, radius: 3000, curve, powder });
      expect(wide.pour.batches[0]!.powder).toBeCloseTo(powder, 6);
    }),
    { numRuns: 50 },
  );
});

test("an unknown height of a bucket puts all into one filling", () => {
  const container = { shape: "round", diameter: 230, height: Infinity, headroom: 0 } as const;
  const { pour } = mixFromOptions({ tool: 300, radius: 3060, fill: 32, container });
  expect(pour.batches).toHaveLength(1);
  expect(pour.batches[0]!.mixMark! * Math.PI * 11.5 * 11.5).toBeCloseTo(pour.mixVolume * 10, 7);
  expect(JSON.stringify(pour)).not.toContain("null");
});

test("a plaster is known in any case, as in a job", () => {
  const [as, other] = ["type-4", " Type-4"].map((plaster) => mixFromOptions({ tool: 300, fill: 32, plaster }));
  expect(other).toEqual(as);
});

test.each<[string, MixOptions, "invalid" | "impossible"]>([
  ["tool", { fill: 32 }, "invalid"],
  ["fill", { tool: 300 }, "invalid"],
  ["tool", { powder: 3 }, "invalid"],
  ["powder", { tool: 300, fill: 32, powder: 3 }, "invalid"],
  ["powder", { tool: 300, powder: -3 }, "invalid"],
  ["tool", { tool: Number.NaN, fill: 32 }, "invalid"],
  ["radius", { tool: 300, fill: 32, radius: 100 }, "invalid"],
  ["plaster.water", { tool: 300, fill: 32, water: 5 }, "invalid"],
  ["plaster.water", { tool: 300, fill: 32, water: 0 }, "invalid"],
  ["plaster.density", { tool: 300, fill: 32, density: 2.6 }, "invalid"],
  ["plaster.density", { tool: 300, fill: 32, plaster: "custom", water: 0.5, density: 0 }, "invalid"],
  ["plaster.density", { tool: 300, fill: 32, plaster: "custom", water: 0.5, density: Number.NaN }, "invalid"],
  ["plaster.kind", { tool: 300, fill: 32, plaster: "type-6" }, "invalid"],
  ["spare", { tool: 300, fill: 32, spare: 10 }, "invalid"],
  ["powder", { tool: 300, radius: 400, powder: 0.1 }, "impossible"],
  ["plaster.fill", { tool: 300, radius: 400, curve: "convex", fill: 20 }, "impossible"],
])("one sentence by key: %s", (key, options, kind) => {
  let caught: unknown;
  try {
    mixFromOptions(options);
  } catch (error) {
    caught = error;
  }
  expect(caught).toBeInstanceOf(CastingError);
  const { kind: got, faults } = caught as CastingError;
  expect([got, faults.length, faults[0]!.path.join(".")]).toEqual([kind, 1, key]);
  expect(faults[0]!.text).toMatch(/^["a-z][^\n]*[^.]$/);
});

test("a dam from short sheets keeps its overlap at every joint", () => {
  const { dam } = mixFromOptions({ tool: 300, fill: 32 }).pour;
  const { count, length } = damPieces(dam, 40, 500);
  expect(count).toBe(3);
  expect(count * (length - 40)).toBeCloseTo(dam.length - 40, 9);
  expect(damPieces(dam, 40, 1000)).toEqual({ count: 1, length: expect.closeTo(dam.length, 9) });
});

test("nothing is told of pieces, which a mix without a job has none of", () => {
  const { notes } = mixFromOptions({ tool: 300, radius: 3060, fill: 32 });
  expect(notes.find(({ code }) => code === "setting-expansion")?.text).toMatch(/first at the tool's edge\.$/);
});

test("the cautions stand there without a job, too", () => {
  const codes = mixFromOptions({ tool: 300, fill: 32 }).notes.map((note) => note.code);
  expect(codes).toEqual(expect.arrayContaining(["setting-heat", "powder-dust", "drain", "hot-plaster-on-glass"]));
});

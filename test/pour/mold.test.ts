import fc from "fast-check";
import { expect, test } from "vitest";
import { sagittaOf } from "../../packages/casting-core/src/blank/sphere.js";
import { checkPlan } from "../../packages/casting-core/src/plan/check.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";
import { moldVolume } from "../../packages/casting-core/src/pour/mold.js";
import { exampleJob } from "../support/jobs.js";
import { poured } from "../support/poured.js";

/**
 * ∫ 2π x h(x) dx by Gauss–Legendre rules of five points on 64 rings, where h is the fill line's height above the glass.
 * The glass is written as R − √(R² − x²) here, apart from the form the library uses.
 */
function integrated(diameter: number, edge: number, radius: number, sign: number): number {
  const nodes: [number, number][] = [
    [0, 128 / 225],
    [0.5384693101056831, 0.47862867049936647],
    [-0.5384693101056831, 0.47862867049936647],
    [0.906179845938664, 0.23692688505618908],
    [-0.906179845938664, 0.23692688505618908],
  ];
  const r = diameter / 2;
  const depth = (x: number) => Math.sqrt(radius * radius - x * x) - Math.sqrt(radius * radius - r * r);
  let sum = 0;
  for (let i = 0; i < 64; i++) {
    for (const [node, weight] of nodes) {
      const x = (r * (i + 0.5 + node / 2)) / 64;
      sum += weight * x * (edge + sign * depth(x));
    }
  }
  return (Math.PI * sum * r) / 64 / 1000;
}

test("the mold's volume agrees with a numeric integration to 1e-9", () => {
  const lengths = fc.record({
    diameter: fc.double({ min: 30, max: 900, noNaN: true }),
    slope: fc.double({ min: 0.02, max: 0.9, noNaN: true }),
    depth: fc.double({ min: 0.2, max: 2, noNaN: true }),
  });
  fc.assert(
    fc.property(lengths, fc.constantFrom("concave", "convex"), ({ diameter, slope, depth }, curve) => {
      const radius = diameter / 2 / slope;
      const sagitta = sagittaOf(radius, diameter / 2);
      const edge = sagitta + (depth * diameter) / 10;
      const blank = { diameter, curve: curve as "concave" | "convex", curveRadius: radius, sagitta };
      const volume = moldVolume(blank, { diameter, rim: 0, curveRadius: radius, sagitta }, edge);
      const apart = integrated(diameter, edge, radius, curve === "concave" ? 1 : -1);
      expect(Math.abs(volume / apart - 1)).toBeLessThan(1e-9);
    }),
    { numRuns: 100 },
  );
});

test("a flat mold is a plain disc", () => {
  const { pour } = poured({ blank: { diameter: 400, curve: "flat" } });
  expect(pour.moldVolume).toBeCloseTo(Math.PI * 15 * 15 * 3.2, 9);
  expect(pour.fill).toEqual({ edge: 32, centre: 32, cover: 26 });
});

test("cast is mold less pieces less socket, and the mix has its spare on top", () => {
  const socket = { diameter: 28, bore: 21, length: 20, foot: "pieces", plugged: true } as const;
  const { pour, tool } = poured({ socket });
  expect(pour.castVolume).toBeCloseTo(pour.moldVolume - pour.piecesVolume - pour.socketVolume, 9);
  expect(pour.mixVolume).toBeCloseTo(1.1 * pour.castVolume, 9);
  // Its whole outer cylinder: 20 mm long, all of it below the fill line.
  expect(pour.socketVolume).toBeCloseTo((Math.PI * 1.4 * 1.4 * 20) / 10, 9);
  expect(pour.socket?.projecting).toBeCloseTo(6 + 20 - 32 - tool.sagitta, 9);
  const open = poured({ socket: { ...socket, plugged: false } }).pour;
  expect(open.socketVolume / pour.socketVolume).toBeCloseTo(1 - (21 * 21) / (28 * 28), 12);
  const onGlass = poured({ socket: { ...socket, foot: "glass", length: 60 } }).pour;
  expect(onGlass.socket).toMatchObject({ foot: 0, embedded: 32 + tool.sagitta });
});

test("auto puts piece and cover at the shallowest place", () => {
  const auto = { kind: "type-3", fill: "auto", cover: 20, spare: 0.1 } as const;
  expect(poured({ plaster: auto }).pour.fill.edge).toBe(26);
  const convex = poured({ plaster: auto, blank: { diameter: 400, curve: "convex", radius: 3060 } }).pour;
  expect(convex.fill.centre).toBeCloseTo(26, 12);
  expect(convex.fill.cover).toBeCloseTo(20, 12);
});

test("a socket that leaves no room for plaster is refused", () => {
  const tight = {
    blank: { diameter: 60, curve: "concave", radius: 36 },
    tool: { diameter: 18, rim: 2 },
    plaster: { kind: "type-1", fill: 8, cover: 20, spare: 0.1 },
    socket: { diameter: 17.9, length: 40, foot: "glass", plugged: true },
  } as const;
  expect(() => poured(tight, 0)).toThrow(/socket\.diameter: .* leave no room for plaster/);
});

test("a film takes its thickness from the mold and the cover, not from the fill line", () => {
  const plaster = { kind: "type-3", fill: 32, cover: 20, spare: 0.1 } as const;
  const bare = poured({ plaster }).pour;
  const laid = poured({ plaster: { ...plaster, film: 0.2 } }).pour;
  expect(bare.moldVolume - laid.moldVolume).toBeCloseTo((Math.PI * 15 * 15 * 0.2) / 10, 9);
  expect(laid.fill).toEqual({ ...bare.fill, cover: bare.fill.cover - 0.2 });
});

test("pieces and a socket stand on the film", () => {
  const auto = { kind: "type-3", fill: "auto", cover: 20, spare: 0.1, film: 3 } as const;
  expect(poured({ plaster: auto }).pour.fill).toMatchObject({ edge: 29, cover: 20 });
  expect(() => poured({ plaster: { ...auto, fill: 8 } })).toThrow(
    /not over the thickest piece of 6 mm on a film of 3 mm/,
  );
  const [pieces, glass] = (["pieces", "glass"] as const).map((foot) => {
    const plan = makePlan(
      exampleJob({
        layout: { ...exampleJob().layout, count: 20 },
        plaster: auto,
        socket: { diameter: 28, length: 48, foot, plugged: true },
      }),
    );
    expect(checkPlan(plan).holds).toBe(true);
    return plan.pour.socket!;
  });
  expect(pieces!.foot).toBe(9);
  expect(glass!.foot).toBe(3);
});

test("fill lines that cannot be poured are refused by key", () => {
  const plaster = { kind: "type-3", cover: 20, spare: 0.1 };
  expect(() => poured({ plaster: { ...plaster, fill: 6 } })).toThrow(/plaster\.fill: .*thickest piece/);
  const steep = { diameter: 400, curve: "convex", radius: 400 } as const;
  expect(() => poured({ plaster: { ...plaster, fill: 29 }, blank: steep })).toThrow(/plaster\.fill: the glass rises/);
  expect(() => poured({ socket: { diameter: 300, length: 40, foot: "pieces", plugged: true } })).toThrow(
    /socket\.diameter/,
  );
});

test("the same mold at a tenth and three times the size holds a thousandth and 27 times", () => {
  const one = poured().pour;
  for (const scale of [0.1, 3]) {
    const other = poured({
      blank: { diameter: 400 * scale, curve: "concave", radius: 3060 * scale },
      tool: { diameter: 300 * scale, rim: 3 * scale },
      pieces: [{ shape: "hexagon", across: 20 * scale, thickness: 6 * scale, density: 2.35 }],
      plaster: { kind: "type-3", fill: 32 * scale, cover: 20 * scale, spare: 0.1 },
    }).pour;
    const cube = scale * scale * scale;
    expect(other.castVolume / cube).toBeCloseTo(one.castVolume, 8);
    expect(other.mass.wet / cube).toBeCloseTo(one.mass.wet, 8);
  }
});

test("the sample by hand: a 300 mm tool on R 3060 mm, 32 mm deep, in stone at 0.30", () => {
  const { pour } = poured({}, 0);
  // π 15² × 3.2 cm = 2261.95 mL, and a cap of π × 0.36787 × (3 × 15² + 0.135) / 6 = 130.04 mL.
  expect(pour.moldVolume).toBeCloseTo(2261.947 + 130.041, 1);
  // 1 kg of powder makes 1 / 2.7 + 0.3 / 0.998 = 0.67097 L.
  const [batch] = pour.batches;
  expect(batch!.powder).toBeCloseTo((1.1 * 2.391988) / 0.670972, 4);
  expect(batch!.water).toBeCloseTo(0.3 * batch!.powder, 12);
  expect(pour.mass.wet).toBeCloseTo((1.3 * 2.391988) / 0.670972, 4);
  expect(pour.mass.dry).toBeCloseTo((1.1862 * 2.391988) / 0.670972, 3);
  // 1.937 kg/L × 9.807 m/s² × 35.7 mm.
  expect(pour.pressure).toBeCloseTo(0.678, 3);
});

import { describe, expect, it } from "vitest";
import type { Run } from "../../packages/casting-core/src/job/run.js";
import { type Coverage, hardCoverage } from "../../packages/casting-core/src/layout/quality/hard-coverage.js";
import { loadPressure } from "../../packages/casting-core/src/layout/quality/pressure.js";
import { wearOf } from "../../packages/casting-core/src/layout/quality/wear.js";

const even = (reach: number): Coverage => ({ reach, rings: new Float64Array(240).fill(0.6) });
const run = (changes: Partial<Run> = {}): Run => ({ mirror: 200, offset: 50, stroke: 0, turns: 0.9, ...changes });

describe("pressure under the tool", () => {
  it("is even without overhang", () => {
    const { at, edge, lifts } = loadPressure(200, 150, 50);
    expect([at(-150), at(0), at(150), edge]).toEqual([1, 1, 1, 1]);
    expect(lifts).toBe(false);
  });

  it("rises to 1.45, 1.83 and 2.33 times the mean at 30, 45 and 60 mm of overhang (common practice, 300 mm on 400 mm)", () => {
    expect(loadPressure(200, 150, 80).edge).toBeCloseTo(1.45, 2);
    expect(Math.abs(loadPressure(200, 150, 95).edge - 1.83)).toBeLessThan(0.01);
    expect(Math.abs(loadPressure(200, 150, 110).edge - 2.33)).toBeLessThan(0.01);
  });

  it("lifts the far side at an overhang of about 62 mm, a fifth of the tool", () => {
    expect(loadPressure(200, 150, 111).lifts).toBe(false);
    expect(loadPressure(200, 150, 116).lifts).toBe(true);
  });

  it.each([60, 90, 110, 120, 140])(
    "balances force and moment about the tool's axis at an offset of %i mm",
    (offset) => {
      const { at } = loadPressure(200, 150, offset);
      let [force, moment] = [0, 0];
      const step = 0.5;
      for (let x = -150 + step / 2; x < 150; x += step) {
        for (let y = -150 + step / 2; y < 150; y += step) {
          if (x * x + y * y > 150 * 150 || (x + offset) * (x + offset) + y * y > 200 * 200) continue;
          force += at(x) * step * step;
          moment += at(x) * x * step * step;
        }
      }
      expect(force / (Math.PI * 150 * 150)).toBeCloseTo(1, 2);
      expect(Math.abs(moment / (Math.PI * 150 ** 3))).toBeLessThan(2e-3);
    },
  );
});

describe("wear by Preston's relation", () => {
  it("takes the last double below the edge for the last ring", () => {
    const last = 1 - Number.EPSILON / 2;
    const once = { from: last, to: last, zones: 1, angles: 1, phases: 1 };
    for (let reach = 100; reach < 150; reach++) {
      const { zones, removal } = wearOf(even(reach), run({ offset: 0 }), once);
      expect(zones[0]).toBeLessThan(reach);
      expect(removal[0]).toBeGreaterThan(0);
    }
  });

  it("finds no zoning where the coverage is even", () => {
    expect(wearOf(even(147), run()).zoning).toBeLessThan(1e-12);
    expect(wearOf(even(147), run({ offset: 90, stroke: 30 })).zoning).toBeLessThan(1e-12);
  });

  it("has the same speed everywhere at equal turns: each zone wears by the arc that the tool covers", () => {
    const { zones, removal } = wearOf(even(147), run({ turns: 1 }));
    zones.forEach((rho, zone) => {
      // Within the tool's reach of the axis on all sides, the whole circle; else the arc by the law of cosines.
      const cosine = (rho * rho + 50 * 50 - 147 * 147) / (2 * rho * 50);
      const arc = cosine <= -1 ? Math.PI : cosine >= 1 ? 0 : Math.acos(cosine);
      const found = (removal[zone]! / 0.6 / 50) * (Math.PI / 360);
      expect(Math.abs(found - arc)).toBeLessThan(0.01);
    });
  });

  it("wears under a bare ring of pieces by the ring's own arc", () => {
    const ring: Coverage = { reach: 120, rings: Float64Array.from({ length: 240 }, (_, n) => (n >= 200 ? 1 : 0)) };
    const { zones, removal } = wearOf(ring, run({ turns: 1, offset: 60 }));
    zones.forEach((rho, zone) => {
      const within = (r: number) => {
        const cosine = (rho * rho + 60 * 60 - r * r) / (2 * rho * 60);
        return cosine <= -1 ? Math.PI : cosine >= 1 ? 0 : Math.acos(cosine);
      };
      const found = (removal[zone]! / 60) * (Math.PI / 360);
      expect(Math.abs(found - (within(120) - within(100)))).toBeLessThan(0.02);
    });
  });

  it("wears over a stroke across the axis as at its places one by one, on whichever side they lie", () => {
    const rings = Float64Array.from({ length: 240 }, (_, n) => 0.4 + 0.2 * Math.sin(n / 20));
    const away = (changes: Partial<Run>) => wearOf({ reach: 100, rings }, run({ mirror: 100, ...changes })).removal;
    const sum = new Float64Array(200);
    for (let n = 0; n < 32; n++) {
      const place = 20 + 50 * Math.cos(((n + 0.5) * Math.PI) / 32);
      away({ offset: Math.abs(place) }).forEach((worn, zone) => {
        sum[zone]! += worn;
      });
    }
    for (const [zone, worn] of away({ offset: 20, stroke: 100 }).entries()) {
      expect(worn / sum[zone]!).toBeCloseTo(1, 9);
    }
  });

  it.each([80, 116])("wears by the pressure at each place, at an offset of %i mm", (offset) => {
    const { at } = loadPressure(200, 150, offset);
    const { zones, removal } = wearOf(even(150), run({ offset }));
    zones.forEach((rho, zone) => {
      let worn = 0;
      for (let n = 0; n < 360; n++) {
        const angle = ((n + 0.5) * Math.PI) / 360;
        const [x, y] = [rho * Math.cos(angle) - offset, rho * Math.sin(angle)];
        // The glass's speed less the tool's, whose turns are 0.9 of the glass's.
        if (Math.hypot(x, y) < 150) worn += 0.6 * at(x) * Math.hypot(0.1 * y, 0.1 * x + offset);
      }
      expect(removal[zone]! / worn).toBeCloseTo(1, 9);
    });
  });

  it("takes bores out of the hard area", () => {
    const kind = {
      kind: 0,
      name: "",
      shape: "round",
      outline: [],
      radius: 10,
      reach: 10,
      area: 100 * Math.PI,
      bore: 10,
      thickness: 5,
      density: 2,
      fold: 0,
    };
    const piece = { id: 1, kind: 0, x: 60, y: 0, angle: 0, outline: [], radius: 10 };
    const { reach, rings } = hardCoverage([kind as never], [piece as never]);
    const area = rings.reduce((sum, share, n) => sum + share * Math.PI * (reach / 240) ** 2 * (2 * n + 1), 0);
    expect(reach).toBeCloseTo(70, 9);
    expect(area).toBeCloseTo(75 * Math.PI, 6);
  });
});

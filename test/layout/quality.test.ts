import { describe, expect, it } from "vitest";
import { convexContains } from "../../packages/casting-core/src/geometry/polygon.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { laidOutline } from "../../packages/casting-core/src/layout/laying/snap.js";
import { layOut } from "../../packages/casting-core/src/layout/layout.js";
import { radialVariation, ringCoverage } from "../../packages/casting-core/src/layout/quality/rings.js";
import { ringLikeness, symmetry } from "../../packages/casting-core/src/layout/quality/symmetry.js";
import type { PlacedPiece } from "../../packages/casting-core/src/layout/types.js";
import type { PieceKind } from "../../packages/casting-core/src/pieces/types.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";
import { exampleJob } from "../support/jobs.js";
import { hexagonKind, rectangleKind, roundKind } from "../support/kinds.js";

function pieceAt(kind: PieceKind, x: number, y: number, angle = 0): PlacedPiece {
  const outline = laidOutline(kind.outline, x, y, angle);
  return { id: 1, kind: 0, x, y, angle, outline, ...(kind.radius === undefined ? {} : { radius: kind.radius }) };
}

function holds(piece: PlacedPiece, x: number, y: number): boolean {
  if (piece.radius !== undefined) return Math.hypot(x - piece.x, y - piece.y) <= piece.radius;
  return convexContains(piece.outline, [x, y]);
}

const PIECES = [
  pieceAt(hexagonKind(20), 31, 12, 10),
  pieceAt(rectangleKind(48, 23), -40, 30, 37),
  pieceAt(roundKind(25), 20, -50),
  pieceAt(rectangleKind(20, 20), 3, 1, 5),
  pieceAt(roundKind(12), -20, -12),
];

describe("ringCoverage", () => {
  it("agrees with a count of points on a fine raster", () => {
    const rings = 12;
    const radius = 90;
    const step = 0.25;
    const hits = new Float64Array(rings);
    const all = new Float64Array(rings);
    for (let x = -radius + step / 2; x < radius; x += step) {
      for (let y = -radius + step / 2; y < radius; y += step) {
        const ring = Math.floor((Math.hypot(x, y) / radius) * rings);
        if (ring >= rings) continue;
        all[ring]!++;
        if (PIECES.some((piece) => holds(piece, x, y))) hits[ring]!++;
      }
    }
    const exact = ringCoverage(PIECES, radius, rings);
    for (let ring = 0; ring < rings; ring++) expect(exact[ring]).toBeCloseTo(hits[ring]! / all[ring]!, 2);
  });

  it("gives the whole area back, whatever the number of rings", () => {
    const area = (rings: number) =>
      ringCoverage(PIECES, 90, rings).reduce((sum, share, n) => sum + share * (2 * n + 1), 0) *
      Math.PI *
      (90 / rings) ** 2;
    expect(area(1)).toBeCloseTo(area(60), 6);
    expect(area(60)).toBeCloseTo(200 * Math.sqrt(3) + 48 * 23 + Math.PI * (12.5 ** 2 + 6 ** 2) + 400, 0);
  });

  it("varies by nothing where the rings are alike, and by what they differ", () => {
    expect(radialVariation(new Float64Array(60).fill(0.75))).toBeCloseTo(0, 12);
    const two = Float64Array.from({ length: 60 }, (_, ring) => (ring % 2 === 0 ? 0.6 : 0.8));
    expect(radialVariation(two)).toBeCloseTo(0.1 / 0.7, 12);
  });
});

describe("symmetry", () => {
  it("is what counting every sample of every circle with each of its turns gives", () => {
    const places = [
      [50, 3],
      [-41, 12],
      [7, -63],
      [20, 44],
      [-30, -38],
      [12, 5],
    ] as const;
    const [circles, round] = [90, 2520];
    const taken = Array.from({ length: circles }, (_, circle) => {
      const rho = ((circle + 0.5) * 0.93 * 90) / circles;
      return Array.from({ length: round }, (_, n) => {
        const angle = ((n + 0.5) * 2 * Math.PI) / round;
        return places.some(([x, y]) => Math.hypot(rho * Math.cos(angle) - x, rho * Math.sin(angle) - y) < 10);
      });
    });
    let [whole, filled] = [0, 0];
    const both = Array.from({ length: 11 }, () => 0);
    taken.forEach((ring, circle) => {
      whole += (circle + 0.5) * round;
      ring.forEach((here, n) => {
        if (!here) return;
        filled += circle + 0.5;
        both.forEach((_, k) => {
          if (ring[(n + Math.round(round / (k + 2))) % round]) both[k]! += circle + 0.5;
        });
      });
    });
    const mean = filled / whole;
    const most = (Math.max(...both) / whole - mean * mean) / (mean - mean * mean);
    expect(
      symmetry(
        places.map(([x, y]) => pieceAt(roundKind(20), x, y)),
        90,
        circles,
      ),
    ).toBeCloseTo(most, 9);
  });

  it("of a hole about the axis is what its rings alone give", () => {
    // Covered evenly by half from 40 mm on, up to 100 mm: mean of c and of c² over the circle of 93 mm, rings of 2 mm.
    const coverage = Float64Array.from({ length: 50 }, (_, ring) => (ring < 20 ? 0 : 0.5));
    const share = 1 - 40 ** 2 / 94 ** 2;
    const mean = share / 2;
    expect(ringLikeness(coverage)).toBeCloseTo((share / 4 - mean ** 2) / (mean - mean ** 2), 9);
    expect(ringLikeness(new Float64Array(50).fill(0.7))).toBeCloseTo(0, 9);
    expect(ringLikeness(new Float64Array(50))).toBe(0);
    expect(ringLikeness(new Float64Array(50).fill(1))).toBe(0);
  });

  it("of a hole about the axis is no pattern to be warned of", () => {
    const { layout, notes } = makePlan(
      readJob(
        "blank: {diameter: 300, radius: 3000}\npieces: {item: iso-4032-m6}\nlayout: {keep-clear: [{x: 0, y: 0, diameter: 80}]}\n",
      ),
    );
    expect(layout.quality.symmetry).toBeGreaterThan(0.1);
    expect(notes.filter(({ code }) => code === "alike")).toEqual([]);
  });

  it("is near 1 for a rosette and small for one piece", () => {
    const rosette = Array.from({ length: 6 }, (_, n) => {
      const turn = (n * Math.PI) / 3;
      return pieceAt(hexagonKind(20), 50 * Math.cos(turn), 50 * Math.sin(turn), n * 60);
    });
    expect(symmetry(rosette, 90)).toBeGreaterThan(0.98);
    expect(symmetry([pieceAt(hexagonKind(20), 50, 0)], 90)).toBeLessThan(0.05);
    expect(symmetry([], 90)).toBe(0);
  });

  it("is told to a thousandth", () => {
    let seed = 40;
    const next = () => {
      seed = (Math.imul(seed, 1103515245) + 12345) >>> 0;
      return seed / 4294967296;
    };
    const pieces: PlacedPiece[] = [];
    while (pieces.length < 60) {
      const [x, y] = [180 * next() - 90, 180 * next() - 90];
      const free = pieces.every((piece) => Math.hypot(piece.x - x, piece.y - y) > 16);
      if (free && Math.hypot(x, y) < 82) pieces.push(pieceAt(roundKind(14), x, y));
    }
    const truly = symmetry(pieces, 90, 3000);
    expect(Math.abs(symmetry(pieces, 90) - truly)).toBeLessThan(0.001);
    expect(Math.abs(symmetry(pieces, 90, 90) - truly)).toBeGreaterThan(0.002);
  });

  it("agrees with a correlation over random points", () => {
    let seed = 1;
    const next = () => {
      seed = (Math.imul(seed, 1103515245) + 12345) >>> 0;
      return seed / 4294967296;
    };
    const radius = 70;
    const taken = (x: number, y: number) => PIECES.some((piece) => holds(piece, x, y));
    let most = -1;
    for (let k = 2; k <= 12; k++) {
      const [c, s] = [Math.cos((2 * Math.PI) / k), Math.sin((2 * Math.PI) / k)];
      let [n, one, both] = [0, 0, 0];
      while (n < 60_000) {
        const x = (2 * next() - 1) * radius * 0.93;
        const y = (2 * next() - 1) * radius * 0.93;
        if (Math.hypot(x, y) > radius * 0.93) continue;
        n++;
        if (!taken(x, y)) continue;
        one++;
        if (taken(c * x - s * y, s * x + c * y)) both++;
      }
      const mean = one / n;
      most = Math.max(most, (both / n - mean * mean) / (mean - mean * mean));
    }
    expect(symmetry(PIECES, radius)).toBeCloseTo(most, 1);
  });
});

describe("layOut", () => {
  it("counts, weighs and measures what it laid", () => {
    const kinds = [hexagonKind(20, { bore: 10 })];
    const job = exampleJob({ layout: { gap: 3, seed: 1, count: "max", hand: 0.5, "keep-clear": [] } });
    const layout = layOut(job, { diameter: 300, rim: 3, sagitta: 0 }, kinds);
    const { quality } = layout;
    expect(layout).toMatchObject({ seed: 1, gap: 3, hand: 0.5, unplaced: [] });
    expect(quality.count).toBe(layout.pieces.length);
    expect(quality.gapMin).toBeGreaterThanOrEqual(3.5);
    expect(quality.gapMin).toBeLessThan(3.52);
    expect(quality.rimMin).toBeGreaterThanOrEqual(3);
    expect(quality.coverage).toBeCloseTo((quality.count * 200 * Math.sqrt(3)) / (Math.PI * 150 ** 2), 9);
    expect(quality.coverage - quality.hardCoverage).toBeCloseTo((quality.count * 25) / 150 ** 2, 9);
    expect(quality.radialVariation).toBeLessThan(0.06);
    expect(quality.symmetry).toBeLessThan(0.15);
    expect(quality.offCentre).toBeLessThan(5);
  });
});

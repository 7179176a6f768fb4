import type { Tool } from "../../packages/casting-core/src/blank/types.js";
import type { Outline, Point } from "../../packages/casting-core/src/geometry/types.js";
import type { Layout, PlacedPiece } from "../../packages/casting-core/src/layout/types.js";
import { random } from "../../packages/casting-core/src/random.js";

/** A flat tool's circle. */
export function toolOf(diameter: number, rim = 3): Tool {
  return { diameter, rim, sagitta: 0 };
}

/** A layout of given outlines or discs, for tests of what comes after the layout. Its quality is not worked out. */
export function layoutOf(shapes: readonly (Outline | { x: number; y: number; radius: number })[], gap: number): Layout {
  const pieces = shapes.map((shape, i): PlacedPiece => {
    if (!Array.isArray(shape)) {
      const outline = regular(96, shape.radius, shape.x, shape.y, 0);
      return { id: i + 1, kind: 0, x: shape.x, y: shape.y, angle: 0, outline, radius: shape.radius };
    }
    const x = shape.reduce((sum, corner) => sum + corner[0], 0) / shape.length;
    const y = shape.reduce((sum, corner) => sum + corner[1], 0) / shape.length;
    return { id: i + 1, kind: 0, x: micro(x), y: micro(y), angle: 0, outline: shape };
  });
  const quality = {
    count: pieces.length,
    coverage: 0,
    hardCoverage: 0,
    gapMin: gap,
    rimMin: 0,
    radialVariation: 0,
    symmetry: 0,
    zoning: 0,
    offCentre: 0,
  };
  return { seed: 1, gap, hand: 0, pieces, unplaced: [], quality };
}

/** A regular polygon, corners on whole micrometres, counter-clockwise; `turn` in radians. */
export function regular(corners: number, reach: number, x: number, y: number, turn: number): Outline {
  return Array.from({ length: corners }, (_, i): Point => {
    const angle = turn + (2 * Math.PI * i) / corners;
    return [micro(x + reach * Math.cos(angle)), micro(y + reach * Math.sin(angle))];
  });
}

/** Triangles, squares, hexagons and rounds on a jittered grid inside a tool's circle; circles of reach stay `gap` apart. */
export function jittered(seed: number, diameter: number, pitch: number, gap: number): Layout {
  const source = random(seed);
  const shapes: (Outline | { x: number; y: number; radius: number })[] = [];
  const most = Math.floor(diameter / 2 / pitch);
  for (let i = -most; i <= most; i++) {
    for (let j = -most; j <= most; j++) {
      const reach = ((pitch - gap) / 2) * (0.7 + 0.2 * source.next());
      const play = (pitch - gap) / 2 - reach;
      const x = micro(i * pitch + play * (2 * source.next() - 1));
      const y = micro(j * pitch + play * (2 * source.next() - 1));
      const corners = [0, 3, 4, 6][source.index(4)]!;
      const turn = 7 * source.next();
      if (Math.sqrt(x * x + y * y) + reach > diameter / 2 - 3) continue;
      shapes.push(corners === 0 ? { x, y, radius: micro(reach) } : regular(corners, reach, x, y, turn));
    }
  }
  return layoutOf(shapes, gap);
}

function micro(value: number): number {
  return Math.round(value * 1000) / 1000;
}

import type { PieceKind } from "../../pieces/types.js";

/**
 * The kinds as flat arrays for the inner loops. Each shape is a convex core of corners plus a radius round it: a
 * polygon has radius 0, a round piece a single corner and its own radius, so one contact rule serves all.
 * Corner `c` of kind `k` stands at index `k × stride + c`, times ROW in `outline`; edge `c` runs from corner `c` to the next.
 */
export interface Shapes {
  kinds: readonly PieceKind[];
  stride: number;
  corners: Int32Array;
  /** Each corner's place and the outward unit normal of the edge that it begins: x, y, nx, ny (see ROW). */
  outline: Float64Array;
  /** Distance of each edge from the centroid. */
  normalAt: Float64Array;
  edge: Float64Array;
  radius: Float64Array;
  /** Largest distance of the shape from its centroid. */
  reach: Float64Array;
  /** Least distance of the core's edges from the centroid; 0 for a point. */
  inner: Float64Array;
  area: Float64Array;
  /** 1 / squared radius of gyration; 0 for a round piece, which need not turn. */
  turnEase: Float64Array;
  /** Turns by 360/fold look the same; 0 where turning does not matter. */
  fold: Int32Array;
}

/** Numbers that a corner takes in `outline`: side by side, so that the inner loops read one array. */
const ROW = 4;

/** Flat arrays for `kinds`, lengths mm. */
export function shapesOf(kinds: readonly PieceKind[]): Shapes {
  const stride = Math.max(...kinds.map((kind) => (kind.radius === undefined ? kind.outline.length : 1)));
  const n = kinds.length;
  const table = () => new Float64Array(n * stride);
  const shapes: Shapes = {
    kinds,
    stride,
    corners: new Int32Array(n),
    outline: new Float64Array(n * stride * ROW),
    normalAt: table(),
    edge: table(),
    radius: new Float64Array(n),
    reach: new Float64Array(n),
    inner: new Float64Array(n),
    area: new Float64Array(n),
    turnEase: new Float64Array(n),
    fold: new Int32Array(n),
  };
  kinds.forEach((kind, k) => {
    shapes.area[k] = kind.area;
    shapes.reach[k] = kind.reach;
    if (kind.radius !== undefined) {
      shapes.corners[k] = 1;
      shapes.radius[k] = kind.radius;
      return;
    }
    addPolygon(shapes, k, kind);
  });
  return shapes;
}

function addPolygon(shapes: Shapes, k: number, { outline, area, fold }: PieceKind): void {
  const n = outline.length;
  shapes.corners[k] = n;
  shapes.fold[k] = fold;
  let inner = Infinity;
  let polar = 0; // second moment of area about the centroid, times 12
  for (let c = 0; c < n; c++) {
    const [ax, ay] = outline[c]!;
    const [bx, by] = outline[(c + 1) % n]!;
    const length = Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
    const at = k * shapes.stride + c;
    shapes.edge[at] = length;
    shapes.outline.set([ax, ay, (by - ay) / length, (ax - bx) / length], at * ROW);
    shapes.normalAt[at] = (ax * by - ay * bx) / length;
    inner = Math.min(inner, shapes.normalAt[at]!);
    polar += (ax * by - ay * bx) * (ax * ax + ax * bx + bx * bx + ay * ay + ay * by + by * by);
  }
  shapes.inner[k] = inner;
  shapes.turnEase[k] = (12 * area) / polar;
}

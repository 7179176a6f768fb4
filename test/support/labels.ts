import type { Rect } from "../../packages/casting-core/src/drawing/ink.js";
import { type Labels, openLabels } from "../../packages/casting-core/src/drawing/labels.js";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";

type Numbers = [number, number, number, number];

/** What the compiled labels do, each by itself: see `packages/casting-core/labels`. */
interface Parts extends Labels {
  overlap(...boxes: [...Numbers, ...Numbers]): number;
  enters(...lineAndBox: [...Numbers, ...Numbers]): number;
  cross(...lines: [...Numbers, ...Numbers]): number;
  lineToBox(...lineAndBox: [...Numbers, ...Numbers]): number;
}

const parts = openLabels([
  [
    [0, 0],
    [1, 0],
  ],
]) as Parts;

const box = ({ x, y, width, height }: Rect): Numbers => [x, y, width, height];
const line = (a: Point, b: Point): Numbers => [...a, ...b];

export const overlap = (a: Rect, b: Rect) => parts.overlap(...box(a), ...box(b)) !== 0;
export const enters = (a: Point, b: Point, rect: Rect) => parts.enters(...line(a, b), ...box(rect)) !== 0;
export const cross = (a: Point, b: Point, c: Point, d: Point) => parts.cross(...line(a, b), ...line(c, d)) !== 0;
export const lineToBox = (a: Point, b: Point, rect: Rect) => parts.lineToBox(...line(a, b), ...box(rect));

import Flatbush from "flatbush";
import { boxOf } from "../geometry/polygon.js";
import type { Point } from "../geometry/types.js";
import { PI, sinCos } from "../trig.js";
import { textWidth } from "./letters.js";
import { arcPoints, type Shape, type Text } from "./sheet.js";

/** An upright rectangle by its upper left corner and size, mm. */
export interface Rect {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A drawn line as points, and the least rectangle round them: most lines are told apart from a window by that alone. */
export interface Ink {
  points: readonly Point[];
  bounds: Rect;
  /** Whether nothing may lie inside of it either: text. */
  solid: boolean;
}

/** The lines of a shape; circles and arcs by short chords, text by the rectangle round its letters. */
export function inkOf(shape: Shape): Ink {
  const points = pointsOf(shape);
  return { points, bounds: boundsOf(points), solid: shape.kind === "text" };
}

/** A shape as points along its lines. */
function pointsOf(shape: Shape): Point[] {
  switch (shape.kind) {
    case "polyline":
      return [...shape.points];
    case "polygon":
      return [...shape.points, shape.points[0]!];
    case "path":
      return shape.steps.flatMap(({ to, arc }, n) =>
        arc && n > 0 ? arcPoints(shape.steps[n - 1]!.to, to, arc) : [to],
      );
    case "text":
      return around(textBox(shape));
    case "circle": {
      const { centre, radius } = shape;
      const [, ends] = ROUND.find(([most]) => radius <= most)!;
      return ends.map(([s, c]): Point => [centre[0] + radius * c, centre[1] + radius * s]);
    }
  }
}

/** Sine and cosine of the ends of a circle's chords, up to which radius: none strays from small circles by 0.01 mm. */
const ROUND: readonly (readonly [number, readonly (readonly [number, number])[]])[] = [
  [1, chordEnds(24)],
  [15, chordEnds(90)],
  [Infinity, chordEnds(180)],
];

function chordEnds(chords: number): [number, number][] {
  return Array.from({ length: chords + 1 }, (_, n) => sinCos((2 * PI * n) / chords));
}

/** Height of capitals and figures as a share of the em (Helvetica, Adobe font metrics, value from memory). */
const CAPITALS = 0.72;

/** The rectangle round the letters of a level line of text. */
export function textBox({ at: [x, y], text, size, align }: Text): Rect {
  const width = textWidth(text, size);
  const left = x - (align === "start" ? 0 : align === "end" ? width : width / 2);
  return { x: left, y: y - CAPITALS * size, width, height: CAPITALS * size };
}

/** The rectangle's outline, closed. */
function around({ x, y, width, height }: Rect): Point[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
    [x, y],
  ];
}

/** The rectangle, larger by `by` on every side. */
export function grown({ x, y, width, height }: Rect, by: number): Rect {
  return { x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by };
}

/** The least rectangle round all points. */
export function boundsOf(points: readonly Point[]): Rect {
  const [left, top, right, bottom] = boxOf(points);
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** Whether two rectangles share a point. */
export function overlap(a: Rect, b: Rect): boolean {
  return a.x <= b.x + b.width && b.x <= a.x + a.width && a.y <= b.y + b.height && b.y <= a.y + a.height;
}

/** Whether a drawn line has any part in the window. */
export function touches({ points, bounds, solid }: Ink, window: Rect): boolean {
  if (!overlap(bounds, window)) return false;
  if (solid) return true;
  let fromX = points[0]![0];
  let fromY = points[0]![1];
  for (const to of points) {
    const toX = to[0];
    const toY = to[1];
    if (enters(fromX, fromY, toX, toY, window)) return true;
    fromX = toX;
    fromY = toY;
  }
  return false;
}

/** The straight parts of a drawn line that have any part in the window; text as it is. */
export function partsIn(ink: Ink, window: Rect): Ink[] {
  if (ink.solid) return [ink];
  const parts: Ink[] = [];
  let from = ink.points[0]!;
  for (const to of ink.points) {
    const points = [from, to];
    if (enters(from[0], from[1], to[0], to[1], window)) parts.push({ points, bounds: boundsOf(points), solid: false });
    from = to;
  }
  return parts;
}

/** Whether the straight line from a to b has any part in the window (clipping by its four sides, Liang and Barsky 1984). */
export function enters(ax: number, ay: number, bx: number, by: number, { x, y, width, height }: Rect): boolean {
  const right = x + width;
  const bottom = y + height;
  if ((ax < x && bx < x) || (ax > right && bx > right)) return false;
  if ((ay < y && by < y) || (ay > bottom && by > bottom)) return false;
  if (ax >= x && ax <= right && ay >= y && ay <= bottom) return true;
  // Shares of the way at which the line comes between the sides, and leaves.
  let from = 0;
  let to = 1;
  if (ax !== bx) {
    const [first, second] = [(x - ax) / (bx - ax), (right - ax) / (bx - ax)];
    from = Math.max(from, Math.min(first, second));
    to = Math.min(to, Math.max(first, second));
  }
  if (ay !== by) {
    const [first, second] = [(y - ay) / (by - ay), (bottom - ay) / (by - ay)];
    from = Math.max(from, Math.min(first, second));
    to = Math.min(to, Math.max(first, second));
  }
  return from <= to;
}

/** Finds the lines that may have a part in a rectangle: those whose bounds share a point with it. */
export type Finder = (near: Rect) => Ink[];

/** A finder over `ink`, for many small rectangles. */
export function finderOf(ink: readonly Ink[]): Finder {
  const found = indexOf(ink.map(({ bounds }) => bounds));
  return (near) => found(near).map((n) => ink[n]!);
}

/** Whether neither what `find` finds nor some `more` lines have any part in a rectangle, for many that lie near each other. */
export function freeOf(find: Finder, more: readonly Ink[]): (room: Rect) => boolean {
  let met: Ink | undefined;
  return (room) => {
    const inWay = (each: Ink) => touches(each, room);
    // What was in the way of one place most often is in that of the next.
    if (met && inWay(met)) return false;
    met = more.find(inWay) ?? find(room).find(inWay);
    return met === undefined;
  };
}

/** Finds the indices, in any order, of the rectangles that share a point with another. */
function indexOf(rects: readonly Rect[]): (near: Rect) => number[] {
  if (rects.length === 0) return () => [];
  const index = new Flatbush(rects.length);
  for (const { x, y, width, height } of rects) index.add(x, y, x + width, y + height);
  index.finish();
  return ({ x, y, width, height }) => index.search(x, y, x + width, y + height);
}

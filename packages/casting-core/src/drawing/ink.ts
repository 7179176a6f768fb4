import Flatbush from "flatbush";
import { pointToSegment } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";
import { cos, hypot, PI, sin } from "../trig.js";
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
export function pointsOf(shape: Shape): Point[] {
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
      const chords = 180;
      return Array.from({ length: chords + 1 }, (_, n): Point => {
        const angle = (2 * PI * n) / chords;
        return [shape.centre[0] + shape.radius * cos(angle), shape.centre[1] + shape.radius * sin(angle)];
      });
    }
  }
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
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
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
  for (let i = 1; i < points.length; i++) if (enters(points[i - 1]!, points[i]!, window)) return true;
  return false;
}

/** The straight parts of all lines that have any part in the window, each by itself; words whole. */
export function partsWithin(ink: readonly Ink[], window: Rect): Ink[] {
  return ink.flatMap((each): Ink[] => {
    if (!overlap(each.bounds, window)) return [];
    if (each.solid) return [each];
    const { points } = each;
    return points.slice(1).flatMap((to, n): Ink[] => {
      const part = { points: [points[n]!, to], bounds: boundsOf([points[n]!, to]), solid: false };
      return touches(part, window) ? [part] : [];
    });
  });
}

/** Whether the straight line from `a` to `b` has any part in the window. */
function enters(a: Point, b: Point, window: Rect): boolean {
  return clipped(a, b, window) >= 0;
}

/** How much of the line lies in the window, mm. */
export function lengthWithin({ points, bounds }: Ink, window: Rect): number {
  if (!overlap(bounds, window)) return 0;
  let length = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    length += Math.max(0, clipped(a, b, window)) * hypot(b[0] - a[0], b[1] - a[1]);
  }
  return length;
}

/** Share of the straight line from `a` to `b` that lies in the window, negative for none (clipping by its four sides, Liang and Barsky 1984). */
function clipped([ax, ay]: Point, [bx, by]: Point, { x, y, width, height }: Rect): number {
  const [dx, dy] = [bx - ax, by - ay];
  let from = 0;
  let to = 1;
  const sides = [
    [-dx, ax - x],
    [dx, x + width - ax],
    [-dy, ay - y],
    [dy, y + height - ay],
  ] as const;
  for (const [step, room] of sides) {
    if (step === 0) {
      if (room < 0) return -1;
    } else if (step < 0) from = Math.max(from, room / step);
    else to = Math.min(to, room / step);
  }
  return from <= to ? to - from : -1;
}

/** Distance between a rectangle and the straight line from `a` to `b`, mm; 0 where they share a point. */
export function rectToSegment(rect: Rect, a: Point, b: Point): number {
  if (enters(a, b, rect)) return 0;
  let least = Math.min(pointToRect(a, rect), pointToRect(b, rect));
  for (const corner of around(rect)) least = Math.min(least, pointToSegment(corner, a, b));
  return least;
}

function pointToRect([px, py]: Point, { x, y, width, height }: Rect): number {
  const dx = Math.max(x - px, 0, px - x - width);
  const dy = Math.max(y - py, 0, py - y - height);
  return Math.sqrt(dx * dx + dy * dy);
}

/** Finds the lines that have any part in a rectangle. */
export type Finder = (near: Rect) => Ink[];

/** A finder over `ink`, for many small rectangles. */
export function finderOf(ink: readonly Ink[]): Finder {
  if (ink.length === 0) return () => [];
  const index = new Flatbush(ink.length);
  for (const { bounds } of ink) index.add(bounds.x, bounds.y, bounds.x + bounds.width, bounds.y + bounds.height);
  index.finish();
  return (near) =>
    index
      .search(near.x, near.y, near.x + near.width, near.y + near.height)
      .sort((a, b) => a - b)
      .map((n) => ink[n]!)
      .filter((each) => touches(each, near));
}

/** One straight part of a drawn line, and to whom the line belongs. */
export interface Stroke {
  from: Point;
  to: Point;
  owner: number;
}

/** Every straight part of the lines, found by the rectangle that it enters; `owner` is the line's index unless given. */
export function strokesOf(lines: readonly (readonly Point[])[]): (near: Rect) => Stroke[] {
  const strokes = lines.flatMap((points, owner) =>
    points.slice(1).map((to, n): Stroke => ({ from: points[n]!, to, owner })),
  );
  if (strokes.length === 0) return () => [];
  const index = new Flatbush(strokes.length);
  for (const { from, to } of strokes) {
    const { x, y, width, height } = boundsOf([from, to]);
    index.add(x, y, x + width, y + height);
  }
  index.finish();
  return (near) =>
    index
      .search(near.x, near.y, near.x + near.width, near.y + near.height)
      .map((n) => strokes[n]!)
      .filter(({ from, to }) => enters(from, to, near));
}

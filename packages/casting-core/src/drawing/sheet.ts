import type { Point } from "../geometry/types.js";
import type { PlacedPiece } from "../layout/types.js";
import { atan2, cos, sin, TAU } from "../trig.js";

/** How a shape is drawn. Black alone must suffice; no line is thinner than 0.2 mm. */
export interface Style {
  /** Width of the line, mm; 0 for none. */
  line: number;
  /** Lengths of dashes and gaps, mm. */
  dash?: readonly number[];
  /** Ink of the line and of the fill; a fill of its own only where given. */
  ink?: Ink;
  fill?: Ink;
}

export type Ink = "black" | "grey" | "pale" | "white";

/** One thing drawn, in mm on the sheet: x to the right, y down, from its upper left corner. */
export type Shape =
  | {
      kind: "polyline" | "polygon";
      points: readonly Point[];
      style: Style;
      piece?: number;
      /** An aid to measure by: worth no page of its own. */
      aid?: true;
    }
  | { kind: "circle"; centre: Point; radius: number; style: Style; piece?: number }
  | { kind: "path"; steps: readonly Step[]; style: Style }
  | {
      kind: "text";
      /** Where the base line begins, is halved or ends. */
      at: Point;
      text: string;
      /** Height of the letters' em, mm. */
      size: number;
      align: "start" | "middle" | "end";
    };

export type Text = Extract<Shape, { kind: "text" }>;

/** One step of a closed outline: where it leads to, in a straight line or along `arc`. */
export type Step = { to: Point; arc?: Arc };

/** The arc that leads to a step: its radius, whether it turns left on the paper, and whether it is the longer of the two. */
export interface Arc {
  radius: number;
  left: boolean;
  large: boolean;
}

/** A sheet to be printed at its true size: named groups of shapes, drawn in their order. */
export interface Sheet {
  /** File name without its ending. */
  name: string;
  width: number;
  height: number;
  /** One line that says what it is. */
  caption: string;
  /** What stands on every page of it besides the title, one sentence each. */
  facts: readonly string[];
  /** Height of the drawing without the block of words and check squares below it. */
  bodyHeight: number;
  groups: readonly Group[];
}

export interface Group {
  id: string;
  shapes: readonly Shape[];
}

/** Where a drawing of a plan lies on its sheet: the plan's axis at `x`, `y`, its y turned down, its x mirrored if asked. */
export interface View {
  x: number;
  y: number;
  mirrored: boolean;
}

/** A point of the plan on the sheet. */
export function onSheet({ x, y, mirrored }: View, point: Point): Point {
  return [x + (mirrored ? -point[0] : point[0]), y - point[1]];
}

/** A piece of the plan on the sheet: its outline, or its true circle where it is round. */
export function pieceShape(
  view: View,
  { x, y, radius, outline }: PlacedPiece,
  style: Style,
): Extract<Shape, { kind: "polyline" | "polygon" | "circle" }> {
  return radius === undefined
    ? { kind: "polygon", points: outline.map((point) => onSheet(view, point)), style }
    : { kind: "circle", centre: onSheet(view, [x, y]), radius, style };
}

export const THIN: Style = { line: 0.25 };
export const FIRM: Style = { line: 0.5 };
export const DASHED: Style = { line: 0.25, dash: [3, 2] };

/** A straight line. */
export function line(from: Point, to: Point, style: Style = THIN): Shape {
  return { kind: "polyline", points: [from, to], style };
}

/** A circle. */
export function circle(centre: Point, radius: number, style: Style = THIN): Shape {
  return { kind: "circle", centre, radius, style };
}

/** A line of text. */
export function text(at: Point, words: string, size: number, align: Text["align"] = "start"): Text {
  return { kind: "text", at, text: words, size, align };
}

/** A rectangle by its upper left corner and size. */
export function rectangle([x, y]: Point, width: number, height: number, style: Style = THIN): Shape {
  const points: Point[] = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
  return { kind: "polygon", points, style };
}

/** Centre of an arc, the angle of its start and what it turns through, in radians, clockwise as y runs down. */
export function arcTurn(
  from: Point,
  to: Point,
  { radius, left, large }: Arc,
): { centre: Point; start: number; sweep: number } {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const chord = Math.sqrt(dx * dx + dy * dy);
  const rise = Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));
  const side = left === large ? -1 : 1;
  const centre: Point = [
    (from[0] + to[0]) / 2 + (side * rise * dy) / chord,
    (from[1] + to[1]) / 2 - (side * rise * dx) / chord,
  ];
  const start = atan2(from[1] - centre[1], from[0] - centre[0]);
  let sweep = atan2(to[1] - centre[1], to[0] - centre[0]) - start;
  if (left && sweep > 0) sweep -= TAU;
  if (!left && sweep < 0) sweep += TAU;
  return { centre, start, sweep };
}

/** Points along an arc, its end among them. */
export function arcPoints(from: Point, to: Point, arc: Arc): Point[] {
  const { centre, start, sweep } = arcTurn(from, to, arc);
  const parts = 32;
  return Array.from({ length: parts }, (_, n): Point => {
    const angle = start + (sweep * (n + 1)) / parts;
    return [centre[0] + arc.radius * cos(angle), centre[1] + arc.radius * sin(angle)];
  });
}

import type { Point } from "../geometry/types.js";

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
  | { kind: "polyline" | "polygon"; points: readonly Point[]; style: Style; piece?: number }
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
      /** Degrees counter-clockwise on the paper. */
      turn?: number;
    };

/** A closed outline of lines and of arcs round `centre`, counter-clockwise on the paper where `left`. */
export type Step = { to: Point; arc?: { radius: number; left: boolean; large: boolean } };

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
export function text(at: Point, words: string, size: number, align: "start" | "middle" | "end" = "start"): Shape {
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

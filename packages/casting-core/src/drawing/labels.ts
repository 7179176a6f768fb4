import type { Point } from "../geometry/types.js";
import { type Strips, withLines } from "../strips.js";
import { opener, type Place } from "../wasm.js";
import { LABELS_CODE } from "./labels-code.js";

/** The compiled places of labels among drawn lines (see `packages/casting-core/labels`, where each is described). */
export interface Labels extends Strips {
  drawStrokes(): void;
  clearOf(x: number, y: number, line: number, far: number): number;
  turnToPiece(line: number, x: number, y: number, radius: number, bore: number): void;
  besideBore(width: number, height: number, most: number): number;
  readonly offX: Place;
  readonly offY: Place;
  readonly wide: Place;
  readonly index: Place;
  readonly taken: Place;
  openNumbers(cuts: number, closed: number, height: number, dot: number): void;
  placeNumbers(): void;
}

/** A new one with a memory of its own, nothing opened in it yet. */
const newLabels = opener<Labels>(LABELS_CODE);

/** Labels on `lines`, in a memory of their own, the lines' strokes not yet drawn. */
export function openLabels(lines: readonly (readonly Point[])[]): Labels {
  return withLines(newLabels(), lines);
}

/** So many numbers in the memory of labels from a place on: until more is opened in it. */
export function floatsIn({ memory }: Labels, { value }: Place, count: number): Float64Array {
  return new Float64Array(memory.buffer, value, count);
}

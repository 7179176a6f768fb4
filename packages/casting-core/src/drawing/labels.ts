import type { Point } from "../geometry/types.js";
import { type Compiled, opener, type Place } from "../wasm.js";
import { LABELS_CODE } from "./labels-code.js";

/** The compiled places of labels among drawn lines (see `packages/casting-core/labels`, where each is described). */
export interface Labels extends Compiled {
  readonly points: Place;
  readonly lineEnd: Place;
  openStrips(lines: number, count: number): void;
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
  const labels = newLabels();
  const count = lines.reduce((sum, line) => sum + line.length, 0);
  labels.openStrips(lines.length, count);
  const points = floatsIn(labels, labels.points, 2 * count);
  const lineEnd = new Int32Array(labels.memory.buffer, labels.lineEnd.value, lines.length);
  let end = 0;
  for (let n = 0; n < lines.length; n++) {
    for (const point of lines[n]!) {
      points[2 * end] = point[0];
      points[2 * end + 1] = point[1];
      end++;
    }
    lineEnd[n] = end;
  }
  return labels;
}

/** So many numbers in the memory of labels from a place on: until more is opened in it. */
export function floatsIn({ memory }: Labels, { value }: Place, count: number): Float64Array {
  return new Float64Array(memory.buffer, value, count);
}

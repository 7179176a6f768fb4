import type { Point } from "./geometry/types.js";
import type { Compiled, Place } from "./wasm.js";

/** Compiled code that lines are handed to, to be drawn as strips (see `packages/casting-core/channels/strips.ts`). */
export interface Strips extends Compiled {
  readonly points: Place;
  readonly lineEnd: Place;
  openStrips(lines: number, count: number): void;
}

/** The same code, `lines` in its memory, nothing drawn yet. */
export function withLines<T extends Strips>(strips: T, lines: readonly (readonly Point[])[]): T {
  const count = lines.reduce((sum, line) => sum + line.length, 0);
  strips.openStrips(lines.length, count);
  const points = new Float64Array(strips.memory.buffer, strips.points.value, 2 * count);
  const lineEnd = new Int32Array(strips.memory.buffer, strips.lineEnd.value, lines.length);
  let end = 0;
  for (let n = 0; n < lines.length; n++) {
    for (const point of lines[n]!) {
      points[2 * end] = point[0];
      points[2 * end + 1] = point[1];
      end++;
    }
    lineEnd[n] = end;
  }
  return strips;
}

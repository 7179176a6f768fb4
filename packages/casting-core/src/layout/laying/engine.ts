import { type Compiled, opener, type Place } from "../../wasm.js";
import { BED_CODE } from "./bed-code.js";

/**
 * The compiled bed (see `packages/casting-core/bed`, where each is described): its memory, the places of the arrays that
 * others read and write, and what it does.
 */
export interface Engine extends Compiled {
  readonly count: Place;
  readonly kind: Place;
  readonly x: Place;
  readonly y: Place;
  readonly cosine: Place;
  readonly sine: Place;
  readonly draws: Place;
  readonly strain: Place;
  readonly covered: Place;
  readonly target: Place;
  readonly circle: Place;
  readonly corners: Place;
  readonly shape: Place;
  readonly normalAt: Place;
  readonly edge: Place;
  readonly radius: Place;
  readonly reach: Place;
  readonly inner: Place;
  readonly area: Place;
  readonly turnEase: Place;
  readonly fold: Place;
  open(capacity: number, kinds: number, stride: number, circles: number): void;
  setField(holds: number, tool: number): void;
  put(i: number, kind: number, x: number, y: number, cosine: number, sine: number): void;
  leave(count: number): void;
  forgetNeighbours(): void;
  sweep(gap: number, skin: number): number;
  shake(size: number): void;
  disalign(size: number): void;
  forgetRings(): void;
  evenOut(gain: number): void;
  openPolish(gap: number, skin: number): void;
  takeStride(gap: number, size: number, turn: number, free: number): void;
}

/** A new engine with a memory of its own, nothing opened in it yet. */
export const newEngine = opener<Engine>(BED_CODE);

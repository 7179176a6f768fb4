import type { Bed } from "../../packages/casting-core/src/layout/laying/bed.js";
import type { Engine } from "../../packages/casting-core/src/layout/laying/engine.js";
import type { Place } from "../../packages/casting-core/src/wasm.js";

/** What the compiled bed does within a stride, each by itself: see `packages/casting-core/bed`. */
interface Parts extends Engine {
  shift(i: number, dx: number, dy: number, turn: number): void;
  separate(i: number, j: number, want: number, hint: number, hintCorner: number): number;
  listNeighbours(gap: number, skin: number): void;
  readonly firstRing: Place;
  readonly lastRing: Place;
  footprintOf(i: number): void;
  openLimits(): void;
  findLimits(gap: number, within: number): void;
  readonly limits: Place;
  openSlopes(): void;
  findSlopes(): void;
  openSolve(): void;
  solve(): void;
}

export const partsOf = (bed: Bed) => bed.engine as Parts;

type Name = "covers" | "alongX" | "alongY" | "turning" | "limitX" | "limitY" | "leverFirst" | "leverSecond" | "room";
type More = "lean" | "excess" | "slopeX" | "slopeY" | "slopeTurn" | "moves";

/** `length` numbers of the array that the compiled bed calls `name`, as they are now. */
export function floats(bed: Bed, name: Name | More, length: number): Float64Array {
  const place = (bed.engine as unknown as Record<string, Place>)[name]!;
  return new Float64Array(bed.engine.memory.buffer, place.value, length);
}

/** The same of an array of whole numbers. */
export function integers(
  bed: Bed,
  name: "first" | "second" | "active" | "piece" | "ringStart",
  length: number,
): Int32Array {
  const place = (bed.engine as unknown as Record<string, Place>)[name]!;
  return new Int32Array(bed.engine.memory.buffer, place.value, length);
}

import { type Compiled, opener, type Place } from "../../wasm.js";
import { WEAR_CODE } from "./wear-code.js";

/** The compiled wear and what it presses by (see `packages/casting-core/wear`, where each is described). */
interface Engine extends Compiled {
  readonly zones: Place;
  readonly rings: Place;
  readonly removal: Place;
  readonly even: Place;
  readonly level: Place;
  readonly slope: Place;
  readonly line: Place;
  /** 1 where the far side lifts, else 0. */
  readonly lifts: Place;
  readonly edge: Place;
  open(zones: number, rings: number, angles: number): void;
  wear(mirror: number, offset: number, reach: number, slide: number, hard: number): void;
  press(mirror: number, reach: number, offset: number): void;
  liftsAt(mirror: number, reach: number): number;
}

/** A new one with a memory of its own, nothing opened in it yet. */
export const newEngine = opener<Engine>(WEAR_CODE);

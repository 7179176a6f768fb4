import type { Blank, Tool } from "../blank/types.js";
import type { Units } from "../job/types.js";
import type { PieceKind } from "../pieces/types.js";
import { lengthText } from "../units/length-text.js";
import type { PourJob } from "./pour.js";
import type { Pour } from "./types.js";

/** Everything the notes of the pour are drawn from. */
export interface Poured {
  job: PourJob;
  blank: Blank;
  tool: Tool;
  kinds: readonly PieceKind[];
  pour: Pour;
}

/** A worked-out length for a sentence, to 0.1 mm, below 1 mm to 0.01 mm, in the job's own units. */
export function lengthWords(mm: number, units: Units): string {
  const parts = Math.abs(mm) < 1 ? 100 : 10;
  return lengthText(units === "mm" ? Math.round(mm * parts) / parts : mm, units);
}

/** `value` with at most `places` decimals, no trailing zeros. */
export function decimals(value: number, places: number): string {
  return String(Number(value.toFixed(places)));
}

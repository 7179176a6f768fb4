import { PI } from "../src/arc";
import { FIRST_RING, LAST_RING, RINGS } from "../src/layout/quality/ring-numbers";
import { alongX, alongY, covers, firstRing, footprintOf, lastRing, turning } from "./footprint";
import { count } from "./pieces";
import { fieldEdge, target } from "./shapes";

/*
 * How the excess of each ring that counts (coverage ÷ mean − target) grows as the pieces that cover some of it move and
 * turn: ring `r`'s pieces stand at `ringStart[r]` to `ringStart[r + 1]`, with what a mm along x and y and a radian add.
 */
export const excess = new StaticArray<f64>(RINGS + 1);
/** How hard each ring was pulled back, kept from one time to the next. */
export const pull = new StaticArray<f64>(RINGS + 1);
export const ringStart = new StaticArray<i32>(RINGS + 1);
export let piece = new StaticArray<i32>(0);
export let slopeX = new StaticArray<f64>(0);
export let slopeY = new StaticArray<f64>(0);
export let slopeTurn = new StaticArray<f64>(0);

/** The footprints as they are found, RINGS + 1 entries for each piece, and the rings they reach from and to. */
let printX = new StaticArray<f64>(0);
let printY = new StaticArray<f64>(0);
let printTurn = new StaticArray<f64>(0);
let printFrom = new StaticArray<i32>(0);
let printTo = new StaticArray<i32>(0);

/** Makes room for the slopes of all pieces, no ring of them pulled back. */
export function openSlopes(): void {
  const entries = count * (RINGS + 1);
  if (entries > piece.length) {
    piece = new StaticArray<i32>(entries);
    slopeX = new StaticArray<f64>(entries);
    slopeY = new StaticArray<f64>(entries);
    slopeTurn = new StaticArray<f64>(entries);
    printX = new StaticArray<f64>(entries);
    printY = new StaticArray<f64>(entries);
    printTurn = new StaticArray<f64>(entries);
    printFrom = new StaticArray<i32>(count);
    printTo = new StaticArray<i32>(count);
  }
  for (let ring = 0; ring <= RINGS; ring++) pull[ring] = 0;
}

/** Measures the slopes of the pieces as they lie. */
export function findSlopes(): void {
  const mean = printAll();
  const width = fieldEdge / RINGS;
  let n = 0;
  for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
    ringStart[ring] = n;
    excess[ring] = excess[ring] / mean - target[ring];
    const share = 1 / (PI * width * width * (2 * ring + 1) * mean);
    for (let i = 0; i < count; i++) {
      if (ring < printFrom[i] || ring > printTo[i]) continue;
      const at = i * (RINGS + 1) + ring;
      piece[n] = i;
      slopeX[n] = printX[at] * share;
      slopeY[n] = printY[at] * share;
      slopeTurn[n] = printTurn[at] * share;
      n++;
    }
  }
  ringStart[LAST_RING + 1] = n;
}

/** Finds every piece's footprint; leaves the rings' coverage in `excess` and returns its mean over their targets. */
function printAll(): f64 {
  const width = fieldEdge / RINGS;
  for (let ring = 0; ring <= RINGS; ring++) excess[ring] = 0;
  for (let i = 0; i < count; i++) {
    footprintOf(i);
    printFrom[i] = max(FIRST_RING, firstRing);
    printTo[i] = min(LAST_RING, lastRing);
    for (let ring = printFrom[i]; ring <= printTo[i]; ring++) {
      const at = i * (RINGS + 1) + ring;
      excess[ring] = excess[ring] + covers[ring] / (PI * width * width * (2 * ring + 1));
      printX[at] = alongX[ring];
      printY[at] = alongY[ring];
      printTurn[at] = turning[ring];
    }
  }
  let wanted: f64 = 0;
  let sum: f64 = 0;
  for (let ring = FIRST_RING; ring <= LAST_RING; ring++) {
    wanted += target[ring];
    sum += excess[ring];
  }
  return sum / wanted;
}

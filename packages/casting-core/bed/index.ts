/*
 * The bed of the layout's engine: its inner loops, compiled to WebAssembly by the build (see DEVELOPERS.md). A caller
 * opens it once, writes the tables into the arrays it exports, puts pieces down and has them swept.
 */
import { openNeighbours } from "./neighbours";
import { openPieces } from "./pieces";
import { openRelax } from "./relax";
import { openShake } from "./shake";
import { openShapes } from "./shapes";

export { separate } from "./contact";
export { covered, evenOut, forgetRings } from "./even";
export { alongX, alongY, covers, firstRing, footprintOf, lastRing, turning } from "./footprint";
export * from "./limits";
export { forgetNeighbours, listNeighbours } from "./neighbours";
export { cosine, count, kind, leave, put, shift, sine, x, y } from "./pieces";
export { openPolish, takeStride } from "./polish";
export { strain, sweep } from "./relax";
export { disalign, draws, shake } from "./shake";
export {
  area,
  circle,
  corners,
  edge,
  fold,
  inner,
  normalAt,
  radius,
  reach,
  setField,
  shape,
  target,
  turnEase,
} from "./shapes";
export * from "./slopes";
export { moves, openSolve, solve } from "./solve";

/** Opens an empty bed for `capacity` pieces of `kinds` kinds with up to `stride` corners, and for `circles` kept circles. */
export function open(capacity: i32, kinds: i32, stride: i32, circles: i32): void {
  openShapes(kinds, stride, circles);
  openPieces(capacity);
  openNeighbours(capacity);
  openRelax(capacity);
  openShake(capacity);
}

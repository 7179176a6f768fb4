/*
 * The area of channels, compiled to WebAssembly by the build (see DEVELOPERS.md). A caller opens it once, writes the
 * lines' points into the arrays it exports and asks for the area.
 */
import { unionArea } from "./area";
import { drawLines } from "./draw";
import { points } from "./strips";

export { arcInBar, arcInDisc, lineInBar, lineInDisc } from "./cover";
export { drawLines } from "./draw";
export { add, ends, forget, intervals, leaveFree } from "./intervals";
export { findNear, nearBar, nearBars, nearDisc, nearDiscs } from "./near";
export { arcArea } from "./round";
export {
  addBar,
  alongX,
  alongY,
  bars,
  barX,
  barY,
  discs,
  discX,
  discY,
  length,
  lineEnd,
  openStrips,
  points,
} from "./strips";

/** Area, mm², of everything within `width` / 2 of the lines and within `radius` of the origin. */
export function area(width: f64, radius: f64): f64 {
  if (points.length === 0) return 0;
  drawLines(width);
  return unionArea(width / 2, radius);
}

import { nearBar, nearBars } from "../channels/near";
import { barX, barY } from "../channels/strips";
import { pointToLine } from "./box";
import { endX, endY, findRound, lineOf } from "./strokes";

/** Parts of a mm in which is told how far lines are: what differs by less does not decide which place is best. */
const FINE: f64 = 1e6;

/** How far all lines but one lie from (x, y), mm, up to `far`. */
export function clearOf(x: f64, y: f64, line: i32, far: f64): f64 {
  findRound(x, y, 0, 0, far);
  let least = far;
  for (let n = 0; n < nearBars; n++) {
    const s = nearBar[n];
    if (lineOf[s] === line) continue;
    least = Math.min(least, Math.floor(pointToLine(x, y, barX[s], barY[s], endX[s], endY[s]) * FINE) / FINE);
  }
  return least;
}

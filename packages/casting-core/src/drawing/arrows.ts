import { distance } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";
import { openLabels } from "./labels.js";
import type { Shape } from "./sheet.js";

/** Length of an arrow's head, and how far along its cut the tip may lie, the usual place first, mm. */
const HEAD = 2;
const TIPS = [4, 3.5, 3, 4.5, 5, 5.5, 6, 7, 8];
/** From the middle of a head to other cuts, mm: nearer it would hide where they meet, or the dot that one begins in. */
const CLEAR = 1.5;

/** The tip of a head and the direction in which it points. */
interface Tip {
  at: Point;
  along: Point;
}

/** An arrow's head on each cut a little after its beginning, clear of other cuts where there is such a place. */
export function arrowsOf(cuts: readonly (readonly Point[])[]): Shape[] {
  const labels = openLabels(cuts);
  labels.drawStrokes();
  return cuts.map((cut, index) => {
    let best: Tip | undefined;
    let most = -1;
    for (const far of TIPS) {
      const tip = tipAt(cut, far);
      if (!tip) continue;
      const [x, y] = back(tip, HEAD / 2, 0);
      const clear = labels.clearOf(x, y, index, CLEAR);
      if (clear <= most) continue;
      best = tip;
      most = clear;
      if (clear === CLEAR) break;
    }
    return head(best ?? tipAt(cut, Infinity)!);
  });
}

/** The tip so far along a cut; at its end for ever, nothing where the cut is shorter. */
function tipAt(cut: readonly Point[], far: number): Tip | undefined {
  let left = far;
  let end: Tip | undefined;
  for (let n = 1; n < cut.length; n++) {
    const [from, to] = [cut[n - 1]!, cut[n]!];
    const length = distance(from, to);
    if (length < 1e-9) continue;
    const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    if (length >= left) return { at: [from[0] + along[0] * left, from[1] + along[1] * left], along };
    left -= length;
    end = { at: to, along };
  }
  return far === Infinity ? end : undefined;
}

/** The point so far behind a tip, and so far beside it. */
function back({ at, along: [dx, dy] }: Tip, behind: number, beside: number): Point {
  return [at[0] - dx * behind - dy * beside, at[1] - dy * behind + dx * beside];
}

function head(tip: Tip): Shape {
  const points = [tip.at, back(tip, HEAD, HEAD * 0.4), back(tip, HEAD, -HEAD * 0.4)];
  return { kind: "polygon", points, style: { line: 0, fill: "black" } };
}

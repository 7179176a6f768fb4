import { glassOf } from "../blank/glass.js";
import { sagittaOf } from "../blank/sphere.js";
import type { Blank, Tool } from "../blank/types.js";
import type { Job } from "../job/types.js";
import { PI } from "../trig.js";
import type { Removal } from "./types.js";

const ZONES = 24;
/** Steps of the volume's integral; Simpson's rule comes within 1e-9 of the caps' difference. */
const STEPS = 400;

/** What stands between the curve now and the curve wanted; nothing without a target. Glass can only be taken away. */
export function removalOf(job: Pick<Job, "blank">, blank: Blank, tool: Tool): Removal | undefined {
  if (!blank.target || blank.curveRadius === undefined) return undefined;
  const half = blank.diameter / 2;
  const sign = blank.curve === "convex" ? -1 : 1;
  const [now, wanted] = [blank.curveRadius, blank.target.curveRadius];
  // Height now less height wanted, both from the centre: the wanted surface lies as high as nowhere glass is missing.
  const over = (r: number) => sign * (sagittaOf(now, r) - sagittaOf(wanted, r));
  const base = Math.min(0, over(half));
  const depth = (r: number) => (over(r) - base) * 1000;
  const zones = Array.from({ length: ZONES + 1 }, (_, n) => {
    const at = (half * n) / ZONES;
    return { at, depth: depth(at) };
  });
  const step = half / STEPS;
  let sum = 0;
  for (let n = 0; n <= STEPS; n++) {
    const weight = n === 0 || n === STEPS ? 1 : n % 2 === 1 ? 4 : 2;
    sum += weight * 2 * PI * n * step * (depth(n * step) / 1000);
  }
  const volume = (sum * step) / 3 / 1000;
  const glass = glassOf(job.blank.material);
  const [centre, edge] = [depth(0), depth(half)];
  const edgeOfTool = tool.diameter / 2;
  return {
    first: centre > edge ? "centre" : "edge",
    zones,
    deepest: Math.max(centre, edge),
    volume,
    ...(glass ? { mass: volume * glass.density } : {}),
    overTool: Math.abs(sagittaOf(now, edgeOfTool) - sagittaOf(wanted, edgeOfTool)) * 1000,
  };
}

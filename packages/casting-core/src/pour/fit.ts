import { glassOf } from "../blank/glass.js";
import { sagittaOf } from "../blank/sphere.js";
import type { Blank, Tool } from "../blank/types.js";
import type { JobBlank } from "../job/types.js";
import { plasterNamed } from "./gypsum.js";
import type { Fit } from "./types.js";

/** Heat across the blank while the cast sets on its face, K: stated, not measured (common practice). */
const GRADIENT = 10;
/** A plaster that is not in the table may grow as much as any of ISO 6873:2013, percent. */
const UNKNOWN_EXPANSION = { least: 0, most: 0.3 };

/**
 * How the tool meets its glass after setting: growth by (1 + ε) makes the cast radius R (1 + ε), so the tool comes out
 * flatter; the blank's bow by the heat of setting is α ΔT r² / 2t over the tool (free plate, even gradient).
 */
export function fitOf(kind: string, job: Pick<JobBlank, "material" | "thickness">, blank: Blank, tool: Tool): Fit {
  const expansion = plasterNamed(kind)?.expansion ?? UNKNOWN_EXPANSION;
  const r = tool.diameter / 2;
  const { curveRadius } = tool;
  const mismatch = (percent: number): number =>
    curveRadius === undefined ? 0 : 1000 * (tool.sagitta - sagittaOf(curveRadius * (1 + percent / 100), r));
  const growth = (percent: number): number => ((r - tool.rim) * percent) / 100;
  const glass = glassOf(job.material);
  const bow =
    glass && job.thickness !== undefined
      ? { gradient: GRADIENT, sagitta: (1000 * glass.expansion * GRADIENT * r * r) / (2 * job.thickness) }
      : undefined;
  return {
    expansion: { ...expansion },
    mismatch: { least: mismatch(expansion.least), most: mismatch(expansion.most) },
    meets: curveRadius === undefined ? "even" : blank.curve === "convex" ? "centre" : "edge",
    rimGrowth: { least: growth(expansion.least), most: growth(expansion.most) },
    ...(bow ? { bow } : {}),
  };
}

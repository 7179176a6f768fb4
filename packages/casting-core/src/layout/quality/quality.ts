import type { Tool } from "../../blank/types.js";
import { runOf } from "../../job/run.js";
import type { Job } from "../../job/types.js";
import type { PieceKind } from "../../pieces/types.js";
import { hypot, PI } from "../../trig.js";
import { check } from "../check.js";
import { fieldOf } from "../field.js";
import type { PlacedPiece, Quality } from "../types.js";
import { byHandOf } from "./hand.js";
import { hardCoverage } from "./hard-coverage.js";
import { latticeCount } from "./lattice.js";
import { type Pattern, patternOf } from "./pattern.js";
import { radialVariation } from "./rings.js";
import { wearOf } from "./wear.js";

/** What the laying found out of the same pieces: it is not worked out again. */
interface Known {
  gapMin: number;
  rimMin: number;
  pattern: Pattern;
}

/** The figures of a finished layout, each as the contract of the plan defines it, from the written numbers alone. */
export function qualityOf(
  job: Job,
  tool: Tool,
  kinds: readonly PieceKind[],
  pieces: readonly PlacedPiece[],
  known?: Known,
): Quality {
  const radius = tool.diameter / 2;
  const whole = PI * radius * radius;
  let area = 0;
  let hard = 0;
  let mass = 0;
  let momentX = 0;
  let momentY = 0;
  for (const { kind, x, y } of pieces) {
    const { area: outline, bore, thickness, density } = kinds[kind]!;
    const solid = outline - (PI * bore * bore) / 4;
    area += outline;
    hard += solid;
    mass += solid * thickness * density;
    momentX += solid * thickness * density * x;
    momentY += solid * thickness * density * y;
  }
  const byHand = byHandOf(job, tool, pieces);
  const gap = job.layout.gap + job.layout.hand;
  const { gapMin, rimMin } = known ?? check(pieces, fieldOf(job, tool), gap);
  const { rings, symmetry } = known?.pattern ?? patternOf(pieces, radius);
  return {
    count: pieces.length,
    coverage: area / whole,
    hardCoverage: hard / whole,
    ...(pieces.length > 1 ? { gapMin } : {}),
    rimMin,
    ...(kinds.length === 1 ? { latticeCount: latticeCount(kinds[0]!, radius - tool.rim, gap) } : {}),
    radialVariation: radialVariation(rings),
    symmetry,
    zoning: wearOf(hardCoverage(kinds, pieces), runOf(job)).zoning,
    offCentre: mass > 0 ? hypot(momentX, momentY) / mass : 0,
    ...(byHand ? { byHand } : {}),
  };
}

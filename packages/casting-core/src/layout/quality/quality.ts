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
import { RINGS, radialVariation, ringCoverage } from "./rings.js";
import { symmetry } from "./symmetry.js";
import { wearOf } from "./wear.js";

/**
 * The figures of a finished layout, each as the contract of the plan defines it, from the written numbers alone.
 * `rings` of the same pieces that are known already are not worked out again.
 */
export function qualityOf(
  job: Job,
  tool: Tool,
  kinds: readonly PieceKind[],
  pieces: readonly PlacedPiece[],
  rings: Float64Array = ringCoverage(pieces, tool.diameter / 2, RINGS),
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
  const { gapMin, rimMin } = check(pieces, fieldOf(job, tool), job.layout.gap + job.layout.hand);
  return {
    count: pieces.length,
    coverage: area / whole,
    hardCoverage: hard / whole,
    ...(pieces.length > 1 ? { gapMin } : {}),
    rimMin,
    ...(kinds.length === 1
      ? { latticeCount: latticeCount(kinds[0]!, radius - tool.rim, job.layout.gap + job.layout.hand) }
      : {}),
    radialVariation: radialVariation(rings),
    symmetry: symmetry(pieces, radius),
    zoning: wearOf(hardCoverage(kinds, pieces), runOf(job)).zoning,
    offCentre: mass > 0 ? hypot(momentX, momentY) / mass : 0,
    ...(byHand ? { byHand } : {}),
  };
}

import type { Plan } from "./types.js";

/** One figure of two plans, side by side. */
export interface Comparison {
  what: string;
  /** `mm`, `mL`, `kg`, `share`, or `` for a count. */
  unit: "mm" | "mL" | "kg" | "share" | "";
  before: number;
  after: number;
}

/** What changes between two plans, in the order a maker asks: tool, pieces, plaster, channels, masses. */
export function comparePlans(before: Plan, after: Plan): Comparison[] {
  const row = (what: string, unit: Comparison["unit"], figure: (plan: Plan) => number): Comparison => ({
    what,
    unit,
    before: figure(before),
    after: figure(after),
  });
  const batches = (plan: Plan, part: "powder" | "water"): number =>
    plan.pour.batches.reduce((sum, batch) => sum + batch[part], 0);
  return [
    row("tool diameter", "mm", (plan) => plan.tool.diameter),
    row("sagitta of the face", "mm", (plan) => plan.tool.sagitta),
    row("pieces", "", (plan) => plan.layout.pieces.length),
    row("coverage", "share", (plan) => plan.layout.quality.coverage),
    row("cast volume", "mL", (plan) => plan.pour.castVolume),
    row("mix", "mL", (plan) => plan.pour.mixVolume),
    row("batches", "", (plan) => plan.pour.batches.length),
    row("powder", "kg", (plan) => batches(plan, "powder")),
    row("water", "kg", (plan) => batches(plan, "water")),
    row("dam length", "mm", (plan) => plan.pour.dam.length),
    row("channels", "mm", (plan) => plan.grooves.totals.length),
    row("cuts", "", (plan) => plan.grooves.totals.cuts),
    row("plaster cut away", "mL", (plan) => plan.grooves.totals.volume),
    row("mass, wet", "kg", (plan) => plan.pour.mass.wet),
    row("mass, dry", "kg", (plan) => plan.pour.mass.dry),
  ];
}

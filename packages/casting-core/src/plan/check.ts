import { grooveLooks } from "./check-grooves.js";
import { layoutLooks } from "./check-layout.js";
import { pourLooks } from "./check-pour.js";
import { type Look, must } from "./measure.js";
import type { Plan } from "./types.js";

/** One thing that was measured again: whether it holds, and what was found. */
export interface Finding {
  what: string;
  holds: boolean;
  text: string;
}

/** All that was measured again, and whether all of it holds. */
export interface PlanCheck {
  holds: boolean;
  findings: Finding[];
}

/**
 * Measures a saved plan again from its geometry alone: gap, rim, axis, counts, coverage, channels, volumes, marks. It
 * shares nothing with what worked the plan out but plain distances. Anything at all may be given: what is no plan of
 * this version is said so in one finding.
 */
export function checkPlan(value: unknown): PlanCheck {
  const fault = notAPlan(value);
  const findings = fault ? [{ what: "format", holds: false, text: fault }] : measured(value as Plan);
  return { holds: findings.every((finding) => finding.holds), findings };
}

function notAPlan(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null)
    return "this is no plan: it is not an object; name a plan.json that casting make wrote";
  const { format } = value as { format?: unknown };
  if (format !== "casting-plan/1") {
    const given = typeof format === "string" ? `"${format.slice(0, 40)}"` : "missing";
    return `the format is ${given}, not "casting-plan/1": make the plan again with this version`;
  }
  const missing = ["job", "blank", "tool", "layout", "grooves", "pour"].filter((key) => {
    const part = (value as Record<string, unknown>)[key];
    return typeof part !== "object" || part === null;
  });
  return missing.length > 0 ? `the plan lacks ${missing.join(", ")}: it was cut or changed` : undefined;
}

function measured(plan: Plan): Finding[] {
  const looks: Look[] = [...layoutLooks, ...grooveLooks, ["curve", curveFault], ...pourLooks];
  return looks.map(([what, look]) => {
    try {
      const text = look(plan);
      return { what, holds: text === undefined, text: text ?? "holds" };
    } catch {
      return { what, holds: false, text: "could not be measured: the plan was cut or changed there" };
    }
  });
}

function curveFault({ blank, tool }: Plan): string | undefined {
  for (const [what, radius, sagitta, half] of [
    ["blank", blank.curveRadius, blank.sagitta, blank.diameter / 2],
    ["tool", tool.curveRadius, tool.sagitta, tool.diameter / 2],
    ["target", blank.target?.curveRadius, blank.target?.sagitta ?? 0, blank.diameter / 2],
  ] as const) {
    const wanted = radius === undefined ? 0 : radius - Math.sqrt(radius * radius - half * half);
    if (!(Math.abs(wanted - sagitta) <= 1e-8 * Math.max(1, radius ?? 1)))
      return `the sagitta of the ${what} is ${wanted}, not ${sagitta}`;
  }
  return must(blank.curve === "flat" || blank.curveRadius !== undefined, "the blank is curved, but has no radius");
}

import { VERSION } from "../version.js";
import { againLook } from "./check-again.js";
import { grooveLooks } from "./check-grooves.js";
import { layoutLooks } from "./check-layout.js";
import { pourLooks } from "./check-pour.js";
import { type Look, must, toldIn } from "./measure.js";
import { formatFault, shapeFault } from "./read.js";
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
 * Measures a saved plan again from its geometry alone: gap, rim, axis, counts, coverage, channels, volumes, marks. The
 * code is its own but for what the job itself gives, the kinds' outlines and the circles kept clear, and for plain
 * distances and sines. Where all of that holds and this very version made the plan, all but the places of the pieces is
 * worked out once more and compared. Anything at all may be given: what is no plan of this format is said so in one
 * finding.
 */
export function checkPlan(value: unknown): PlanCheck {
  const fault = formatFault(value);
  const findings = fault ? [{ what: "format", holds: false, text: fault }] : measured(value as Plan);
  return { holds: findings.every((finding) => finding.holds), findings };
}

function measured(plan: Plan): Finding[] {
  const looks: Look[] = [
    ["keys", shapeFault],
    ["job", jobFault],
    ...layoutLooks,
    ...grooveLooks,
    ["curve", curveFault],
    ...pourLooks,
  ];
  const findings = looks.map((look) => looked(look, plan));
  // Only a plan whose measures hold is worked out again: channels round pieces that overlap can take minutes.
  // One of another version may differ for good reason, and is held to what can be measured.
  if (!findings.every(({ holds }) => holds)) return findings;
  const { version } = plan.generator;
  const told = `made by casting ${version.slice(0, 40)}, and this is ${VERSION}: measured, but not worked out again`;
  return [...findings, version === VERSION ? looked(againLook, plan) : { what: "version", holds: true, text: told }];
}

function looked([what, look]: Look, plan: Plan): Finding {
  try {
    const text = look(plan);
    return { what, holds: text === undefined, text: text ?? "holds" };
  } catch {
    return { what, holds: false, text: "could not be measured: the plan was cut or changed there" };
  }
}

/** What the plan repeats of its job stands there just so. */
function jobFault(plan: Plan): string | undefined {
  const { job, blank, tool, layout, grooves, pour } = plan;
  const pairs: [what: string, written: unknown, asked: unknown][] = [
    ["gap", layout.gap, job.layout.gap],
    ["hand", layout.hand, job.layout.hand],
    ["seed", layout.seed, job.layout.seed],
    ["rim", tool.rim, job.tool.rim],
    ["tool's diameter", tool.diameter, job.tool.diameter],
    ["blank's diameter", blank.diameter, job.blank.diameter],
    ["curve", blank.curve, job.blank.curve],
    ["blank's radius", blank.curveRadius, job.blank.radius ?? blank.curveRadius],
    ["cutter", grooves.cutter, job.grooves.cutter],
    ["channels' depth", grooves.depth, job.grooves.depth],
    ["water", pour.plaster.water, job.plaster.water ?? pour.plaster.water],
    ["fill line", pour.fill.edge, job.plaster.fill === "auto" ? pour.fill.edge : job.plaster.fill],
  ];
  const off = pairs.find(([, written, asked]) => written !== asked);
  if (!off) return undefined;
  const [what, ...values] = off;
  const [written, asked] = values.map((value) =>
    typeof value === "number" && !UNITLESS.includes(what) ? toldIn(plan).length(value) : value,
  );
  return `the ${what} is ${written} where the job asks for ${asked}`;
}

/** What of a job is a number, but no length. */
const UNITLESS = ["seed", "water"];

function curveFault(plan: Plan): string | undefined {
  const { blank, tool } = plan;
  const { length } = toldIn(plan);
  for (const [what, radius, sagitta, half] of [
    ["blank", blank.curveRadius, blank.sagitta, blank.diameter / 2],
    ["tool", tool.curveRadius, tool.sagitta, tool.diameter / 2],
    ["target", blank.target?.curveRadius, blank.target?.sagitta ?? 0, blank.diameter / 2],
  ] as const) {
    const wanted = radius === undefined ? 0 : radius - Math.sqrt(radius * radius - half * half);
    if (!(Math.abs(wanted - sagitta) <= 1e-8 * Math.max(1, radius ?? 1)))
      return `the sagitta of the ${what} is ${length(wanted)}, not ${length(sagitta)}`;
  }
  return must(blank.curve === "flat" || blank.curveRadius !== undefined, "the blank is curved, but has no radius");
}

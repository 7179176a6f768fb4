import { CastingError } from "../errors.js";
import { misfit } from "./fits.js";
import { planJsonSchema } from "./schema.js";
import type { Plan } from "./types.js";

/** Plans of this format are read, whichever version of the program wrote them: what was added since is left alone. */
const FORMAT = "casting-plan/1";

/** A plan's parts without which nothing of it can be read. */
const PARTS = ["job", "blank", "tool", "layout", "grooves", "pour"];

/** Why a value from anywhere is no plan of this format, in one sentence; nothing where it may be one. */
export function formatFault(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null)
    return "this is no plan: it is not an object; name a plan.json that casting make wrote";
  const { format } = value as { format?: unknown };
  if (format !== FORMAT) return `the format is ${given(format)}, not "${FORMAT}": ${remedy(format)}`;
  const missing = PARTS.filter((key) => {
    const part = (value as Record<string, unknown>)[key];
    return typeof part !== "object" || part === null;
  });
  return missing.length > 0 ? `the plan lacks ${missing.join(", ")}: it was cut or changed` : undefined;
}

/** Whether every key of a plan is there and of its kind; the first that is not, in one sentence. */
export function shapeFault(plan: unknown): string | undefined {
  const found = misfit(planJsonSchema(), plan);
  return found && `${found}: the plan was cut or changed`;
}

/**
 * The plan that planJson wrote, from its text: for programs that draw or compare saved plans. Its keys and their kinds
 * are looked at, not its numbers: checkPlan measures those again.
 *
 * @throws CastingError `invalid` with one sentence where it is no plan, or of a format that this version does not read
 */
export function readPlan(text: string): Plan {
  const value = parsed(text);
  const fault = formatFault(value) ?? shapeFault(value);
  if (fault !== undefined) throw new CastingError("invalid", [{ path: [], text: fault }]);
  return value as Plan;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new CastingError("invalid", [
      { path: [], text: "this is not whole JSON: it was cut or changed, or is no plan" },
    ]);
  }
}

/** A format's name fit to be shown: never long, never with what a terminal plays back. */
function given(format: unknown): string {
  if (typeof format !== "string") return format === undefined ? "missing" : "no text";
  return `"${format.slice(0, 40).replace(/[^ -~]/g, "?")}"`;
}

function remedy(format: unknown): string {
  const version = typeof format === "string" ? /^casting-plan\/(\d{1,9})$/.exec(format)?.[1] : undefined;
  const newer = version !== undefined && Number(version) > 1;
  return newer
    ? "a newer version wrote it, so read it with that one, or make the plan again with this"
    : "make the plan again with this version";
}

import { pathText } from "../errors.js";
import { qualityOf } from "../layout/quality/quality.js";
import { pieceKinds } from "../pieces/kinds.js";
import { planJson } from "./json.js";
import { planAround } from "./make.js";
import { type Look, same } from "./measure.js";
import type { Plan } from "./types.js";

/** A plan of this very version worked out again round its pieces: whatever figure, line or note is another is told. */
export const againLook: Look = ["worked out again", againFault];

function againFault(plan: Plan): string | undefined {
  const { job, tool, layout } = plan;
  const quality = qualityOf(job, tool, pieceKinds(job), layout.pieces);
  const again: unknown = JSON.parse(planJson(planAround(job, { ...layout, quality })));
  const found = difference(plan, again, []);
  return found && `${pathText(found.path)} is ${shown(found.written)} where ${shown(found.again)} is worked out`;
}

interface Difference {
  path: (string | number)[];
  written: unknown;
  again: unknown;
}

/** Where two JSON values first differ by more than rounding. */
function difference(written: unknown, again: unknown, path: (string | number)[]): Difference | undefined {
  if (typeof written === "number" && typeof again === "number")
    return same(written, again) ? undefined : { path, written, again };
  if (!isHolder(written) || !isHolder(again) || Array.isArray(written) !== Array.isArray(again))
    return written === again ? undefined : { path, written, again };
  for (const key of new Set([...Object.keys(again), ...Object.keys(written)])) {
    const name = Array.isArray(again) ? Number(key) : key;
    const found = difference(written[key], again[key], [...path, name]);
    if (found) return found;
  }
  return undefined;
}

function isHolder(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null;
}

function shown(value: unknown): string {
  if (value === undefined) return "missing";
  const text = JSON.stringify(value).replace(/[^ -~]/g, "?");
  return text.length > 60 ? `${text.slice(0, 60)}...` : text;
}

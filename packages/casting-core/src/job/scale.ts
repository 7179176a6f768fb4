import { isMap, isScalar, type YAMLMap } from "yaml";
import { CastingError } from "../errors.js";
import { type Note, note } from "../notes.js";
import { countText } from "../units/figure-text.js";
import { lengthText } from "../units/length-text.js";
import { parseLength } from "../units/parse.js";
import { documentOf } from "./document.js";
import type { Job } from "./types.js";

/**
 * The text of a job with another tool diameter, all else as it was: same pieces, gap, cutter, comments and layout of the
 * lines. `diameter` is a length as written by a maker, e.g. `200 mm`; whether it is one, and whether the tool can be
 * made, is found when the new job is read. Throws `invalid` for a text that is no YAML mapping.
 */
export function scaleJob(jobText: string, diameter: string): string {
  return changeJob(jobText, "tool", "diameter", diameter);
}

/** What a job written for another tool size keeps that its maker may not mean: a count does not follow the tool's area. */
export function scaleNotes(before: Job, after: Job): Note[] {
  const { count } = before.layout;
  if (count === "max") return [];
  const ratio = after.tool.diameter / before.tool.diameter;
  const alike = Math.max(1, Math.round(count * ratio * ratio));
  if (alike === count) return [];
  const text = `The count of ${countText(count, "piece")} stays as it is on a tool of ${lengthText(after.tool.diameter, after.units)}, where about ${alike} would lie as densely: write layout.count: ${alike}, or max.`;
  return [note("warning", "count-not-scaled", text)];
}

/**
 * The text of a job with `asked` under `block.key`, all else as it was, and JSON where it was JSON. What the value means
 * is found when the job is read; a bare length is in the job's units, also where the job is a plan's, whose own bare
 * numbers are mm. Throws `invalid` for a text that is no YAML mapping.
 */
export function changeJob(jobText: string, block: string, key: string, asked: string): string {
  const { document: job } = documentOf(jobText);
  if (!isMap(job.contents)) {
    const text = "the job is not a list of keys and values; start from `casting new`";
    throw new CastingError("invalid", [{ path: [], text }]);
  }
  const inches = job.get("units") === "in" && job.get("bare") === "mm" && key !== "seed" && isBareLength(asked);
  const value = inches ? `${asked.trim()} in` : asked.trim();
  const map = job.get(block);
  const flow = job.contents.flow === true || (isMap(map) && map.flow === true);
  const old = job.getIn([block, key], true);
  if (isScalar(old) && old.range && old.value !== null) {
    const [from, to] = old.range;
    return jobText.slice(0, from) + written(value, flow) + jobText.slice(to);
  }
  if (isMap(map) ? !map.has(key) : !job.has(block)) {
    const pair = `"${key}": ${written(value, true)}`;
    const line = `${key}: ${written(value, false)}`;
    if (isMap(map)) return map.flow ? inserted(jobText, map, pair) : appended(jobText, map, [line]);
    if (job.contents.flow) return inserted(jobText, job.contents, `"${block}": {${pair}}`);
    return appended(jobText, job.contents, [`${block}:`, `  ${line}`]);
  }
  // Key or block are there without a value: the rest keeps its comments, but may be laid out anew.
  const plain = BARE.test(value) ? Number(value) : value;
  if (isMap(map)) map.set(key, plain);
  else job.set(block, job.createNode({ [key]: plain }));
  return job.toString({ lineWidth: 0 });
}

/** A text with lines more at the end of a mapping in lines of its own, as far in as its first. */
function appended(text: string, { range }: YAMLMap, lines: readonly string[]): string {
  const [first, end] = range!;
  // A byte order mark before the first key is none of its indent.
  const indent = text.slice(text.lastIndexOf("\n", first - 1) + 1, first).replace(/[^ ]/g, "");
  const newline = text.includes("\r\n") ? "\r\n" : "\n";
  const [before, after] = [text.slice(0, end), text.slice(end)];
  const more = lines.map((line) => `${indent}${line}${newline}`).join("");
  return `${before}${before.endsWith("\n") ? "" : newline}${more}${after}`;
}

/** A text with one pair more at the beginning of a mapping in braces, laid out like the pair that was the first. */
function inserted(text: string, { items, range }: YAMLMap, pair: string): string {
  const rest = text.slice(range![0] + 1);
  const space = items.length > 0 ? /^\s*/.exec(rest)![0] : "";
  const comma = items.length > 0 ? (space === "" ? ", " : ",") : "";
  return `${text.slice(0, range![0] + 1)}${space}${pair}${comma}${rest}`;
}

/** Whether a text is a length without a unit. */
function isBareLength(text: string): boolean {
  try {
    return parseLength(text, "mm") !== parseLength(text, "in");
  } catch {
    return false;
  }
}

/** A number without a unit, in the job's own units. */
const BARE = /^(?:0|[1-9]\d{0,5})(\.\d{1,6})?$/;
/** Text that means the same with and without quotes: it begins with a digit and holds nothing that YAML reads. */
const PLAIN = /^\d[\d./ a-z-]*$/;

/** A value as it is put into a text; within braces, where the job may be JSON, in quotes. */
function written(value: string, flow: boolean): string {
  return BARE.test(value) || (PLAIN.test(value) && !flow) ? value : JSON.stringify(value);
}

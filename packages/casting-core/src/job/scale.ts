import { type Document, isMap, isScalar, parseDocument } from "yaml";
import { CastingError } from "../errors.js";
import { type Note, note } from "../notes.js";
import { countText } from "../units/figure-text.js";
import { lengthText } from "../units/length-text.js";
import { parseLength } from "../units/parse.js";
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
 * The text of a job with `value` under `block.key`, all else as it was where the key stood there before. What the value
 * means is found when the job is read; a bare length is in the job's units, also where the job is a plan's, whose own
 * bare numbers are mm. Throws `invalid` for a text that is no YAML mapping.
 */
export function changeJob(jobText: string, block: string, key: string, asked: string): string {
  const job = parseDocument(jobText, { version: "1.2" });
  const fault = job.errors[0];
  if (fault || !isMap(job.contents)) {
    const text = fault
      ? `the job cannot be read (${fault.message.split("\n")[0]}); correct it and try again`
      : "the job is not a list of keys and values; start from `casting new`";
    throw new CastingError("invalid", [{ path: [], text }]);
  }
  const flow = job.contents.flow === true;
  const inches = job.get("units") === "in" && job.get("bare") === "mm" && key !== "seed" && isBareLength(asked);
  const value = inches ? `${asked.trim()} in` : asked;
  const old = job.getIn([block, key], true);
  if (isScalar(old) && old.range && old.value !== null) {
    const [from, to] = old.range;
    return jobText.slice(0, from) + written(value, flow || isFlow(job, block)) + jobText.slice(to);
  }
  // A value that stood nowhere: the rest keeps its comments, but may be laid out anew.
  const plain = BARE.test(value.trim()) ? Number(value) : value.trim();
  if (isMap(job.get(block))) job.setIn([block, key], plain);
  else job.set(block, job.createNode({ [key]: plain }));
  return job.toString({ lineWidth: 0 });
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
const BARE = /^\d{1,6}(\.\d{1,6})?$/;
/** Text that means the same with and without quotes: it begins with a digit and holds nothing that YAML reads. */
const PLAIN = /^\d[\d./ a-z-]*$/;

function written(value: string, flow: boolean): string {
  const text = value.trim();
  return BARE.test(text) || (PLAIN.test(text) && !flow) ? text : JSON.stringify(text);
}

function isFlow(job: Document, block: string): boolean {
  const map = job.get(block);
  return isMap(map) && map.flow === true;
}

import { makePart, parseLength, planJson, readJob, spanOf, type Units } from "casting-core";
import type { JobOptions } from "../commands.js";
import { planRows, table } from "../report/figures.js";
import { printNotes } from "../report/notes.js";
import type { Terminal } from "../terminal.js";
import { usage } from "../usage.js";
import { fromOption, onJob, unitsOf } from "./options.js";
import { part } from "./part.js";

/** The texts given for a curve without a job. */
export interface CurveTexts extends JobOptions {
  diameter?: string;
  radius?: string;
  focalRatio?: string;
  sagitta?: string;
  ring?: string;
  legs?: string;
  bar?: string;
  ball?: string;
  wall?: string;
  readings?: string;
  curve?: string;
  targetRadius?: string;
  units?: string;
}

/** Options that span a circle on the glass. */
const SPANS = ["ring", "legs", "bar"];

/** Where each option stands in a job. */
const PATHS: Record<string, string> = {
  diameter: "blank.diameter",
  radius: "blank.radius",
  "focal-ratio": "blank.focal-ratio",
  sagitta: "blank.sagitta",
  ring: "blank.readings.instrument.ring",
  legs: "blank.readings.instrument.legs",
  bar: "blank.readings.instrument.bar",
  ball: "blank.readings.instrument.ball",
  wall: "blank.readings.instrument.wall",
  readings: "blank.readings.zones",
  curve: "blank.curve",
  "target-radius": "blank.target.radius",
};

/** `casting curve`: the curve of a job, or of options alone. */
export function curve(file: string | undefined, texts: CurveTexts, terminal: Terminal): number {
  const given = Object.keys(PATHS).filter((name) => textOf(texts, name) !== undefined);
  const wanted =
    "curve needs a job, or a curve; for example casting curve --ring 125mm --ball 6mm --readings 0.642,0.645,0.639";
  // By themselves units are no curve; beside a job they are refused as the rest is.
  const beside = file === undefined || texts.units === undefined ? given : [...given, "units"];
  if (onJob(file, beside, wanted)) return part("blank", file, texts, terminal);
  const plan = fromOption(() => makePart(readJob(jobOf(texts, given)), "blank"), optionAt);
  if (!texts.quiet) printNotes(plan.notes, terminal);
  // The job needs pieces to be read, and nobody gave any.
  const told = { ...plan, job: { ...plan.job, pieces: undefined } };
  terminal.out(texts.json ? planJson(told) : table(planRows(plan, texts.diameter === undefined)));
  return 0;
}

function textOf(texts: CurveTexts, name: string): string | undefined {
  return texts[name.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase()) as keyof CurveTexts] as
    | string
    | undefined;
}

/** A job that says the same as the options; its pieces do not count here. */
function jobOf(texts: CurveTexts, given: readonly string[]): string {
  const blank: Record<string, unknown> = {};
  for (const name of given) {
    const value = textOf(texts, name);
    if (name === "target-radius") blank["target"] = { radius: value };
    else if (PATHS[name]!.startsWith("blank.readings.instrument")) instrumentOf(blank)[name] = value;
    else if (name === "readings") readingsOf(blank)["zones"] = zonesOf(value!);
    else blank[name] = value;
  }
  const span = SPANS.map((name) => textOf(texts, name)).find((text) => text !== undefined);
  if (texts.readings !== undefined && span === undefined) {
    throw usage("--readings needs the instrument's size; write --ring, --legs or --bar beside it");
  }
  if (span !== undefined && texts.readings === undefined) {
    const name = SPANS.find((name) => textOf(texts, name) === span);
    throw usage(`--${name} needs what the instrument shows; write --readings beside it, such as 0.642,0.645,0.639`);
  }
  // Without a blank the curve is told over what the instrument spans.
  const units = unitsOf(texts.units);
  if (span !== undefined) blank["diameter"] ??= span === texts.legs ? acrossLegs(span, units) : span;
  return JSON.stringify({ units, blank, pieces: { item: "iso-4032-m5" } });
}

/** Across the circle that three legs stand on. */
function acrossLegs(text: string, units: Units): string {
  const legs = fromOption(
    () => parseLength(text, units),
    () => "legs",
  );
  return `${spanOf({ legs })} mm`;
}

/** All readings as taken at the centre. */
function zonesOf(text: string): { at: string; reading: string }[] {
  const comma = /^\s*0,(\d{2,})/.exec(text);
  if (comma) throw usage(`--readings ${text.slice(0, 40)} has a decimal comma; write 0.${comma[1]}`);
  return text.split(",").map((reading) => ({ at: "0", reading: reading.trim() }));
}

function readingsOf(blank: Record<string, unknown>): Record<string, unknown> {
  blank["readings"] ??= {};
  return blank["readings"] as Record<string, unknown>;
}

function instrumentOf(blank: Record<string, unknown>): Record<string, unknown> {
  const readings = readingsOf(blank);
  readings["instrument"] ??= {};
  return readings["instrument"] as Record<string, unknown>;
}

/** The option for a key of the job that stands for the options. */
function optionAt(path: readonly (string | number)[]): string | undefined {
  const key = path.join(".");
  const exact = Object.keys(PATHS).find((name) => PATHS[name] === key);
  if (exact) return exact;
  return key.startsWith("blank.readings.zones") ? "readings" : undefined;
}

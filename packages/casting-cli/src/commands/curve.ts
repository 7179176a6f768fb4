import { makePart, planJson, readJob } from "casting-core";
import type { JobOptions } from "../commands.js";
import { planRows, table } from "../report/figures.js";
import { printNotes } from "../report/notes.js";
import type { Terminal } from "../terminal.js";
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
  reading?: string;
  curve?: string;
  targetRadius?: string;
  units?: string;
}

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
  reading: "blank.readings.zones.0.reading",
  curve: "blank.curve",
  "target-radius": "blank.target.radius",
};

/** `casting curve`: the curve of a job, or of options alone. */
export function curve(file: string | undefined, texts: CurveTexts, terminal: Terminal): number {
  const given = Object.keys(PATHS).filter((name) => textOf(texts, name) !== undefined);
  const wanted =
    "curve needs a job, or --diameter and a curve; for example casting curve --diameter 400mm --radius 3060mm";
  if (onJob(file, given, wanted)) return part("blank", file, texts, terminal);
  const plan = fromOption(() => makePart(readJob(jobOf(texts, given)), "blank"), optionAt);
  if (!texts.quiet) printNotes(plan.notes, terminal);
  terminal.out(texts.json ? planJson(plan) : table(planRows(plan)));
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
    else if (name === "reading") readingsOf(blank)["zones"] = [{ at: "0", reading: value }];
    else blank[name] = value;
  }
  return JSON.stringify({ units: unitsOf(texts.units), blank, pieces: { item: "iso-4032-m5" } });
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
  if (key === "blank.readings.zones") return "reading";
  return key === "blank.readings.instrument" ? "ring" : undefined;
}

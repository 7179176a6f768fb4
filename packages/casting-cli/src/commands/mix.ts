import {
  type MixOptions as CoreMix,
  containerFromText,
  LIMITS,
  lengthText,
  type MixAnswer,
  mixFromOptions,
  parseLength,
  parseMass,
  parseNumber,
  parseShare,
  planJson,
  type Units,
  VERSION,
} from "casting-core";
import type { JobOptions } from "../commands.js";
import { pourRows, type Row, table } from "../report/figures.js";
import { printNotes } from "../report/notes.js";
import type { Terminal } from "../terminal.js";
import { usage } from "../usage.js";
import { fromOption, onJob, unitsOf } from "./options.js";
import { part } from "./part.js";

/** The texts given for a mix without a job. */
export interface MixTexts extends JobOptions {
  tool?: string;
  radius?: string;
  curve?: string;
  fill?: string;
  plaster?: string;
  water?: string;
  density?: string;
  spare?: string;
  container?: string;
  powder?: string;
  units?: string;
}

const OWN = ["tool", "radius", "curve", "fill", "plaster", "water", "density", "spare", "container", "powder", "units"];

/** `casting mix`: the pour of a job, or of a bare tool from options alone. */
export function mix(file: string | undefined, texts: MixTexts, terminal: Terminal): number {
  const given = OWN.filter((key) => Object.hasOwn(texts, key));
  const wanted =
    "mix needs a job, or --tool and --fill; for example casting mix --tool 300mm --radius 3060mm --fill 32mm";
  if (onJob(file, given, wanted)) return part("pour", file, texts, terminal);
  const units = unitsOf(texts.units);
  const options = optionsFrom(texts, units);
  const answer = fromOption(
    () => mixFromOptions(options),
    // The pour's own rules say `plaster.kind`.
    (path) => (path.at(-1) === "kind" ? "plaster" : path.at(-1)?.toString()),
  );
  const { tool, pour, notes } = answer;
  if (!texts.quiet) printNotes(notes, terminal);
  if (texts.json) {
    const generator = { name: "casting", version: VERSION };
    terminal.out(planJson({ format: "casting-plan/1", generator, job: understood(options, answer), pour, notes }));
    return 0;
  }
  const rows: Row[] = [
    ["tool", `${lengthText(tool, units)}, no pieces counted`],
    ...pourRows({ pour, job: { units } }),
  ];
  terminal.out(table(rows));
  return 0;
}

/** The options under the keys of a job, what was left out filled in. */
function understood(options: CoreMix, { tool, fill, spare, pour }: MixAnswer): object {
  const { units, radius, curve = "concave", density, container } = options;
  const { kind, water } = pour.plaster;
  return {
    units,
    blank: { curve: radius === undefined ? "flat" : curve, radius },
    tool: { diameter: tool },
    plaster: { kind, water, density, fill, spare },
    container: container && { ...container, height: Number.isFinite(container.height) ? container.height : undefined },
  };
}

function optionsFrom(texts: MixTexts, units: Units): CoreMix {
  const options: CoreMix = { units };
  const read = <T>(key: keyof MixTexts & keyof CoreMix, parse: (text: string) => T): void => {
    const text = texts[key];
    if (typeof text === "string")
      Object.assign(options, {
        [key]: fromOption(
          () => parse(text),
          () => key,
        ),
      });
  };
  for (const key of ["tool", "radius", "fill"] as const) read(key, (text) => parseLength(text, units));
  read("powder", parseMass);
  read("spare", parseShare);
  read("water", (text) => parseNumber(text, "0.30", LIMITS["plaster.water"]));
  read("density", (text) => parseNumber(text, "2.64"));
  read("container", (text) => containerFromText(text, units));
  read("plaster", (text) => text);
  read("curve", curveOf);
  return options;
}

function curveOf(text: string): string {
  if (["concave", "convex", "flat"].includes(text)) return text;
  throw usage(`--curve ${text.slice(0, 40)} is not a curve; write concave, convex or flat`);
}

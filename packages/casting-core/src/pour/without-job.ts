import { sagittaOf } from "../blank/sphere.js";
import type { Blank, Tool } from "../blank/types.js";
import { CastingError, impossible } from "../errors.js";
import type { Curve, JobContainer, Units } from "../job/types.js";
import type { Note } from "../notes.js";
import { atMost } from "../units/bound-text.js";
import { exampleIn } from "../units/example-text.js";
import { lengthText } from "../units/length-text.js";
import { moldVolume } from "./mold.js";
import { pourNotes } from "./notes.js";
import { plasterOf } from "./plaster.js";
import { impossibleSize, unlikelySizes } from "./plausible.js";
import { planPour } from "./pour.js";
import type { Pour } from "./types.js";

/** What a mix is worked out from when there is no job. Lengths mm, masses kg; pieces and socket are left out. */
export interface MixOptions {
  /** The tool's diameter; may be left out with `powder`: the largest tool it makes. */
  tool?: number;
  /** Radius of the glass; a flat if left out. */
  radius?: number;
  /** Concave if left out. */
  curve?: Curve;
  /** Fill line above the glass at the tool's edge; may be left out with `powder`: the deepest it makes. */
  fill?: number;
  /** `type-3` if left out. */
  plaster?: string;
  water?: number;
  density?: number;
  /** Share mixed on top of the cast, 0.1 if left out. */
  spare?: number;
  /** A round one or a box may have the height Infinity where it is not known: all goes into one filling. */
  container?: JobContainer;
  /** Powder at hand: answers how deep or how large. */
  powder?: number;
  /** Units of the notes, mm if left out. */
  units?: Units;
}

/** The pour and its notes; `tool` and `fill` as given or found, `spare` as given or usual. */
export interface MixAnswer {
  tool: number;
  fill: number;
  spare: number;
  pour: Pour;
  notes: Note[];
}

/** Widest and deepest tool looked for, mm. */
const WIDEST = 3000;

/**
 * The pour of a bare tool from a few figures. With `powder` and one of `tool` and `fill` left out, that one is found so
 * that the whole powder is used. Throws `invalid` by option, `impossible` where the powder does not reach or reaches too far.
 */
export function mixFromOptions(options: MixOptions): MixAnswer {
  for (const key of ["tool", "radius", "fill", "powder"] as const) {
    const value = options[key];
    if (value !== undefined && !(value > 0 && Number.isFinite(value))) {
      throw refused(
        key,
        `${key} must be more than 0, not ${value}; write a ${key === "powder" ? "mass" : "length"} with its unit`,
      );
    }
  }
  const units = options.units ?? "mm";
  const wrong = impossibleSize(options, units);
  if (wrong) throw refused(wrong.key, wrong.text);
  if (options.radius !== undefined && options.curve === "flat")
    throw refused("radius", "a radius stands beside a flat curve; leave one of them out");
  if (options.radius === undefined && (options.curve ?? "flat") !== "flat") {
    const text = `a ${options.curve} curve has no radius; give one, such as ${exampleIn(units, "1600 mm")}, or leave the curve out for a flat`;
    throw refused("curve", text);
  }
  const spare = options.spare ?? 0.1;
  if (!(spare >= 0 && spare <= 1))
    throw refused(
      "spare",
      `a spare of ${Math.round(spare * 1000) / 10} % is not between 0 % and 100 %; write for example 10%`,
    );
  const { tool, fill } = sizes(options, spare);
  const { pour, notes } = bare(options, spare, tool, fill);
  return { tool, fill, spare, pour, notes: [...unlikelySizes({ ...options, tool, fill }, units), ...notes] };
}

function sizes(options: MixOptions, spare: number): { tool: number; fill: number } {
  const { tool, fill, powder } = options;
  if (tool !== undefined && fill !== undefined) {
    if (powder === undefined) return { tool, fill };
    throw refused("powder", "tool, fill and powder are all given; leave out the one to be found");
  }
  if (powder === undefined) {
    const missing = tool === undefined ? "tool" : "fill";
    throw refused(
      missing,
      `${missing} is missing; give one, such as ${exampleIn(options.units ?? "mm", missing === "tool" ? "300 mm" : "32 mm")}, or the powder at hand to find it`,
    );
  }
  const wanted = (powder * plasterOf(plasterOptions(options)).yield) / (1 + spare);
  if (tool !== undefined) {
    const [blank, circle] = glass(options, tool);
    const area = moldVolume(blank, circle, 1) - moldVolume(blank, circle, 0);
    return { tool, fill: found((wanted - moldVolume(blank, circle, 0)) / area) };
  }
  if (fill === undefined) throw refused("tool", "tool and fill are both missing; give one of them beside the powder");
  return { tool: widest(options, fill, wanted), fill };
}

/** Diameter whose mold takes `wanted` mL, by halving; the mold grows with the tool as long as glass lies below the line. */
function widest(options: MixOptions, fill: number, wanted: number): number {
  let low = 0;
  let high = widestMold(options, fill);
  const volume = (diameter: number): number => {
    const [blank, tool] = glass(options, diameter);
    return moldVolume(blank, tool, fill);
  };
  if (volume(high) < wanted) {
    throw impossible(
      ["powder"],
      `the powder makes more than a tool of ${atMost(high, options.units ?? "mm")} takes; give a tool, or more fill`,
    );
  }
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (volume(middle) < wanted) low = middle;
    else high = middle;
  }
  return high;
}

/** On convex glass no tool is wider than where the glass's own depth reaches the fill line: s = fill at r² = s (2R − s). */
function widestMold({ radius, curve }: MixOptions, fill: number): number {
  if (radius === undefined) return WIDEST;
  const most = Math.min(WIDEST, 2 * radius);
  if (curve !== "convex" || fill >= radius) return most;
  return Math.min(most, 2 * Math.sqrt(fill * (2 * radius - fill)));
}

/** The fill that was found, where the powder reaches over the curve of the glass. */
function found(value: number): number {
  if (value > 0 && Number.isFinite(value)) return value;
  throw impossible(
    ["powder"],
    `the powder at hand does not fill the curve of the glass, so that no fill can be found; take more powder`,
  );
}

function glass({ radius, curve = "concave", units = "mm" }: MixOptions, diameter: number): [Blank, Tool] {
  if (radius === undefined || curve === "flat") {
    return [
      { diameter: (diameter * 4) / 3, curve: "flat", sagitta: 0 },
      { diameter, rim: 0, sagitta: 0 },
    ];
  }
  if (radius < diameter / 2) {
    const length = (mm: number): string => lengthText(mm, units);
    const text = `a radius of ${length(radius)} is less than half the tool of ${length(diameter)}; check the figures and their units`;
    throw refused("radius", text);
  }
  const sagitta = sagittaOf(radius, diameter / 2);
  const blank: Blank = { diameter: (diameter * 4) / 3, curve, curveRadius: radius, sagitta };
  return [blank, { diameter, rim: 0, curveRadius: radius, sagitta }];
}

function plasterOptions({ plaster = "type-3", water, density }: MixOptions) {
  return {
    kind: plaster,
    ...(water !== undefined ? { water } : {}),
    ...(density !== undefined ? { density } : {}),
  };
}

function bare(options: MixOptions, spare: number, diameter: number, fill: number): Pick<MixAnswer, "pour" | "notes"> {
  const [blank, tool] = glass(options, diameter);
  const job = {
    units: options.units ?? "mm",
    blank: { diameter: blank.diameter, curve: blank.curve },
    plaster: { ...plasterOptions(options), fill, cover: 0, spare },
    dam: { sheet: 1, overlap: 40 },
    ...(options.container ? { container: options.container } : {}),
  };
  const pour = planPour(job, blank, tool, [], { pieces: [] });
  const flat = options.radius === undefined && options.curve !== "flat";
  return { pour, notes: [...(flat ? [FLAT_ASSUMED] : []), ...pourNotes(job, blank, tool, [], pour)] };
}

/** Without a radius nothing tells of a curve, whose hollow takes plaster too. */
const FLAT_ASSUMED: Note = {
  code: "flat-assumed",
  level: "warning",
  text: "No radius is given, so the glass is taken as flat: on hollow glass more plaster goes in, on bulging glass less: give its radius.",
};

function refused(key: string, text: string): CastingError {
  return new CastingError("invalid", [{ path: [key], text }]);
}

import { type Note, note } from "../notes.js";
import { PI } from "../trig.js";
import { massText, pressureText } from "../units/figure-text.js";
import { mmIn } from "./fault.js";
import { areUsual, FOCAL_RATIO, isUnusual } from "./limits.js";
import { readAlone, readingProportions } from "./spherometer.js";
import type { Job, JobPiece } from "./types.js";

/**
 * A sagitta as a part of its chord, as far as it is usual: about 1 / (16 × focal ratio), so 1/256 to 1/15.7 for the usual
 * ratios by the sphere, each with a little to spare.
 */
const SAGITTA = { least: 0.0039, most: 0.0667 };
/** A tool as a part of its blank, a blank's thickness as a part of its diameter (common practice). */
const LEAST_TOOL = 0.25;
const THICKNESS = { least: 0.03, most: 0.35 };
/** A weight adds mostly around 1 kPa over the tool's circle (20 lb on 15 in: 0.8); what is far off is noted, kPa. */
const LOAD = { least: 0.06, most: 5 };
/** What a kilogram weighs over a square millimetre: standard gravity, 9.80665 m/s², in kPa. */
const KPA = 9806.65;
/** A piece so many times as thick as it is wide may tip over (common practice). */
const THICKEST = 1.5;
/** Buckets are wider at the top, and few by much: bottom over top and top over bottom (common practice). */
const TAPER = { inward: 1.5, outward: 3 };

const CHECK = "check both figures and their units";

/** What is told, in this order. */
const PROPORTIONS: readonly ((job: Job) => string[])[] = [
  ratioProportions,
  sagittaProportions,
  clearProportions,
  readingProportions,
  containerProportions,
  toolProportions,
  thicknessProportions,
  runProportions,
  weightProportions,
  pieceProportions,
];

/** Figures that are usual by themselves but not beside each other: a slip of unit in one of them looks like this. */
export function proportions(job: Job): Note[] {
  return PROPORTIONS.flatMap((texts) => texts(job)).map((text) => note("warning", "unlikely-proportion", text));
}

function ratioProportions({ blank, units }: Job): string[] {
  const mm = mmIn(units);
  return nowAndWanted(blank, "radius").flatMap(([name, radius]) => {
    const ratio = radius / (2 * blank.diameter);
    if (!isUnusual(ratio, FOCAL_RATIO)) return [];
    return [
      `A ${name} of ${mm(radius)} on a blank of ${mm(blank.diameter)} makes a focal ratio of ${Number(ratio.toPrecision(3))}: ${CHECK}.`,
    ];
  });
}

function sagittaProportions({ blank, units }: Job): string[] {
  const mm = mmIn(units);
  const chord = blank["sagitta-over"] ?? blank.diameter;
  return nowAndWanted(blank, "sagitta")
    .filter(([, sagitta]) => isUnusual(sagitta / chord, SAGITTA))
    .map(([name, sagitta]) => `A ${name} of ${mm(sagitta)} is unusual for a blank of ${mm(blank.diameter)}: ${CHECK}.`);
}

/** A blank's figure now and as wanted, those of the two that are written; none beside what is no blank's diameter. */
function nowAndWanted(blank: Job["blank"], key: "radius" | "sagitta"): [name: string, value: number][] {
  if (readAlone(blank)) return [];
  const figures = [
    [key, blank[key]],
    [`wanted ${key}`, blank.target?.[key]],
  ] as const;
  return figures.flatMap(([name, value]) => (value === undefined ? [] : [[name, value]]));
}

function clearProportions({ tool, layout, units }: Job): string[] {
  const mm = mmIn(units);
  return layout["keep-clear"]
    .filter(({ x, y, diameter }) => Math.sqrt(x * x + y * y) >= (tool.diameter + diameter) / 2)
    .map(
      ({ x, y, diameter }) =>
        `The circle of ${mm(diameter)} to be kept clear at (${mm(x)}, ${mm(y)}) lies off the tool of ${mm(tool.diameter)} and keeps nothing clear: check its place.`,
    );
}

function containerProportions({ container, units }: Job): string[] {
  if (container?.shape !== "tapered") return [];
  const { bottom, top } = container;
  if (bottom <= TAPER.inward * top && top <= TAPER.outward * bottom) return [];
  const mm = mmIn(units);
  return [`A container ${mm(bottom)} wide at the bottom and ${mm(top)} at the top is unusual: ${CHECK}.`];
}

function toolProportions({ blank, tool, units }: Job): string[] {
  if (tool.diameter >= LEAST_TOOL * blank.diameter) return [];
  const mm = mmIn(units);
  return [
    `A tool of ${mm(tool.diameter)} is small for a blank of ${mm(blank.diameter)} (mostly three quarters): ${CHECK}.`,
  ];
}

function thicknessProportions({ blank: { diameter, thickness }, units }: Job): string[] {
  const usual = { least: THICKNESS.least * diameter, most: THICKNESS.most * diameter };
  if (thickness === undefined || !isUnusual(thickness, usual)) return [];
  const mm = mmIn(units);
  return [`A thickness of ${mm(thickness)} is unusual for a blank of ${mm(diameter)}: ${CHECK}.`];
}

function runProportions({ blank, setup, units }: Job): string[] {
  if (!setup.given) return [];
  const out = [
    ["An offset", setup.offset === "tangent" ? 0 : setup.offset],
    ["A stroke", setup.stroke / 2],
  ] as const;
  return out
    .filter(([, size]) => size > blank.diameter / 2)
    .map(([name]) => `${name} leads off a blank of ${mmIn(units)(blank.diameter)}: ${CHECK}.`);
}

function weightProportions({ tool, setup, units }: Job): string[] {
  // Where they are what a job gets that names none, nobody wrote a figure to check: the notes on the pass tell their pressure.
  if (!setup.given || areUsual(setup.weights)) return [];
  return setup.weights.flatMap((weight) => {
    const pressure = (weight * KPA) / ((PI / 4) * tool.diameter * tool.diameter);
    if (weight <= 0 || !isUnusual(pressure, LOAD)) return [];
    const [mass, kPa] =
      units === "in"
        ? [massText(weight, units), pressureText(pressure, units)]
        : [`${weight} kg`, `${Number(pressure.toPrecision(2))} kPa`];
    return [`A weight of ${mass} presses a tool of ${mmIn(units)(tool.diameter)} with ${kPa}: ${CHECK}.`];
  });
}

function pieceProportions({ tool, pieces, layout, units }: Job): string[] {
  const mm = mmIn(units);
  return pieces.flatMap((piece) => {
    if ("item" in piece) return [];
    const sizes = sizesOf(piece);
    const [least, most] = [Math.min(...sizes), Math.max(...sizes)];
    const texts: string[] = [];
    if (most > tool.diameter / 3)
      texts.push(`A piece of ${mm(most)} is large for a tool of ${mm(tool.diameter)}: ${CHECK}.`);
    if (layout.gap >= least) texts.push(`A gap of ${mm(layout.gap)} is wider than a piece of ${mm(least)}: ${CHECK}.`);
    if (piece.thickness > THICKEST * least)
      texts.push(`A piece of ${mm(least)} is ${mm(piece.thickness)} thick and may tip over: ${CHECK}.`);
    return texts;
  });
}

/** The sizes of a piece of the maker's own, mm. */
export function sizesOf(piece: Exclude<JobPiece, { item: string }>): number[] {
  if (piece.shape === "rectangle") return [piece.length, piece.width];
  if (piece.shape === "round") return [piece.diameter];
  if (piece.shape !== "polygon") return [piece.across];
  const [xs, ys] = [piece.points.map(([x]) => x), piece.points.map(([, y]) => y)];
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
}

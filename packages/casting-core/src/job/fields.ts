import { z } from "zod";
import { CastingError } from "../errors.js";
import { holding, known, nearest } from "../nearest.js";
import { atLeast, atMost, massBound, type Side, volumeBound } from "../units/bound-text.js";
import { exampleIn } from "../units/example-text.js";
import { parseLength, parseMass, parseNumber, parseShare, parseVolume, shown } from "../units/parse.js";
import { signed } from "../units/signed.js";
import { shownRaw } from "./text.js";
import { spaceSentence, UNSPACED } from "./tree.js";
import type { Units } from "./types.js";

/** What bare numbers are: lengths in the job's units and volumes in L, or as a plan writes them, in mm and mL. */
export type Bare = "units" | "mm";

/** The fields of a job, see `fieldsIn`. */
export type Fields = ReturnType<typeof fieldsIn>;

/** Least and most of a field, in its own unit (mm, mL, kg, or the bare number); both are allowed. */
export interface Limits {
  least: number;
  most: number;
}

/** So many names that hold a word are told; more are looked up in their table. */
const MOST_NAMED = 4;

/**
 * What a schema means, for the job's JSON Schema and its table. A schema that is used once is registered here as it is:
 * `meta` would make each of more than a hundred once again.
 */
export const MEANINGS = z.globalRegistry;

/** A figure may be written as either: every one of them shares the two. */
export const WRITTEN = [z.string(), z.number()] as const;

type Parsed = z.ZodType<number>;
/** Writes the least or the most that a field may be. */
type Write = (value: number, side: Side) => string;

/** The fields of a job in `units`: each reads what a maker wrote and holds it within limits. */
export function fieldsIn(units: Units, bare: Bare = "units") {
  const mm: Write = (value, side) => (side === "least" ? atLeast(value, units) : atMost(value, units));
  const length = (limits: Limits, inMm: string): Parsed => {
    const example = exampleIn(units, inMm);
    const parse = (text: string) => parseLength(text, bare === "mm" ? bare : units, example);
    return figure(limits.least < 0 ? signed(parse) : parse, limits, mm, `a length such as ${example}`);
  };
  return {
    length,
    /** A length that may be negative. */
    coordinate: (most: number, inMm: string): Parsed => length({ least: -most, most }, inMm),
    volume: (limits: Limits): Parsed =>
      figure(
        (text) => parseVolume(text, bare === "mm" ? "mL" : "L"),
        limits,
        (mL, side) => volumeBound(mL, units, side),
        `a volume such as ${units === "in" ? "2 qt" : "1.5 L"}`,
      ),
    mass: (limits: Limits): Parsed =>
      figure(
        parseMass,
        limits,
        (kg, side) => massBound(kg, units, side),
        `a mass such as ${units === "in" ? "10 lb" : "4.5 kg"}`,
      ),
    share: (limits: Limits): Parsed =>
      figure(parseShare, limits, (share) => `${Number((share * 100).toPrecision(6))} %`, "a share such as 10%"),
    number: (limits: Limits, example: string): Parsed => {
      const parse = (text: string): number => parseNumber(text, example, limits);
      return figure(limits.least < 0 ? signed(parse) : parse, limits, String, `a number such as ${example}`);
    },
  };
}

/** A whole number. */
export function whole(limits: Limits): Parsed {
  const wanted = `a whole number from ${limits.least} to ${limits.most}`;
  return figure(
    (text) => {
      if (!/^\d{1,15}$/.test(text.trim())) throw refused(`${shown(text)} is not a whole number; write ${wanted}`);
      return Number(text);
    },
    limits,
    String,
    wanted,
  );
}

/** One of `names`; a near miss is named. */
export function choice<const T extends string>(names: readonly T[]): z.ZodType<T> {
  return z.enum(names, {
    error: ({ input }) => {
      const near = typeof input === "string" ? nearest(input, names) : undefined;
      const remedy = near ? `did you mean "${near}"?` : `choose from ${names.join(", ")}`;
      return missing(input, names.join(" or ")) ?? `${shownRaw(input)} is not known here; ${remedy}`;
    },
  }) as unknown as z.ZodType<T>;
}

/** A name out of a long table, in any case and with space around it; `where` says how to see the table. */
export function named(names: readonly string[], what: string, where: string): z.ZodType<string> {
  return z.string({ error: wrongKind(`the name of ${what}`) }).transform((name, context): string => {
    const found = known(name, names, String);
    if (found !== undefined) return found;
    const near = nearest(name, names);
    const within = holding(name, names);
    const remedy = near
      ? `did you mean "${near}"?`
      : within.length > 0 && within.length <= MOST_NAMED
        ? `write ${within.join(", ").replace(/, (?=[^,]*$)/, " or ")}`
        : `${where} shows what there is`;
    context.addIssue({ code: "custom", message: `${shown(name)} is not ${what}; ${remedy}` });
    return z.NEVER;
  }) as unknown as z.ZodType<string>;
}

/** true or false. */
export const flag: z.ZodType<boolean> = z.boolean({ error: wrongKind("true or false") });

/** A record of `shape`; an unknown key is named with the nearest known one. */
export function record<T extends z.ZodRawShape>(shape: T) {
  return z.strictObject(shape, {
    error: (issue) => {
      if (issue.code === "unrecognized_keys") {
        return issue.keys.map((key) => `${key}\u0000${unknownKey(key, Object.keys(shape))}`).join("\u0001");
      }
      const wanted = `${Object.keys(shape).slice(0, 3).join(", ")} … below it`;
      return missing(issue.input, wanted) ?? notKeys(issue.input, wanted);
    },
  });
}

/** The sentence for what stands where keys belong, of which one may have no space after its colon. */
export function notKeys(input: unknown, wanted: string): string {
  const [, key] = typeof input === "string" ? (UNSPACED.exec(input) ?? []) : [];
  if (key !== undefined) return spaceSentence(input as string, key);
  return `${shownRaw(input)} stands where keys belong; write ${wanted}`;
}

/** The sentence for a key that is not among `keys`. */
export function unknownKey(key: string, keys: readonly string[]): string {
  const near = nearest(key, keys);
  return `${shown(key)} is not a key that is known here; ${near ? `did you mean "${near}"?` : `the keys are ${keys.join(", ")}`}`;
}

/** A list with `least` to `most` items; one that stands without its brackets is shown with them. */
export function listOf<T extends z.ZodType>(item: T, { least, most }: Limits, wanted: string) {
  const error = ({ input }: { input?: unknown }): string => {
    const alone = typeof input === "string" && item.safeParse(input).success;
    const remedy = alone ? `[${input}]` : `${wanted} in [ ], or each after a dash`;
    return missing(input, wanted) ?? `${shownRaw(input)} stands where a list of ${wanted} belongs; write ${remedy}`;
  };
  return z
    .array(item, { error })
    .min(least, `the list is too short; write ${wanted}, ${least} or more`)
    .max(most, `the list is too long; write ${wanted}, at most ${most}`);
}

/** The error of a value of another kind than wanted. */
export function wrongKind(wanted: string) {
  return ({ input }: { input?: unknown }): string =>
    missing(input, wanted) ?? `${shownRaw(input)} is not ${wanted}; write ${wanted}`;
}

function missing(input: unknown, wanted: string): string | undefined {
  return input === undefined ? `it is missing; write ${wanted}` : undefined;
}

function figure(parse: (text: string) => number, { least, most }: Limits, write: Write, wanted: string): Parsed {
  const [, kind] = /^(.*) such as /.exec(wanted) ?? [];
  return z
    .union(WRITTEN, { error: wrongKind(wanted) })
    .transform((given, context): number => {
      const text = String(given);
      const size = least >= 0 && kind !== undefined ? text.replace(/^\s*-/, "") : text;
      try {
        const value = parse(size);
        if (size !== text)
          throw refused(`${shown(text)} is negative; write ${kind} of ${write(least, "least")} or more`);
        if (value >= least && value <= most) return value;
        const side =
          value < least ? `below the least, ${write(least, "least")}` : `above the most, ${write(most, "most")}`;
        const isPercent = kind === "a share" && value > most && value <= 100 * most && !/%/.test(text);
        const remedy = isPercent ? `write ${value}% if that is meant` : "check the figure and its unit";
        throw refused(`${shown(text)} is ${side}; ${remedy}`);
      } catch (error) {
        if (!(error instanceof CastingError)) throw error;
        // What was written, with its minus.
        context.addIssue({ code: "custom", message: error.faults[0]!.text.replace(shown(size), shown(text)) });
      }
      return z.NEVER;
    })
    .register(MEANINGS, { limits: `${write(least, "least")} to ${write(most, "most")}` }) as unknown as Parsed;
}

function refused(text: string): CastingError {
  return new CastingError("invalid", [{ path: [], text }]);
}

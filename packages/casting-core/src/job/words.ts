import { z } from "zod";
import { glassOf } from "../blank/glass.js";
import { CastingError } from "../errors.js";
import { GRAINS, grainNamed } from "../grains.js";
import { HIDDEN } from "../latin.js";
import { known, nearest } from "../nearest.js";
import { PAPERS, paperSize } from "../papers.js";
import { shown } from "../units/parse.js";
import { MEANINGS, WRITTEN, wrongKind } from "./fields.js";
import type { Units } from "./types.js";

/** Longest title that is read. Sheets shorten it to what fits. */
const TITLE = 10_000;

/** A line of text without anything hidden in it. */
export const title = z.string({ error: wrongKind("a text") }).superRefine((text, context) => {
  const say = (message: string) => context.addIssue({ code: "custom", message });
  if (text.length > TITLE) say(`a title of ${text.length} characters is too long; write at most ${TITLE}`);
  else if (text.search(HIDDEN) >= 0)
    say(`${shown(text)} holds line breaks, controls or hidden characters; write one plain line`);
});

/** A kind of glass, by the table's name where the table has it. */
export const glass: z.ZodType<string> = title.transform(
  (text) => glassOf(text)?.material ?? text,
) as unknown as z.ZodType<string>;

/** How many pieces. */
export const countField = z
  .union(WRITTEN, { error: wrongKind("max, or a number such as 120") })
  .transform((text, context): number | "max" => {
    if (text === "max") return "max";
    if (/^\d{1,9}$/.test(String(text)) && Number(text) >= 1) return Number(text);
    context.addIssue({
      code: "custom",
      message: `${shown(String(text))} is not a count; write max, or a whole number from 1`,
    });
    return z.NEVER;
  }) as unknown as z.ZodType<number | "max">;

/** A fill line. */
export function fillField(length: z.ZodType<number>): z.ZodType<number | "auto"> {
  return wordOr("auto", length);
}

/** Where the tool stands. */
export function offsetField(length: z.ZodType<number>): z.ZodType<number | "tangent"> {
  return wordOr("tangent", length);
}

/** The word itself, or a length. */
function wordOr<const W extends string>(word: W, length: z.ZodType<number>): z.ZodType<number | W> {
  return z
    .union(WRITTEN, { error: wrongKind(`${word}, or a length`) })
    .transform((text, context): number | W => {
      if (text === word) return word;
      const read = length.safeParse(text);
      if (read.success) return read.data;
      for (const issue of read.error.issues)
        context.addIssue({ code: "custom", message: issue.message.replace("; write ", `; write ${word}, or `) });
      return z.NEVER;
    })
    .register(MEANINGS, { limits: length.meta()?.["limits"] }) as unknown as z.ZodType<number | W>;
}

/** A paper by name, by its size, or full. */
export function paperField(units: Units): z.ZodType<string> {
  return z.string({ error: wrongKind("a paper such as A4") }).transform((text, context): string => {
    const say = (message: string) => {
      context.addIssue({ code: "custom", message });
      return z.NEVER;
    };
    const paper = known(text, [...PAPERS.map(({ name }) => name), "full"], String);
    if (paper !== undefined) return paper;
    try {
      if (paperSize(text, units)) return text;
    } catch (error) {
      if (!(error instanceof CastingError)) throw error;
      return say(error.faults[0]!.text);
    }
    const near = nearest(text, [...PAPERS.map(({ name }) => name), "full"]);
    const remedy = near
      ? `did you mean "${near}"?`
      : `casting list papers shows what there is, or write WIDTHxHEIGHT such as ${units === "in" ? "8.5x11 or 210x297mm" : "210x297 or 8.5x11in"}`;
    return say(`${shown(text)} is not a paper that is known; ${remedy}`);
  }) as unknown as z.ZodType<string>;
}

/** A grain by its F grit or its size; those of coated paper bear the same numbers for other sizes. */
export const grainField = z.string({ error: wrongKind("a grain such as F80") }).transform((text, context): string => {
  const grain = grainNamed(text);
  if (grain) return grain.name;
  const near = nearest(
    text,
    GRAINS.map(({ name }) => name),
  );
  const remedy = near
    ? `did you mean "${near}"?`
    : "casting list grains shows what there is, or write a size such as 25 µm";
  const message = /^p ?\d+$/i.test(text)
    ? `${shown(text)} is a grit of coated paper, not of the size that an F grit of this number has; write an F grit of casting list grains, or the size, such as 25 µm`
    : `${shown(text)} is not a grain that is known; ${remedy}`;
  context.addIssue({ code: "custom", message });
  return z.NEVER;
}) as unknown as z.ZodType<string>;

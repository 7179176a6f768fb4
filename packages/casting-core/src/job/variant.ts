import { z } from "zod";
import { nearest } from "../nearest.js";
import { notKeys, unknownKey } from "./fields.js";
import { shownRaw } from "./text.js";

/** What a variant may be; the union of it stands in the JSON Schema. */
export const VARIANTS = new WeakMap<z.ZodType, z.ZodType>();

type Options = Record<string, z.ZodType>;
type Output<T extends Options> = z.output<T[keyof T]>;

/** Records told apart: by the word under `key`, or, the option called "", by having the key `alone` instead. */
interface Variant {
  key: string;
  alone: string | undefined;
  options: Options;
  /** The words that may stand under `key`. */
  words: string[];
  /** The keys of all records together. */
  known: ReadonlySet<string>;
}

type Written = Readonly<Record<string, unknown>>;
type Issue = Pick<z.core.$ZodIssue, "message" | "path">;
type Read = { data: unknown } | readonly Issue[];

/**
 * One of several records, told apart by the word under `key`, so that a fault is one of the record that was meant. With
 * `alone`, a record that has this key instead is the option called "".
 */
export function variant<T extends Options>(key: string, alone: string | undefined, options: T): z.ZodType<Output<T>> {
  const words = Object.keys(options).filter((word) => word !== "");
  const known = new Set(Object.values(options).flatMap(keysOf));
  const schema = z.unknown().transform((raw, context): Output<T> => {
    const read = readMeant({ key, alone, options, words, known }, raw);
    if ("data" in read) return read.data as Output<T>;
    for (const { message, path } of read) context.addIssue({ code: "custom", message, path });
    return z.NEVER;
  });
  VARIANTS.set(schema, z.union(Object.values(options) as [z.ZodType, z.ZodType]));
  return schema as unknown as z.ZodType<Output<T>>;
}

/** `raw` read as the record that is meant. Which one that is comes first: until it is known no key can be called wrong. */
function readMeant(variant: Variant, raw: unknown): Read {
  const { key, alone, options } = variant;
  if (!isRecord(raw)) return [issue(notKeys(raw, `${alone ? `${alone} or ` : ""}${key} below it`))];
  const isAlone = alone !== undefined && given(raw, alone) !== undefined;
  if (isAlone && given(raw, key) !== undefined) {
    const text = `it stands beside ${key}; keep ${alone} for one from the catalogue, or ${key} for one of your own`;
    return [issue(text, alone)];
  }
  const word = isAlone ? "" : given(raw, key);
  if (word === undefined) return [withoutWord(variant, raw)];
  const option = typeof word === "string" && Object.hasOwn(options, word) ? options[word] : undefined;
  if (!option) return withUnknownWord(variant, raw, word);
  const read = option.safeParse(raw);
  if (read.success) return { data: read.data };
  const own = keysOf(option);
  const strange = Object.keys(raw).filter((name) => variant.known.has(name) && !own.includes(name));
  if (isAlone && strange.length > 0) return besideAlone(variant, option, raw, strange);
  const lacking = own.filter((name) => given(raw, name) === undefined && isMissing(read.error, name));
  // A key of another record that stands for the one that is missing is one slip, not two.
  if (word !== "" && strange.length === 1 && lacking.length === 1) {
    return misnamed(`${key}: ${word}`, option, raw, strange[0]!, lacking[0]!);
  }
  return read.error.issues;
}

/** A record that has neither the key for the word nor `alone`, or has one of them mistyped. */
function withoutWord({ key, alone, words, known }: Variant, raw: Written): Issue {
  const telling = alone === undefined ? [key] : [alone, key];
  const slip = Object.keys(raw).find((name) => !known.has(name) && nearest(name, telling) !== undefined);
  if (slip !== undefined) return issue(unknownKey(slip, telling), slip);
  return issue(
    alone
      ? `neither ${alone} nor ${key} is given; write ${alone}: for one from the catalogue, or ${key}: ${words.join(", ")}`
      : `${key} is not given; write ${key}: ${words.join(", ")}`,
  );
}

/** A word that names no record; the rest is read as the one that it comes near to. */
function withUnknownWord({ key, options, words }: Variant, raw: Written, word: unknown): Issue[] {
  const near = typeof word === "string" ? nearest(word, words) : undefined;
  const rest = near === undefined ? [] : issuesOf(options[near]!, { ...raw, [key]: near });
  const remedy = near ? `did you mean "${near}"?` : `choose from ${words.join(", ")}`;
  return [...rest, issue(`${shownRaw(word)} is not a ${key} that is known; ${remedy}`, key)];
}

/** Keys of the other records beside `alone`; the rest is read without them. */
function besideAlone({ key, alone }: Variant, option: z.ZodType, raw: Written, strange: readonly string[]): Issue[] {
  const rest = Object.fromEntries(Object.entries(raw).filter(([name]) => !strange.includes(name)));
  const remedy = `the keys are ${keysOf(option).join(", ")}, or write a ${key} of your own in place of ${alone}`;
  return [
    ...issuesOf(option, rest),
    ...strange.map((name) => issue(`${shownRaw(name)} does not stand beside ${alone}; ${remedy}`, name)),
  ];
}

/** A value under the key `strange` that is meant for the key `lacking`; the rest is read with it there. */
function misnamed(record: string, option: z.ZodType, raw: Written, strange: string, lacking: string): Issue[] {
  const { [strange]: value, ...rest } = raw;
  return [
    ...issuesOf(option, { ...rest, [lacking]: value }),
    issue(`${shownRaw(strange)} is not a key of ${record}; did you mean "${lacking}"?`, strange),
  ];
}

function issue(message: string, ...path: string[]): Issue {
  return { message, path };
}

function issuesOf(option: z.ZodType, raw: unknown): readonly Issue[] {
  return option.safeParse(raw).error?.issues ?? [];
}

function isRecord(raw: unknown): raw is Written {
  return typeof raw === "object" && raw !== null && !Array.isArray(raw);
}

function given(raw: Written, key: string): unknown {
  return Object.hasOwn(raw, key) ? raw[key] : undefined;
}

function keysOf(option: z.ZodType): string[] {
  return option instanceof z.ZodObject ? Object.keys(option.shape) : [];
}

function isMissing({ issues }: z.ZodError, key: string): boolean {
  return issues.some(
    ({ path, message }) => path.length === 1 && path[0] === key && message.startsWith("it is missing"),
  );
}

import { z } from "zod";
import { nearest } from "../nearest.js";
import { notKeys, unknownKey } from "./fields.js";
import { shownRaw } from "./text.js";

/** What a variant may be; the union of it stands in the JSON Schema. */
export const VARIANTS = new WeakMap<z.ZodType, z.ZodType>();

type Options = Record<string, z.ZodType>;
type Output<T extends Options> = z.output<T[keyof T]>;

/**
 * One of several records, told apart by the word under `key`, so that a fault is one of the record that was meant. With
 * `alone`, a record that has this key instead is the option called "".
 */
export function variant<T extends Options>(key: string, alone: string | undefined, options: T): z.ZodType<Output<T>> {
  const words = Object.keys(options).filter((word) => word !== "");
  const known = new Set(Object.values(options).flatMap(keysOf));
  const schema = z.unknown().transform((raw, context): Output<T> => {
    const say = (message: string, path: string[] = []) => {
      context.addIssue({ code: "custom", message, path });
      return z.NEVER;
    };
    if (typeof raw !== "object" || raw === null || Array.isArray(raw)) {
      return say(notKeys(raw, `${alone ? `${alone} or ` : ""}${key} below it`));
    }
    const given = (name: string): unknown =>
      Object.hasOwn(raw, name) ? (raw as Record<string, unknown>)[name] : undefined;
    const lone = alone !== undefined && given(alone) !== undefined;
    if (lone && given(key) !== undefined) {
      return say(`it stands beside ${key}; keep ${alone} for one from the catalogue, or ${key} for one of your own`, [
        alone,
      ]);
    }
    const word = lone ? "" : given(key);
    if (word === undefined) {
      const telling = alone === undefined ? [key] : [alone, key];
      const slip = Object.keys(raw).find((name) => !known.has(name) && nearest(name, telling) !== undefined);
      if (slip !== undefined) return say(unknownKey(slip, telling), [slip]);
      return say(
        alone
          ? `neither ${alone} nor ${key} is given; write ${alone}: for one from the catalogue, or ${key}: ${words.join(", ")}`
          : `${key} is not given; write ${key}: ${words.join(", ")}`,
      );
    }
    const option = typeof word === "string" && Object.hasOwn(options, word) ? options[word] : undefined;
    if (!option) {
      const near = typeof word === "string" ? nearest(word, words) : undefined;
      // The rest is read as the one that was meant.
      if (near !== undefined) tellOf(options[near]!.safeParse({ ...raw, [key]: near }), context);
      return say(
        `${shownRaw(word)} is not a ${key} that is known; ${near ? `did you mean "${near}"?` : `choose from ${words.join(", ")}`}`,
        [key],
      );
    }
    const read = option.safeParse(raw);
    if (read.success) return read.data as Output<T>;
    const strange = Object.keys(raw).filter((name) => known.has(name) && !keysOf(option).includes(name));
    const lacking = keysOf(option).filter((name) => given(name) === undefined && isMissing(read, name));
    if (lone && strange.length > 0) {
      const rest = Object.entries(raw).filter(([name]) => !strange.includes(name));
      tellOf(option.safeParse(Object.fromEntries(rest)), context);
      for (const name of strange) {
        const own = keysOf(option).join(", ");
        say(
          `${shownRaw(name)} does not stand beside ${alone}; the keys are ${own}, or write a ${key} of your own in place of ${alone}`,
          [name],
        );
      }
      return z.NEVER;
    }
    if (typeof word === "string" && word !== "" && strange.length === 1 && lacking.length === 1) {
      // A key of another record that stands for the one that is missing is one slip, not two.
      const { [strange[0]!]: value, ...rest } = raw as Record<string, unknown>;
      tellOf(option.safeParse({ ...rest, [lacking[0]!]: value }), context);
      return say(`${shownRaw(strange[0])} is not a key of ${key}: ${word}; did you mean "${lacking[0]}"?`, [
        strange[0]!,
      ]);
    }
    tellOf(read, context);
    return z.NEVER;
  });
  VARIANTS.set(schema, z.union(Object.values(options) as [z.ZodType, z.ZodType]));
  return schema as unknown as z.ZodType<Output<T>>;
}

function keysOf(option: z.ZodType): string[] {
  return option instanceof z.ZodObject ? Object.keys(option.shape) : [];
}

function isMissing({ error }: z.ZodSafeParseResult<unknown>, key: string): boolean {
  return error!.issues.some(
    ({ path, message }) => path.length === 1 && path[0] === key && message.startsWith("it is missing"),
  );
}

/** Tells every fault of what was read. */
function tellOf({ error }: z.ZodSafeParseResult<unknown>, context: z.RefinementCtx): void {
  for (const { message, path } of error?.issues ?? []) context.addIssue({ code: "custom", message, path });
}

import { z } from "zod";
import { CastingError, type Fault } from "../errors.js";
import { nearest } from "../nearest.js";
import type { Path, Raw } from "./tree.js";
import { VARIANTS } from "./variant.js";

/** What of a value could be read beside its faults, and the paths of what could not. */
export interface Partly {
  value: unknown;
  unread: Path[];
}

/** What `schema` reads of `raw` at `path`, down to the keys that no fault of the job's `faults` is about. */
export function readPartly(
  schema: z.core.$ZodType,
  raw: Raw | undefined,
  path: Path,
  faults: readonly Fault[],
): Partly {
  const own = faults.filter((fault) => isAbove(path, fault.path));
  if (own.length === 0) {
    const { success, data } = z.safeParse(schema, raw);
    return { value: data, unread: success ? [] : [path] };
  }
  const inner = own.some((fault) => fault.path.length === path.length) ? undefined : insideOf(schema, raw);
  if (inner instanceof z.ZodArray) {
    // A single piece is written without a list.
    const items = [raw ?? []].flat().map((item, index) => readPartly(inner.element, item, [...path, index], own));
    return { value: items.map(({ value }) => value), unread: items.flatMap(({ unread }) => unread) };
  }
  if (!(inner instanceof z.ZodObject) || !isMap(raw)) return { value: undefined, unread: [path] };
  const keys = Object.keys(inner.shape);
  const strange = Object.keys(raw).filter((key) => !keys.includes(key));
  // A mistyped key leaves nothing, or a default, in the place of the key that was meant: without a near one, any.
  const meant = strange.flatMap((key) => nearest(key, keys) ?? keys.filter((other) => !Object.hasOwn(raw, other)));
  const parts = keys.map((key): [string, Partly] => {
    const at = [...path, key];
    const part = readPartly(inner.shape[key]!, raw[key], at, own);
    return [key, meant.includes(key) ? { value: undefined, unread: [at] } : part];
  });
  return {
    value: Object.fromEntries(parts.flatMap(([key, { value }]) => (value === undefined ? [] : [[key, value]]))),
    unread: parts.flatMap(([, { unread }]) => unread),
  };
}

/** Whether `above` is `path` itself or holds it. */
export function isAbove(above: Path, path: Path): boolean {
  return above.every((part, index) => part === path[index]);
}

/** Thrown by what is guarded: nothing is said of what could not be read. */
class Unread extends CastingError {
  constructor() {
    super("invalid", []);
  }
}

/** What `find` tells of each item; nothing of one that could not be read. */
export function each<T>(items: readonly T[], find: (item: T, index: number) => Fault[]): Fault[] {
  return Array.from({ length: items.length }, (_, index) => unlessUnread(() => find(items[index]!, index))).flat();
}

/** What `find` tells; nothing where it looks at what could not be read. */
export function unlessUnread(find: () => Fault[]): Fault[] {
  try {
    return find();
  } catch (error) {
    if (error instanceof Unread) return [];
    throw error;
  }
}

/** `value` that throws `Unread` where a path that could not be read is looked at. */
export function guarded<T>(value: T, unread: readonly Path[], path: Path = []): T {
  if (typeof value !== "object" || value === null) return value;
  const look = (key: string | symbol): Path => {
    const at = [...path, Array.isArray(value) ? Number(String(key)) : String(key)];
    if (unread.some((other) => isAbove(other, at))) throw new Unread();
    return at;
  };
  return new Proxy(value, {
    get: (target, key) => guarded(Reflect.get(target, key), unread, look(key)),
    has: (target, key) => look(key) !== undefined && Reflect.has(target, key),
  });
}

/** The record or list that `schema` reads `raw` by, without what stands round it. */
function insideOf(schema: z.core.$ZodType, raw: Raw | undefined): z.core.$ZodType | undefined {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodDefault || schema instanceof z.ZodPrefault) {
    return insideOf(schema.def.innerType, raw);
  }
  const variants = VARIANTS.get(schema as z.ZodType);
  if (!(variants instanceof z.ZodUnion)) return schema;
  const shape = isMap(raw) ? raw["shape"] : undefined;
  return variants.options.find((option) => {
    if (!(option instanceof z.ZodObject)) return option instanceof z.ZodArray;
    const word = option.shape["shape"];
    return word === undefined ? shape === undefined : z.safeParse(word, shape).success;
  });
}

function isMap(raw: Raw | undefined): raw is { [key: string]: Raw } {
  return typeof raw === "object" && !Array.isArray(raw);
}

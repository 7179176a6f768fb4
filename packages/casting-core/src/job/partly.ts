import { z } from "zod";
import type { Fault } from "../errors.js";
import { nearest } from "../nearest.js";
import { isAbove, type Path, type Raw } from "./tree.js";
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
  const within = faults.filter((fault) => isAbove(path, fault.path));
  if (within.length === 0) {
    const { success, data } = z.safeParse(schema, raw);
    return { value: data, unread: success ? [] : [path] };
  }
  const isWrongItself = within.some((fault) => fault.path.length === path.length);
  const inner = isWrongItself ? undefined : insideOf(schema, raw);
  if (inner instanceof z.ZodArray) return listPartly(inner, raw, path, within);
  if (inner instanceof z.ZodObject && isMap(raw)) return recordPartly(inner, raw, path, within);
  return { value: undefined, unread: [path] };
}

/** The same of a list, item by item; a single piece is written without one. */
function listPartly(list: z.ZodArray, raw: Raw | undefined, path: Path, faults: readonly Fault[]): Partly {
  const items = [raw ?? []].flat().map((item, index) => readPartly(list.element, item, [...path, index], faults));
  return { value: items.map(({ value }) => value), unread: items.flatMap(({ unread }) => unread) };
}

/** The same of a record, key by key. */
function recordPartly(record: z.ZodObject, raw: RawMap, path: Path, faults: readonly Fault[]): Partly {
  const keys = Object.keys(record.shape);
  const strange = Object.keys(raw).filter((key) => !keys.includes(key));
  // A mistyped key leaves nothing, or a default, in the place of the key that was meant: without a near one, any.
  const meant = strange.flatMap((key) => nearest(key, keys) ?? keys.filter((other) => !Object.hasOwn(raw, other)));
  const parts = keys.map((key): [string, Partly] => {
    const at = [...path, key];
    const part = readPartly(record.shape[key]!, raw[key], at, faults);
    return [key, meant.includes(key) ? { value: undefined, unread: [at] } : part];
  });
  return {
    value: Object.fromEntries(parts.flatMap(([key, { value }]) => (value === undefined ? [] : [[key, value]]))),
    unread: parts.flatMap(([, { unread }]) => unread),
  };
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

type RawMap = { [key: string]: Raw };

function isMap(raw: Raw | undefined): raw is RawMap {
  return typeof raw === "object" && !Array.isArray(raw);
}

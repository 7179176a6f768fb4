import { pathText } from "../errors.js";
import type { Json } from "./json-schema.js";

/**
 * Where a value first leaves a schema of this folder: the key and what is there instead, as in `layout.gap is missing`;
 * nothing where it fits. Keys that the schema does not know are left alone: a later version may have added them.
 */
export function misfit(schema: Json, value: unknown, path: readonly (string | number)[] = []): string | undefined {
  const here = path.length > 0 ? pathText(path) : "it";
  const unless = (fits: boolean, wanted: string) => (fits ? undefined : `${here} is not ${wanted}`);
  if (value === undefined) return `${here} is missing`;
  if ("const" in schema) return unless(value === schema["const"], `${schema["const"]}`);
  if ("enum" in schema) return unless((schema["enum"] as unknown[]).includes(value), "one of the words it may be");
  switch (schema["type"]) {
    case "number":
      return unless(Number.isFinite(value), "a number");
    case "integer":
      return unless(Number.isSafeInteger(value) && (value as number) >= 0, "a count");
    case "array": {
      if (!Array.isArray(value)) return `${here} is not a list`;
      const { minItems = 0, maxItems = Infinity } = schema as { minItems?: number; maxItems?: number };
      if (value.length < minItems || value.length > maxItems) return `${here} has ${value.length} entries`;
      return first(value.keys(), (n) => misfit(schema["items"] as Json, value[n], [...path, n]));
    }
    case "object": {
      if (typeof value !== "object" || value === null || Array.isArray(value)) return `${here} is not a record`;
      const required = schema["required"] as string[];
      const keys = Object.entries(schema["properties"] as Record<string, Json>);
      return first(keys, ([key, own]) => {
        const item: unknown = Object.hasOwn(value, key) ? (value as Record<string, unknown>)[key] : undefined;
        return item === undefined && !required.includes(key) ? undefined : misfit(own, item, [...path, key]);
      });
    }
    default:
      return unless(typeof value === schema["type"], `a ${schema["type"] === "string" ? "text" : schema["type"]}`);
  }
}

function first<T>(items: Iterable<T>, find: (item: T) => string | undefined): string | undefined {
  for (const item of items) {
    const found = find(item);
    if (found !== undefined) return found;
  }
  return undefined;
}

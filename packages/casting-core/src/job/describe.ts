import { z } from "zod";
import { jobSchema } from "./schema.js";
import { VARIANTS } from "./variant.js";

/** A part of a JSON Schema. */
type Json = Record<string, unknown>;

/** The JSON Schema (draft-7) of a job file, for editors: the same schema that reads it. */
export function jobJsonSchema(): Json {
  const schema = described(jobSchema("mm"));
  return { $schema: "http://json-schema.org/draft-07/schema#", title: "A job for casting", ...schema };
}

function described(schema: z.ZodType): Json {
  const json = z.toJSONSchema(schema, {
    target: "draft-7",
    io: "input",
    unrepresentable: "any",
    override: ({ zodSchema, jsonSchema }) => {
      const union = VARIANTS.get(zodSchema as unknown as z.ZodType);
      if (!union) return;
      const { description } = jsonSchema;
      for (const key of Object.keys(jsonSchema)) delete (jsonSchema as Json)[key];
      Object.assign(jsonSchema, described(union), description === undefined ? {} : { description });
    },
  }) as Json;
  const { $schema: _, ...rest } = json;
  return told(rest) as Json;
}

/** A JSON Schema whose descriptions say the limits of figures too (see `figure`), which it has no keyword for. */
function told(json: unknown): unknown {
  if (Array.isArray(json)) return json.map(told);
  if (typeof json !== "object" || json === null) return json;
  const inner = Object.fromEntries(Object.entries(json).map(([key, value]) => [key, told(value)]));
  const { limits, description, ...rest } = inner;
  if (typeof limits !== "string") return inner;
  return { description: description === undefined ? `${limits}.` : `${description} ${limits}.`, ...rest };
}

/** One key of a job: its path, default and meaning, for a table. */
export interface JobKey {
  key: string;
  fallback: string;
  meaning: string;
}

/** Every key of a job that has a meaning of its own, in order, from the schema. */
export function jobKeys(): JobKey[] {
  return keysOf(jobJsonSchema(), "");
}

function keysOf(schema: Json, path: string): JobKey[] {
  const items = schema["items"] as Json | undefined;
  if (items && ("properties" in items || "anyOf" in items)) return keysOf(items, `${path}[]`);
  const variants = schema["anyOf"] as Json[] | undefined;
  if (variants) return variantKeys(variants, path);
  const required = (schema["required"] as string[] | undefined) ?? [];
  const properties = (schema["properties"] as Record<string, Json> | undefined) ?? {};
  return Object.entries(properties).flatMap(([name, property]) => {
    const key = path === "" ? name : `${path}.${name}`;
    const inner = keysOf(property, key);
    const meaning = property["description"];
    if (typeof meaning !== "string") return inner;
    const fallback = property["default"];
    // A record that may be left out whole is told by its keys alone.
    if (typeof fallback === "object" && !Array.isArray(fallback)) return inner;
    const written = fallback === undefined ? (required.includes(name) ? "required" : "") : shownDefault(fallback);
    return [{ key, fallback: written, meaning }, ...inner];
  });
}

/** Keys of a record of several shapes, each key once, with the shapes that have it. A list may stand for its one item. */
function variantKeys(variants: readonly Json[], path: string): JobKey[] {
  const found = new Map<string, JobKey & { shapes: string[] }>();
  const records = variants.filter((variant) => variant["type"] !== "array");
  const names = records.flatMap((variant) => nameOf(variant) ?? []);
  for (const variant of records) {
    const name = nameOf(variant);
    for (const row of keysOf(variant, path)) {
      const known = found.get(row.key);
      // Where a shape may leave out what others need, the row speaks of the others.
      if (known && name !== undefined) known.shapes.push(...(row.fallback === known.fallback ? [name] : []));
      // What stands for a shape is not required beside one.
      else if (!known && name === undefined && names.length > 0)
        found.set(row.key, { ...row, fallback: "", shapes: [] });
      else if (!known) found.set(row.key, { ...row, shapes: name === undefined ? [] : [name] });
    }
  }
  const rows = [...found.values()].map(({ shapes, ...row }) => ({
    ...row,
    meaning:
      shapes.length === 0 || shapes.length === names.length ? row.meaning : `${shapes.join(", ")}: ${row.meaning}`,
  }));
  if (names.length === 0) return rows;
  const fallback = names.length === records.length ? "required" : "";
  return [{ key: `${path}.shape`, fallback, meaning: `One of ${names.join(", ")}.` }, ...rows];
}

/** The shape that a variant is of. */
function nameOf(variant: Json): string | undefined {
  const { shape } = (variant["properties"] as Record<string, Json> | undefined) ?? {};
  return (shape?.["enum"] as string[] | undefined)?.[0];
}

function shownDefault(value: unknown): string {
  return Array.isArray(value) && value.length === 0 ? "none" : [value].flat().join(", ");
}

/** The keys of a job as a table in Markdown. */
export function jobTable(): string {
  const rows = jobKeys().map(({ key, fallback, meaning }) => `| \`${key}\` | ${fallback} | ${meaning} |`);
  return ["| key | default | meaning |", "|---|---|---|", ...rows, ""].join("\n");
}

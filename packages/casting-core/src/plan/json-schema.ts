/** A JSON Schema. */
export type Json = Record<string, unknown>;

/** The kinds of values: a number, a count, a text, true or false, a point. */
export const n: Json = { type: "number" };
export const whole: Json = { type: "integer", minimum: 0 };
export const s: Json = { type: "string" };
export const yes: Json = { type: "boolean" };
export const point: Json = { type: "array", items: n, minItems: 2, maxItems: 2 };

/** An array of `items`. */
export function list(items: Json): Json {
  return { type: "array", items };
}

/** One of `words`. */
export function word(...words: string[]): Json {
  return { enum: words };
}

/** A record; a key that ends in `?` may be absent. Others than these are refused. */
export function record(keys: Record<string, Json>): Json {
  const names = Object.keys(keys);
  return {
    type: "object",
    properties: Object.fromEntries(names.map((name) => [name.replace(/\?$/, ""), keys[name]])),
    required: names.filter((name) => !name.endsWith("?")),
    additionalProperties: false,
  };
}

/** A record that may have other keys too. */
export function open(keys: Record<string, Json>): Json {
  const { additionalProperties: _, ...schema } = record(keys);
  return schema;
}

/** A schema with what it means. */
export function means(schema: Json, description: string): Json {
  return { ...schema, description };
}

/** A least and a most. */
export const bounds = record({ least: n, most: n });

import { jobJsonSchema, jobKeys, jobTable } from "casting-core";
import { describe, expect, it } from "vitest";

type Json = { [key: string]: unknown };

/** Every key that stands anywhere in the schema, with what is said of it. */
function properties(json: unknown, path: string): [path: string, description: unknown][] {
  if (Array.isArray(json)) return json.flatMap((part) => properties(part, path));
  if (typeof json !== "object" || json === null) return [];
  const { properties: own = {}, items, anyOf } = json as Json;
  const here = Object.entries(own as Json).flatMap(([name, property]): [string, unknown][] => [
    [`${path}.${name}`, (property as Json)["description"]],
    ...properties(property, `${path}.${name}`),
  ]);
  return [...here, ...properties(items, `${path}[]`), ...properties(anyOf, path)];
}

describe("what is said of the keys of a job", () => {
  it("means something for each of them, in the schema and in the table", () => {
    const keys = properties(jobJsonSchema(), "").filter(([path]) => !path.endsWith(".shape"));
    expect(keys.length).toBeGreaterThan(100);
    // A sentence, not limits alone.
    const meaning = /^(?:[\w, ]+: )?[a-zA-Z][^.]*[a-z]/;
    expect(keys.filter(([, description]) => !meaning.test(String(description ?? "")))).toEqual([]);
    expect(jobKeys().filter((row) => !meaning.test(row.meaning))).toEqual([]);
  });

  it("tells the limits of every figure, once", () => {
    const range = /-?[\d.]+(?: [a-zA-Z%]+)? to -?[\d.]+/g;
    for (const { key, meaning } of jobKeys()) expect(`${key}: ${meaning.match(range)?.length ?? 0}`).toMatch(/: [01]$/);
    expect(jobTable()).toContain("| `print.guides.rings` | 0 | Number of faint rings about the centre, on the placement template. 0 to 10. |"); // biome-ignore format: one row of the table
    expect(jobTable()).toContain("a length. 0 mm to 5000 mm. |");
  });

  it("says what a list is where it is left out", () => {
    expect(jobKeys().find(({ key }) => key === "layout.keep-clear")?.fallback).toBe("none");
    expect(jobKeys().find(({ key }) => key === "setup.turntable")?.fallback).toBe("30, 45, 60");
  });
});

// A slip of unit in the lengths and masses of any job is refused or noted: always by 25.4 and 1000, else nearly so.
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { isMap, isScalar, isSeq, parseDocument, type Scalar } from "yaml";
import { jobNotes } from "../../packages/casting-core/src/job/notes.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import type { Job } from "../../packages/casting-core/src/job/types.js";
import { pieceKinds } from "../../packages/casting-core/src/pieces/kinds.js";
import { parseLength, parseMass } from "../../packages/casting-core/src/units/parse.js";

const FACTORS = [25.4, 1 / 25.4, 10, 1000, 0.001];

/** Every length and mass of a job with its value in mm or kg: what has such a unit, or stands bare under a key of one. */
function figures(text: string, units: Job["units"]): { node: Scalar; value: number; unit: string; key: string }[] {
  const found: { node: Scalar; value: number; unit: string; key: string }[] = [];
  const walk = (node: unknown, key: string): void => {
    if (isMap(node)) for (const { key: name, value } of node.items) walk(value, `${key}.${(name as Scalar).value}`);
    if (isSeq(node)) for (const item of node.items) walk(item, key);
    if (!isScalar(node)) return;
    const written = String(node.source ?? node.value);
    if (/title|seed|count|share|stock|density|water|spare|ratio|rpm|turn|volume|angle|along|table|shape|kind/.test(key))
      return;
    for (const [parse, unit] of [
      [(figure: string) => parseLength(figure, units), "mm"],
      [parseMass, "kg"],
    ] as const) {
      try {
        const value = parse(written);
        if (value > 0) found.push({ node, value, unit, key });
        return;
      } catch {
        // Not of this kind.
      }
    }
  };
  walk(parseDocument(text).contents, "");
  return found;
}

const warned = (job: Job) => new Set(jobNotes(job).map((note) => note.text));

describe("a slip of unit", () => {
  it("is refused or noted in at least 95 of 100 cases, always by 25.4 and 1000", () => {
    const tally = new Map(FACTORS.map((factor) => [factor, { seen: 0, all: 0, missed: [] as string[] }]));
    for (const name of readdirSync("fixtures").filter((file) => file.endsWith(".yaml"))) {
      const text = readFileSync(`fixtures/${name}`, "utf8");
      const job = readJob(text);
      const before = warned(job);
      for (const { node, value, unit, key } of figures(text, job.units)) {
        const [from, to] = node.range!;
        for (const factor of FACTORS) {
          const slipped = Number((value * factor).toPrecision(9))
            .toFixed(9)
            .replace(/\.?0+$/, "");
          const changed = `${text.slice(0, from)}${slipped} ${unit}${text.slice(to)}`;
          const row = tally.get(factor)!;
          row.all += 1;
          let seen = false;
          try {
            const slippedJob = readJob(changed);
            seen = [...warned(slippedJob)].some((note) => !before.has(note));
            // What is no shape at all is refused when the pieces are made, as in every command that takes a job.
            pieceKinds(slippedJob);
          } catch {
            seen = true;
          }
          if (seen) row.seen += 1;
          else row.missed.push(`${name}${key} ${slipped}`);
        }
      }
    }
    let [seen, all] = [0, 0];
    for (const row of tally.values()) {
      seen += row.seen;
      all += row.all;
    }
    // The share is part of what is promised, so that it is said at each run.
    for (const [factor, row] of tally) {
      console.info(`slips by ${Number(factor.toPrecision(3))}: ${row.seen} of ${row.all} refused or noted`);
    }
    expect(tally.get(25.4)!.missed).toEqual([]);
    expect(tally.get(1000)!.missed).toEqual([]);
    for (const { seen: found, all: of, missed } of tally.values())
      expect(found / of, missed.join("\n")).toBeGreaterThanOrEqual(0.95);
    expect(all).toBeGreaterThan(500);
    expect(seen / all).toBeGreaterThanOrEqual(0.97);
  });

  it("is not seen where there is none", () => {
    for (const name of readdirSync("fixtures").filter((file) => file.endsWith(".yaml"))) {
      expect([...warned(readJob(readFileSync(`fixtures/${name}`, "utf8")))]).toEqual([]);
    }
  });
});

import { readdirSync, readFileSync } from "node:fs";
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { jobJsonSchema } from "../../packages/casting-core/src/job/describe.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { starterJob } from "../../packages/casting-core/src/job/starter.js";
import { planJson } from "../../packages/casting-core/src/plan/json.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";
import { planJsonSchema } from "../../packages/casting-core/src/plan/schema.js";

const ajv = new Ajv({ allErrors: true, strict: false });
const plan = ajv.compile(planJsonSchema());
const job = ajv.compile(jobJsonSchema());

describe.each(readdirSync("fixtures").filter((name) => name.endsWith(".yaml")))("%s", (name) => {
  const text = readFileSync(`fixtures/${name}`, "utf8");

  it("satisfies the schema of a job", () => {
    job(parse(text));
    expect(job.errors ?? []).toEqual([]);
  });

  it("makes a plan that satisfies the schema of a plan", () => {
    plan(JSON.parse(planJson(makePlan(readJob(text)))));
    expect(plan.errors ?? []).toEqual([]);
  });
});

describe("the schemas", () => {
  it("take the starter", () => {
    expect(job(parse(starterJob()))).toBe(true);
  });

  it("refuse what is not theirs", () => {
    expect(job({ blank: {}, pieces: [] })).toBe(false);
    expect(job({ blank: { diameter: 300, raduis: 3 }, pieces: { item: "iso-4032-m8" } })).toBe(false);
    expect(plan({ format: "casting-plan/1" })).toBe(false);
  });
});

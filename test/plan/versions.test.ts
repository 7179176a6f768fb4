// Saved plans of this version, an older and a newer one: read, or refused with one sentence.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, test } from "vitest";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { checkPlan } from "../../packages/casting-core/src/plan/check.js";
import { planJson } from "../../packages/casting-core/src/plan/json.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";
import { readPlan } from "../../packages/casting-core/src/plan/read.js";
import { VERSION } from "../../packages/casting-core/src/version.js";
import { casting, emptyFolder } from "../cli/support.js";

const text = planJson(makePlan(readJob(readFileSync("fixtures/small-full-size.yaml", "utf8"))));

/** The plan's text with something changed in it. */
// biome-ignore lint/suspicious/noExplicitAny: a plan from anywhere
function changed(act: (plan: any) => void): string {
  const plan = JSON.parse(text);
  act(plan);
  return JSON.stringify(plan);
}

const READ: Record<string, string> = {
  "as it was written": text,
  "of an earlier version of the same format": changed((plan) => {
    plan.generator.version = "0.0.9";
  }),
  "of a later version of the same format, with keys of its own": changed((plan) => {
    plan.generator.version = "0.9.0";
    plan.layout.quality.silence = 1;
    plan.layout.pieces[0].colour = "blue";
    plan.polish = { felt: 3 };
    plan.notes.push({ code: "polish", level: "info", text: "Polish it.", link: 7 });
  }),
};

/** The plan's text with one key, by its path, set to something else or, without a value, left out. */
function put(path: string, value?: unknown): string {
  return changed((plan) => {
    const keys = path.split(".");
    const last = keys.pop()!;
    keys.reduce((part, key) => part[key], plan)[last] = value;
  });
}

const REFUSED: [string, string, RegExp][] = [
  ["an older format", put("format", "casting-plan/0"), /"casting-plan\/0".*make the plan again/],
  ["a newer format", put("format", "casting-plan/2"), /"casting-plan\/2".*a newer version wrote it/],
  ["a format far ahead", put("format", "casting-plan/12"), /a newer version wrote it/],
  ["another program's format", put("format", "drawing/7"), /"drawing\/7".*make the plan again/],
  ["a format that plays on the terminal", put("format", "\u001b[2J\n"), /"\?\[2J\?"/],
  ["a number for a format", put("format", 1), /the format is no text/],
  ["no format", put("format"), /the format is missing/],
  ["a part left out", put("grooves"), /lacks grooves/],
  ["a key left out", put("layout.hand"), /layout\.hand is missing/],
  ["a key of a piece left out", put("layout.pieces.2.angle"), /layout\.pieces\[2\]\.angle is missing/],
  ["a text for a number", put("pour.castVolume", "12"), /pour\.castVolume is not a number/],
  ["a part of a piece for a count", put("layout.quality.count", 43.5), /layout\.quality\.count is not a count/],
  ["a text for yes or no", put("grooves.edges.0.cut", "yes"), /grooves\.edges\[0\]\.cut is not a boolean/],
  ["a word it may not be", put("blank.curve", "wavy"), /blank\.curve is not one of/],
  ["a point of three", put("grooves.nodes.0", [1, 2, 3]), /grooves\.nodes\[0\] has 3 entries/],
  ["a list for a record", put("setup", []), /setup is not a record/],
  ["a record for a list", put("notes", {}), /notes is not a list/],
  ["no set-up", put("setup"), /setup is missing: the plan was cut/],
];
const NO_PLAN: [string, string, RegExp][] = [
  ["half a plan", text.slice(0, 1000), /not whole JSON/],
  ["nothing", "", /not whole JSON/],
  ["a list", "[]", /the format is missing/],
  ["null", "null", /this is no plan/],
];

describe("a plan is read", () => {
  it.each(Object.entries(READ))("%s", async (_, given) => {
    expect(readPlan(given).layout.pieces.length).toBe(JSON.parse(given).layout.pieces.length);
    expect(checkPlan(JSON.parse(given)).findings.filter(({ holds }) => !holds)).toEqual([]);
    const file = join(emptyFolder(), "plan.json");
    writeFileSync(file, given);
    expect((await casting("check", file)).code).toBe(0);
  });
});

describe("a plan is refused with one sentence", () => {
  it.each([...REFUSED, ...NO_PLAN])("%s", async (_, given, sentence) => {
    const refusal = (): string => {
      try {
        readPlan(given);
      } catch (error) {
        return (error as Error).message;
      }
      return "";
    };
    expect(refusal()).toMatch(sentence);
    expect(refusal()).not.toMatch(/\p{Cc}|undefined|NaN/u);
    const file = join(emptyFolder(), "plan.json");
    writeFileSync(file, given);
    const { code, out, err } = await casting("check", file);
    expect([code, err]).toEqual([1, ""]);
    expect(out).toMatch(sentence);
    expect(out.split("\n").filter((line) => sentence.test(line)).length).toBe(1);
  });
});

test("only a plan of this version is said to be worked out again", () => {
  const last = (given: string) => checkPlan(JSON.parse(given)).findings.at(-1);
  expect(last(text)).toEqual({ what: "worked out again", holds: true, text: "holds" });
  expect(last(put("generator.version", "0.1.0"))).toEqual({
    what: "version",
    holds: true,
    text: `made by casting 0.1.0, and this is ${VERSION}: measured, but not worked out again`,
  });
});

import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import * as core from "casting-core";
import { describe, expect, it } from "vitest";
import { casting, contents, emptyFolder } from "../cli/support.js";
import { blocksOf, runCall, words } from "./examples.js";

const readme = readFileSync("README.md", "utf8");

/** The code blocks of one language. */
const blocks = (language: string): string[] => blocksOf(readme, language);

describe("the README", () => {
  it("opens with the user's job", () => {
    expect(readme.split("\n\n")[1]).toMatch(/^You make mirrors: .*glass blank/s);
  });

  it("holds the table of keys that the schema gives", () => {
    expect(readme).toContain(`<!-- keys -->\n${core.jobTable()}<!-- /keys -->`);
    expect(JSON.parse(readFileSync("fixtures/job.schema.json", "utf8"))).toEqual(
      JSON.parse(JSON.stringify(core.jobJsonSchema())),
    );
  });

  it("publishes the plan's schema", () => {
    expect(JSON.parse(readFileSync("fixtures/plan.schema.json", "utf8"))).toEqual(core.planJsonSchema());
  });

  it("shows the sample's real templates", async () => {
    const folder = emptyFolder();
    await casting("make", "fixtures/sample.yaml", "--out", folder, "--only", "placement.svg,grooves.svg", "--force");
    const made = contents(folder);
    for (const name of ["placement.svg", "grooves.svg"]) {
      expect(readFileSync(`fixtures/pictures/${name}`, "latin1")).toBe(made[name]);
    }
  });

  it("gives commands that work", { timeout: 240_000 }, async () => {
    const folder = emptyFolder();
    const lines = blocks("sh").flatMap((block) => block.split("\n").filter((line) => line.startsWith("npx casting ")));
    expect(lines.length).toBeGreaterThan(10);
    for (const line of lines) {
      const args = words(line)
        .slice(2)
        .map((word) => word.replace(/^(out|mine\.yaml|smaller\.yaml)(?=\/|$)/, `${folder}/$1`));
      const { code, err } = await casting(...args);
      expect(`${line}: ${code === 0 ? "" : err}`).toBe(`${line}: `);
    }
  });

  it("gives a job that can be made and library calls that run", () => {
    for (const language of ["yaml", "ts"]) expect(blocks(language)).not.toEqual([]);
    for (const block of blocks("yaml")) expect(core.makePlan(core.readJob(block)).pour.batches).toHaveLength(1);
    for (const block of blocks("ts")) {
      expect(runCall(block)[0]).toMatch(/^[1-9]\d* [\d.]+$/);
    }
  });

  it("names only files that are there", () => {
    const links = [...readme.matchAll(/\]\(([^)#]+)\)/g)];
    expect(links).not.toEqual([]);
    for (const [, path] of links) expect(() => readFileSync(resolve(path!))).not.toThrow();
  });
});

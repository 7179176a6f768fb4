// Every recipe's command and call run, and print what the page says they print.
import { readFileSync, writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { casting, emptyFolder } from "../cli/support.js";
import { blocksOf, runCall, words } from "./examples.js";

const recipes = readFileSync("docs/recipes.md", "utf8").split(/^## /m).slice(1);

describe("the recipes", () => {
  it("are ten, each with a command and a call", () => {
    expect(recipes).toHaveLength(10);
    for (const recipe of recipes) {
      expect(blocksOf(recipe, "sh")).not.toEqual([]);
      expect(blocksOf(recipe, "ts")).not.toEqual([]);
    }
  });

  it.each(recipes.map((recipe) => [recipe.split("\n")[0]!, recipe]))("%s", async (_, recipe) => {
    const folder = emptyFolder();
    let printed = "";
    for (const block of blocksOf(recipe, "yaml")) writeFileSync(`${folder}/corrected.yaml`, block);
    for (const line of blocksOf(recipe, "sh").flatMap((block) => block.trim().split("\n"))) {
      const args = words(line)
        .slice(2)
        .map((word) => word.replace(/^(out(?=\/)|(?=corrected\.yaml))/, `${folder}/`));
      const { code, out, err } = await casting(...args);
      expect(`${line}: ${code === 0 ? "" : err}`).toBe(`${line}: `);
      printed += out;
    }
    for (const block of blocksOf(recipe, "text")) {
      for (const line of block.trimEnd().split("\n")) expect(printed).toContain(line);
    }
    for (const block of blocksOf(recipe, "ts")) {
      const said = runCall(block);
      expect(said).not.toEqual([]);
      expect(said.join("\n")).not.toMatch(/NaN|undefined/);
      for (const [, wanted] of block.matchAll(/console\.log.*; \/\/ (.*)$/gm)) expect(said).toContain(wanted);
    }
  });
});

describe("the packages' own pages", () => {
  it.each([
    ["core", "calls", "ts"],
    ["cli", "commands", "sh"],
  ])("casting-%s gives %s that run", async (name, _, language) => {
    const page = readFileSync(`packages/casting-${name}/README.md`, "utf8");
    expect(blocksOf(page, language)).not.toEqual([]);
    for (const block of blocksOf(page, "ts")) expect(runCall(block)[0]).toMatch(/^\d+ [\d.]+$/);
    for (const line of blocksOf(page, "sh").flatMap((block) => block.trim().split("\n"))) {
      const folder = emptyFolder();
      await casting("new", `${folder}/mine.yaml`);
      const args = words(line)
        .slice(2)
        .map((word) => (word === "mine.yaml" ? `${folder}/mine.yaml` : word));
      expect((await casting(...args, ...(args[0] === "new" ? ["--force"] : ["--quiet"]))).code).toBe(0);
    }
  });
});

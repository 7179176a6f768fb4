// Every hostile job is refused with one line a fault that names the key; nothing is written, nothing played back.
import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { casting, contents, emptyFolder } from "../cli/support.js";
import { HOSTILE } from "./table.js";

const FOLDER = "fixtures/hostile";
/** What a message may not hold: controls, bidi and zero-width letters, halves of a pair. */
const HIDDEN = /(?!\n)[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u;

describe("hostile jobs", () => {
  it("are all in the table, 120 of them or more", () => {
    const files = readdirSync(FOLDER, { recursive: true, encoding: "utf8" })
      .filter((name) => statSync(join(FOLDER, name)).isFile())
      .sort();
    expect(Object.keys(HOSTILE).sort()).toEqual(files);
    expect(files.length).toBeGreaterThanOrEqual(120);
  });

  it.each(Object.entries(HOSTILE))("%s is refused by %s", async (name, keys) => {
    const folder = emptyFolder();
    const file = join(FOLDER, name);
    const { code, out, err } = await casting("make", file, "--out", join(folder, "out"));
    expect(code).toBe(2);
    expect(out).toBe("");
    expect(contents(folder)).toEqual({});
    expect(err).not.toMatch(HIDDEN);
    const lines = err.split("\n").filter((line) => line !== "");
    expect(lines).toHaveLength(keys.length);
    for (const [index, line] of lines.entries()) {
      // Where and which key, then the fact, then the remedy.
      const said = line.replace(`${file}:`, "").replace(/^(?:casting: )?(?:\d+:\d+:)? ?/, "");
      const key = keys[index]!;
      expect(said.startsWith(key === "" ? "" : `${key}: `), line).toBe(true);
      expect(said.slice(key.length), line).toMatch(/; \S/);
      expect(line.length, line).toBeLessThan(400);
    }
  });

  it("leave no trace in the program: nothing is polluted", () => {
    expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
    expect(({} as Record<string, unknown>)["units"]).toBeUndefined();
  });
});

// What `npm start` shows of a run: one screen, and every caution in it.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { casting, emptyFolder } from "./support.js";

// It is a script of the project's own, without types.
const { screenOf } = (await import(new URL("../../.ci/screen.mjs", import.meta.url).href)) as {
  screenOf(figures: string, notes: string): string;
};

it("fits one screen with every caution and warning, what was written and where to look first", async () => {
  const { code, out, err } = await casting("make", "fixtures/sample.yaml", "--out", join(emptyFolder(), "out"));
  expect(code).toBe(0);
  const screen = screenOf(out, err);
  const lines = screen.split("\n");
  expect(lines.length).toBeLessThanOrEqual(30);
  const grave = err.split("\n").filter((line) => /^(caution|warning): /.test(line));
  expect(grave.length).toBeGreaterThan(8);
  for (const line of grave) expect(lines).toContain(line);
  expect(screen).not.toContain("info: ");
  const [title] = /(?<=^title: ).*$/m.exec(readFileSync("fixtures/sample.yaml", "utf8"))!;
  expect(lines).toContain(title);
  for (const what of ["pieces", "weigh out", "in the container"])
    expect(screen).toMatch(new RegExp(`^${what} {2,}`, "m"));
  const infos = err.match(/^info: /gm)!.length;
  expect(screen).toMatch(
    new RegExp(
      `\n\n12 files and their manifest are in [^\n]*: start with job-sheet\\.html[^\n]*\nThe job sheet has all figures and ${infos} more notes\\.\n$`,
    ),
  );
});

it("needs neither a title nor notes", () => {
  expect(screenOf("blank  a\nweight  b\n\n1 file is there.\n", "")).toBe(
    "\nblank  a\n\n1 file is there.\nThe job sheet has all figures.\n",
  );
  expect(screenOf("T\n\ntool   a\n\nend\n", "info: x\n")).toContain("all figures and 1 more note.");
});

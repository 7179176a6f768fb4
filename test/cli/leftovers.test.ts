// What a killed run leaves beside a single file is cleared away by the next one, and nothing else is.
import { mkdirSync, readdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { writeNew } from "../../packages/casting-cli/src/files/write-one.js";
import { contents, emptyFolder } from "./support.js";

/** No run has this number. */
const OVER = 999999999;

test("unfinished files of runs that are over go, also one of a run with this one's number", () => {
  const folder = emptyFolder();
  for (const run of [OVER, OVER - 1, process.pid]) writeFileSync(join(folder, `.job.yaml.tmp-${run}`), "half a j");
  writeNew(join(folder, "job.yaml"), "a job\n", false);
  expect(contents(folder)).toEqual({ "job.yaml": "a job\n" });
});

test("the unfinished file of a run at work stays, and so does all that is only named alike", () => {
  const folder = emptyFolder();
  const stay = [
    `.job.yaml.tmp-${process.ppid}`,
    `.job.yaml.tmp-${OVER}.old`,
    ".job.yaml.tmp-",
    ".job.yaml.tmp-0",
    ".job.yaml.tmp-stage",
    `.other.yaml.tmp-${OVER}`,
    `job.yaml.tmp-${OVER}`,
  ];
  for (const name of stay) writeFileSync(join(folder, name), name);
  mkdirSync(join(folder, `.job.yaml.tmp-${OVER}`));
  symlinkSync("nowhere", join(folder, `.job.yaml.tmp-${OVER - 1}`));
  writeNew(join(folder, "job.yaml"), "a job\n", false);
  const after = [...stay, `.job.yaml.tmp-${OVER}`, `.job.yaml.tmp-${OVER - 1}`, "job.yaml"];
  expect(readdirSync(folder).sort()).toEqual(after.sort());
});

test("a write that is refused touches nothing", () => {
  const folder = emptyFolder();
  writeFileSync(join(folder, "job.yaml"), "mine");
  writeFileSync(join(folder, `.job.yaml.tmp-${OVER}`), "half");
  expect(() => writeNew(join(folder, "job.yaml"), "a job\n", false)).toThrow(/is already there/);
  expect(contents(folder)).toEqual({ [`.job.yaml.tmp-${OVER}`]: "half", "job.yaml": "mine" });
});

// How long the program takes from the shell, as multiples of a bare `node -e 0`: medians of runs taken in turn, so that
// a busy machine weighs on both alike.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const RUNS = 9;
const bin = new URL("../../packages/casting-cli/bin/casting.mjs", import.meta.url).pathname;
const sample = new URL("../../fixtures/sample.yaml", import.meta.url).pathname;
const out = mkdtempSync(join(tmpdir(), "casting-bench-"));

const cases = {
  "node -e 0": ["-e", "0"],
  "casting --help": [bin, "--help"],
  "casting make sample": [bin, "make", sample, "--out", join(out, "sample"), "--force", "--quiet"],
  "casting make sample --json --dry-run": [bin, "make", sample, "--json", "--dry-run", "--quiet"],
};
const times = Object.fromEntries(Object.keys(cases).map((name) => [name, []]));
for (let n = 0; n < RUNS; n++) {
  for (const [name, args] of Object.entries(cases)) {
    const start = performance.now();
    const { status } = spawnSync(process.execPath, args, { stdio: ["ignore", "ignore", "inherit"] });
    if (status !== 0) throw new Error(`${name} ended with ${status}`);
    times[name].push(performance.now() - start);
  }
}
rmSync(out, { recursive: true });

const median = (list) => list.sort((a, b) => a - b)[Math.floor(list.length / 2)];
const bare = median(times["node -e 0"]);
console.log(`start-up, median of ${RUNS}`);
for (const [name, list] of Object.entries(times)) {
  const time = median(list);
  console.log(
    `  ${name.padEnd(40)} ${time.toFixed(0).padStart(6)} ms  ${(time / bare).toFixed(2).padStart(6)} x bare node`,
  );
}

// How long the program takes from the shell, as multiples of a bare `node -e 0`: medians of runs taken in turn, so that
// a busy machine weighs on both alike. And how much memory it takes; with --large also of a tool of 20,000 pieces.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { record } from "./record.mjs";

const RUNS = 9;
const bin = new URL("../../packages/casting-cli/bin/casting.mjs", import.meta.url).pathname;
const sample = new URL("../../fixtures/sample.yaml", import.meta.url).pathname;
const out = mkdtempSync(join(tmpdir(), "casting-bench-"));

const cases = {
  "node -e 0": ["-e", "0"],
  "casting --help": [bin, "--help"],
  "casting make sample": [bin, "make", sample, "--out", join(out, "sample"), "--force", "--quiet"],
  "casting make sample without PDF and DXF": [
    ...[bin, "make", sample, "--out", join(out, "some"), "--force", "--quiet"],
    ...["--only", "json,svg,csv,html"],
  ],
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
const median = (list) => list.sort((a, b) => a - b)[Math.floor(list.length / 2)];
const bare = median(times["node -e 0"]);
console.log(`start-up, median of ${RUNS}`);
for (const [name, list] of Object.entries(times)) {
  const time = median(list);
  record(`start, ${name}`, { ms: time, "times a bare node": time / bare });
  console.log(
    `  ${name.padEnd(40)} ${time.toFixed(0).padStart(6)} ms  ${(time / bare).toFixed(2).padStart(6)} x bare node`,
  );
}

/** Processor time in ms and greatest memory in bytes of one run of the program. */
function use(args) {
  const reporter = new URL("../../.ci/use.mjs", import.meta.url).href;
  const { status, output } = spawnSync(process.execPath, ["--import", reporter, bin, ...args], {
    stdio: ["ignore", "ignore", "inherit", "pipe"],
    env: { ...process.env, USE_HANDLE: "3" },
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(`${args.join(" ")} ended with ${status}`);
  return JSON.parse(output[3]);
}

const large = join(out, "large.yaml");
writeFileSync(
  large,
  "blank: {diameter: 2000 mm, focal-ratio: 4}\ntool: {diameter: 1600 mm}\npieces: {item: iso-4032-m5}\n" +
    "layout: {count: 20000, gap: 1 mm}\ngrooves: {cutter: 0.8 mm, clearance: 0.1 mm}\n",
);
const runs = {
  "make sample": ["make", sample, "--out", join(out, "sample"), "--force", "--quiet"],
  ...(process.argv.includes("--large") && { "20,000 pieces": ["layout", large, "--quiet"] }),
};
console.log("memory");
for (const [name, args] of Object.entries(runs)) {
  const { ms, bytes } = use(args);
  record(`memory, ${name}`, { MB: bytes / 1e6, "seconds of processor": ms / 1000 });
  console.log(
    `  ${name.padEnd(40)} ${(bytes / 1e6).toFixed(0).padStart(6)} MB  ${(ms / 1000).toFixed(1).padStart(6)} s of processor`,
  );
}
rmSync(out, { recursive: true });

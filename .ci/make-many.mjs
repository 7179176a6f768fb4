// Runs the command `casting make` once for each job file beside this process's folder, in one process: node .ci/make-many.mjs
// DIR FILES. A job n.yaml gives the set DIR/n; the exit codes go to standard output as JSON. Starting up is most of a small job.
import { readdirSync } from "node:fs";
import { join } from "node:path";

const [folder, files] = process.argv.slice(2);
const jobs = readdirSync(folder).filter((name) => name.endsWith(".yaml"));
const codes = {};
for (const job of jobs) {
  const out = join(folder, job.replace(".yaml", ""));
  process.argv.splice(2, Infinity, "make", join(folder, job), "--out", out, "--force", "--quiet", "--only", files);
  process.exitCode = 0;
  await import(`../packages/casting-cli/dist/bin.mjs?${job}`);
  codes[job] = process.exitCode;
}
process.exitCode = 0;
console.log(JSON.stringify(codes));

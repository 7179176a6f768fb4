// Sets everything up and runs the main job: on the sample, or on the job given. What it says fits one screen.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { screenOf } from "./screen.mjs";
import { setUp } from "./setup.mjs";

const root = new URL("..", import.meta.url).pathname;
const job = process.argv[2] === undefined ? undefined : resolve(process.env.INIT_CWD ?? ".", process.argv[2]);
process.chdir(root);
if (job !== undefined && !existsSync(job)) {
  process.stderr.write(`casting: ${process.argv[2]} is not there; name a job file, or none for the sample\n`);
  process.exit(2);
}
process.stdout.write("Setting up: packages and build (a minute the first time) ...\n");
setUp();
const more = process.argv.slice(3);
const out = job === undefined ? ["fixtures/sample.yaml", "--out", "out", "--force"] : [job, "--force"];
// Options of one's own say what is wanted: then all is shown as `casting make` shows it.
const short = more.length === 0;
const result = spawnSync(process.execPath, ["packages/casting-cli/bin/casting.mjs", "make", ...out, ...more], {
  stdio: short ? ["inherit", "pipe", "pipe"] : "inherit",
  encoding: "utf8",
});
if (short && result.status === 0) process.stdout.write(screenOf(result.stdout, result.stderr));
else if (short) process.stderr.write(result.stderr ?? "");
process.exit(result.status ?? 1);

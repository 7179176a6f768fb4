// Sets everything up and runs the main job: on the sample, or on the job given.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { resolve } from "node:path";
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
const out = job === undefined ? ["fixtures/sample.yaml", "--out", "out", "--force"] : [job, "--force"];
const result = spawnSync(
  process.execPath,
  ["packages/casting-cli/bin/casting.mjs", "make", ...out, ...process.argv.slice(3)],
  {
    stdio: "inherit",
  },
);
process.exit(result.status ?? 1);

// Both packages as others get them: packed, looked over by publint and attw, installed from the tarballs into an empty
// folder, where the main job runs and the library is called. And knip: nothing unused, nothing unlisted.
import { spawnSync } from "node:child_process";
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const root = new URL("..", import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), "casting-packages-"));

/** Runs a command to its end and returns what it printed; ends this program where it fails. */
function run(what, command, args, cwd) {
  const { status, stdout, stderr } = spawnSync(command, args, { cwd, encoding: "utf8" });
  if (status !== 0) {
    process.stderr.write(`${what} failed:\n${stdout ?? ""}${stderr ?? ""}`);
    rmSync(folder, { recursive: true, force: true });
    process.exit(1);
  }
  process.stdout.write(`${what}: holds\n`);
  return stdout;
}

const tarballs = ["casting-core", "casting-cli"].map((name) => {
  const home = join(root, "packages", name);
  run(`pack ${name}`, "npx", ["--yes", "pnpm@10.34.9", "pack", "--pack-destination", folder], home);
  const tarball = join(
    folder,
    readdirSync(folder).find((file) => file.startsWith(name)),
  );
  run(`publint ${name}`, "npx", ["publint", "run", tarball, "--strict"], root);
  run(`attw ${name}`, "npx", ["attw", "--profile", "esm-only", tarball], root);
  return tarball;
});
run("knip", "npx", ["knip"], root);

const home = join(folder, "home");
mkdirSync(home);
writeFileSync(join(home, "package.json"), '{ "private": true, "type": "module" }\n');
copyFileSync(join(root, "fixtures/sample.yaml"), join(home, "job.yaml"));
const quiet = ["--no-audit", "--no-fund", "--prefer-offline", "--ignore-scripts"];
run("install from the tarballs", "npm", ["install", ...quiet, ...tarballs], home);
run("the main job there", "npx", ["--no-install", "casting", "make", "job.yaml", "--quiet"], home);
run("its check", "npx", ["--no-install", "casting", "check", "job"], home);
writeFileSync(
  join(home, "call.js"),
  `import { readFileSync } from "node:fs";
import { makePlan, planJson, readJob } from "casting-core";
const plan = planJson(makePlan(readJob(readFileSync("job.yaml", "utf8"))));
if (plan !== readFileSync("job/plan.json", "utf8")) throw new Error("the library and the command differ");
`,
);
run("the library there", process.execPath, ["call.js"], home);
rmSync(folder, { recursive: true, force: true });

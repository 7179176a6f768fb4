// The same job, seed and version give the same bytes for every file: in other time zones, languages and working folders,
// on one processor, and under Node 20, 22 and 24. What this machine or the registry does not carry is skipped with a word.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";

const root = new URL("..", import.meta.url).pathname;
const CASTING = join(root, "packages/casting-cli/bin/casting.mjs");
const JOBS = ["sample", "inches", "flat"];
const folder = mkdtempSync(join(tmpdir(), "casting-same-"));
const elsewhere = join(folder, "another folder", "ä");
mkdirSync(elsewhere, { recursive: true });

/** A Node of another version by the registry's package `node`, as the words that start it; nothing where there is none. */
function otherNode(version) {
  const { status, stdout } = spawnSync("npx", ["--yes", `node@${version}`, "-p", "process.execPath"], {
    encoding: "utf8",
    cwd: folder,
  });
  const path = stdout?.trim();
  if (status !== 0) return undefined;
  return spawnSync(path, ["--version"], { encoding: "utf8" }).stdout?.startsWith(`v${version}.`) ? [path] : undefined;
}

const here = [process.execPath];
const worlds = [
  { name: "as it is", start: here },
  { name: "TZ=Asia/Kolkata", start: here, env: { TZ: "Asia/Kolkata" } },
  { name: "TZ=America/St_Johns, LANG=de_DE", start: here, env: { TZ: "America/St_Johns", LANG: "de_DE.UTF-8" } },
  { name: "LANG=tr_TR.UTF-8", start: here, env: { LANG: "tr_TR.UTF-8", LC_ALL: "tr_TR.UTF-8" } },
  { name: "another working folder", start: here, cwd: elsewhere },
  {
    name: "one processor",
    start: spawnSync("taskset", ["-c", "0", "true"]).status === 0 ? ["taskset", "-c", "0", ...here] : undefined,
  },
  ...[20, 22, 24].map((version) => ({ name: `Node ${version}`, start: otherNode(version) })),
];

/** Every file's hash by its name. */
function hashes(out) {
  const hash = (name) =>
    createHash("sha256")
      .update(readFileSync(join(out, name)))
      .digest("hex");
  return Object.fromEntries(
    readdirSync(out)
      .sort()
      .map((name) => [name, hash(name)]),
  );
}

let [files, faults] = [0, 0];
const fault = (text) => {
  faults += 1;
  process.stderr.write(`${text}\n`);
};
let wanted;
for (const { name, start, env = {}, cwd = root } of worlds) {
  if (!start) {
    process.stdout.write(`skipped: ${name}, not to be had here\n`);
    continue;
  }
  const made = {};
  for (const job of JOBS) {
    const out = join(folder, "out", job);
    rmSync(out, { recursive: true, force: true });
    const [command, ...args] = [...start, CASTING, "make"];
    // Paths as somebody in that folder would write them.
    const paths = [relative(cwd, join(root, "fixtures", `${job}.yaml`)), "--out", relative(cwd, out)];
    const { status, stderr } = spawnSync(command, [...args, ...paths, "--quiet"], {
      cwd,
      env: { ...process.env, ...env },
      encoding: "utf8",
    });
    if (status !== 0) fault(`${name}: ${job} ended with ${status}: ${stderr}`);
    else made[job] = hashes(out);
  }
  wanted ??= made;
  for (const job of JOBS) {
    const names = new Set([...Object.keys(wanted[job] ?? {}), ...Object.keys(made[job] ?? {})]);
    for (const file of names) {
      files += 1;
      if (wanted[job]?.[file] !== made[job]?.[file]) fault(`${name}: ${job}/${file} is not the same`);
    }
  }
  process.stdout.write(
    `${name}: ${Object.values(made).reduce((sum, set) => sum + Object.keys(set).length, 0)} files\n`,
  );
}
rmSync(folder, { recursive: true, force: true });
process.stdout.write(`${files} files compared, ${faults} faults\n`);
process.exitCode = faults > 0 ? 1 : 0;

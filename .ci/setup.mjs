// Installs the pinned packages and builds both, from nothing but Node and npm.
import { spawnSync } from "node:child_process";

const PNPM = ["--yes", "pnpm@10.34.9"];

export function run(command, args, options = {}) {
  const result = spawnSync(command, args, { stdio: "inherit", ...options });
  if (result.status !== 0) process.exit(result.status ?? 1);
}

export function setUp() {
  const quiet = { stdio: ["ignore", "pipe", "pipe"], encoding: "utf8" };
  for (const args of [
    [...PNPM, "install", "--frozen-lockfile", "--prefer-offline"],
    [...PNPM, "-r", "run", "build"],
  ]) {
    const result = spawnSync("npx", args, quiet);
    if (result.status !== 0) {
      process.stderr.write(`${result.stdout ?? ""}${result.stderr ?? ""}`);
      process.exit(result.status ?? 1);
    }
  }
}

if (process.argv[1] === new URL(import.meta.url).pathname) setUp();

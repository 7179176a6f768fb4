// Loaded into a process by --import: kills it, without a chance to tidy up, before or after its N-th call that changes
// what a folder holds. KILL_AT is N, KILL_WHEN is before or after; with COUNT_HANDLE it only counts and writes how many.
import fs from "node:fs";
import { syncBuiltinESMExports } from "node:module";

const { writeSync } = fs;
const { KILL_AT, KILL_WHEN, COUNT_HANDLE } = process.env;
const CHANGING = ["renameSync", "linkSync", "mkdirSync", "rmSync", "rmdirSync", "unlinkSync"];
let calls = 0;

for (const name of CHANGING) {
  const call = fs[name];
  fs[name] = (...args) => {
    calls += 1;
    const now = calls === Number(KILL_AT);
    if (now && KILL_WHEN === "before") process.kill(process.pid, "SIGKILL");
    try {
      return call(...args);
    } finally {
      if (now && KILL_WHEN === "after") process.kill(process.pid, "SIGKILL");
    }
  };
}
syncBuiltinESMExports();
if (COUNT_HANDLE) process.on("exit", () => writeSync(Number(COUNT_HANDLE), String(calls)));

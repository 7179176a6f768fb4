// Changes the code of a room a little at a time and tells which changes its tests do not notice: npm run mutate, or
// npm run mutate -- units pour for some rooms only. Reports go into reports/. Takes minutes a room.
import { readFileSync } from "node:fs";
import { ROOMS } from "./rooms.mjs";
import { run } from "./setup.mjs";

const root = new URL("..", import.meta.url);
const asked = process.argv.slice(2);
const unknown = asked.find((room) => !Object.hasOwn(ROOMS, room));
if (unknown) {
  process.stderr.write(`${unknown} is no room; choose from ${Object.keys(ROOMS).join(", ")}\n`);
  process.exit(2);
}
for (const room of asked.length > 0 ? asked : Object.keys(ROOMS)) {
  run("npx", ["stryker", "run"], { cwd: root, env: { ...process.env, ROOM: room } });
  const { files } = JSON.parse(readFileSync(new URL(`reports/${room}.json`, root), "utf8"));
  const all = Object.values(files).flatMap(({ mutants }) => mutants.map(({ status }) => status));
  const noticed = all.filter((status) => status === "Killed" || status === "Timeout").length;
  const valid = all.filter((status) => !["CompileError", "RuntimeError", "Ignored"].includes(status)).length;
  process.stdout.write(`${room}: ${noticed} of ${valid} changes noticed, ${((100 * noticed) / valid).toFixed(1)} %\n`);
}

import { readFileSync, writeFileSync } from "node:fs";

/** Puts the figures of one case, plain numbers by name, into the JSON file that BENCH_FILE names; nothing without one. */
export function record(name, figures) {
  const file = process.env.BENCH_FILE;
  if (!file) return;
  const all = JSON.parse(readFileSync(file, "utf8"));
  all.cases[name] = Object.fromEntries(Object.entries(figures).map(([key, value]) => [key, Number(value)]));
  writeFileSync(file, `${JSON.stringify(all, null, 2)}\n`);
}

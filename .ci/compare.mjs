// Two files of `npm run bench` as ratios, after over before: node .ci/compare.mjs BEFORE.json AFTER.json
import { readFileSync } from "node:fs";

const files = process.argv.slice(2);
if (files.length !== 2) {
  process.stderr.write("compare takes two files; write node .ci/compare.mjs BEFORE.json AFTER.json\n");
  process.exit(2);
}
function benchOf(file) {
  const bench = JSON.parse(readFileSync(file, "utf8"));
  if (bench.format === "casting-bench/1") return bench;
  process.stderr.write(`${file} is not of this kind; write it by npm run bench\n`);
  process.exit(2);
}

const [before, after] = files.map(benchOf);
const number = (value) => (value === undefined ? "-" : String(Number(value.toPrecision(4)))).padStart(10);
process.stdout.write(`${"".padEnd(58)}    before      after      ratio\n`);
for (const name of new Set([...Object.keys(before.cases), ...Object.keys(after.cases)])) {
  const [old, now] = [before.cases[name] ?? {}, after.cases[name] ?? {}];
  for (const key of new Set([...Object.keys(old), ...Object.keys(now)])) {
    const ratio = old[key] > 0 && now[key] !== undefined ? (now[key] / old[key]).toFixed(3) : "-";
    process.stdout.write(
      `${`${name}: ${key}`.padEnd(58)}${number(old[key])} ${number(now[key])} ${ratio.padStart(10)}\n`,
    );
  }
}

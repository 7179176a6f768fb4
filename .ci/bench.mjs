// Builds the core, prints its figures and writes them into bench.json; `npm run bench -- 3` for three seeds, `-- --large`
// for large tools too. Two such files side by side: node .ci/compare.mjs BEFORE AFTER
import { readFileSync, writeFileSync } from "node:fs";
import { run, setUp } from "./setup.mjs";

const file = new URL("../bench.json", import.meta.url).pathname;
const { version } = JSON.parse(readFileSync(new URL("../package.json", import.meta.url), "utf8"));
setUp();
run("npx", ["tsc", "-p", "packages/casting-core/tsconfig.json"]);
writeFileSync(file, `${JSON.stringify({ format: "casting-bench/1", version, node: process.version, cases: {} })}\n`);
const options = { env: { ...process.env, BENCH_FILE: file } };
run("node", ["test/bench/layout.mjs", ...process.argv.slice(2)], options);
run("node", ["test/bench/grooves.mjs"], options);
run("node", ["test/bench/start.mjs", ...process.argv.slice(2)], options);

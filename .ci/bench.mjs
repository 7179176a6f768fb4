// Builds the core and prints its figures; `npm run bench -- 3` for three seeds, `-- --large` for large tools too.
import { run, setUp } from "./setup.mjs";

setUp();
run("npx", ["tsc", "-p", "packages/casting-core/tsconfig.json"]);
run("node", ["test/bench/layout.mjs", ...process.argv.slice(2)]);
run("node", ["test/bench/grooves.mjs"]);
run("node", ["test/bench/start.mjs"]);

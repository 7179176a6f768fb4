// Sets everything up, then lint, types and the whole test suite.
import { run, setUp } from "./setup.mjs";

setUp();
run("npx", ["biome", "check", "--error-on-warnings", "."]);
run("npx", ["tsc", "--noEmit", "-p", "tsconfig.json"]);
run("npx", ["vitest", "run", ...process.argv.slice(2)]);

import { run } from "./run.js";
import { systemTerminal } from "./terminal.js";

// The exit code is set, not forced: what was written to a pipe still reaches its end.
process.exitCode = await run(process.argv.slice(2), systemTerminal());

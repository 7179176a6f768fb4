import { run } from "./run.js";
import { commandLine, endWith, systemTerminal } from "./terminal.js";

endWith(await run(commandLine(), systemTerminal()));

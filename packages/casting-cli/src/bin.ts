import { run } from "./run.js";
import { commandLine, compileLess, endWith, systemTerminal } from "./terminal.js";

compileLess();
endWith(await run(commandLine(), systemTerminal()));

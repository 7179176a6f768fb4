import { setFlagsFromString } from "node:v8";
import { run } from "./run.js";
import { commandLine, endWith, systemTerminal } from "./terminal.js";

// A run is over before what V8 compiles at length has paid for itself: a sixth less work for the processors where it puts
// less of other functions into each (measured: 920 is its own choice).
setFlagsFromString("--max-inlined-bytecode-size-cumulative=200");

endWith(await run(commandLine(), systemTerminal()));

import { setFlagsFromString } from "node:v8";
import { run } from "./run.js";
import { commandLine, endWith, systemTerminal } from "./terminal.js";

/** The last Node whose V8 is known to have the flag: another would say on the terminal that it does not know it. */
const LAST_KNOWN = 24;

// A run is over before what V8 compiles at length has paid for itself: a sixth less work for the processors where it puts
// less of other functions into each (measured: 920 is its own choice).
if (Number.parseInt(process.versions.node, 10) <= LAST_KNOWN) {
  setFlagsFromString("--max-inlined-bytecode-size-cumulative=200");
}

endWith(await run(commandLine(), systemTerminal()));

import { writeSync } from "node:fs";
import { setFlagsFromString } from "node:v8";
import { reason } from "./files/errors.js";

/** Where the program speaks: plain text out, messages beside it. */
export interface Terminal {
  /** Standard output: results only. */
  out(text: string): void;
  /** Standard error: messages, warnings, progress. */
  err(text: string): void;
  /** Whether progress may be drawn. */
  drawsProgress: boolean;
  /** Letters in a line of messages; undefined where they go into a file or a pipe, whose lines nobody breaks. */
  width?: number | undefined;
  /** Whether messages may be coloured. */
  colour: boolean;
  /** Whether stack traces are shown. */
  debug: boolean;
}

/** Standard output that takes no more: the disk behind it is full, or the reader has gone. */
export class OutputError extends Error {}

/** The last Node whose V8 is known to have a flag: another would say on the terminal that it does not know it. */
const LAST_KNOWN = { inlining: 24, patience: 20 };

/**
 * A run is over before what V8 compiles at length has paid for itself: it puts less of other functions into each, which is
 * a sixth less work for the processors (measured: 920 is its own choice), and waits longer before it begins, which is an
 * eighth less again (67 584 is its own choice; from Node 22 on it goes by other counts).
 */
export function compileLess(): void {
  const node = Number.parseInt(process.versions.node, 10);
  if (node <= LAST_KNOWN.inlining) setFlagsFromString("--max-inlined-bytecode-size-cumulative=200");
  if (node <= LAST_KNOWN.patience) setFlagsFromString("--interrupt-budget=400000");
}

/** The arguments this process was called with. */
export function commandLine(): string[] {
  return process.argv.slice(2);
}

/** Ends with `code` when all is written: set, not forced, so that what went into a pipe still reaches its end. */
export function endWith(code: number): void {
  process.exitCode = code;
}

/** Resolves when the user ends the program, by Ctrl-C or a signal to stop. */
export function onInterrupt(): Promise<void> {
  return new Promise((done) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => done());
  });
}

/** The number of this run, and whether the run with another number is still at work. */
export const thisRun: number = process.pid;
export function isRunning(run: number): boolean {
  try {
    process.kill(run, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}

/** The terminal of this process: the one file of the program that touches it. */
export function systemTerminal(): Terminal {
  const { env } = process;
  const shown = process.stderr.isTTY === true;
  return {
    out: (text) => writeAll(1, text),
    err: (text) => {
      try {
        writeAll(2, text);
      } catch {
        // Nobody listens: there is nowhere left to say so.
      }
    },
    drawsProgress: shown,
    width: shown ? process.stderr.columns : undefined,
    colour: shown && !env["NO_COLOR"] && env["TERM"] !== "dumb",
    debug: env["CASTING_DEBUG"] === "1",
  };
}

/** Every byte, in order, before the program ends: a pipe may take only a part at a time. */
function writeAll(handle: number, text: string): void {
  const bytes = Buffer.from(text, "utf8");
  for (let done = 0; done < bytes.length; ) {
    try {
      done += writeSync(handle, bytes, done, bytes.length - done);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EAGAIN") {
        throw new OutputError(`standard output could not be written: ${reason(error)}; the result is not complete`);
      }
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 10);
    }
  }
}

/** Controls, bidi controls and characters that show nothing as `?`: a message never plays back what a file hides. */
export function safe(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]|(?![\ufe0e\ufe0f])\p{Default_Ignorable_Code_Point}/gu, (letter) =>
    letter === "\n" ? letter : "?",
  );
}

/** `text` in at most so many letters, its end replaced by … where it was longer; no letter is cut in two. */
export function shortened(text: string, most: number): string {
  const letters = [...text];
  return letters.length > most ? `${letters.slice(0, most - 1).join("")}…` : text;
}

import { Command, CommanderError } from "commander";
import { addCommands } from "./commands.js";
import { FileError } from "./files/errors.js";
import { addHelp, UnknownName, unknownOption } from "./help.js";
import { strayWord } from "./stray.js";
import { OutputError, safe, type Terminal } from "./terminal.js";
import { BesideJob, UsageError } from "./usage.js";
import { VERSION } from "./version.js";

/** Exit codes: done; valid but impossible, or not written; wrong usage or an invalid job. */
const DONE = 0;
const FAILED = 1;
const WRONG = 2;

/** Runs the command line `args` and returns the exit code. Whatever goes wrong ends as one sentence a fault on `terminal`. */
export async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  const quiet = { ...terminal, colour: terminal.colour && !args.includes("--no-color") };
  let code = DONE;
  let within = "";
  const program = new Command("casting");
  try {
    program
      .description("Plans a cast grinding tool for a mirror blank from one job file.")
      .version(VERSION, "--version", "print the version")
      .helpOption("--help", "print this help")
      .option("--no-color", "plain messages without colour")
      .exitOverride()
      .configureOutput({ writeOut: quiet.out, writeErr: () => {} })
      .configureHelp({ helpWidth: 100 })
      .showSuggestionAfterError(true);
    addCommands(program, quiet, (result) => {
      code = result;
    });
    addHelp(program);
    for (const command of program.commands) {
      command.exitOverride((error) => {
        within = command.name();
        throw error;
      });
    }
    await program.parseAsync(args, { from: "user" });
    return code;
  } catch (error) {
    return await failed(error, program, within, quiet, args);
  }
}

/** The exit code for `error`, which is told on `terminal`; `within` names the command whose arguments `args` were read. */
async function failed(
  error: unknown,
  program: Command,
  within: string,
  terminal: Terminal,
  args: readonly string[],
): Promise<number> {
  const isParted =
    error instanceof BesideJob || (error instanceof CommanderError && error.code === "commander.excessArguments");
  const stray = isParted ? strayWord(args, program) : undefined;
  if (stray !== undefined) {
    terminal.err(`casting: ${safe(stray)}\n`);
    return WRONG;
  }
  if (error instanceof CommanderError) {
    // Help and version, where they were asked for.
    if (error.exitCode === 0) return DONE;
    if (error.code === "commander.unknownOption") {
      const command = program.commands.find((known) => known.name() === within) ?? program;
      const flag = /option '(.*?)'?$/m.exec(error.message)?.[1] ?? "";
      return failed(unknownOption(command, flag), program, within, terminal, args);
    }
    if (error.code === "commander.help") {
      terminal.err(program.helpInformation());
      return WRONG;
    }
    terminal.err(`casting: ${safe(sentence(error.message, within))}\n`);
    return WRONG;
  }
  if (error instanceof UnknownName) {
    const { nearest } = await import("casting-core");
    const bare = (name: string) => name.replace(/^--?/, "").toLowerCase();
    const near = nearest(bare(error.wrong), error.names.map(bare));
    const begun = error.names.filter((name) => bare(name).startsWith(bare(error.wrong)));
    const meant = error.names.find((name) => bare(name) === near) ?? (begun.length === 1 ? begun[0] : undefined);
    const hint = meant === undefined ? seeHelp(error.command) : `did you mean ${meant}?`;
    terminal.err(`casting: ${safe(error.message)}; ${hint}\n`);
    return WRONG;
  }
  if (terminal.debug && error instanceof Error) terminal.err(`${safe(error.stack ?? "")}\n`);
  if (error instanceof OutputError || error instanceof FileError || error instanceof UsageError) {
    terminal.err(`casting: ${safe(error.message)}\n`);
    return error instanceof UsageError ? WRONG : FAILED;
  }
  const { faultText, isCastingError } = await import("./report/faults.js");
  if (isCastingError(error)) {
    terminal.err(faultText(error));
    return error.kind === "invalid" ? WRONG : FAILED;
  }
  const what = error instanceof Error ? error.message.split("\n")[0] : "an unknown error";
  terminal.err(
    `casting: a fault in the program itself (${safe(what ?? "")}); please report it with the job file and CASTING_DEBUG=1\n`,
  );
  return FAILED;
}

/** Commander's message as one sentence: fact and remedy. */
function sentence(message: string, within: string): string {
  const [said = "", hint] = message.replace(/^error: /, "").split("\n");
  const fact = said.replace(". Expected", ": expected").replace(/\.$/, "");
  if (hint) return `${fact}; ${hint.replace(/^\(/, "").replace(/\?\)$/, "?").replace("Did", "did")}`;
  return `${fact}; ${seeHelp(within)}`;
}

function seeHelp(command: string): string {
  return command === "" ? "casting --help lists what there is" : `casting ${command} --help shows what it takes`;
}

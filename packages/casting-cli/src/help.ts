import type { Command } from "commander";
import { UsageError } from "./usage.js";

/** A name that is not known where it stands; `names` are those that are. */
export class UnknownName extends UsageError {
  constructor(
    text: string,
    readonly wrong: string,
    readonly names: readonly string[],
    /** The command whose help lists them; the whole program's where it is empty. */
    readonly command: string,
  ) {
    super(text);
  }
}

/** The command `help`, and help that is refused where it stands beside a name that is not known. */
export function addHelp(program: Command): void {
  program.helpCommand(false).addHelpText("beforeAll", ({ command }) => {
    refuseStrays(command);
    return "";
  });
  program
    .command("help")
    .description("print the help of a command")
    .argument("[COMMAND]")
    .action((name?: string) => {
      if (name === undefined) program.help();
      const found = program.commands.find((command) => command.name() === name);
      if (!found) throw unknownCommand(program, name);
      found.help();
    });
}

/** Commander prints help before it looks at what else was written: a slip beside `--help` would pass unseen. */
function refuseStrays(command: Command): void {
  const isFlag = (arg: string) => arg !== "-" && arg.startsWith("-");
  const words = command.args.filter((arg) => !isFlag(arg));
  const [first] = words;
  // What stands behind a command's name is that command's.
  const own = command.parent || first === undefined ? command.args : command.args.slice(0, command.args.indexOf(first));
  const flag = own.find((arg) => isFlag(arg) && arg !== "--help");
  if (flag !== undefined) throw unknownOption(command, flag);
  if (!command.parent) {
    if (first !== undefined && !command.commands.some((known) => known.name() === first)) {
      throw unknownCommand(command, first);
    }
    return;
  }
  const most = command.registeredArguments.length;
  if (words.length > most) {
    throw new UnknownName(`there is one argument too many, '${words[most]}'`, "", [], command.name());
  }
}

/** What tells that `command` has no option called `flag`. */
export function unknownOption(command: Command, flag: string): UnknownName {
  const options = [...command.options, ...(command.parent?.options ?? [])].flatMap(({ long }) => long ?? []);
  const names = [...options, "--help"];
  return new UnknownName(`unknown option '${flag}'`, flag, names, command.parent ? command.name() : "");
}

function unknownCommand(program: Command, name: string): UnknownName {
  const names = program.commands.map((command) => command.name());
  return new UnknownName(`unknown command '${name}'`, name, names, "");
}

import type { Command } from "commander";
import { commandsOf } from "./command-words.js";
import type { Terminal } from "./terminal.js";

/** What every command that reads a job understands. */
export interface JobOptions {
  json?: boolean;
  seed?: number;
  quiet?: boolean;
}

export interface MakeOptions extends JobOptions {
  out?: string;
  force?: boolean;
  dryRun?: boolean;
  paper?: string;
  only?: string[];
}

/**
 * Registers every command. What a command does is loaded when it is called, so that help costs nothing. `done` takes a
 * command's exit code.
 */
export function addCommands(program: Command, terminal: Terminal, done: (code: number) => void): void {
  const commands = commandsOf(program);
  commands.new.action(async (file, options) =>
    done(await (await import("./commands/new.js")).newJob(file, options, terminal)),
  );
  commands.make.action(async (file, options) =>
    done(await (await import("./commands/make.js")).make(file, options, terminal)),
  );
  commands.layout.action(async (file, options) =>
    done(await (await import("./commands/layout.js")).layout(file, options, terminal)),
  );
  for (const name of ["grooves", "setup"] as const) {
    commands[name].action(async (file, options) =>
      done((await import("./commands/part.js")).part(name, file, options, terminal)),
    );
  }
  commands.mix.action(async (file, options) =>
    done(await (await import("./commands/mix.js")).mix(file, options, terminal)),
  );
  commands.curve.action(async (file, options) =>
    done(await (await import("./commands/curve.js")).curve(file, options, terminal)),
  );
  commands.list.action(async (table, options) =>
    done(await (await import("./commands/list.js")).list(table, options, terminal)),
  );
  commands.scale.action(async (file, options) =>
    done(await (await import("./commands/scale.js")).scale(file, options, terminal)),
  );
  commands.view.action(async (file, options) =>
    done(await (await import("./commands/view.js")).view(file, options, terminal)),
  );
  commands.check.action(async (target, options) =>
    done(await (await import("./commands/check.js")).check(target, options, terminal)),
  );
}

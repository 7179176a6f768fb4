import { existsSync } from "node:fs";
import type { Command } from "commander";

/**
 * What to write where the shell parted an option's value that stands without quotes, `--container round 230mm`: its
 * second word was then taken for a job file. Nothing where no word behind a value is such a one.
 */
export function strayWord(args: readonly string[], program: Command): string | undefined {
  const name = args.find((word) => !isOption(word));
  const options = program.commands.find((command) => command.name() === name)?.options ?? [];
  for (const { long } of options.filter(({ required }) => required)) {
    const at = args.findIndex((word) => word === long || word.startsWith(`${long}=`));
    if (at < 0) continue;
    const [value, ...behind] =
      args[at] === long ? args.slice(at + 1) : [args[at]!.slice(long!.length + 1), ...args.slice(at + 1)];
    const end = behind.findIndex((word) => isOption(word) || isJob(word));
    const parts = end < 0 ? behind : behind.slice(0, end);
    if (value === undefined || parts.length === 0) continue;
    const all = [value, ...parts].map((word) => word.slice(0, 40));
    const remedy =
      long === "--readings"
        ? `write --readings ${all.map((word) => word.replace(/,$/, "")).join(",")}`
        : `put quotes round "${all.join(" ")}"`;
    return `"${all[1]}" was read as a job file; ${remedy}`;
  }
  return undefined;
}

/** A word that begins with a minus, but no figure below 0. */
function isOption(word: string): boolean {
  return /^-[^\d.]/.test(word);
}

function isJob(word: string): boolean {
  return word === "-" || /\.(?:ya?ml|json)$/i.test(word) || existsSync(word);
}

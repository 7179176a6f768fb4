import { readFileSync } from "node:fs";
import * as core from "casting-core";

/** The code blocks of one language in a page. */
export function blocksOf(page: string, language: string): string[] {
  return [...page.matchAll(new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\``, "gm"))].map((match) => match[1]!);
}

/** The words of a command line: quotes hold a word together, a comment ends it. */
export function words(line: string): string[] {
  return [...line.replace(/\s#.*$/, "").matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2]!);
}

/** Runs a block that calls the library; one text for each line it prints. */
export function runCall(block: string): string[] {
  const said: string[] = [];
  const body = block
    .replace(/^import \{ (.*) \} from "casting-core";$/m, "const { $1 } = core;")
    .replace(/^import \{ readFileSync \} from "node:fs";$/m, "");
  const print = (...values: unknown[]) =>
    said.push(values.map((value) => (typeof value === "object" ? JSON.stringify(value) : String(value))).join(" "));
  new Function("core", "readFileSync", "console", body)(core, readFileSync, { log: print });
  return said;
}

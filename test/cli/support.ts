import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach } from "vitest";
import { run } from "../../packages/casting-cli/src/run.js";
import type { Terminal } from "../../packages/casting-cli/src/terminal.js";

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** An empty folder, gone after the test. */
export function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "casting-"));
  folders.push(folder);
  return folder;
}

/** A terminal that keeps what it is told; by itself it shows no progress. */
export function heard(changes: Partial<Terminal> = {}) {
  const said = { out: "", err: "" };
  const terminal: Terminal = {
    out: (text) => {
      said.out += text;
    },
    err: (text) => {
      said.err += text;
    },
    drawsProgress: false,
    colour: false,
    debug: false,
    ...changes,
  };
  return { said, terminal };
}

/** Runs the command line and returns what it said. */
export async function casting(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  const { said, terminal } = heard();
  const code = await run(args, terminal);
  return { code, ...said };
}

/** Every file of a folder by name; hidden ones too. */
export function contents(folder: string): Record<string, string> {
  return Object.fromEntries(
    readdirSync(folder)
      .sort()
      .map((name) => [name, readFileSync(join(folder, name), "latin1")]),
  );
}

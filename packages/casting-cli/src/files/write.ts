import {
  closeSync,
  fsyncSync,
  linkSync,
  lstatSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  type Stats,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import { FileError, reason } from "./errors.js";
import { lockStage, releaseStage } from "./lock.js";
import { MANIFEST, manifestOf, readManifest } from "./manifest.js";
import { attempt, writeWhole } from "./whole.js";

/** One file to be written: its plain name and its bytes. */
export interface OutFile {
  name: string;
  bytes: Uint8Array;
}

export interface WriteOptions {
  /** Replace what stands there. */
  force: boolean;
  /** Files of the earlier set that belong to the same plan stay, and stay in the manifest. */
  keep: readonly string[];
}

/**
 * Puts `files` and their manifest into the folder `out`: all of them, or none and the old set as it was. They are
 * written whole into a hidden folder beside it, synced and measured, then renamed one by one, the manifest last. Returns
 * the names of the earlier set's files that are gone with it.
 *
 * @throws FileError where something stands in the way or the disk refuses
 */
export function writeSet(out: string, files: readonly OutFile[], { force, keep }: WriteOptions): string[] {
  const others = keep.filter((name) => !files.some((file) => file.name === name));
  const manifest: OutFile = { name: MANIFEST, bytes: manifestOf(files, keepers(out, others)) };
  const all = [...files, manifest];
  const made = !isThere(out);
  if (!made) checkTargets(out, all, force);
  const stale = made ? [] : staleFiles(out, all, keep);
  const stage = lockStage(out);
  try {
    for (const file of all) writeWhole(join(stage, file.name), file.bytes);
    syncFolder(stage);
    if (made) attempt(out, () => mkdirSync(out));
    moveIn(stage, out, all, stale, made);
  } finally {
    releaseStage(stage);
  }
  return stale;
}

/** Refuses what may not be written over, before anything is touched. */
function checkTargets(out: string, files: readonly OutFile[], force: boolean): void {
  if (!lstatOf(out)?.isDirectory()) {
    throw new FileError(`${out} is not a folder; name another one with --out`);
  }
  for (const { name } of files) {
    const target = join(out, name);
    const found = lstatOf(target);
    if (!found) continue;
    if (!found.isFile()) {
      throw new FileError(`${target} is ${kindOf(found)}, not a file; remove it or name another folder with --out`);
    }
    if (!force) {
      throw new FileError(`${target} is already there; give --force to replace the set, or another folder with --out`);
    }
  }
}

/** Files of the earlier set, unchanged since, that the new set no longer has. */
function staleFiles(out: string, files: readonly OutFile[], keep: readonly string[]): string[] {
  const names = new Set([...files.map((file) => file.name), ...keep]);
  return readManifest(out, true).flatMap(({ name, intact }) => (intact && !names.has(name) ? [name] : []));
}

function keepers(out: string, keep: readonly string[]): OutFile[] {
  return keep.map((name) => ({ name, bytes: readFileSync(join(out, name)) }));
}

/** Renames the staged files into place; whatever fails, the old ones come back. */
function moveIn(stage: string, out: string, files: readonly OutFile[], stale: readonly string[], made: boolean): void {
  const old = join(stage, "earlier");
  const kept: string[] = [];
  const moved: string[] = [];
  try {
    attempt(old, () => mkdirSync(old));
    for (const name of [...files.map((file) => file.name), ...stale]) {
      if (!lstatOf(join(out, name))) continue;
      attempt(join(out, name), () => keepCopy(join(out, name), join(old, name)));
      kept.push(name);
    }
    for (const { name } of files.slice(0, -1)) {
      attempt(join(out, name), () => renameSync(join(stage, name), join(out, name)));
      moved.push(name);
    }
    for (const name of stale) {
      attempt(join(out, name), () => rmSync(join(out, name)));
      moved.push(name);
    }
    attempt(join(out, MANIFEST), () => renameSync(join(stage, MANIFEST), join(out, MANIFEST)));
  } catch (error) {
    for (const name of moved) insist(() => putBack(join(old, name), join(out, name), kept.includes(name)));
    if (made) tried(() => rmdirSync(out));
    throw error;
  }
  syncFolder(out);
  syncFolder(dirname(out));
}

/** The old file in its place again; a new one that had no earlier is taken away. */
function putBack(old: string, target: string, had: boolean): void {
  if (had) renameSync(old, target);
  else rmSync(target, { force: true });
}

/** A second name for the old file: a hard link, or its bytes where the disk knows no links. */
function keepCopy(from: string, to: string): void {
  try {
    linkSync(from, to);
  } catch {
    writeWhole(to, readFileSync(from));
  }
}

/** Makes the renames last through a power cut; some file systems know no such call. */
function syncFolder(path: string): void {
  tried(() => {
    const folder = openSync(path, "r");
    try {
      fsyncSync(folder);
    } finally {
      closeSync(folder);
    }
  });
}

function tried(act: () => void): boolean {
  try {
    act();
    return true;
  } catch {
    return false;
  }
}

/** Twice, for a fault that passes. */
function insist(act: () => void): void {
  if (!tried(act)) tried(act);
}

function isThere(path: string): boolean {
  return lstatOf(path) !== undefined;
}

function lstatOf(path: string): Stats | undefined {
  try {
    return lstatSync(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw new FileError(`${path} could not be looked at: ${reason(error)}; name another folder with --out`);
  }
}

function kindOf(found: Stats): string {
  if (found.isSymbolicLink()) return "a link";
  if (found.isDirectory()) return "a folder";
  return found.isFIFO() ? "a pipe" : "a device";
}

/** The folder a set goes to by default: the job's file name without its ending, beside the job. */
export function defaultOut(jobFile: string): string {
  const name = basename(jobFile);
  const bare = name.replace(/\.[^.]+$/, "");
  return join(dirname(jobFile), bare === name || bare === "" ? `${name}-out` : bare);
}

import { createHash } from "node:crypto";
import { lstatSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { FileError, reason } from "./errors.js";
import type { OutFile } from "./write.js";

export const MANIFEST = "manifest.json";
const FORMAT = "casting-manifest/1";
/** Names that a manifest may list: plain files beside it. */
const PLAIN = /^[a-z0-9][a-z0-9._-]{0,99}$/;

interface Entry {
  file: string;
  bytes: number;
  sha256: string;
}

/** A file that a manifest lists, and how it stands. */
export interface Listed {
  name: string;
  intact: boolean;
  /** What does not hold, one sentence; absent where it is intact. */
  fault?: string;
}

/** The manifest of a set: each file's size and SHA-256, by name. */
export function manifestOf(...sets: (readonly OutFile[])[]): Uint8Array {
  const files = sets
    .flat()
    .map(({ name, bytes }): Entry => ({ file: name, bytes: bytes.length, sha256: sha256(bytes) }))
    .sort((a, b) => (a.file < b.file ? -1 : 1));
  const lines = files.map((entry) => `    ${JSON.stringify(entry)}`).join(",\n");
  return new TextEncoder().encode(`{\n  "format": "${FORMAT}",\n  "files": [\n${lines}\n  ]\n}\n`);
}

/**
 * How the files stand that the manifest of `folder` lists; empty where there is no readable manifest. With `strict` a
 * disk that fails to read is an error, not a file that is missing.
 *
 * @throws FileError only with `strict`
 */
export function readManifest(folder: string, strict = false): Listed[] {
  return (entriesOf(folder, strict) ?? []).map((entry) => standOf(folder, entry, strict));
}

/** Names of the intact files of a set whose plan.json was `plan`: they belong to it still. */
export function keptOf(folder: string, plan: Uint8Array): string[] {
  const same = entriesOf(folder)?.some((entry) => entry.file === "plan.json" && entry.sha256 === sha256(plan));
  return same ? readManifest(folder).flatMap(({ name, intact }) => (intact ? [name] : [])) : [];
}

/** The entries of a folder's manifest, or nothing where it is missing or not one. */
export function entriesOf(folder: string, strict = false): Entry[] | undefined {
  const path = join(folder, MANIFEST);
  try {
    const manifest = JSON.parse(readFileSync(path, "utf8")) as { format?: unknown; files?: unknown };
    if (manifest.format !== FORMAT || !Array.isArray(manifest.files)) return undefined;
    return manifest.files.every(isEntry) ? manifest.files : undefined;
  } catch (error) {
    if (strict) unlessMissing(path, error);
    return undefined;
  }
}

function isEntry(value: unknown): value is Entry {
  const { file, bytes, sha256: hash } = Object(value) as Record<string, unknown>;
  return typeof file === "string" && PLAIN.test(file) && Number.isInteger(bytes) && typeof hash === "string";
}

function standOf(folder: string, { file: name, bytes, sha256: hash }: Entry, strict: boolean): Listed {
  const path = join(folder, name);
  const fault = (text: string): Listed => ({ name, intact: false, fault: `${name} ${text}` });
  try {
    const found = lstatSync(path);
    if (!found.isFile()) return fault("is not a file");
    const { size } = found;
    if (size !== bytes) return fault(`is ${size} bytes long, not ${bytes}: it was cut or changed`);
    if (sha256(readFileSync(path)) !== hash) return fault("was changed since it was written, or is of another run");
    return { name, intact: true };
  } catch (error) {
    if (strict) unlessMissing(path, error);
    const missing = (error as NodeJS.ErrnoException).code === "ENOENT";
    return fault(missing ? "is missing" : "cannot be read");
  }
}

/** Throws where the system could not read what is there. */
function unlessMissing(path: string, error: unknown): void {
  const { code } = error as NodeJS.ErrnoException;
  if (code === undefined || code === "ENOENT" || code === "ENOTDIR") return;
  throw new FileError(`${path} could not be read: ${reason(error)}; what stood there before is as it was`);
}

function sha256(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

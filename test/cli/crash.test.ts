// The N-th file call fails, for every N and many codes: the old set stays byte for byte, nothing is left over.
import type * as real from "node:fs";
import { join } from "node:path";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { emptyFolder } from "./support.js";

const fault = vi.hoisted(() => ({ at: 0, calls: 0, code: "", short: false }));

vi.mock("node:fs", async (original) => {
  const fs = await original<typeof import("node:fs")>();
  const failing =
    (name: string, call: (...args: never[]) => unknown) =>
    (...args: never[]) => {
      fault.calls += 1;
      if (fault.calls === fault.at) {
        if (fault.short) {
          if (name !== "writeSync") return call(...args);
          // Half of what was asked for is written, and said so: no error.
          const [file, bytes, from, length] = args as unknown as [number, Uint8Array, number, number];
          return fs.writeSync(file, bytes, from, Math.ceil(length / 2));
        }
        throw Object.assign(new Error(`${fault.code}: ${name}`), { code: fault.code });
      }
      return call(...args);
    };
  const names = [
    "closeSync",
    "fsyncSync",
    "linkSync",
    "lstatSync",
    "mkdirSync",
    "openSync",
    "readFileSync",
    "renameSync",
    "rmSync",
    "rmdirSync",
    "statSync",
    "writeFileSync",
    "writeSync",
  ] as const;
  return { ...fs, ...Object.fromEntries(names.map((name) => [name, failing(name, fs[name] as never)])) };
});

const { writeSet } = await import("../../packages/casting-cli/src/files/write.js");
const { readManifest, entriesOf } = await import("../../packages/casting-cli/src/files/manifest.js");

const bytes = (text: string) => new TextEncoder().encode(text);
const OLD = ["a.svg", "b.csv", "gone.pdf"].map((name) => ({ name, bytes: bytes(`old ${name}`) }));
const NEW = ["a.svg", "b.csv", "c.html"].map((name) => ({ name, bytes: bytes(`new ${name} `.repeat(50)) }));
const CODES = ["ENOSPC", "EIO", "EACCES", "EROFS", "EMFILE", "EXDEV", "EPERM", "EDQUOT"];

function calm(): void {
  Object.assign(fault, { at: 0, calls: 0, code: "", short: false });
}
beforeEach(calm);

/** Every file below a folder, hidden ones too. */
async function tree(folder: string): Promise<Record<string, string>> {
  const fs = await vi.importActual<typeof real>("node:fs");
  const names = fs.readdirSync(folder, { recursive: true, encoding: "utf8" }).sort();
  return Object.fromEntries(
    names.map((name) => [
      name,
      fs.statSync(join(folder, name)).isDirectory() ? "" : fs.readFileSync(join(folder, name), "latin1"),
    ]),
  );
}

describe.each([
  ["over an earlier set", true],
  ["into a new folder", false],
])("writing a set %s", (_, over) => {
  it("that fails at any file call leaves what was there and nothing else", async () => {
    let injected = 0;
    for (const code of CODES) {
      for (let at = 1; ; at++) {
        const folder = emptyFolder();
        const out = join(folder, "set");
        if (over) writeSet(out, OLD, { force: false, keep: [] });
        const before = await tree(folder);
        Object.assign(fault, { at, calls: 0, code });
        let failure: unknown;
        try {
          writeSet(out, NEW, { force: true, keep: [] });
        } catch (error) {
          failure = error;
        }
        const { calls } = fault;
        calm();
        const after = await tree(folder);
        if (failure === undefined) {
          // The fault met something that can do without, or none was left to fail.
          expect(
            Object.keys(after)
              .filter((name) => name.startsWith("set/"))
              .sort(),
          ).toEqual(["set/a.svg", "set/b.csv", "set/c.html", "set/manifest.json"]);
          expect(readManifest(out).every((file) => file.intact)).toBe(true);
          if (calls < at) break;
        } else {
          expect((failure as Error).name).toBe("FileError");
          expect((failure as Error).message.split("\n")).toHaveLength(1);
          expect(after, `${code} at call ${at}: ${(failure as Error).message}`).toEqual(before);
        }
        injected += 1;
      }
    }
    expect(injected).toBeGreaterThan(200);
  });
});

describe("a set", () => {
  it("is whole even where the disk takes half of a write", () => {
    const folder = emptyFolder();
    for (let at = 1; at < 60; at++) {
      Object.assign(fault, { at, calls: 0, short: true });
      writeSet(join(folder, `set${at}`), NEW, { force: true, keep: [] });
      calm();
      expect(readManifest(join(folder, `set${at}`)).map(({ intact }) => intact)).toEqual([true, true, true]);
    }
  });

  it("of a run that was killed between two renames is named by its manifest", async () => {
    const fs = await vi.importActual<typeof real>("node:fs");
    const folder = emptyFolder();
    const out = join(folder, "set");
    writeSet(out, OLD, { force: false, keep: [] });
    fs.writeFileSync(join(out, "a.svg"), NEW[0]!.bytes);
    expect(
      readManifest(out)
        .filter((file) => !file.intact)
        .map((file) => file.name),
    ).toEqual(["a.svg"]);
    // What the killed run left behind is cleared by the next one.
    fs.mkdirSync(join(folder, ".set.tmp-stage"));
    fs.writeFileSync(join(folder, ".set.tmp-stage", ".run"), "999999999");
    writeSet(out, NEW, { force: true, keep: [] });
    expect(Object.keys(await tree(folder)).filter((name) => name.startsWith("."))).toEqual([]);
    expect(entriesOf(out)?.map((entry) => entry.file)).toEqual(["a.svg", "b.csv", "c.html"]);
  });

  it("is refused to a second run while the first is at work", async () => {
    const fs = await vi.importActual<typeof real>("node:fs");
    const folder = emptyFolder();
    fs.mkdirSync(join(folder, ".set.tmp-stage"));
    fs.writeFileSync(join(folder, ".set.tmp-stage", ".run"), String(process.ppid));
    expect(() => writeSet(join(folder, "set"), NEW, { force: true, keep: [] })).toThrow(/another run is writing/);
  });

  it("is never written through a link, a folder or a pipe", async () => {
    const fs = await vi.importActual<typeof real>("node:fs");
    const folder = emptyFolder();
    const out = join(folder, "set");
    fs.mkdirSync(out);
    fs.symlinkSync("/etc/hostname", join(out, "a.svg"));
    expect(() => writeSet(out, NEW, { force: true, keep: [] })).toThrow(/a\.svg is a link, not a file/);
    fs.rmSync(join(out, "a.svg"));
    fs.mkdirSync(join(out, "b.csv"));
    expect(() => writeSet(out, NEW, { force: true, keep: [] })).toThrow(/b\.csv is a folder, not a file/);
    fs.symlinkSync(out, join(folder, "linked"));
    expect(() => writeSet(join(folder, "linked"), NEW, { force: true, keep: [] })).toThrow(/linked is not a folder/);
    fs.writeFileSync(join(folder, "file"), "");
    expect(() => writeSet(join(folder, "file"), NEW, { force: true, keep: [] })).toThrow(/file is not a folder/);
  });
});

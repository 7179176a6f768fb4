// Reading jobs and plans, writing one file, the lock and the manifest, each for itself.
import { execFileSync, spawn } from "node:child_process";
import type * as real from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { emptyFolder } from "./support.js";

/** What some calls of the file system do instead of their own. */
const instead = vi.hoisted(() => new Map<string, (...args: never[]) => unknown>());
vi.mock("node:fs", async (original) => {
  const fs = await original<typeof real>();
  const calls = Object.entries(fs).filter(([, call]) => typeof call === "function");
  const led = calls.map(([name, call]) => [
    name,
    (...args: never[]) => (instead.get(name) ?? (call as (...args: never[]) => unknown))(...args),
  ]);
  return { ...fs, ...Object.fromEntries(led) };
});
afterEach(() => instead.clear());

const fs = await vi.importActual<typeof real>("node:fs");
const { reason } = await import("../../packages/casting-cli/src/files/errors.js");
const { lockStage, releaseStage } = await import("../../packages/casting-cli/src/files/lock.js");
const { entriesOf, keptOf, manifestOf, readManifest } = await import(
  "../../packages/casting-cli/src/files/manifest.js"
);
const { jobName, readJobText, readPlanText } = await import("../../packages/casting-cli/src/files/read.js");
const { namesIn, writeWhole } = await import("../../packages/casting-cli/src/files/whole.js");
const { writeNew } = await import("../../packages/casting-cli/src/files/write-one.js");
const { defaultOut, writeSet } = await import("../../packages/casting-cli/src/files/write.js");

const bytes = (text: string) => new TextEncoder().encode(text);
const text = (...path: string[]) => fs.readFileSync(join(...path), "utf8");

function refuse(name: string, code: string): void {
  instead.set(name, () => {
    throw Object.assign(new Error(code), { code });
  });
}

/** Watches files being opened and closed: the paths of those that are open. */
function opened(): Map<number, string> {
  const open = new Map<number, string>();
  instead.set("openSync", ((path: string, ...more: [string]) => {
    const handle = fs.openSync(path, ...more);
    open.set(handle, path);
    return handle;
  }) as never);
  instead.set("closeSync", ((handle: number) => {
    fs.closeSync(handle);
    open.delete(handle);
  }) as never);
  return open;
}

/** What was thrown, as its class and its sentence. */
function failure(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    return `${(error as Error).name}: ${(error as Error).message}`;
  }
  return "nothing was thrown";
}

describe("a system error in plain words", () => {
  it("has no code where the words are known, and the code where they are not", () => {
    const known = "ENOSPC EDQUOT EFBIG EACCES EPERM EROFS EIO EMFILE ENFILE EXDEV ENOENT ENOTDIR EISDIR ENAMETOOLONG";
    for (const code of [...known.split(" "), "ELOOP", "EEXIST", "EPIPE"]) {
      expect(reason(Object.assign(new Error(), { code })), code).toMatch(/^[a-z][a-z ,-]{8,}[a-z]$/);
    }
    expect(reason({ code: "ENOSPC" })).toBe("the disk is full");
    expect(reason({ code: "EWHAT" })).toBe("the system says EWHAT");
    expect([reason(new Error("x")), reason(undefined)]).toEqual(["the system refused", "the system refused"]);
  });
});

describe("a job's text", () => {
  it("is read as it stands, with its byte order mark, and named by its file", () => {
    const file = join(emptyFolder(), "job.yaml");
    fs.writeFileSync(file, "\ufefftitle: Größe\r\n");
    expect(readJobText(file)).toEqual({ text: "\ufefftitle: Größe\r\n", file });
    fs.writeFileSync(file, "");
    expect(readJobText(file).text).toBe("");
  });

  it("is read to 64 KiB and one byte more, also where that cuts a letter in two", () => {
    const file = join(emptyFolder(), "job.yaml");
    fs.writeFileSync(file, "é".repeat(100_000));
    expect(readJobText(file).text).toHaveLength(65_537);
    fs.writeFileSync(file, "x".repeat(65_536));
    expect(readJobText(file).text).toBe("x".repeat(65_536));
  });

  it("is refused where it is not UTF-8", () => {
    const file = join(emptyFolder(), "job.yaml");
    fs.writeFileSync(file, Uint8Array.of(0x61, 0xff));
    expect(failure(() => readJobText(file))).toBe(
      `UsageError: ${file} is not UTF-8 text; save it as UTF-8 and try again`,
    );
  });

  it("is refused by name where it cannot be read, and the file is closed again", () => {
    const folder = emptyFolder();
    const remedy = "name a job file such as job.yaml (casting new writes one)";
    expect(failure(() => readJobText(folder))).toBe(
      `UsageError: ${folder} could not be read: it is a folder; ${remedy}`,
    );
    const none = join(folder, "none.yaml");
    expect(failure(() => readJobText(none))).toBe(
      `UsageError: ${none} could not be read: there is no such file or folder; ${remedy}`,
    );
    expect(failure(() => readJobText(""))).toContain('UsageError: "" could not be read: ');
    fs.writeFileSync(none, "x");
    const open = opened();
    readJobText(none);
    refuse("readSync", "EIO");
    expect(failure(() => readJobText(none))).toContain("the disk reports an error");
    expect(open.size).toBe(0);
  });

  it("comes from standard input for -, in as many parts as the pipe gives, also while it is not ready", () => {
    const parts = ["EAGAIN", "title", "EAGAIN", ": a", "EOF"];
    instead.set("readSync", (handle: number, part: Uint8Array) => {
      expect(handle).toBe(0);
      const next = parts.shift()!;
      if (next.startsWith("E")) throw Object.assign(new Error(next), { code: next });
      part.set(bytes(next));
      return next.length;
    });
    refuse("closeSync", "EBADF");
    expect(readJobText("-")).toEqual({ text: "title: a", file: "-" });
    instead.set("readSync", (_: number, part: Uint8Array) => Math.min(part.length, 40_000));
    expect(readJobText("-").text).toHaveLength(65_537);
    refuse("readSync", "EIO");
    expect(failure(() => readJobText("-"))).toContain("UsageError: standard input could not be read: the disk");
  });

  it("comes through a pipe by name, also of a writer that starts late, and is not waited for where nothing writes", () => {
    const pipe = join(emptyFolder(), "pipe");
    execFileSync("mkfifo", [pipe]);
    const open = opened();
    expect(failure(() => readJobText(pipe))).toBe(
      `UsageError: ${pipe} could not be read: it is a pipe that nothing writes into; name a job file such as job.yaml (casting new writes one)`,
    );
    expect(failure(() => readPlanText(pipe))).toContain("it is a pipe that nothing writes into; name a plan.json");
    expect(open.size).toBe(0);
    spawn("sh", ["-c", `sleep 0.2; { printf title; sleep 0.2; printf ': a'; } > '${pipe}'`]);
    expect(readJobText(pipe).text).toBe("title: a");
    expect(readJobText("/dev/null").text).toBe("");
  });

  it("of a plan has no limit that a plan could reach", () => {
    const file = join(emptyFolder(), "plan.json");
    fs.writeFileSync(file, "x".repeat(200_000));
    expect(readPlanText(file)).toHaveLength(200_000);
    expect(failure(() => readPlanText(`${file}n`))).toContain(
      "there is no such file or folder; name a plan.json or a folder that casting make wrote",
    );
  });
});

describe("names", () => {
  it.each([
    ["a/b/job.yaml", "job", "a/b/job"],
    ["my.tool.yaml", "my.tool", "my.tool"],
    ["job", "job", "job-out"],
    [".yaml", "", ".yaml-out"],
    ["a.b/job", "job", "a.b/job-out"],
  ])("of the job %s: %j, and its folder %s", (file, name, out) => {
    expect(jobName(file)).toBe(name);
    expect(defaultOut(file)).toBe(out);
  });

  it("in a folder come sorted, none where it is not there", () => {
    const folder = emptyFolder();
    for (const name of ["b", "a", "C"]) fs.writeFileSync(join(folder, name), "");
    instead.set("readdirSync", () => ["b", "a", "C"]);
    expect(namesIn(folder)).toEqual(["C", "a", "b"]);
    instead.clear();
    expect(namesIn(join(folder, "none"))).toEqual([]);
  });
});

describe("one file", () => {
  it("is written whole; an earlier one is replaced only with force", () => {
    const folder = emptyFolder();
    const file = join(folder, "job.yaml");
    writeNew(file, "é", false);
    expect(text(file)).toBe("é");
    expect(failure(() => writeNew(file, "b", false))).toBe(
      `FileError: ${file} is already there; choose another name, or give --force to replace it`,
    );
    expect(text(file)).toBe("é");
    writeNew(file, "b", true);
    expect(text(file)).toBe("b");
    expect(fs.statSync(file).mode & 0o777).toBe(0o644 & ~process.umask());
    expect(fs.readdirSync(folder)).toEqual(["job.yaml"]);
  });

  it("in a folder that is not there tells which to make", () => {
    const folder = join(emptyFolder(), "none");
    const file = join(folder, "job.yaml");
    expect(failure(() => writeNew(file, "x", false))).toBe(
      `FileError: ${file} could not be written: there is no folder ${folder}; make it, or choose another name`,
    );
  });

  it("is never written over a folder or through a link", () => {
    const folder = emptyFolder();
    fs.mkdirSync(join(folder, "sub"));
    fs.symlinkSync("sub/target", join(folder, "link"));
    for (const name of ["sub", "link"]) {
      const file = join(folder, name);
      expect(failure(() => writeNew(file, "x", true))).toBe(
        `FileError: ${file} is not a plain file; choose another name`,
      );
    }
    expect(fs.readdirSync(join(folder, "sub"))).toEqual([]);
  });

  it("that fails is named, not the hidden one beside it, which is taken away", () => {
    const folder = emptyFolder();
    const file = join(folder, "job.yaml");
    for (const call of ["openSync", "writeSync", "fsyncSync", "renameSync"]) {
      refuse(call, "ENOSPC");
      expect(
        failure(() => writeNew(file, "x", false)),
        call,
      ).toMatch(
        new RegExp(
          `^FileError: ${file} could not be written: the disk is full(; what stood there before is as it was)?$`,
        ),
      );
      instead.clear();
      expect(fs.readdirSync(folder), call).toEqual([]);
    }
    refuse("lstatSync", "EACCES");
    expect(failure(() => writeNew(file, "x", false))).toBe(
      `FileError: ${file} could not be written: permission is denied; choose another name`,
    );
  });

  it("is whole also where the disk takes a byte at a time", () => {
    const file = join(emptyFolder(), "a");
    instead.set("writeSync", ((handle: number, all: Uint8Array, from: number, length: number) =>
      fs.writeSync(handle, all.subarray(0, from + length), from, 1)) as never);
    writeWhole(file, bytes("whole"));
    expect(text(file)).toBe("whole");
  });

  it("of which nothing goes to the disk, or which is shorter there, has failed", () => {
    const file = join(emptyFolder(), "a");
    instead.set("writeSync", () => 0);
    expect(failure(() => writeWhole(file, bytes("x")))).toContain("the disk is full");
    instead.clear();
    fs.rmSync(file);
    instead.set("statSync", () => ({ size: 2 }));
    expect(failure(() => writeWhole(file, bytes("x")))).toContain("the disk reports an error");
    instead.clear();
    expect(failure(() => writeWhole(file, bytes("x")))).toContain("something is already there");
  });
});

describe("the manifest", () => {
  // SHA-256 of "abc" and of nothing: FIPS 180-4, examples.
  const ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
  const NOTHING = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
  const entry = { file: "a.csv", bytes: 3, sha256: ABC };
  const write = (folder: string, files: unknown, format = "casting-manifest/1") =>
    fs.writeFileSync(join(folder, "manifest.json"), JSON.stringify({ format, files }));

  it("lists size and SHA-256 by name", () => {
    const made = manifestOf([{ name: "b.svg", bytes: bytes("") }], [{ name: "a.csv", bytes: bytes("abc") }]);
    expect(new TextDecoder().decode(made)).toBe(`{
  "format": "casting-manifest/1",
  "files": [
    {"file":"a.csv","bytes":3,"sha256":"${ABC}"},
    {"file":"b.svg","bytes":0,"sha256":"${NOTHING}"}
  ]
}
`);
    const names = ["c", "a", "d", "b"].map((name) => ({ name, bytes: bytes("") }));
    const listed = JSON.parse(new TextDecoder().decode(manifestOf(names))) as { files: { file: string }[] };
    expect(listed.files.map(({ file }) => file)).toEqual(["a", "b", "c", "d"]);
  });

  it.each<[string, unknown]>([
    ["another format", ["casting-manifest/2", [entry]]],
    ["no list", ["casting-manifest/1", entry]],
    ["an entry that is none", ["casting-manifest/1", [entry, null]]],
    ["an entry of words", ["casting-manifest/1", ["a.csv"]]],
    ["a name that leads elsewhere", ["casting-manifest/1", [{ ...entry, file: "../a.csv" }]]],
    ["a name with a folder", ["casting-manifest/1", [{ ...entry, file: "a/b.csv" }]]],
    ["a hidden name", ["casting-manifest/1", [{ ...entry, file: ".csv" }]]],
    ["a name too long", ["casting-manifest/1", [{ ...entry, file: "a".repeat(101) }]]],
    ["a name of two lines", ["casting-manifest/1", [{ ...entry, file: "a\n" }]]],
    ["no name", ["casting-manifest/1", [{ ...entry, file: 1 }]]],
    ["half a byte", ["casting-manifest/1", [{ ...entry, bytes: 2.5 }]]],
    ["no hash", ["casting-manifest/1", [{ ...entry, sha256: 1 }]]],
  ])("with %s is none", (_, parts) => {
    const folder = emptyFolder();
    const [format, files] = parts as [string, unknown];
    write(folder, [entry]);
    expect(entriesOf(folder)).toEqual([entry]);
    write(folder, files, format);
    expect(entriesOf(folder)).toBeUndefined();
    expect(readManifest(folder)).toEqual([]);
  });

  it("takes a name of a hundred letters", () => {
    const folder = emptyFolder();
    write(folder, [{ ...entry, file: `a${"b".repeat(99)}` }]);
    expect(entriesOf(folder)).toHaveLength(1);
  });

  it("tells each file's fault", () => {
    const folder = emptyFolder();
    write(
      folder,
      ["whole", "changed", "cut", "lost", "folder", "linked"].map((file) => ({ ...entry, file })),
    );
    fs.writeFileSync(join(folder, "whole"), "abc");
    fs.writeFileSync(join(folder, "changed"), "abd");
    fs.writeFileSync(join(folder, "cut"), "ab");
    fs.mkdirSync(join(folder, "folder"));
    fs.symlinkSync("whole", join(folder, "linked"));
    expect(readManifest(folder)).toEqual([
      { name: "whole", intact: true },
      { name: "changed", intact: false, fault: "changed was changed since it was written, or is of another run" },
      { name: "cut", intact: false, fault: "cut is 2 bytes long, not 3: it was cut or changed" },
      { name: "lost", intact: false, fault: "lost is missing" },
      { name: "folder", intact: false, fault: "folder is not a file" },
      { name: "linked", intact: false, fault: "linked is not a file" },
    ]);
  });

  it("takes a disk that fails for an error only where the old set is at stake", () => {
    const folder = emptyFolder();
    write(folder, [entry]);
    fs.writeFileSync(join(folder, "a.csv"), "abc");
    const sentence = (name: string) =>
      `FileError: ${join(folder, name)} could not be read: the disk reports an error; what stood there before is as it was`;
    refuse("lstatSync", "EIO");
    expect(readManifest(folder)).toEqual([{ name: "a.csv", intact: false, fault: "a.csv cannot be read" }]);
    expect(failure(() => readManifest(folder, true))).toBe(sentence("a.csv"));
    for (const code of ["ENOENT", "ENOTDIR"]) {
      refuse("lstatSync", code);
      expect(readManifest(folder, true), code).toHaveLength(1);
    }
    refuse("readFileSync", "EIO");
    expect(readManifest(folder)).toEqual([]);
    expect(entriesOf(folder)).toBeUndefined();
    expect(failure(() => readManifest(folder, true))).toBe(sentence("manifest.json"));
    for (const code of ["ENOENT", "ENOTDIR"]) {
      refuse("readFileSync", code);
      expect(readManifest(folder, true), code).toEqual([]);
    }
    instead.clear();
    fs.writeFileSync(join(folder, "manifest.json"), "{");
    expect(readManifest(folder, true)).toEqual([]);
  });

  it("tells which files belong to the very same plan", () => {
    const folder = emptyFolder();
    const plan = bytes("{}");
    const files = [
      { name: "plan.json", bytes: plan },
      { name: "b.svg", bytes: bytes("b") },
      { name: "c.svg", bytes: bytes("c") },
    ];
    writeSet(join(folder, "set"), files, { force: false, keep: [] });
    expect(keptOf(join(folder, "set"), plan)).toEqual(["b.svg", "c.svg", "plan.json"]);
    fs.writeFileSync(join(folder, "set", "c.svg"), "d");
    expect(keptOf(join(folder, "set"), plan)).toEqual(["b.svg", "plan.json"]);
    expect(keptOf(join(folder, "set"), bytes("[]"))).toEqual([]);
    expect(keptOf(join(folder, "none"), plan)).toEqual([]);
    // A file of another name with the same bytes is no plan.
    writeSet(join(folder, "other"), [{ name: "copy.json", bytes: plan }], { force: false, keep: [] });
    expect(keptOf(join(folder, "other"), plan)).toEqual([]);
  });
});

describe("the lock", () => {
  const stageIn = (folder: string) => join(folder, ".set.tmp-stage");
  function locked(run: string | undefined): string {
    const folder = emptyFolder();
    fs.mkdirSync(stageIn(folder));
    if (run !== undefined) fs.writeFileSync(join(stageIn(folder), ".run"), run);
    return folder;
  }
  /** Lets the lock of ten seconds ago look as old as it is. */
  function aged(folder: string): string {
    const then = Date.now() / 1000 - 11;
    fs.utimesSync(stageIn(folder), then, then);
    return folder;
  }

  it("is a hidden folder beside the set with the run's number in it, its parents made", () => {
    const folder = join(emptyFolder(), "a", "b");
    const stage = lockStage(join(folder, "set"));
    expect(stage).toBe(stageIn(folder));
    expect(text(stage, ".run")).toBe(String(process.pid));
    releaseStage(stage);
    expect(fs.readdirSync(folder)).toEqual([]);
    expect(() => releaseStage(stage)).not.toThrow();
  });

  it("of a run at work, or of one that has hardly begun, holds", () => {
    for (const folder of [locked(String(process.ppid)), locked(""), locked("1x"), locked("-5")]) {
      const out = join(folder, "set");
      expect(failure(() => lockStage(out))).toBe(
        `FileError: another run is writing ${out}; wait for it, or remove ${stageIn(folder)} if there is none`,
      );
      expect(fs.existsSync(stageIn(folder))).toBe(true);
    }
  });

  it("of a run that has ended, or that was given up, is cleared away", () => {
    // The number of a process that has just ended.
    const ended = execFileSync(process.execPath, ["-p", "process.pid"], { encoding: "utf8" }).trim();
    for (const folder of [locked(ended), aged(locked("")), aged(locked("x1")), locked(undefined)]) {
      const stage = lockStage(join(folder, "set"));
      expect(text(stage, ".run")).toBe(String(process.pid));
      releaseStage(stage);
    }
  });

  it("holds where the run belongs to another user", () => {
    const kill = vi.spyOn(process, "kill").mockImplementation(() => {
      throw Object.assign(new Error(), { code: "EPERM" });
    });
    expect(failure(() => lockStage(join(locked("4711"), "set")))).toContain("another run is writing");
    expect(kill).toHaveBeenCalledWith(4711, 0);
    kill.mockRestore();
  });

  it("that cannot be made, or kept, is one sentence, and nothing stays", () => {
    const folder = emptyFolder();
    const out = join(folder, "set");
    for (const call of ["mkdirSync", "writeFileSync"]) {
      refuse(call, "EROFS");
      expect(failure(() => lockStage(out))).toBe(
        `FileError: ${out} could not be written: the disk is read-only; name another folder with --out`,
      );
      instead.clear();
      expect(fs.readdirSync(folder)).toEqual([]);
    }
    const stage = lockStage(out);
    refuse("rmSync", "EIO");
    expect(() => releaseStage(stage)).not.toThrow();
  });
});

describe("a set", () => {
  const set = (...names: string[]) => names.map((name) => ({ name, bytes: bytes(`${name}!`) }));
  const listed = (out: string) => readManifest(out).map(({ name, intact }) => `${name} ${intact}`);
  const failing = (out: string) =>
    failure(() => writeSet(out, [{ name: "a", bytes: bytes("other") }], { force: true, keep: [] }));

  it("needs force over an earlier one, and drops what it no longer has, but nothing that was changed or is not its own", () => {
    const out = join(emptyFolder(), "set");
    writeSet(out, set("a", "b", "c"), { force: false, keep: [] });
    expect(failure(() => writeSet(out, set("b"), { force: false, keep: [] }))).toBe(
      `FileError: ${join(out, "b")} is already there; give --force to replace the set, or another folder with --out`,
    );
    fs.writeFileSync(join(out, "own"), "mine");
    fs.writeFileSync(join(out, "c"), "changed");
    expect(writeSet(out, set("b", "d"), { force: true, keep: [] })).toEqual(["a"]);
    expect(fs.readdirSync(out).sort()).toEqual(["b", "c", "d", "manifest.json", "own"]);
    expect(listed(out)).toEqual(["b true", "d true"]);
  });

  it("keeps files of the same plan, on the disk and in the manifest", () => {
    const out = join(emptyFolder(), "set");
    writeSet(out, set("a", "b", "c"), { force: false, keep: [] });
    writeSet(out, [{ name: "a", bytes: bytes("new") }, ...set("d")], { force: true, keep: ["a", "b"] });
    expect(fs.readdirSync(out).sort()).toEqual(["a", "b", "d", "manifest.json"]);
    expect(listed(out)).toEqual(["a true", "b true", "d true"]);
    expect(text(out, "a")).toBe("new");
  });

  it("goes where a folder is already, and names what stands in its way", () => {
    const folder = emptyFolder();
    writeSet(folder, set("a"), { force: false, keep: [] });
    expect(listed(folder)).toEqual(["a true"]);
    const other = emptyFolder();
    execFileSync("mkfifo", [join(other, "a")]);
    expect(failure(() => writeSet(other, set("a"), { force: true, keep: [] }))).toBe(
      `FileError: ${join(other, "a")} is a pipe, not a file; remove it or name another folder with --out`,
    );
    fs.mkdirSync(join(other, "b"));
    fs.symlinkSync("b", join(other, "c"));
    for (const [name, kind] of [
      ["b", "a folder"],
      ["c", "a link"],
    ] as const) {
      expect(failure(() => writeSet(other, set(name), { force: true, keep: [] }))).toContain(
        `${name} is ${kind}, not a file`,
      );
    }
    expect(failure(() => writeSet("/dev", set("null"), { force: true, keep: [] }))).toContain("/dev/null is a device");
    expect(failure(() => writeSet("/dev/null", set("a"), { force: true, keep: [] }))).toBe(
      "FileError: /dev/null is not a folder; name another one with --out",
    );
    refuse("lstatSync", "EACCES");
    expect(failure(() => writeSet(other, set("a"), { force: true, keep: [] }))).toBe(
      `FileError: ${other} could not be looked at: permission is denied; name another folder with --out`,
    );
  });

  it("keeps the earlier files by their bytes where the disk knows no links, and brings them back", () => {
    const out = join(emptyFolder(), "set");
    writeSet(out, set("a", "b"), { force: false, keep: [] });
    refuse("linkSync", "EPERM");
    instead.set("renameSync", (from: string, to: string) => {
      if (to.endsWith("manifest.json")) throw Object.assign(new Error(), { code: "EIO" });
      fs.renameSync(from, to);
    });
    const other = [
      { name: "a", bytes: bytes("other") },
      { name: "z", bytes: bytes("other") },
    ];
    expect(failure(() => writeSet(out, other, { force: true, keep: [] }))).toBe(
      `FileError: ${join(out, "manifest.json")} could not be written: the disk reports an error; what stood there before is as it was`,
    );
    instead.clear();
    expect(text(out, "a")).toBe("a!");
    expect(fs.readdirSync(out).sort()).toEqual(["a", "b", "manifest.json"]);
    expect(listed(out)).toEqual(["a true", "b true"]);
  });

  it("that fails leaves no folder it made, and the one that was there, empty as it was", () => {
    const folder = emptyFolder();
    for (const there of [false, true]) {
      const out = join(folder, "set");
      if (there) fs.mkdirSync(out);
      instead.set("renameSync", (from: string, to: string) => {
        if (to.endsWith("manifest.json")) throw Object.assign(new Error(), { code: "EIO" });
        fs.renameSync(from, to);
      });
      expect(failure(() => writeSet(out, set("a"), { force: false, keep: [] }))).toContain("the disk reports an error");
      instead.clear();
      expect(fs.readdirSync(folder)).toEqual(there ? ["set"] : []);
    }
    expect(fs.readdirSync(join(folder, "set"))).toEqual([]);
  });

  it("that fails brings the old files back also through a fault that passes", () => {
    const out = join(emptyFolder(), "set");
    writeSet(out, set("a"), { force: false, keep: [] });
    // The manifest's renaming fails, and once the old file's.
    let back = 0;
    instead.set("renameSync", (from: string, to: string) => {
      const old = from.includes("earlier");
      if (to.endsWith("manifest.json") || (old && back++ === 0)) throw Object.assign(new Error(), { code: "EIO" });
      fs.renameSync(from, to);
    });
    failing(out);
    expect(back).toBe(2);
    expect(text(out, "a")).toBe("a!");
  });

  it("is not begun where the old one cannot be read or kept", () => {
    const out = join(emptyFolder(), "set");
    writeSet(out, set("a"), { force: false, keep: [] });
    refuse("readFileSync", "EIO");
    expect(failing(out)).toContain("manifest.json could not be read: the disk reports an error");
    instead.clear();
    refuse("linkSync", "EPERM");
    instead.set("openSync", ((path: string, ...more: [string]) => {
      if (path.includes("earlier")) throw Object.assign(new Error(), { code: "ENOSPC" });
      return fs.openSync(path, ...more);
    }) as never);
    expect(failing(out)).toContain("could not be written: the disk is full");
    instead.clear();
    expect(text(out, "a")).toBe("a!");
    expect(listed(out)).toEqual(["a true"]);
  });

  it("is written also where folders cannot be synced", () => {
    const out = join(emptyFolder(), "set");
    instead.set("openSync", ((path: string, ...more: [string]) => {
      if (more[0] === "r") throw Object.assign(new Error(), { code: "EISDIR" });
      return fs.openSync(path, ...more);
    }) as never);
    writeSet(out, set("a"), { force: false, keep: [] });
    expect(listed(out)).toEqual(["a true"]);
  });

  it("is synced: each file, then the folders it went through", () => {
    const folder = emptyFolder();
    const open = opened();
    const synced: string[] = [];
    instead.set("fsyncSync", ((handle: number) => {
      synced.push(open.get(handle)!);
      fs.fsyncSync(handle);
    }) as never);
    writeSet(join(folder, "set"), set("a"), { force: false, keep: [] });
    const stage = join(folder, ".set.tmp-stage");
    expect(synced).toEqual([join(stage, "a"), join(stage, "manifest.json"), stage, join(folder, "set"), folder]);
    expect(open.size).toBe(0);
  });
});

// How a run ends, whatever happened: exit code, and what is said where.
import { join } from "node:path";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { VERSION } from "../../packages/casting-core/src/version.js";
import { casting, emptyFolder } from "./support.js";

/** What the command `list` does instead of its own. */
const list = vi.hoisted(() => ({ act: undefined as undefined | (() => number) }));
vi.mock("../../packages/casting-cli/src/commands/list.js", async (original) => {
  const own = await original<typeof import("../../packages/casting-cli/src/commands/list.js")>();
  return { list: (...args: Parameters<typeof own.list>) => (list.act ?? (() => own.list(...args)))() };
});
beforeEach(() => {
  list.act = undefined;
});

const { run } = await import("../../packages/casting-cli/src/run.js");
const { FileError } = await import("../../packages/casting-cli/src/files/errors.js");
const { OutputError } = await import("../../packages/casting-cli/src/terminal.js");
const { usage } = await import("../../packages/casting-cli/src/usage.js");
const { CastingError, impossible } = await import("../../packages/casting-core/src/errors.js");

function failing(error: unknown) {
  list.act = () => {
    throw error;
  };
  return casting("list", "papers");
}

describe("a run ends", () => {
  it("with the command's own code", async () => {
    expect(await casting("list", "papers")).toMatchObject({ code: 0, err: "" });
    list.act = () => 130;
    expect(await casting("list", "papers")).toEqual({ code: 130, out: "", err: "" });
  });

  it("with 1 where a file or the output failed, with 2 where it was used wrongly", async () => {
    expect(await failing(new FileError("a failed"))).toEqual({ code: 1, out: "", err: "casting: a failed\n" });
    expect(await failing(new OutputError("b\u202e failed"))).toEqual({ code: 1, out: "", err: "casting: b? failed\n" });
    expect(await failing(usage("c is wrong"))).toEqual({ code: 2, out: "", err: "casting: c is wrong\n" });
  });

  it("with 2 where the job is invalid, with 1 where it is impossible", async () => {
    const invalid = new CastingError("invalid", [
      { path: ["a"], text: "is wrong" },
      { path: ["b"], text: "too" },
    ]);
    expect(await failing(invalid)).toEqual({ code: 2, out: "", err: "casting: a: is wrong\ncasting: b: too\n" });
    expect(await failing(impossible(["a"], "cannot be"))).toEqual({ code: 1, out: "", err: "casting: a: cannot be\n" });
  });

  it("with 1 and a request to report it where the program itself is at fault", async () => {
    const sentence = (what: string) =>
      `casting: a fault in the program itself (${what}); please report it with the job file and CASTING_DEBUG=1\n`;
    expect(await failing(new TypeError("x is not\na function"))).toEqual({
      code: 1,
      out: "",
      err: sentence("x is not"),
    });
    expect(await failing("just words")).toEqual({ code: 1, out: "", err: sentence("an unknown error") });
  });

  it("with the trace above the sentence where that was asked for", async () => {
    const said: string[] = [];
    const terminal = {
      out: () => {},
      err: (text: string) => void said.push(text),
      drawsProgress: false,
      colour: false,
    };
    list.act = () => {
      throw new Error("x?\ny");
    };
    expect(await run(["list", "papers"], { ...terminal, debug: true })).toBe(1);
    expect(said).toHaveLength(2);
    expect(said[0]).toMatch(/^Error: x\?\ny\n +at /);
    expect(said[0]).toMatch(/[^\n]\n$/);
    said.length = 0;
    expect(await run(["list", "papers"], { ...terminal, debug: false })).toBe(1);
    expect(said).toHaveLength(1);
    said.length = 0;
    list.act = () => {
      throw "words";
    };
    expect(await run(["list", "papers"], { ...terminal, debug: true })).toBe(1);
    expect(said).toHaveLength(1);
  });
});

describe("the command line", () => {
  it("prints its version, and help where that was asked for", async () => {
    expect(await casting("--version")).toEqual({ code: 0, out: `${VERSION}\n`, err: "" });
    const { code, out, err } = await casting("help", "list");
    expect([code, err]).toEqual([0, ""]);
    expect(out).toContain("Usage: casting list [options] <TABLE>");
  });

  it.each([
    ["list", "--help"],
    ["list", "papers", "--help"],
    ["--help", "list", "--json"],
    ["list", "--json", "--help"],
  ])("prints help where all that stands beside is known: %s %s %s", async (...args) => {
    const { code, out, err } = await casting(...args.filter((arg) => arg !== undefined));
    expect([code, err]).toEqual([0, ""]);
    expect(out).toMatch(/^Examples:\n/);
  });

  it("prints the whole help for help alone", async () => {
    expect(await casting("help")).toEqual(await casting("--help"));
  });

  it("alone prints its help beside, and ends with 2", async () => {
    const { code, out, err } = await casting();
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain("Usage: casting [options] [command]");
  });

  it.each([
    [["maek"], "unknown command 'maek'; did you mean make?"],
    [["zzzzzz"], "unknown command 'zzzzzz'; casting --help lists what there is"],
    [["list", "papers", "--jsno"], "unknown option '--jsno'; did you mean --json?"],
    [
      ["list", "papers", "more"],
      "too many arguments for 'list': expected 1 argument but got 2; casting list --help shows what it takes",
    ],
    [["make"], "missing required argument 'JOB'; casting make --help shows what it takes"],
    [["scale", "x"], "required option '--tool <LENGTH>' not specified; casting scale --help shows what it takes"],
    [["make", "x", "--seed", "x"], "--seed x is not a whole number from 0 to 4294967295; write for example --seed 7"],
    [["make", "x", "--seed", "-1"], "--seed -1 is not a whole number from 0 to 4294967295; write for example --seed 7"],
    [["make", "x", "--seed", "4294967296"], "--seed 4294967296 is not a whole number"],
    [["make", "x", "--seed", "00000000001"], "--seed 00000000001 is not a whole number"],
    [["make", "x", "--seed", `${"9".repeat(50)}`], `--seed ${"9".repeat(40)} is not a whole number`],
    [["make", "x", "--out"], "option '--out <DIR>' argument missing; casting make --help shows what it takes"],
    [["help", "lst"], "unknown command 'lst'; did you mean list?"],
    [["help", "zzzzzz"], "unknown command 'zzzzzz'; casting --help lists what there is"],
    [["help", "make", "x"], "too many arguments for 'help': expected 1 argument but got 2; casting help --help shows"],
    [["lst", "--help"], "unknown command 'lst'; did you mean list?"],
    [["--bogus", "--help"], "unknown option '--bogus'; casting --help lists what there is"],
    [["--verion", "--help"], "unknown option '--verion'; did you mean --version?"],
    [["make", "--papr", "--help"], "unknown option '--papr'; did you mean --paper?"],
    [["make", "x", "--dry"], "unknown option '--dry'; did you mean --dry-run?"],
    [["make", "x", "-f"], "unknown option '-f'; did you mean --force?"],
    [["make", "x", "--pap\ner"], "unknown option '--pap'; did you mean --paper?"],
    [["-V"], "unknown option '-V'; did you mean --version?"],
    [["make", "x", "-o"], "unknown option '-o'; casting make --help shows what it takes"],
    [["make", "--help", "--no-colour"], "unknown option '--no-colour'; did you mean --no-color?"],
    [["make", "--bogus", "--help"], "unknown option '--bogus'; casting make --help shows what it takes"],
    [["make", "a", "b", "--help"], "there is one argument too many, 'b'; casting make --help shows what it takes"],
    [["maek\u202e"], "unknown command 'maek?'"],
  ])("%j is refused in one line", async (args, words) => {
    const { code, out, err } = await casting(...args);
    expect([code, out]).toEqual([2, ""]);
    expect(err.startsWith(`casting: ${words}`), err).toBe(true);
    expect(err.match(/\n/g)).toHaveLength(1);
  });

  it("takes the largest seed there is", async () => {
    const { err } = await casting("make", join(emptyFolder(), "none.yaml"), "--seed", "4294967295");
    expect(err).toContain("none.yaml could not be read");
  });

  it("keeps colours out where --no-color is written, before or after the command", async () => {
    const terminal = { drawsProgress: false, colour: true, debug: false, out: () => {} };
    const said: string[] = [];
    const err = (text: string) => void said.push(text);
    const bare = ["mix", "--tool", "100mm", "--fill", "30mm"];
    for (const args of [bare, ["--no-color", ...bare], [...bare, "--no-color"]]) {
      said.length = 0;
      expect(await run(args, { ...terminal, err })).toBe(0);
      expect(said.join("").includes("\x1b[")).toBe(args === bare);
    }
  });
});

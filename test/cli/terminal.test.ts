// The one file of the program that touches the process and its streams.
import type * as real from "node:fs";
import { afterEach, describe, expect, it, vi } from "vitest";

const write = vi.hoisted(() => ({
  act: (_handle: number, _bytes: Uint8Array, _from: number, length: number) => length,
}));
vi.mock("node:fs", async (original) => ({
  ...(await original<typeof real>()),
  writeSync: (handle: number, bytes: Uint8Array, from: number, length: number) =>
    write.act(handle, bytes, from, length),
}));

const { commandLine, endWith, isRunning, onInterrupt, OutputError, safe, systemTerminal, thisRun } = await import(
  "../../packages/casting-cli/src/terminal.js"
);

const wasTTY = process.stderr.isTTY;
afterEach(() => {
  vi.unstubAllEnvs();
  process.stderr.isTTY = wasTTY;
});

/** What comes out on each stream where only so many bytes are taken at a time, and every third call is not ready. */
function streams(most = Number.POSITIVE_INFINITY) {
  const said: Record<number, string> = { 1: "", 2: "" };
  let calls = 0;
  write.act = (handle, bytes, from, length) => {
    if (most < 100 && ++calls % 3 === 0) throw Object.assign(new Error(), { code: "EAGAIN" });
    const taken = Math.min(length, most);
    said[handle] += Buffer.from(bytes.subarray(from, from + taken)).toString("latin1");
    return taken;
  };
  return said;
}

const latin = (text: string) => Buffer.from(text).toString("latin1");

describe("the terminal", () => {
  it("says results on standard output and messages beside it, every byte in order, however little is taken", () => {
    for (const most of [Number.POSITIVE_INFINITY, 1, 4]) {
      const said = streams(most);
      const { out, err } = systemTerminal();
      out("first … ");
      err("beside\n");
      out("second\n");
      expect(said).toEqual({ 1: latin("first … second\n"), 2: "beside\n" });
    }
  });

  it("tells where standard output takes no more, and is quiet where nobody listens to messages", () => {
    write.act = () => {
      throw Object.assign(new Error(), { code: "EPIPE" });
    };
    const { out, err } = systemTerminal();
    expect(() => out("x")).toThrow(OutputError);
    expect(() => out("x")).toThrow(
      "standard output could not be written: the other end was closed; the result is not complete",
    );
    expect(() => err("x")).not.toThrow();
  });

  it.each<[boolean | undefined, Record<string, string>, boolean, boolean]>([
    [true, {}, true, true],
    [undefined, {}, false, false],
    [true, { NO_COLOR: "1" }, true, false],
    [true, { TERM: "dumb" }, true, false],
    [false, { TERM: "xterm" }, false, false],
  ])("with messages on a terminal: %s, and %j draws: %s, colours: %s", (tty, env, drawsProgress, colour) => {
    process.stderr.isTTY = tty as boolean;
    for (const name of ["NO_COLOR", "TERM", "CASTING_DEBUG"]) vi.stubEnv(name, env[name] ?? "");
    process.stderr.columns = 72;
    expect(systemTerminal()).toMatchObject({ drawsProgress, colour, debug: false });
    expect(systemTerminal().width).toBe(tty ? 72 : undefined);
  });

  it("shows traces for CASTING_DEBUG=1 alone", () => {
    for (const [value, debug] of [
      ["1", true],
      ["0", false],
    ] as const) {
      vi.stubEnv("CASTING_DEBUG", value);
      expect(systemTerminal().debug).toBe(debug);
    }
  });
});

describe("the process", () => {
  it("gives its arguments, takes an exit code, and has a number", () => {
    const { argv, exitCode } = process;
    process.argv = ["node", "casting", "make", "job.yaml"];
    expect(commandLine()).toEqual(["make", "job.yaml"]);
    process.argv = argv;
    endWith(2);
    expect(process.exitCode).toBe(2);
    process.exitCode = exitCode;
    expect(thisRun).toBe(process.pid);
  });

  it("knows which runs are at work: its own, another user's, none that has ended", () => {
    const kill = vi.spyOn(process, "kill");
    expect(isRunning(process.pid)).toBe(true);
    for (const [code, running] of [
      ["EPERM", true],
      ["ESRCH", false],
    ] as const) {
      kill.mockImplementation(() => {
        throw Object.assign(new Error(), { code });
      });
      expect(isRunning(4711)).toBe(running);
    }
    expect(kill.mock.calls.every(([, signal]) => signal === 0)).toBe(true);
    kill.mockRestore();
  });

  it.each(["SIGINT", "SIGTERM"] as const)("ends a live view by %s", async (signal) => {
    let ended = false;
    const end = onInterrupt().then(() => {
      ended = true;
    });
    await Promise.resolve();
    expect(ended).toBe(false);
    process.emit(signal);
    await end;
    expect(ended).toBe(true);
    process.removeAllListeners(signal);
  });
});

describe("a message", () => {
  it("plays back no controls, no change of direction, nothing without a width; lines stay lines", () => {
    expect(safe("a\x1b[31mb\u202ec\u200bd\u2028e\u2029f\x00g\r\nh\tü日\u3164")).toBe("a?[31mb?c?d?e?f?g?\nh?ü日?");
  });
});

// What a crash, a full disk or a stranger's file may do to a set: killed at every rename, link and removal, out of
// space, out of inodes, held to a file size, in a folder of another user, with things in the way, two runs at once, with
// nobody to read its output, interrupted. Afterwards the old set stands byte for byte, or the new one is whole, or
// casting check names the set as cut or mixed; the next run clears up. What this machine forbids is skipped with a word.
import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import {
  chmodSync,
  closeSync,
  copyFileSync,
  cpSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";

const root = new URL("..", import.meta.url).pathname;
const CASTING = join(root, "packages/casting-cli/bin/casting.mjs");
const KILLER = new URL("kill-at.mjs", import.meta.url).href;
const folder = mkdtempSync(join(tmpdir(), "casting-crash-"));
chmodSync(folder, 0o755);
const at = (...parts) => join(folder, ...parts);

const faults = [];
const counts = {};
const check = (what, holds, detail = "") => {
  const topic = what.split(":")[0];
  counts[topic] = (counts[topic] ?? 0) + 1;
  if (!holds) faults.push(`${what}${detail === "" ? "" : `: ${detail}`}`);
};
const skip = (what, why) => process.stdout.write(`skipped: ${what}, ${why}\n`);

/** A job that is worked out at once; another title makes another set. */
function job(name, title, more = "") {
  const path = at(name);
  writeFileSync(
    path,
    `title: ${title}\nblank: {diameter: 120 mm, focal-ratio: 6}\ntool: {diameter: 90 mm}\npieces: {item: iso-4032-m10}\n` +
      `layout: {count: 6}\n${more}`,
  );
  return path;
}
const first = job("first.yaml", "First", "container: {shape: round, diameter: 120 mm, height: 200 mm}\n");
const second = job("second.yaml", "Second");

const make = (path, out, ...more) => [CASTING, "make", path, "--out", out, "--force", "--quiet", ...more];
const node = (args, { env = {}, ...options } = {}) =>
  spawnSync(process.execPath, args, {
    encoding: "utf8",
    env: { ...process.env, ...env },
    timeout: 120_000,
    ...options,
  });

/** Every file below a folder by name, hidden ones too, as what it is and its hash. */
function tree(path) {
  if (!existsSync(path)) return "nothing";
  return readdirSync(path, { recursive: true, encoding: "utf8" })
    .sort()
    .map((name) => {
      const found = lstatSync(join(path, name));
      if (!found.isFile()) return `${name} ${found.isDirectory() ? "folder" : "other"}`;
      return `${name} ${createHash("sha256")
        .update(readFileSync(join(path, name)))
        .digest("hex")}`;
    })
    .join("\n");
}
/** One sentence on standard error and exit 1. */
const saysNo = ({ status, stderr }) => status === 1 && /^casting: [^\n]+; [^\n]+\n$/.test(stderr);

const [oldSet, newSet] = [at("old"), at("new")];
node(make(first, oldSet));
node(make(second, newSet));
const [OLD, NEW] = [tree(oldSet), tree(newSet)];
check("two sets: differ", OLD !== NEW && OLD !== "nothing" && NEW !== "nothing");

/** A folder `room/set` that holds the old set. */
function room() {
  const path = at("room");
  rmSync(path, { recursive: true, force: true });
  mkdirSync(path);
  cpSync(oldSet, join(path, "set"), { recursive: true });
  return path;
}

// A single file, killed before and after the rename that puts it in place: none, or all of it; the next run clears up.
function killedAlone() {
  for (const when of ["before", "after"]) {
    const path = at("alone");
    rmSync(path, { recursive: true, force: true });
    mkdirSync(path);
    const file = join(path, "job.yaml");
    const { signal } = node(["--import", KILLER, CASTING, "new", file], { env: { KILL_AT: "1", KILL_WHEN: when } });
    check(`killed alone: ${when} the rename was reached`, signal === "SIGKILL");
    const left = readdirSync(path).join();
    const wanted = when === "before" ? /^\.job\.yaml\.tmp-\d+$/ : /^job\.yaml$/;
    check(`killed alone: ${when} the rename, none or all of it`, wanted.test(left), left);
    const next = node([CASTING, "new", file, "--force"]);
    check("killed alone: the next run clears up", next.status === 0 && readdirSync(path).join() === "job.yaml");
  }
}

// Killed at each change of a folder, before and after it.
function killed() {
  const counted = node(["--import", KILLER, ...make(second, join(room(), "set"))], {
    env: { COUNT_HANDLE: "3" },
    stdio: ["ignore", "pipe", "pipe", "pipe"],
  });
  const calls = Number(counted.output[3]);
  check("killed: changes of folders counted", calls > 25, `${calls} calls`);
  const ended = { old: 0, new: 0, named: 0 };
  for (let n = 1; n <= calls; n++) {
    for (const when of ["before", "after"]) {
      const path = room();
      const out = join(path, "set");
      const { signal } = node(["--import", KILLER, ...make(second, out)], {
        env: { KILL_AT: String(n), KILL_WHEN: when },
      });
      check(`killed: ${when} call ${n} was reached`, signal === "SIGKILL");
      const now = tree(out);
      const stand = now === OLD ? "old" : now === NEW ? "new" : "named";
      ended[stand] += 1;
      if (stand === "named") {
        const { status, stdout } = node([CASTING, "check", out]);
        check(`killed: ${when} call ${n} is named`, status === 1 && /FAILS/.test(stdout), stdout);
      }
    }
  }
  // The next run makes the set whole and clears up, whatever the killed one left.
  const path = room();
  node(["--import", KILLER, ...make(second, join(path, "set"))], {
    env: { KILL_AT: String(Math.round(calls * 0.7)), KILL_WHEN: "after" },
  });
  const next = node(make(second, join(path, "set")));
  check("killed: the next run makes it whole", next.status === 0 && tree(join(path, "set")) === NEW, next.stderr);
  check("killed: the next run clears up", readdirSync(path).join() === "set", readdirSync(path).join());
  process.stdout.write(
    `killed at ${2 * calls} places: the old set stood ${ended.old} times, the new one ${ended.new}, ` +
      `a mixed one was named ${ended.named}\n`,
  );
}

// A disk of its own, too small: out of room, then out of inodes.
function fullDisk() {
  for (const [what, options] of [
    ["no room", "size=240k"],
    ["no inodes", "size=4m,nr_inodes=20"],
  ]) {
    const disk = at("disk");
    mkdirSync(disk, { recursive: true });
    const mounted = spawnSync("mount", ["-t", "tmpfs", "-o", options, "tmpfs", disk], { encoding: "utf8" });
    if (mounted.error || mounted.status !== 0) return skip(`full disk (${what})`, "mounting is not allowed here");
    try {
      cpSync(oldSet, join(disk, "set"), { recursive: true });
      const result = node(make(second, join(disk, "set")));
      check(`full disk: ${what}, one sentence`, saysNo(result), result.stderr);
      check(`full disk: ${what}, the old set stands`, tree(join(disk, "set")) === OLD);
      check(`full disk: ${what}, nothing left over`, readdirSync(disk).join() === "set", readdirSync(disk).join());
    } finally {
      spawnSync("umount", [disk]);
    }
  }
}

// No file may be larger than 16 blocks of 1 KiB.
function fileSize() {
  const path = room();
  const result = spawnSync(
    "bash",
    ["-c", 'ulimit -f 16; exec "$0" "$@"', process.execPath, ...make(second, join(path, "set"))],
    {
      encoding: "utf8",
    },
  );
  check("file size: one sentence", saysNo(result), result.stderr);
  check("file size: the old set stands", tree(join(path, "set")) === OLD);
  check("file size: nothing left over", readdirSync(path).join() === "set");
}

// A folder of root's, written to as nobody.
function otherUser() {
  if (process.getuid?.() !== 0) return skip("a folder of another user", "this is not root");
  const setpriv = ["--reuid=65534", "--regid=65534", "--clear-groups", process.execPath];
  if (spawnSync("setpriv", [...setpriv, CASTING, "--version"]).status !== 0) {
    return skip("a folder of another user", "nobody may not run the program here");
  }
  const path = room();
  const result = spawnSync("setpriv", [...setpriv, ...make(second, join(path, "set"))], { encoding: "utf8" });
  check("other user: one sentence", saysNo(result) && /permission is denied/.test(result.stderr), result.stderr);
  check("other user: the old set stands", tree(join(path, "set")) === OLD);
  check("other user: nothing left over", readdirSync(path).join() === "set");
  const fresh = spawnSync("setpriv", [...setpriv, CASTING, "new", join(path, "job.yaml")], { encoding: "utf8" });
  check("other user: nor a new job", saysNo(fresh) && readdirSync(path).join() === "set", fresh.stderr);
}

// Something else stands where a file or the folder should go.
function inTheWay() {
  const put = {
    link: (target) => symlinkSync("/etc/hostname", target),
    "link to nothing": (target) => symlinkSync("nowhere", target),
    pipe: (target) => spawnSync("mkfifo", [target]),
    folder: (target) => mkdirSync(target),
  };
  for (const [kind, act] of Object.entries(put)) {
    for (const name of ["set/placement.svg", "set/manifest.json", "set"]) {
      if (kind === "folder" && name === "set") continue;
      const path = room();
      const target = join(path, name);
      rmSync(target, { recursive: true });
      act(target);
      const before = tree(path);
      const result = node(make(second, join(path, "set")));
      check(`in the way: ${kind} at ${name}, one sentence`, saysNo(result), result.stderr);
      check(`in the way: ${kind} at ${name}, nothing changes`, tree(path) === before);
    }
  }
}

// Two runs into one folder: one may be refused, what stands is one whole set.
async function together() {
  for (let turn = 0; turn < 3; turn++) {
    const path = room();
    const out = join(path, "set");
    const runs = await Promise.all([ended(make(first, out)), ended(make(second, out))]);
    for (const run of runs) check("together: done, or one sentence", run.status === 0 || saysNo(run), run.stderr);
    check(
      "together: one at least is done",
      runs.some((run) => run.status === 0),
    );
    check("together: one whole set", [OLD, NEW].includes(tree(out)));
    check("together: nothing left over", readdirSync(path).join() === "set");
  }
}

function ended(args, { signal, after } = {}) {
  return new Promise((done) => {
    const child = spawn(process.execPath, args, { stdio: ["ignore", "ignore", "pipe"] });
    let stderr = "";
    child.stderr.on("data", (part) => {
      stderr += part;
    });
    child.on("close", (status, by) => done({ status, signal: by, stderr }));
    if (signal) wait(after).then(() => child.kill(signal));
  });
}

// Nobody reads standard output, or it is full.
function unheard() {
  const shell = (tail) =>
    spawnSync(
      "bash",
      ["-c", `set -o pipefail; "$0" "$@" ${tail}`, process.execPath, CASTING, "make", first, "--dry-run", "--json"],
      {
        encoding: "utf8",
      },
    );
  const lines = ({ stderr }) => stderr.split("\n").filter((line) => line.startsWith("casting: "));
  for (const tail of ["> /dev/full", "| true"]) {
    const result = shell(tail);
    check(`unheard: ${tail}, exit 1`, result.status === 1, `${result.status}`);
    check(`unheard: ${tail}, one sentence`, lines(result).length === 1, result.stderr);
  }
  const closed = shell(">&-");
  check("unheard: closed, no more than a sentence", lines(closed).length <= 1 && [0, 1].includes(closed.status));
  const path = room();
  const full = openSync("/dev/full", "w");
  const result = node([CASTING, "make", second, "--out", join(path, "set"), "--force"], {
    stdio: ["ignore", full, "pipe"],
  });
  closeSync(full);
  check("unheard: the set is whole all the same", result.status === 1 && tree(join(path, "set")) === NEW);
}

// Ctrl-C while the layout is worked out.
async function interrupted() {
  const path = at("interrupted");
  mkdirSync(path);
  const large = join(path, "large.yaml");
  copyFileSync(join(root, "fixtures/large-mixed.yaml"), large);
  for (const [signal, code] of [
    ["SIGINT", 130],
    ["SIGTERM", 143],
  ]) {
    const run = await ended(make(large, join(path, "set")), { signal, after: 500 });
    // A shell shows a program that a signal ended as 128 and the signal's number.
    check(
      `interrupted: ${signal} ends as ${code}`,
      run.signal === signal || run.status === code,
      `${run.status} ${run.signal}`,
    );
    check(
      `interrupted: ${signal} leaves nothing behind`,
      readdirSync(path).join() === "large.yaml",
      readdirSync(path).join(),
    );
  }
}

killed();
killedAlone();
fullDisk();
fileSize();
otherUser();
inTheWay();
await together();
unheard();
await interrupted();
rmSync(folder, { recursive: true, force: true });
for (const fault of faults) process.stderr.write(`${fault}\n`);
const all = Object.entries(counts).map(([topic, count]) => `${topic} ${count}`);
process.stdout.write(`crashes: ${all.join(", ")}; ${faults.length} faults\n`);
process.exitCode = faults.length > 0 ? 1 : 0;

// Every hostile job in a process of its own, and files too large to be kept: each ends with exit 2 and one line a fault,
// writes nothing, plays nothing back, and takes no more than half a second of the processor and 150 MB.
import { spawnSync } from "node:child_process";
import { closeSync, mkdtempSync, openSync, readdirSync, rmSync, statSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const root = new URL("..", import.meta.url).pathname;
const CASTING = join(root, "packages/casting-cli/bin/casting.mjs");
const REPORTER = new URL("use.mjs", import.meta.url).href;
const MOST_BYTES = 150e6;
/** Half a second where a bare Node starts within 50 ms, as much longer as the machine is slower. */
const MOST_MS = 500;
const BARE_MS = 50;

function start(args, stdin = "ignore") {
  const { status, stdout, stderr, output } = spawnSync(process.execPath, ["--import", REPORTER, ...args], {
    stdio: [stdin, "pipe", "pipe", "pipe"],
    env: { ...process.env, USE_HANDLE: "3", NODE_OPTIONS: "" },
    encoding: "utf8",
    timeout: 60_000,
  });
  return { status, stdout, stderr, ...JSON.parse(output[3] || '{"ms": null, "bytes": null}') };
}

const folder = mkdtempSync(join(tmpdir(), "casting-hostile-"));
const at = (name) => join(folder, name);
const zeros = at("zeros.yaml");
writeFileSync(zeros, "");
truncateSync(zeros, 100e6);
const text = at("text.yaml");
writeFileSync(text, "title: one\n".repeat(9_000_000));
const keys = at("keys.yaml");
writeFileSync(keys, `{${Array.from({ length: 7000 }, (_, i) => `k${i}: 1`).join(", ")}}`);
const strange = at("strange.yaml");
writeFileSync(strange, Array.from({ length: 990 }, (_, i) => `containr-${i}: 1\n`).join(""));
const letters = at("letters.yaml");
writeFileSync(letters, `title: "${"\u{1d11e}".repeat(15_000)}"\n`);

const cases = [
  ...readdirSync(join(root, "fixtures/hostile"), { recursive: true, encoding: "utf8" })
    .map((name) => join(root, "fixtures/hostile", name))
    .filter((path) => statSync(path).isFile())
    .sort(),
  zeros,
  text,
  keys,
  strange,
  letters,
  root,
  "/dev/zero",
  at("not-there.yaml"),
].map((file) => ({ file }));
cases.push({ file: "-", input: text }, { file: "-", input: "/dev/null" });

const bare = Math.min(...[1, 2, 3].map(() => start(["-e", "0"]).ms));
const mostMs = MOST_MS * Math.max(1, bare / BARE_MS);
const worst = { ms: 0, bytes: 0 };
const faults = [];
const before = readdirSync(folder).sort().join();
for (const { file, input } of cases) {
  const stdin = input === undefined ? "ignore" : openSync(input, "r");
  const { status, stdout, stderr, ms, bytes } = start([CASTING, "make", file, "--out", at("out")], stdin);
  if (input !== undefined) closeSync(stdin);
  worst.ms = Math.max(worst.ms, ms);
  worst.bytes = Math.max(worst.bytes, bytes);
  const say = (what) => faults.push(`${file}${input ? ` (${input})` : ""}: ${what}`);
  if (status !== 2) say(`exit ${status}`);
  if (stdout !== "") say("wrote to standard output");
  if (!/^(?:[^\n]+; [^\n]+\n)+$/.test(stderr)) say(`not a sentence a line: ${JSON.stringify(stderr.slice(0, 200))}`);
  if (/(?!\n)[\p{Cc}\p{Cf}\p{Cs}]/u.test(stderr)) say("plays back what is hidden");
  if (!(ms <= mostMs)) say(`took ${ms} ms of the processor, at most ${Math.round(mostMs)}`);
  if (!(bytes <= MOST_BYTES)) say(`took ${Math.round(bytes / 1e6)} MB`);
  if (readdirSync(folder).sort().join() !== before) say("wrote files");
}
rmSync(folder, { recursive: true, force: true });
for (const fault of faults) process.stderr.write(`${fault}\n`);
process.stdout.write(
  `${cases.length} hostile files, ${faults.length} faults; at most ${Math.round(worst.ms)} ms of the processor ` +
    `(a bare Node ${Math.round(bare)} ms) and ${Math.round(worst.bytes / 1e6)} MB.\n`,
);
process.exitCode = faults.length > 0 ? 1 : 0;

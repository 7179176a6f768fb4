// The bill of materials, bill.json, in CycloneDX 1.5: every package installed by the lock file, with version, licence and
// hash, what is shipped told from what only builds and tests. It fails on a licence that is not on the list, on an
// install script, on a direct dependency that is not pinned or not explained in DEVELOPERS.md, and where the licence
// texts that go out with the command, whose code holds that of others, are not up to date: npm run bill
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";

const root = new URL("..", import.meta.url).pathname;
/** What may be shipped: permissive, to be used with MIT. */
const SHIPPED = new Set([
  "MIT",
  "ISC",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "Apache-2.0",
  "0BSD",
  "Unlicense",
  "CC0-1.0",
  "BlueOak-1.0.0",
]);
/** What may build and test beside those; none of it is shipped. */
const TOOLS = new Set([...SHIPPED, "MPL-2.0", "Python-2.0", "CC-BY-4.0"]);
/** Compilers whose own code goes into what they compile: their runtime is in the compiled parts of the core. */
const COMPILED_IN = ["assemblyscript"];
const HOMES = [".", "packages/casting-core", "packages/casting-cli"];

const read = (path) => readFileSync(join(root, path), "utf8");
const faults = [];

/** Packages by name and version, as installed. */
function installed(...more) {
  const { status, stdout, stderr } = spawnSync(
    "npx",
    ["--yes", "pnpm@10.34.9", "-r", "licenses", "list", "--json", ...more],
    { cwd: root, encoding: "utf8", maxBuffer: 1 << 26 },
  );
  if (status !== 0) throw new Error(`the licences could not be listed: ${stderr}`);
  return Object.values(JSON.parse(stdout))
    .flat()
    .flatMap(({ name, versions, paths, license }) =>
      versions.map((version, index) => ({ name, version, path: paths[index], license })),
    );
}

/** Whether a licence, or one of those to choose from, is among `allowed`. */
function isAllowed(license, allowed) {
  return license
    .replace(/[()]/g, "")
    .split(" OR ")
    .some((choice) => choice.split(" AND ").every((part) => allowed.has(part)));
}

/** The hash that the lock file holds a package to, in hexadecimal. */
function hashesOf(lock, key) {
  const integrity = lock.packages[key]?.resolution?.integrity;
  if (!integrity) return [];
  return [{ alg: "SHA-512", content: Buffer.from(integrity.replace(/^sha512-/, ""), "base64").toString("hex") }];
}

/** The licence text that a package brings along; its licence's name where it brings none. */
function licenceText({ path, license }) {
  const file = readdirSync(path)
    .sort()
    .find((name) => /^(?:licen[cs]e|copying|unlicense)/i.test(name));
  const text = (name) => readFileSync(join(path, name), "utf8").replace(/\r\n/g, "\n").trim();
  if (file) return readdirSync(path).includes("NOTICE") ? `${text(file)}\n\n${text("NOTICE")}` : text(file);
  const { author } = JSON.parse(readFileSync(join(path, "package.json"), "utf8"));
  const by = typeof author === "string" ? author : author?.name;
  return `${license}${by ? `, by ${by}` : ""} (the package brings no licence text)`;
}

const lock = parse(read("pnpm-lock.yaml"));
const byName = (a, b) => (`${a.name}@${a.version}` < `${b.name}@${b.version}` ? -1 : 1);
const all = installed().sort(byName);
const compiledIn = all.filter(({ name }) => COMPILED_IN.includes(name));
const going = [...installed("--prod"), ...compiledIn].sort(byName);
const shipped = new Set(going.map(({ name, version }) => `${name}@${version}`));
/** What goes out with each package: the command's files hold the code of its dependencies, the core's its compiled parts. */
for (const [path, others] of [
  ["packages/casting-cli/THIRD-PARTY.txt", going],
  ["packages/casting-core/THIRD-PARTY.txt", compiledIn],
]) {
  const texts = `Code of others in this package, and what it needs, with its licences.\n\n${others
    .map((one) => `${"-".repeat(80)}\n${one.name} ${one.version}\n\n${licenceText(one)}\n`)
    .join("\n")}`;
  if (existsSync(join(root, path)) && read(path) === texts) continue;
  writeFileSync(join(root, path), texts);
  faults.push(`${path} was not up to date; it is now, commit it`);
}
const components = all.map(({ name, version, path, license }) => {
  const key = `${name}@${version}`;
  const isShipped = shipped.has(key);
  if (!isAllowed(license, isShipped ? SHIPPED : TOOLS)) faults.push(`${key} has the licence ${license}`);
  const { scripts = {} } = JSON.parse(readFileSync(join(path, "package.json"), "utf8"));
  for (const script of ["preinstall", "install", "postinstall"]) {
    if (scripts[script]) faults.push(`${key} runs a script at ${script}: ${scripts[script]}`);
  }
  const hashes = hashesOf(lock, key);
  if (hashes.length === 0) faults.push(`${key} has no hash in the lock file`);
  return {
    type: "library",
    name,
    version,
    purl: `pkg:npm/${name.replace("@", "%40")}@${version}`,
    scope: isShipped ? "required" : "excluded",
    licenses: [license.includes(" ") ? { expression: license } : { license: { id: license } }],
    hashes,
  };
});

const why = read("DEVELOPERS.md");
for (const home of HOMES) {
  const { name, dependencies = {}, devDependencies = {} } = JSON.parse(read(join(home, "package.json")));
  for (const [dependency, version] of Object.entries({ ...dependencies, ...devDependencies })) {
    if (version === "workspace:*") continue;
    if (!/^\d+\.\d+\.\d+(?:-[\w.]+)?$/.test(version)) faults.push(`${name}: ${dependency} ${version} is not pinned`);
    if (!why.includes(`\`${dependency}\``))
      faults.push(`${name}: DEVELOPERS.md does not say why ${dependency} is there`);
  }
}

const { version } = JSON.parse(read("package.json"));
const bill = {
  bomFormat: "CycloneDX",
  specVersion: "1.5",
  version: 1,
  metadata: {
    component: { type: "application", name: "casting", version, licenses: [{ license: { id: "MIT" } }] },
  },
  components,
};
writeFileSync(join(root, "bill.json"), `${JSON.stringify(bill, null, 2)}\n`);
for (const fault of faults) process.stderr.write(`${fault}\n`);
process.stdout.write(
  `bill.json: ${components.length} packages, ${shipped.size} of them shipped; ${faults.length} faults\n`,
);
process.exitCode = faults.length > 0 ? 1 : 0;

// The library in a browser: bundled whole and run in Chromium, it makes the same plan as under Node, byte for byte;
// a program that takes one small function from it carries little else.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { rolldown } from "rolldown";
import { makePlan, planJson, readJob } from "../packages/casting-core/dist/index.js";
import { openBrowser } from "./chromium.mjs";

const root = new URL("..", import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), "casting-bundle-"));
/** A program with nothing but sagittaOf in it may be so large, bytes. */
const MOST_FOR_ONE = 2000;

/** The code of a program that re-exports `names` from the library, for a browser. */
async function bundled(names) {
  const input = join(folder, "entry.js");
  writeFileSync(
    input,
    `export { ${names} } from ${JSON.stringify(join(root, "packages/casting-core/dist/index.js"))};\n`,
  );
  const bundle = await rolldown({ input, platform: "browser" });
  const { output } = await bundle.generate({ format: "iife", name: "casting", minify: true });
  await bundle.close();
  return output[0].code;
}

const faults = [];
const [whole, one] = [await bundled("makePlan, planJson, readJob"), await bundled("sagittaOf")];
if (/["'`]node:|\brequire\(/.test(whole)) faults.push("the bundle asks for something of Node");
if (one.length > MOST_FOR_ONE)
  faults.push(`sagittaOf alone brings ${one.length} bytes along, more than ${MOST_FOR_ONE}`);
const browser = await openBrowser();
try {
  const page = await browser.newPage();
  await page.addScriptTag({ content: whole });
  for (const name of ["sample", "inches", "readings"]) {
    const text = readFileSync(join(root, "fixtures", `${name}.yaml`), "utf8");
    const there = await page.evaluate((job) => {
      const { makePlan, planJson, readJob } = globalThis.casting;
      return planJson(makePlan(readJob(job)));
    }, text);
    if (there !== planJson(makePlan(readJob(text)))) faults.push(`${name}: the browser's plan is another one`);
  }
} finally {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}
for (const fault of faults) process.stderr.write(`${fault}\n`);
process.stdout.write(
  `in the browser: ${Math.round(whole.length / 1000)} kB for whole plans, ${one.length} bytes for one function; ${faults.length} faults\n`,
);
process.exitCode = faults.length > 0 ? 1 : 0;

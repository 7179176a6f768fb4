// The job sheet, the candidates' page and the live view in a real browser: structure and contrast by axe-core, HTML by
// html-validate, no overflow on a phone or on paper, and the view's controls used as a person would.
import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { HtmlValidate } from "html-validate";
import { openBrowser } from "./chromium.mjs";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const JOBS = ["sample", "inches", "small-full-size", "readings", "convex", "flat", "large-mixed", "steep"];
const CASTING = "packages/casting-cli/dist/bin.mjs";
/** Width of a phone, CSS px, and what lies between the margins of A4 and Letter. */
const PHONE = 360;
const PAPERS = { A4: 210, Letter: 215.9 };

const folder = mkdtempSync(join(tmpdir(), "browser-"));
const faults = [];
const validator = new HtmlValidate({
  extends: ["html-validate:standard"],
  rules: {
    // Matters of taste that the HTML standard leaves open.
    "no-inline-style": "off",
    "long-title": "off",
    "no-implicit-button-type": "off",
    "void-style": "off",
    "doctype-style": "off",
    "attr-quotes": "off",
    "no-trailing-whitespace": "off",
  },
});

async function validate(name, html) {
  const report = await validator.validateString(html, name);
  for (const { messages } of report.results) {
    for (const { line, ruleId, message, severity } of messages) {
      if (severity === 2) faults.push(`${name}:${line}: ${message} (${ruleId})`);
    }
  }
}

async function axe(page, name) {
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(() => globalThis.axe.run(document));
  for (const { id, help, nodes } of violations) {
    faults.push(`${name}: ${id}: ${help}; ${nodes.length} times, first at ${nodes[0].target.join(" ")}`);
  }
}

/** Elements that stick out of the window to the right, outside of boxes that scroll by themselves. */
const sticksOut = (page) =>
  page.evaluate(() => {
    const scrolls = (element) => {
      for (let up = element; up && up !== document.body; up = up.parentElement) {
        if (["auto", "scroll"].includes(getComputedStyle(up).overflowX)) return true;
      }
      return false;
    };
    return [...document.body.querySelectorAll("*")]
      .filter((element) => !element.closest("svg") || element.tagName === "svg")
      .filter((element) => element.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5)
      .filter((element) => !scrolls(element))
      .map((element) => `${element.tagName.toLowerCase()} "${element.textContent.slice(0, 40)}"`)
      .slice(0, 3);
  });

async function readSheet(browser, name, file) {
  await validate(name, readFileSync(file, "utf8"));
  for (const colorScheme of ["light", "dark"]) {
    const page = await browser.newPage({ viewport: { width: 1000, height: 800 }, colorScheme });
    const asked = [];
    page.on("request", (request) => asked.push(request.url()));
    await page.goto(pathToFileURL(file).href);
    await axe(page, `${name} ${colorScheme}`);
    if (asked.length > 1) faults.push(`${name} asks for ${asked[1]}`);
    await page.close();
  }
  const phone = await browser.newPage({ viewport: { width: PHONE, height: 740 } });
  await phone.goto(pathToFileURL(file).href);
  for (const what of await sticksOut(phone)) faults.push(`${name} at ${PHONE} px: ${what} sticks out`);
  await axe(phone, `${name} at ${PHONE} px`);
  for (const word of await brokenWords(phone)) faults.push(`${name} at ${PHONE} px: "${word}" is broken in a table`);
  await phone.close();
  for (const [paper, width] of Object.entries(PAPERS)) {
    const between = Math.floor(((width - 24) * 96) / 25.4);
    const page = await browser.newPage({ viewport: { width: between, height: 900 } });
    await page.emulateMedia({ media: "print" });
    await page.goto(pathToFileURL(file).href);
    for (const what of await sticksOut(page)) faults.push(`${name} printed on ${paper}: ${what} is clipped`);
    const clipped = await page.evaluate(
      () =>
        [...document.querySelectorAll("*")].filter(
          (e) => e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).overflowX !== "visible",
        ).length,
    );
    if (clipped > 0) faults.push(`${name} printed on ${paper}: ${clipped} boxes hide what does not fit`);
    const pdf = await page.pdf({ format: paper, margin: { top: "12mm", bottom: "12mm", left: "12mm", right: "12mm" } });
    if (pdf.length < 10_000) faults.push(`${name} printed on ${paper} is empty`);
    await page.close();
  }
}

/** Words in tables of several columns that break in two for want of room: such a table scrolls. */
const brokenWords = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll(".wide th, .wide td")].flatMap((cell) => {
      const text = cell.firstChild;
      return [...(text?.data ?? "").matchAll(/[\p{L}\d.]{2,}/gu)].flatMap(({ 0: word, index }) => {
        const range = document.createRange();
        range.setStart(text, index);
        range.setEnd(text, index + word.length);
        return new Set([...range.getClientRects()].map(({ top }) => top)).size > 1 ? [word] : [];
      });
    }),
  );

/** Until `look` says so, at most `seconds`. */
async function until(what, look, seconds = 20) {
  for (let n = 0; n < seconds * 10; n++) {
    // A frame that is just being loaded anew has no content yet.
    if (
      await Promise.resolve()
        .then(look)
        .catch(() => false)
    )
      return true;
    await new Promise((soon) => setTimeout(soon, 100));
  }
  faults.push(`view: ${what} did not happen`);
  return false;
}

async function useView(browser) {
  const job = join(folder, "view.yaml");
  writeFileSync(job, readFileSync("fixtures/small-full-size.yaml"));
  const process = spawn("node", [CASTING, "view", job, "--port", "0"]);
  let said = "";
  process.stdout.on("data", (part) => (said += part));
  process.stderr.on("data", (part) => (said += part));
  await until("an address", () => /http:\/\/[\d.:]+\//.test(said));
  const url = /http:\/\/[\d.:]+\//.exec(said)[0];
  const page = await browser.newPage({ viewport: { width: 1000, height: 800 } });
  page.on("console", (message) => message.type() === "error" && faults.push(`view says ${message.text()}`));
  page.on("pageerror", (error) => faults.push(`view fails: ${error.message}`));
  const answer = await page.goto(url);
  await validate("view", await answer.text());
  const frame = () => page.frames().find((each) => each.url().includes("/sheet/"));
  const state = () => page.textContent("#state");
  await until(
    "the first sheet",
    async () => (await frame()?.content())?.includes("<svg") && !/working/.test(await state()),
  );
  await axe(page, "view");
  const first = await frame().content();
  const seed = await page.inputValue("#seed");

  await page.fill("#seed", "77");
  await page.click("button[type=submit]");
  await until("another seed's sheet", async () => {
    const now = await frame()?.content();
    return now?.includes("<svg") && now !== first;
  });
  if (readFileSync(job, "utf8").includes("77")) faults.push("view: a seed only shown was written");

  await page.click("#save");
  await until("the seed in the job", () => /seed: *77/.test(readFileSync(job, "utf8")));

  const saved = readFileSync(job, "utf8");
  writeFileSync(job, saved.replace(/seed: *77/, "seed: 78"));
  await until("the job's new seed in the page", async () => (await page.inputValue("#seed")) === "78");

  writeFileSync(job, saved.replace(/seed: *77/, "seed: none"));
  await until(
    "a sentence about the wrong job",
    async () => /seed/.test(await state()) && (await page.$("#state.wrong")),
  );
  writeFileSync(job, saved);
  await until("the sheet again", async () => !(await page.$("#state.wrong")));

  await page.selectOption("#sheet", { index: 1 });
  await until("the other sheet", async () => !frame()?.url().includes("job-sheet"));
  await page.setViewportSize({ width: PHONE, height: 740 });
  for (const what of await sticksOut(page)) faults.push(`view at ${PHONE} px: ${what} sticks out`);
  await page.close();
  const ended = new Promise((done) => process.on("exit", (code) => done(code)));
  process.kill("SIGINT");
  const code = await ended;
  if (code !== 130 && code !== 0) faults.push(`view ended by Ctrl-C with ${code}`);
  return seed;
}

/** The checks themselves: each must find what is wrong with a page made wrong on purpose. */
async function checkTheChecks(browser) {
  const file = join(folder, "wrong.html");
  writeFileSync(
    file,
    '<!DOCTYPE html><html lang="en"><head><title>t</title></head><body><main><h1 style="color:#bbb;width:900px">wide</h1><p><div></p></main></body></html>',
  );
  await readSheet(browser, "wrong", file);
  const found = faults.splice(0).join("\n");
  for (const word of ["color-contrast", "sticks out", "clipped", "wrong:1:"]) {
    if (!found.includes(word)) throw new Error(`the check for ${word} finds nothing`);
  }
}

const browser = await openBrowser();
try {
  await checkTheChecks(browser);
  for (const name of JOBS) {
    const out = join(folder, name);
    execFileSync("node", [CASTING, "make", `fixtures/${name}.yaml`, "--out", out, "--only", "html", "--quiet"]);
    await readSheet(browser, `${name} job-sheet.html`, join(out, "job-sheet.html"));
  }
  const page = join(folder, "candidates.html");
  execFileSync("node", [
    CASTING,
    "layout",
    "fixtures/small-full-size.yaml",
    "--candidates",
    "4",
    "--out",
    page,
    "--quiet",
  ]);
  await readSheet(browser, "candidates.html", page);
  await useView(browser);
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}
for (const fault of new Set(faults)) console.error(fault);
console.log(
  `${JOBS.length} job sheets, a page of candidates and the live view in Chromium: ${new Set(faults).size} faults`,
);
process.exitCode = faults.length > 0 ? 1 : 0;

// True size, measured in pixels: every SVG through librsvg and Chromium, every page of the PDF through poppler at 600 dpi.
// node .ci/measure.mjs; needs rsvg-convert, pdftoppm and chromium.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { makePlan, paperOf, readJob, SHEETS, tile } from "../packages/casting-core/dist/index.js";
import { openBrowser } from "./chromium.mjs";
import { circleNear, fromPng, readPgm, readPng, squareNear } from "./pixels.mjs";

/** What a length on paper may be off, mm. */
const ALLOWED = 0.05;
const DPI = 600;
/** Of an SVG: a metre-wide sheet at 600 dpi would not fit into memory. */
const SVG_DPI = 300;

const CASES = [
  { job: "fixtures/sample.yaml" },
  { job: "fixtures/inches.yaml", paper: "Letter" },
  { job: "fixtures/readings.yaml", paper: "A3" },
  { job: "fixtures/small-full-size.yaml", paper: "full" },
  { job: "fixtures/flat.yaml", measured: "{x: 99.4 mm, y: 100.3 mm}" },
];

const folder = mkdtempSync(join(tmpdir(), "measure-"));
const figures = [];
let faults = 0;

/** Notes one measured length; one that is off by more than is allowed counts as a fault. */
function note(where, renderer, found, wanted) {
  const off = Math.abs(found - wanted);
  figures.push({ renderer, off });
  if (off <= ALLOWED) return true;
  faults++;
  console.error(`${where} by ${renderer}: ${found.toFixed(3)} mm instead of ${wanted.toFixed(3)} mm`);
  return false;
}

/** Squares and circles of an SVG by its own numbers, which are millimetres. */
function marksOf(svg) {
  const body = (id) => new RegExp(`<g id="${id}">(.*?)</g>`, "s").exec(svg)?.[1] ?? "";
  const squares = [...body("scale-check").matchAll(/points="([^"]+)"/g)].map(([, points]) => {
    const numbers = points.split(/[ ,]+/).map(Number);
    const [xs, ys] = [numbers.filter((_, n) => n % 2 === 0), numbers.filter((_, n) => n % 2 === 1)];
    return { x: Math.min(...xs), y: Math.min(...ys), side: Math.max(...xs) - Math.min(...xs) };
  });
  const circles = [...body("tool-edge").matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="([\d.]+)"/g)].slice(0, 1);
  return { squares, circles: circles.map(([, x, y, r]) => ({ x: Number(x), y: Number(y), radius: Number(r) })) };
}

/** Measures one rendered SVG; `growth` is how much too large it was made on purpose. */
function measureSvg(where, renderer, image, scale, marks, growth = 1) {
  let held = true;
  for (const { x, y, side } of marks.squares) {
    const { width, height } = squareNear(image, scale, x * growth, y * growth, side * growth);
    held = note(`${where}: square of ${side} mm, width`, renderer, width, side) && held;
    held = note(`${where}: square of ${side} mm, height`, renderer, height, side) && held;
  }
  for (const { x, y, radius } of marks.circles) {
    held = note(`${where}: circle`, renderer, circleNear(image, scale, x, y, radius), radius) && held;
  }
  return held;
}

function rsvg(file) {
  const png = join(folder, "sheet.png");
  execFileSync("rsvg-convert", ["-b", "white", "-d", String(SVG_DPI), "-p", String(SVG_DPI), "-o", png, file]);
  return readPng(png);
}

/**
 * The whole SVG in Chromium, four device pixels to a CSS pixel: 15.1 to the millimetre. Within a page of HTML: a picture
 * by itself is stretched to whole CSS pixels, which prints do not do.
 */
async function chromium(browser, svg) {
  const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg);
  const viewport = { width: Math.ceil((width * 96) / 25.4), height: Math.ceil((height * 96) / 25.4) };
  const page = await browser.newPage({ viewport, deviceScaleFactor: 4 });
  await page.setContent(`<!DOCTYPE html><body style="margin:0">${svg.slice(svg.indexOf("<svg"))}`);
  const image = fromPng(await page.screenshot());
  await page.close();
  return image;
}

/** Every page of a PDF: its check squares and, on a page that shows all of it, the tool's edge. */
function measurePdf(name, file, plan) {
  const root = join(folder, "page");
  execFileSync("pdftoppm", ["-r", String(DPI), "-gray", file, root]);
  const images = readdirSync(folder)
    .filter((entry) => entry.startsWith("page-"))
    .sort();
  const { measured } = plan.job.print;
  const [kx, ky] = [measured ? 100 / measured.x : 1, measured ? 100 / measured.y : 1];
  const scale = DPI / 25.4;
  const paper = paperOf(plan.job.print.paper, plan.job.units);
  const pages = Object.values(SHEETS).flatMap((draw) => {
    const sheet = draw(plan);
    return sheet ? tile(sheet, paper, plan.job.print.overlap).pages.map((page) => ({ page, sheet })) : [];
  });
  pages.forEach(({ page, sheet }, n) => {
    const image = readPgm(join(folder, images[n + 1]));
    const where = `${name} page ${n + 2}`;
    const squares = page.whole
      ? squaresOf(sheet).map(({ x, y, side }) => ({ x: x + page.at[0], y: y + page.at[1], side }))
      : [
          { side: 101.6, x: page.check[0], y: page.check[1] },
          { side: 100, x: page.check[0] + 0.8, y: page.check[1] + 0.8 },
        ];
    for (const { x, y, side } of squares) {
      // A corrected page grows from its upper left corner.
      const { width, height } = squareNear(image, scale, x * kx, y * ky, side * kx, side * ky);
      note(`${where}: square of ${side} mm, width`, "poppler", width, side * kx);
      note(`${where}: square of ${side} mm, height`, "poppler", height, side * ky);
    }
  });
  for (const entry of images) rmSync(join(folder, entry));
  return pages.length;
}

function squaresOf(sheet) {
  const { shapes } = sheet.groups.find(({ id }) => id === "scale-check");
  return shapes
    .filter(({ kind }) => kind === "polygon")
    .map(({ points }) => {
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
      return { x: Math.min(...xs), y: Math.min(...ys), side: Math.max(...xs) - Math.min(...xs) };
    });
}

const browser = await openBrowser();
let [sheets, pages] = [0, 0];
try {
  for (const { job, paper, measured } of CASES) {
    const out = join(folder, "out");
    const text = readFileSync(job, "utf8").replace(/^print:.*$/m, "");
    const print = measured ? `print: {measured: ${measured}}\n` : paper ? `print: {paper: ${paper}}\n` : "";
    const file = join(folder, "job.yaml");
    writeFileSync(file, `${text.trimEnd()}\n${print}`);
    execFileSync("node", ["packages/casting-cli/dist/bin.mjs", "make", file, "--out", out, "--force", "--quiet"]);
    for (const name of readdirSync(out).filter((entry) => entry.endsWith(".svg"))) {
      const svg = readFileSync(join(out, name), "utf8");
      const marks = marksOf(svg);
      const where = `${job} ${name}`;
      measureSvg(where, "librsvg", rsvg(join(out, name)), SVG_DPI / 25.4, marks);
      measureSvg(where, "chromium", await chromium(browser, svg), (4 * 96) / 25.4, marks);
      sheets++;
    }
    pages += measurePdf(job, join(out, "templates.pdf"), makePlan(readJob(readFileSync(file, "utf8"))));
  }

  // The measuring itself: a sheet that prints at 101 % must be found out.
  const svg = readFileSync(join(folder, "out", "placement.svg"), "utf8");
  const grown = svg.replace(/(width|height)="([\d.]+)mm"/g, (_, side, size) => `${side}="${Number(size) * 1.01}mm"`);
  writeFileSync(join(folder, "grown.svg"), grown);
  const found = figures.length;
  const error = console.error;
  console.error = () => {};
  const held = measureSvg(
    "grown",
    "librsvg",
    rsvg(join(folder, "grown.svg")),
    SVG_DPI / 25.4,
    { ...marksOf(svg), circles: [] },
    1.01,
  );
  console.error = error;
  if (held) throw new Error("a sheet at 101 % was not found out");
  faults -= figures.splice(found).filter(({ off }) => off > ALLOWED).length;
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}

for (const renderer of ["librsvg", "chromium", "poppler"]) {
  const offs = figures.filter((figure) => figure.renderer === renderer).map(({ off }) => off);
  console.log(`${renderer}: ${offs.length} lengths, at most ${(1000 * Math.max(...offs)).toFixed(0)} µm off`);
}
console.log(`${sheets} sheets and ${pages} pages at true size: ${faults} faults; a sheet at 101 % is found out`);
process.exitCode = faults > 0 ? 1 : 0;

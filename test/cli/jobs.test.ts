// The commands that work on a job, with small jobs that are worked out once each.
import { mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { emptyFolder, heard } from "./support.js";

vi.mock("casting-core", async (original) => {
  const core = await original<typeof import("casting-core")>();
  const known = new Map<string, unknown>();
  const once = <T>(key: unknown, work: () => T): T => {
    const name = JSON.stringify(key);
    if (!known.has(name)) known.set(name, work());
    return structuredClone(known.get(name)) as T;
  };
  const tell = (options: Parameters<typeof core.makePlan>[1]) => options?.progress?.("layout", 0.5);
  return {
    ...core,
    makePlan: (job: Parameters<typeof core.makePlan>[0], options?: Parameters<typeof core.makePlan>[1]) => {
      tell(options);
      return once(job, () => core.makePlan(job));
    },
    makePart: (...[job, part, options]: Parameters<typeof core.makePart>) => {
      tell(options);
      return once([job, part], () => core.makePart(job, part));
    },
  };
});

const { run } = await import("../../packages/casting-cli/src/run.js");
const { chosenOutputs, drawAll } = await import("../../packages/casting-cli/src/outputs.js");
const { makePlan, planJson, readJob } = await import("casting-core");
const { planRows, table } = await import("../../packages/casting-cli/src/report/figures.js");

const SMALL = `title: Small tool
blank: {diameter: 160, radius: 1600}
tool: {diameter: 120}
pieces: {shape: square, across: 20, thickness: 5, density: 2.35}
layout: {count: 3}
`;
const plan = makePlan(readJob(SMALL));

function jobIn(folder: string, text = SMALL): string {
  const file = join(folder, "job.yaml");
  writeFileSync(file, text);
  return file;
}

/** Runs the command line on a terminal that shows progress. */
async function casting(...args: string[]) {
  const { said, terminal } = heard({ drawsProgress: true });
  return { code: await run(args, terminal), ...said };
}

describe("casting make", () => {
  it("works everything out, writes all files, and says where they are", async () => {
    const folder = emptyFolder();
    const { code, out, err } = await casting("make", jobIn(folder));
    expect(code).toBe(0);
    expect(out).toBe(
      `Small tool\n\n${table(planRows(plan))}\n9 files and their manifest are in ${join(folder, "job")}: start with job-sheet.html, print templates.pdf at 100 %.\n`,
    );
    expect(err).toMatch(/^caution: /);
    const only = await casting("make", jobIn(folder), "--only", "csv", "--out", join(folder, "csv"));
    expect(only.out).toMatch(/\n1 file and its manifest are in [^\n:]*csv\.\n$/);
    const none = await casting("make", jobIn(folder), "--only", "gauge.svg", "--out", join(folder, "none"));
    expect(none).toMatchObject({ code: 2, out: "" });
    expect(none.err).toBe(
      "casting: --only gauge.svg leaves nothing to write: gauge.svg needs a container in the job; write it there, or leave --only out\n",
    );
    expect(readdirSync(folder)).not.toContain("none");
    const files = "dam.svg form.svg grooves.dxf grooves.svg job-sheet.html manifest.json pieces.csv placement.svg";
    expect(readdirSync(join(folder, "job")).sort()).toEqual([...files.split(" "), "plan.json", "templates.pdf"]);
    expect(readFileSync(join(folder, "job", "plan.json"), "utf8")).toBe(planJson(plan));
    expect(readFileSync(join(folder, "job", "templates.pdf"), "latin1")).toMatch(/^%PDF-/);
    expect(readFileSync(join(folder, "job", "placement.svg"), "utf8")).toMatch(/^<\?xml/);
    expect(readFileSync(join(folder, "job", "job-sheet.html"), "utf8")).toMatch(/^<!DOCTYPE html>/);
  });

  it("writes all that applies: also gauge, retainer and readings", async () => {
    const folder = emptyFolder();
    const whole = `blank:
  diameter: 160 mm
  readings: {instrument: {ring: 100 mm}, zones: [{at: 0, reading: 0.78 mm}, {at: 40 mm, reading: 0.781 mm}]}
tool: {diameter: 120}
pieces: {shape: square, across: 20, thickness: 5, density: 2.35}
layout: {count: 3}
container: {shape: round, diameter: 120, height: 100}
setup: {}
`;
    expect((await casting("make", jobIn(folder, whole), "--only", "svg,dxf")).code).toBe(0);
    expect(readdirSync(join(folder, "job")).sort()).toEqual(
      "dam.svg form.svg gauge.svg grooves.dxf grooves.svg manifest.json placement.svg readings.svg retainer.dxf retainer.svg".split(
        " ",
      ),
    );
  });

  it("says what each file needs that a job does not have, also with --dry-run", async () => {
    const make = async (only: string, ...more: string[]) =>
      await casting("make", jobIn(emptyFolder()), "--only", only, ...more);
    const all = "gauge.svg,readings.svg,retainer.svg,retainer.dxf";
    const needs =
      "gauge.svg needs a container in the job, retainer.svg needs a setup in the job, readings.svg needs spherometer readings in the job, retainer.dxf needs a setup in the job";
    for (const more of [[], ["--dry-run"], ["--quiet"]]) {
      const { code, out, err } = await make(all, ...more);
      expect([code, out]).toEqual([2, ""]);
      expect(err).toBe(
        `casting: --only ${all} leaves nothing to write: ${needs}; write it there, or leave --only out\n`,
      );
    }
    for (const more of [[], ["--dry-run"]]) {
      const { code, err } = await make("csv,gauge.svg", ...more);
      expect(code).toBe(0);
      expect(err).toContain("\ninfo: gauge.svg is left out: it needs a container in the job.\n");
    }
    expect((await make("svg")).err).not.toContain("is left out: it needs");
    expect((await make("csv,gauge.svg", "--quiet")).err).toBe("");
  });

  it("says no title where there is none, and shortens a long one", async () => {
    const titled = async (title: string) =>
      (await casting("make", jobIn(emptyFolder(), SMALL.replace("Small tool", title)), "--dry-run")).out.split("\n")[0];
    expect(await titled("x".repeat(100))).toBe("x".repeat(100));
    expect(await titled("x".repeat(101))).toBe(`${"x".repeat(99)}…`);
    // Two units of UTF-16 each: never cut in two.
    expect(await titled("🔭".repeat(101))).toBe(`${"🔭".repeat(99)}…`);
    expect(await titled('""')).toMatch(/^blank /);
  });

  it("is quiet where that is asked for, and has the plan as JSON", async () => {
    const folder = emptyFolder();
    expect(await casting("make", jobIn(folder), "--quiet")).toEqual({ code: 0, out: "", err: "" });
    const { out } = await casting("make", jobIn(folder), "--json", "--force", "--quiet");
    expect(out).toBe(planJson(plan));
    expect((await casting("make", jobIn(folder), "--json", "--dry-run")).err).toMatch(/^caution: /);
  });

  it("writes nothing with --dry-run, but finds out what would keep it from being drawn", async () => {
    const folder = emptyFolder();
    const job = jobIn(folder);
    const dry = await casting("make", job, "--dry-run");
    expect(dry.out).toBe(`Small tool\n\n${table(planRows(plan))}\nNothing was written (--dry-run).\n`);
    const wide = SMALL.replace("160", "360").replace("1600", "3000").replace("120", "300");
    const pages = await casting("make", jobIn(folder, `${wide}print: {paper: 125x150, overlap: 30}\n`), "--dry-run");
    expect([pages.code, pages.out]).toEqual([1, ""]);
    expect(pages.err).toMatch(/job\.yaml:6:9: print\.paper: the templates take \d+ pages of 125x150/);
    const option = await casting(
      "make",
      jobIn(folder, `${wide}print: {overlap: 30}\n`),
      "--dry-run",
      "--paper",
      "125x150",
      "--quiet",
    );
    expect(option.err).toMatch(/^casting: --paper 125x150: the templates take \d+ pages of 125x150; [^\n]*\n$/);
    expect((await casting("make", job, "--dry-run", "--force")).code).toBe(0);
    expect((await casting("make", job, "--dry-run", "--only", "svg")).code).toBe(0);
    expect(readdirSync(folder)).toEqual(["job.yaml"]);
  });

  it("needs --force over an earlier set", async () => {
    const folder = emptyFolder();
    const job = jobIn(folder);
    expect((await casting("make", job, "--only", "csv")).code).toBe(0);
    const again = await casting("make", job, "--only", "csv", "--quiet");
    expect([again.code, again.err]).toEqual([
      1,
      `casting: ${join(folder, "job", "pieces.csv")} is already there; give --force to replace the set, or another folder with --out\n`,
    ]);
    expect((await casting("make", job, "--only", "csv", "--force")).code).toBe(0);
  });

  it("keeps the other files of the very same plan where only some are made again", async () => {
    const folder = emptyFolder();
    const job = jobIn(folder);
    const names = () => readdirSync(join(folder, "job")).sort();
    await casting("make", job, "--only", "json, csv ,form.svg");
    expect(names()).toEqual(["form.svg", "manifest.json", "pieces.csv", "plan.json"]);
    await casting("make", job, "--only", "dxf", "--force");
    expect(names()).toEqual(["form.svg", "grooves.dxf", "manifest.json", "pieces.csv", "plan.json"]);
    await casting("make", job, "--only", "csv", "--force", "--seed", "2");
    expect(names()).toEqual(["manifest.json", "pieces.csv"]);
    await casting("make", job, "--only", "json,dxf", "--force");
    await casting("make", jobIn(folder, SMALL.replace("count: 3", "count: 2")), "--force");
    expect(names()).toHaveLength(10);
  });

  it("says what it removes of an earlier set", async () => {
    const folder = emptyFolder();
    const job = jobIn(folder);
    const out = join(folder, "job");
    await casting("make", job, "--only", "json,csv,dxf");
    const same = await casting("make", job, "--only", "html", "--force");
    expect(readdirSync(out)).toHaveLength(5);
    expect(same.err).not.toContain("removed");
    // Without a plan.json nothing tells what the rest was drawn from.
    await casting("make", job, "--only", "csv,dxf", "--force", "--seed", "2");
    const other = await casting("make", job, "--only", "html", "--force", "--seed", "2");
    expect(readdirSync(out).sort()).toEqual(["job-sheet.html", "manifest.json"]);
    expect(other.err).toMatch(
      /\nwarning: grooves\.dxf, pieces\.csv of the earlier set are removed: they are not known to be of this plan\.\n$/,
    );
    await casting("make", jobIn(folder, `${SMALL}container: {shape: round, diameter: 120, height: 100}\n`), "--force");
    const without = await casting("make", jobIn(folder), "--force");
    expect(without.err).toMatch(
      /\nwarning: gauge\.svg of the earlier set is removed: it is not known to be of this plan\.\n$/,
    );
  });

  it("takes seed, paper and folder from options", async () => {
    const folder = emptyFolder();
    const out = join(folder, "a", "b");
    const { code } = await casting(
      "make",
      jobIn(folder),
      "--seed",
      "5",
      "--paper",
      "Letter",
      "--out",
      out,
      "--only",
      "json",
    );
    expect(code).toBe(0);
    const { job } = JSON.parse(readFileSync(join(out, "plan.json"), "utf8")) as typeof plan;
    expect([job.layout.seed, job.print.paper]).toEqual([5, "Letter"]);
  });

  it.each([
    [["--out", " "], "--out is empty; name the folder to write into"],
    [
      ["--only", ""],
      "--only has an empty name; write json, svg, pdf, dxf, csv, html or file names, with commas between",
    ],
    [
      ["--only", ","],
      '--only has an empty name in ","; write json, svg, pdf, dxf, csv, html or file names, with commas between',
    ],
    [
      ["--only", "svg,"],
      '--only has an empty name in "svg,"; write json, svg, pdf, dxf, csv, html or file names, with commas between',
    ],
    [["--paper", "A9"], '--paper A9: "A9" is not a paper that is known; did you mean "A4"?'],
    [["--paper", "A9", "--dry-run"], '--paper A9: "A9" is not a paper that is known; did you mean "A4"?'],
    [["--only", "pfd"], "--only pfd is neither a kind nor a file that make writes; did you mean pdf?"],
    [["--only", "csv,manifest.json"], "--only manifest.json names what comes with every set; leave it out"],
    [["--only", "gaug.svg"], "--only gaug.svg is neither a kind nor a file that make writes; did you mean gauge.svg?"],
    [
      ["--only", `svg,${"z".repeat(50)}`],
      `--only ${"z".repeat(40)} is neither a kind nor a file that make writes; choose from json, svg, pdf, dxf, csv, html or file names`,
    ],
  ])("refuses %j", async (more, words) => {
    const folder = emptyFolder();
    expect(await casting("make", jobIn(folder), ...more)).toEqual({ code: 2, out: "", err: `casting: ${words}\n` });
    expect(readdirSync(folder)).toEqual(["job.yaml"]);
  });

  it("asks for a folder where the job has no name", async () => {
    expect(await casting("make", "-")).toEqual({
      code: 2,
      out: "",
      err: "casting: a job from standard input has no name to call the folder by; give --out DIR\n",
    });
  });

  it("names the file, line and column of what cannot be", async () => {
    const job = jobIn(emptyFolder(), SMALL.replace("count: 3", "count: 300"));
    const { code, err } = await casting("make", job);
    expect(code).toBe(1);
    expect(err).toMatch(
      /^[^\n]*job\.yaml:5:10: layout\.count: 300 pieces were asked for, but room was found for \d+ only[^\n]*\n$/,
    );
    const wrong = await casting("make", jobIn(dirname(job), SMALL.replace("radius", "raduis")));
    expect([wrong.code, wrong.out]).toEqual([2, ""]);
    expect(wrong.err).toMatch(/^[^\n]*job\.yaml:2:24: blank\.raduis: /);
  });
});

describe("outputs", () => {
  it("are drawn in full, each by its name, those that do not apply left out", async () => {
    const all = await chosenOutputs(undefined);
    expect(all.map(({ name }) => name)).toEqual(
      "plan.json placement.svg grooves.svg form.svg gauge.svg dam.svg retainer.svg readings.svg templates.pdf grooves.dxf retainer.dxf pieces.csv job-sheet.html".split(
        " ",
      ),
    );
    for (const { name, kind } of all) expect(name.endsWith(`.${kind}`)).toBe(true);
    expect(await chosenOutputs([])).toEqual([]);
    const files = await drawAll(plan, await chosenOutputs(["gauge.svg", "pieces.csv", "retainer.dxf"]), false);
    expect(files.map(({ name }) => name)).toEqual(["pieces.csv"]);
    expect(new TextDecoder().decode(files[0]!.bytes)).toMatch(/^id,kind,item,x,y,angle\r\n1,0,/);
  });
});

describe("a part", () => {
  it.each([
    ["layout", ["format", "generator", "job", "layout", "notes"], /^pieces +3, .*seed 1\ncoverage /],
    ["grooves", ["format", "generator", "job", "grooves", "notes"], /^channels +\d+ cuts, [\d.]+ mm altogether/],
    ["setup", ["format", "generator", "job", "setup", "notes"], /^offset +[\d.]+ mm from axis to axis/],
    ["mix", ["format", "generator", "job", "pour", "notes"], /^fill line +/],
    ["curve", ["format", "generator", "job", "blank", "tool", "notes"], /^blank +160 mm concave/],
  ])("%s is told by itself, or as JSON", async (command, keys, words) => {
    const job = jobIn(emptyFolder());
    const told = await casting(command, job, "--quiet");
    expect(told).toMatchObject({ code: 0, err: "" });
    expect(told.out).toMatch(words);
    const { out } = await casting(command, job, "--json");
    expect(Object.keys(JSON.parse(out) as object).sort()).toEqual([...keys].sort());
  });

  it("says its notes beside, and takes another seed", async () => {
    const job = jobIn(emptyFolder(), SMALL.replace("160", "5000").replace("1600", "40000"));
    expect((await casting("curve", job)).err).toMatch(/^warning: /);
    expect((await casting("layout", jobIn(emptyFolder()), "--seed", "9")).out).toMatch(/^pieces +3, .*seed 9\n/);
  });

  it("cannot be told of a job that cannot be", async () => {
    const { code, out, err } = await casting("layout", jobIn(emptyFolder(), SMALL.replace("count: 3", "count: 300")));
    expect([code, out]).toEqual([1, ""]);
    expect(err).toMatch(/layout\.count: /);
  });
});

describe("progress", () => {
  it("is drawn where the work takes long, and wiped whatever comes of it", async () => {
    // A clock that jumps by a second each time it is looked at.
    let now = 0;
    const clock = vi.spyOn(Date, "now").mockImplementation(() => {
      now += 1000;
      return now;
    });
    try {
      const drawn = "\r\x1b[Klaying out the pieces … 50 %\r\x1b[K";
      const job = jobIn(emptyFolder());
      expect((await casting("layout", job)).err.startsWith(`${drawn}warning`)).toBe(true);
      expect((await casting("make", job, "--dry-run")).err.startsWith(`${drawn}caution`)).toBe(true);
      for (const args of [
        ["layout", job, "--quiet"],
        ["make", job, "--dry-run", "--quiet"],
      ]) {
        expect((await casting(...args)).err).toBe("");
      }
      const impossible = jobIn(emptyFolder(), SMALL.replace("count: 3", "count: 300"));
      for (const args of [
        ["layout", impossible],
        ["make", impossible],
      ]) {
        expect((await casting(...args)).err.startsWith(`${drawn}${impossible}:5:10: `)).toBe(true);
      }
      const page = await casting("layout", job, "--candidates", "2");
      expect(page.err).toBe("\r\x1b[Klaying out the pieces … 25 %\r\x1b[Klaying out the pieces … 75 %\r\x1b[K");
      expect((await casting("layout", job, "--candidates", "2", "--force", "--quiet")).err).toBe("");
    } finally {
      clock.mockRestore();
    }
  });
});

describe("candidates", () => {
  it("are the job's seed and those after it, drawn on one page beside the job", async () => {
    const folder = emptyFolder();
    const page = join(folder, "job-candidates.html");
    const { code, out } = await casting("layout", jobIn(folder), "--candidates", "2", "--seed", "4294967295");
    expect(code).toBe(0);
    expect(out.match(/^pieces .*$/gm)!.map((line) => line.split("seed ")[1])).toEqual(["4294967295", "0"]);
    expect(out.endsWith(`\n\n${page} shows them side by side.\n`)).toBe(true);
    expect(readFileSync(page, "utf8").match(/<h2 id="seed-\d+">/g)).toEqual([
      '<h2 id="seed-4294967295">',
      '<h2 id="seed-0">',
    ]);
    const again = await casting("layout", jobIn(folder), "--candidates", "2");
    expect(again.err).toContain(`casting: ${page} is already there`);
    const forced = await casting("layout", jobIn(folder), "--candidates", "1", "--force", "--json");
    const { file: _, candidates, ...plain } = JSON.parse(forced.out) as { file: string; candidates: object[] };
    expect(plain).toEqual(JSON.parse((await casting("layout", jobIn(folder), "--json")).out));
    expect(candidates[0]).toHaveProperty("notes");
    const document = JSON.parse(forced.out) as {
      file: string;
      candidates: { seed: number; quality: { count: number } }[];
    };
    expect(document.file).toBe(page);
    expect(document.candidates.map(({ seed, quality }) => [seed, quality.count])).toEqual([[1, 3]]);
    const other = join(folder, "other.html");
    expect(await casting("layout", jobIn(folder), "--candidates", "1", "--out", other, "--quiet")).toEqual({
      code: 0,
      out: "",
      err: "",
    });
    expect(readdirSync(folder).sort()).toEqual(["job-candidates.html", "job.yaml", "other.html"]);
  });

  it("come with the notes that hold of all of them, each once", async () => {
    const job = jobIn(emptyFolder(), `${SMALL}dam: {sheet: 50 mm}\n`);
    const notes = async (...args: string[]): Promise<string[]> =>
      (await casting("layout", job, ...args)).err.match(/^\w+: .*$/gm) ?? [];
    const [first, second] = [await notes(), await notes("--seed", "2")];
    const shared = first.filter((line) => second.includes(line));
    expect(await notes("--candidates", "2")).toEqual(shared);
    expect(shared.filter((line) => /dam's sheet of 50 mm/.test(line))).toHaveLength(1);
    // What one seed alone has to say stands in none of it.
    expect(shared.length).toBeLessThan(first.length);
  });

  it.each([
    [["--out", "x.html"], "--out names the page of candidates; give --candidates N with it"],
    [["--candidates", "0"], "--candidates 0 is not a number from 1 to 48; write for example --candidates 12"],
    [["--candidates", "49"], "--candidates 49 is not a number from 1 to 48"],
    [["--candidates", "1.5"], "--candidates 1.5 is not"],
    [["--candidates", "0012"], "--candidates 0012 is not"],
    [["--candidates", "1x"], "--candidates 1x is not"],
    [["--candidates", "x1"], "--candidates x1 is not"],
    [["--candidates", "x".repeat(50)], `--candidates ${"x".repeat(40)} is not`],
  ])("refuse %j", async (more, words) => {
    const { code, out, err } = await casting("layout", jobIn(emptyFolder()), ...more);
    expect([code, out]).toEqual([2, ""]);
    expect(err.startsWith(`casting: ${words}`), err).toBe(true);
  });
});

describe("casting scale", () => {
  it.each([
    ["job-100mm.yaml", ["100 mm", "100", "10cm", "0.1 m", "100.0mm"]],
    ["job-3.75in.yaml", ["3 3/4in", "3.75 in", '3¾"', "3-3/4 inches", "15/4in"]],
    ["job-14in.yaml", ["1 ft 2 in", "1'-2\""]],
    ["job-4.0625in.yaml", ["4 1/16in"]],
  ])("writes %s for every way to write that length", async (name, lengths) => {
    for (const length of lengths) {
      const folder = emptyFolder();
      const text = SMALL.replace("160, radius: 1600", "400, radius: 4000");
      const { code, err } = await casting("scale", jobIn(folder, text), "--tool", length, "--quiet");
      expect([length, code, err]).toEqual([length, 0, expect.not.stringContaining("casting: ")]);
      expect(readdirSync(folder).sort()).toEqual([name, "job.yaml"].sort());
    }
  });

  it("names a bare length in the job's own units", async () => {
    const folder = emptyFolder();
    const text = SMALL.replace("160, radius: 1600", "16, radius: 160")
      .replace("120", "10")
      .replace("20, thickness: 5", "1, thickness: 0.25");
    await casting("scale", jobIn(folder, `units: in\n${text}`), "--tool", "7.5", "--quiet");
    expect(readdirSync(folder).sort()).toEqual(["job-7.5in.yaml", "job.yaml"]);
  });

  it("writes the job for another tool beside it, and shows what changes", async () => {
    const folder = emptyFolder();
    const { code, out, err } = await casting("scale", jobIn(folder), "--tool", "100 mm");
    expect(code).toBe(0);
    const file = join(folder, "job-100mm.yaml");
    expect(out).toMatch(
      /^tool diameter +120 mm {2}-> +100 mm\nsagitta of the face +1\.125 mm {2}-> +0\.781 mm\npieces +3 {2}-> +3\n/,
    );
    expect(out).toMatch(/\ncoverage +[\d.]+ % {2}-> +[\d.]+ %\ncast volume +\d+ mL {2}-> +\d+ mL\n/);
    expect(out).toMatch(/\npowder +\d+ g {2}-> +\d+ g\n/);
    expect(out.endsWith(`\n\n${file} is written.\n`)).toBe(true);
    const rows = out.split("\n").slice(0, 15);
    expect(new Set(rows.map((line) => line.indexOf("->"))).size).toBe(1);
    expect(new Set(rows.map((line) => line.length)).size).toBe(1);
    expect(err).not.toMatch(/caution|info/);
    expect(readFileSync(file, "utf8")).toBe(SMALL.replace("{diameter: 120}", '{diameter: "100 mm"}'));
  });

  it.each([
    ["100mm", "job-100mm.yaml"],
    [" 4.5 in ", "job-4.5in.yaml"],
    ['4 1/2"', "job-4.5in.yaml"],
    ["0.4'", "job-4.8in.yaml"],
    ["4½″", "job-4.5in.yaml"],
  ])("names the new job by its tool: %s", async (tool, name) => {
    const folder = emptyFolder();
    expect((await casting("scale", jobIn(folder), "--tool", tool, "--quiet")).err).toBe("");
    expect(readdirSync(folder)).toContain(name);
  });

  it("writes a job in JSON under a name that says so", async () => {
    const folder = emptyFolder();
    const job = join(folder, "job.json");
    writeFileSync(job, JSON.stringify({ blank: { diameter: 120, radius: 900 }, pieces: { item: "iso-4032-m8" } }));
    expect((await casting("scale", job, "--tool", "80 mm", "--quiet")).code).toBe(0);
    expect(JSON.parse(readFileSync(join(folder, "job-80mm.json"), "utf8")).tool).toEqual({ diameter: "80 mm" });
  });

  it("takes another file, needs --force over one, and has the figures as JSON", async () => {
    const folder = emptyFolder();
    const out = join(folder, "new.yaml");
    const args = ["scale", jobIn(folder), "--tool", "100 mm", "--out", out];
    expect(await casting(...args, "--quiet")).toEqual({ code: 0, out: "", err: "" });
    expect((await casting(...args)).code).toBe(1);
    const document = JSON.parse((await casting(...args, "--force", "--json")).out) as { file: string; rows: object[] };
    expect(document.file).toBe(out);
    expect(document.rows[0]).toEqual({ what: "tool diameter", unit: "mm", before: 120, after: 100 });
  });

  it("says the new tool's warnings", async () => {
    const job = jobIn(emptyFolder(), SMALL.replace("plaster", "x").concat("plaster: {fill: 12 mm}\n"));
    const { err } = await casting("scale", job, "--tool", "100 mm");
    expect(err).toMatch(/^warning: The count of 3 pieces stays as it is on a tool of 100 mm, where about 2 would/);
    expect(err).toMatch(/^warning: (?!The count)/m);
    expect(err).not.toMatch(/^(caution|info)/m);
  });

  it("compares a set-up that the new tool could not run", async () => {
    const job = jobIn(emptyFolder(), `${SMALL}setup: {offset: 40 mm}\n`);
    const { code, err } = await casting("scale", job, "--tool", "75 mm");
    expect([code, err.includes("--tool (setup")]).toEqual([0, false]);
    // It is the job's own, and no usual one: the new job is not made before it is changed.
    expect(err).toContain(
      "casting make refuses the new job until it does (setup.offset): a tool of 75 mm, with pieces to 34.5 mm from its axis, whose axis stays 40 mm from the mirror's",
    );
    expect(err).not.toContain("the usual set-up");
  });

  it("names the option where the new tool cannot be, and the file where the old one cannot", async () => {
    const wide = await casting("scale", jobIn(emptyFolder()), "--tool", "500 mm");
    expect([wide.code, wide.out]).toEqual([2, ""]);
    expect(wide.err).toMatch(/^casting: --tool \(tool\.diameter\): /);
    const tiny = await casting("scale", jobIn(emptyFolder()), "--tool", "30 mm");
    expect(tiny.code).toBe(1);
    expect(tiny.err).toMatch(/^casting: --tool \(pieces\): /);
    const broken = await casting(
      "scale",
      jobIn(emptyFolder(), SMALL.replace("count: 3", "count: 300")),
      "--tool",
      "158 mm",
    );
    expect(broken.code).toBe(1);
  });
});

describe("casting new", () => {
  it("writes a starter job, and says how to go on", async () => {
    const file = join(emptyFolder(), "mine.yaml");
    expect(await casting("new", file)).toEqual({
      code: 0,
      out: `${file} is written: fill in your blank, tool and pieces, then run  casting make ${file}\n`,
      err: "",
    });
    expect(readFileSync(file, "utf8").split("\n", 1)[0]).toMatch(new RegExp(`casting make ${file}$`));
    expect((await casting("new", file)).code).toBe(1);
    expect((await casting("new", file, "--force")).code).toBe(0);
    // A job is read from standard input by that name, never from a file of it.
    expect(await casting("new", "-")).toMatchObject({
      code: 2,
      err: "casting: - means standard input and is no name for a file; give another, such as job.yaml\n",
    });
    expect((await casting("curve", file)).code).toBe(0);
  });
});

describe("casting check", () => {
  async function made() {
    const folder = emptyFolder();
    await casting("make", jobIn(folder), "--only", "json,csv", "--quiet");
    return join(folder, "job");
  }

  it("says that a folder and the plan in it hold", async () => {
    const out = await made();
    const { code, out: said, err } = await casting("check", out);
    expect([code, err]).toEqual([0, ""]);
    expect(said).toMatch(/^holds {2}pieces\.csv: as it was written\nholds {2}plan\.json: as it was written\nholds {2}/);
    expect(said).toContain("\nholds  gap\nholds  rim\n");
    expect(said).toMatch(/\nEverything holds\.\n$/);
    expect(said).not.toContain("FAILS");
    expect((await casting("check", `${out}//`)).out).toBe(said);
    const link = join(emptyFolder(), "latest");
    symlinkSync(out, link);
    for (const name of [link, `${link}/`]) expect((await casting("check", name)).out).toBe(said);
    expect((await casting("check", join(out, "plan.json"))).out).toBe(said.split("\n").slice(2).join("\n"));
    const document = JSON.parse((await casting("check", out, "--json")).out) as { holds: boolean; findings: object[] };
    expect(document.holds).toBe(true);
    expect(document.findings[0]).toEqual({ what: "pieces.csv", holds: true, text: "as it was written" });
  });

  it("tells what was changed, lost or added, and does not look into a plan that was", async () => {
    const out = await made();
    writeFileSync(join(out, ".other\u202e.svg.tmp-1"), "");
    writeFileSync(join(out, "plan.json"), "{}");
    rmSync(join(out, "pieces.csv"));
    const { code, out: said } = await casting("check", out);
    expect(code).toBe(1);
    expect(said).toMatch(
      /^FAILS {2}pieces\.csv: pieces\.csv is missing\nFAILS {2}plan\.json: plan\.json is 2 bytes long[^\n]*\nFAILS {2}\.other\?\.svg\.tmp-1: is not in the manifest: it is of another run\n3 of 3 do not hold; run casting make again, with --force over what is there\.\n$/,
    );
    const json = await casting("check", out, "--json");
    expect(json.code).toBe(1);
    expect((JSON.parse(json.out) as { holds: boolean }).holds).toBe(false);
  });

  it("tells a plan that was tampered with, or cut", async () => {
    const folder = emptyFolder();
    const file = join(folder, "plan.json");
    writeFileSync(file, planJson({ ...plan, pour: { ...plan.pour, mixVolume: plan.pour.mixVolume * 2 } }));
    const { code, out } = await casting("check", file);
    expect(code).toBe(1);
    expect(out).toMatch(/^FAILS {2}/m);
    expect(out).toMatch(/^holds {2}/m);
    writeFileSync(file, planJson(plan).slice(0, -20));
    expect(await casting("check", file)).toMatchObject({
      code: 1,
      out: `FAILS  plan: ${file} is not whole JSON: it was cut or changed, or is no plan\n1 of 1 does not hold; run casting make again, with --force over what is there.\n`,
    });
  });

  it.each([
    ["tool.yaml", "title: Tool\nblank: {diameter: 250 mm, focal-ratio: 5}\npieces: {item: iso-4032-m10}\n"],
    ["tool.json", '{"blank": {"diameter": 250, "focal-ratio": 5}, "pieces": {"item": "iso-4032-m10"}}'],
  ])("tells a job that is named in place of its plan: %s", async (name, text) => {
    const file = join(emptyFolder(), name);
    writeFileSync(file, text);
    expect(await casting("check", file)).toEqual({
      code: 2,
      out: "",
      err: `casting: ${file} is a job, not a plan; name the plan.json or the folder that casting make wrote from it\n`,
    });
  });

  it("tells a folder that is no set, and what is not there", async () => {
    const folder = emptyFolder();
    mkdirSync(join(folder, "sub"));
    expect((await casting("check", join(folder, "sub"))).out).toMatch(
      /^FAILS {2}manifest: .* has no whole manifest\.json: the set was cut, or is none\n1 of 1 does not hold/,
    );
    expect(await casting("check", join(folder, "none"))).toEqual({
      code: 2,
      out: "",
      err: `casting: ${join(folder, "none")} could not be read: there is no such file or folder; name a plan.json or a folder that casting make wrote\n`,
    });
    expect((await casting("check", "/")).code).toBe(1);
  });
});

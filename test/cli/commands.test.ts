import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { VERSION } from "../../packages/casting-core/src/version.js";
import { casting, contents, emptyFolder } from "./support.js";

const SMALL =
  "blank: {diameter: 200, radius: 1600}\npieces: {shape: square, across: 25, thickness: 5, density: 2.35}\n";

function jobIn(folder: string, text = SMALL): string {
  const file = join(folder, "job.yaml");
  writeFileSync(file, text);
  return file;
}

describe("make", () => {
  it("writes every file of the contract and a manifest, nothing else, beside the job", async () => {
    const folder = emptyFolder();
    const { code, out, err } = await casting(
      "make",
      jobIn(folder, `${SMALL}container: {shape: round, diameter: 150, height: 200}\n`),
    );
    expect(code).toBe(0);
    expect(err).toMatch(/^caution: /);
    expect(out).toMatch(/pieces +\d+/);
    expect(readdirSync(folder).sort()).toEqual(["job", "job.yaml"]);
    expect(readdirSync(join(folder, "job")).sort()).toEqual(
      "dam.svg form.svg gauge.svg grooves.dxf grooves.svg job-sheet.html manifest.json pieces.csv placement.svg plan.json templates.pdf".split(
        " ",
      ),
    );
  });

  it("leaves the gauge out and says so without a container", async () => {
    const folder = emptyFolder();
    const { err } = await casting("make", jobIn(folder));
    expect(readdirSync(join(folder, "job"))).not.toContain("gauge.svg");
    expect(err).toMatch(/gauge/);
  });

  it("writes the same bytes again, and only with --force", async () => {
    const folder = emptyFolder();
    const job = jobIn(folder);
    await casting("make", job);
    const first = contents(join(folder, "job"));
    const again = await casting("make", job);
    expect(again.code).toBe(1);
    expect(again.err).toMatch(/already there; give --force/);
    expect(contents(join(folder, "job"))).toEqual(first);
    expect((await casting("make", job, "--force", "--quiet")).code).toBe(0);
    expect(contents(join(folder, "job"))).toEqual(first);
  });

  it("writes nothing with --dry-run and one JSON document with --json", async () => {
    const folder = emptyFolder();
    const { code, out } = await casting("make", jobIn(folder), "--dry-run", "--json", "--seed", "4");
    expect(code).toBe(0);
    const plan = JSON.parse(out) as { format: string; layout: { seed: number } };
    expect(plan.format).toBe("casting-plan/1");
    expect(plan.layout.seed).toBe(4);
    expect(readdirSync(folder)).toEqual(["job.yaml"]);
  });

  it("writes a part with --only, by kind or by file", async () => {
    const folder = emptyFolder();
    await casting("make", jobIn(folder), "--only", "csv,form.svg");
    expect(readdirSync(join(folder, "job")).sort()).toEqual(["form.svg", "manifest.json", "pieces.csv"]);
    const wrong = await casting("make", join(folder, "job.yaml"), "--only", "pfd");
    expect(wrong.code).toBe(2);
    expect(wrong.err).toMatch(/did you mean pdf\?/);
  });

  it("drops files that the earlier set had and the new one has not", async () => {
    const folder = emptyFolder();
    const job = jobIn(folder, `${SMALL}container: {shape: round, diameter: 150, height: 200}\n`);
    await casting("make", job);
    jobIn(folder);
    await casting("make", job, "--force");
    expect(readdirSync(join(folder, "job"))).not.toContain("gauge.svg");
  });

  it("names every fault of a job with file, line, column and key, and writes nothing", async () => {
    const folder = emptyFolder();
    const job = jobIn(folder, "blank: {diameter: 200, radius: 1600, thiknes: 3}\npieces: {item: iso-4032-m99}\n");
    const { code, out, err } = await casting("make", job);
    expect(code).toBe(2);
    expect(out).toBe("");
    expect(err.split("\n")).toEqual([
      `${job}:1:38: blank.thiknes: "thiknes" is not a key that is known here; did you mean "thickness"?`,
      expect.stringMatching(/:2:10: pieces\.item: "iso-4032-m99" is not a piece of the catalogue; did you mean/),
      "",
    ]);
    expect(readdirSync(folder)).toEqual(["job.yaml"]);
  });

  it("ends with 1 and the key's place where the job is valid but cannot be done", async () => {
    const folder = emptyFolder();
    const job = jobIn(folder, `${SMALL}layout: {count: 900}\n`);
    const { code, err } = await casting("make", job);
    expect(code).toBe(1);
    expect(err).toMatch(/job\.yaml:3:10: layout\.count: 900 pieces were asked for, but room was found for \d+ only/);
    expect(readdirSync(folder)).toEqual(["job.yaml"]);
  });
});

describe("the parts", () => {
  it.each([
    ["layout", ["format", "generator", "job", "layout", "notes"]],
    ["grooves", ["format", "generator", "grooves", "job", "notes"]],
    ["mix", ["format", "generator", "job", "notes", "pour"]],
    ["curve", ["blank", "format", "generator", "job", "notes", "tool"]],
  ])("%s prints its own keys as JSON", async (command, keys) => {
    const { code, out } = await casting(command, jobIn(emptyFolder()), "--json");
    expect(code).toBe(0);
    expect(Object.keys(JSON.parse(out) as object).sort()).toEqual(keys);
  });

  it("mixes without a job", async () => {
    const { code, out } = await casting(
      "mix",
      "--tool",
      "300mm",
      "--radius",
      "3060mm",
      "--fill",
      "32mm",
      "--container",
      "round 230mm",
      "--json",
    );
    expect(code).toBe(0);
    const { pour } = JSON.parse(out) as { pour: { moldVolume: number; batches: { mixMark: number }[] } };
    expect(pour.moldVolume).toBeCloseTo(2391.95, 1);
    expect(pour.batches[0]!.mixMark).toBeCloseTo((pour.moldVolume * 1.1 * 1000) / (Math.PI * 115 * 115), 6);
  });

  it("reads a curve from readings alone, over what the instrument spans", async () => {
    const { code, out } = await casting("curve", "--ring", "125mm", "--ball", "6mm", "--readings", "0.642,0.645,0.639");
    expect(code).toBe(0);
    expect(out).toMatch(/^curve +concave, radius 3046 mm, sagitta 0\.641 mm over 125 mm$/m);
    expect(out).not.toMatch(/tool/);
    expect(out).toMatch(/3 readings, standard deviation 3\.0 µm; radius give or take 17\.5 mm/);
  });

  it("notes of readings alone nothing of a blank and a tool that nobody gave", async () => {
    const read = ["curve", "--bar", "50mm", "--readings", "0.1"];
    const { code, err } = await casting(...read, "--target-radius", "3000mm");
    expect(code).toBe(0);
    expect(err).not.toMatch(/blank of|blank's|tool/);
    expect((await casting("curve", "--bar", "2in", "--readings", "0.01in")).err).not.toMatch(/tool/);
    expect((await casting(...read, "--diameter", "60mm")).err).toMatch(
      /A blank's diameter of 60 mm is unusually small/,
    );
  });

  it("reads a curve without a job", async () => {
    const { code, out } = await casting("curve", "--diameter", "400mm", "--focal-ratio", "3.825");
    expect(code).toBe(0);
    expect(out).toMatch(/radius 3060 mm, sagitta 6.543 mm/);
  });

  it.each([
    [["mix"], /needs a job, or --tool and --fill/],
    [["mix", "--tool", "300"], /--fill: /],
    [["mix", "--tool", "30 0"], /--tool: "30 0" is not a length/],
    [["mix", "--tool", "300", "--fill", "32", "--plaster", "type-9"], /--kind|--plaster/],
    [["mix", "--tool", "300", "--fill", "32", "--container", "rond 20"], /--container: .*did you mean round/],
    [["curve", "--diameter", "400mm"], /curve is missing/],
    [["curve", "--readings", "0.642"], /--readings needs the instrument's size; write --ring/],
    [["curve", "--ring", "125mm", "--readings", "0,642"], /decimal comma; write 0\.642/],
    [["curve", "--ring", "125mm", "--readings", "0.642,80"], /--readings: a reading of 80 mm is deeper/],
    [["curve", "--diameter", "400mm", "--radius", "100mm"], /--radius: a radius of 100 mm is less than half/],
    [["list", "peices"], /did you mean pieces/],
    [["maek", "x"], /did you mean make/],
    [["make", "x", "--papre", "A4"], /did you mean --paper/],
    [["make"], /missing required argument/],
    [["make", "none.yaml"], /none.yaml could not be read: there is no such file/],
    [["make", "-", "--seed", "x"], /--seed x is not a whole number/],
    [["scale", "x.yaml"], /required option '--tool/],
  ])("%j is refused in one sentence with exit 2", async (args, words) => {
    const { code, out, err } = await casting(...args);
    expect(err).toMatch(words);
    expect(err.trim().split("\n")).toHaveLength(1);
    expect(err).not.toMatch(/\n\s+at /);
    expect(out).toBe("");
    expect(code).toBe(2);
  });
});

describe("candidates", () => {
  it("are drawn side by side with their figures, each id once", async () => {
    const folder = emptyFolder();
    const { code, out } = await casting("layout", jobIn(folder), "--candidates", "3", "--seed", "5", "--json");
    expect(code).toBe(0);
    expect((JSON.parse(out) as { candidates: { seed: number }[] }).candidates.map(({ seed }) => seed)).toEqual([
      5, 6, 7,
    ]);
    const page = readFileSync(join(folder, "job-candidates.html"), "utf8");
    const ids = [...page.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
    expect(page.match(/<svg/g)).toHaveLength(3);
    expect((await casting("layout", join(folder, "job.yaml"), "--candidates", "0")).code).toBe(2);
    expect((await casting("layout", join(folder, "job.yaml"), "--candidates", "2")).code).toBe(1);
  });
});

describe("check", () => {
  it("says that a written folder holds, and what does not when a file was changed, cut, lost or added", async () => {
    const folder = emptyFolder();
    await casting("make", jobIn(folder));
    const out = join(folder, "job");
    expect(await casting("check", out)).toMatchObject({ code: 0, err: "" });
    const csv = readFileSync(join(out, "pieces.csv"), "utf8");
    writeFileSync(join(out, "pieces.csv"), csv.replace("1,", "2,"));
    expect((await casting("check", out)).out).toMatch(/FAILS +pieces.csv: pieces.csv was changed/);
    writeFileSync(join(out, "pieces.csv"), csv.slice(0, -20));
    expect((await casting("check", out)).out).toMatch(/FAILS +pieces.csv: pieces.csv is \d+ bytes long, not \d+/);
    rmSync(join(out, "pieces.csv"));
    const lost = await casting("check", out, "--json");
    expect(lost.code).toBe(1);
    expect((JSON.parse(lost.out) as { holds: boolean }).holds).toBe(false);
    writeFileSync(join(out, "pieces.csv"), csv);
    // Names that only a run gives: a file of an earlier one, and what a killed one was preparing.
    for (const name of ["gauge.svg", ".plan.json.tmp-4711", ".job.tmp-stage"]) {
      writeFileSync(join(out, name), "");
      expect((await casting("check", out)).out).toContain(
        `FAILS  ${name}: is not in the manifest: it is of another run`,
      );
      rmSync(join(out, name));
    }
    // What cannot be of a run is the maker's own.
    const own = ["note.txt", "x.svg", "x.json", "gauge.SVG", "job-sheet.html.old", ".x.tmp-old", "x.tmp-1", "cast.pdf"];
    for (const name of own) writeFileSync(join(out, name), "oak, not pine");
    expect((await casting("check", out)).out).toMatch(/Everything holds/);
    expect((await casting("check", `${out}/`)).code).toBe(0);
    expect((await casting("check", join(out, "plan.json"))).code).toBe(0);
    expect((await casting("check", folder)).code).toBe(1);
    expect((await casting("check", join(folder, "none"))).code).toBe(2);
  });
});

describe("the rest", () => {
  it("writes a starter job that can be made", async () => {
    const folder = emptyFolder();
    const file = join(folder, "mine.yaml");
    expect((await casting("new", file)).code).toBe(0);
    expect((await casting("new", file)).code).toBe(1);
    expect((await casting("make", file, "--dry-run")).code).toBe(0);
    const inches = join(folder, "inches.yaml");
    expect((await casting("new", inches, "--units", "in")).code).toBe(0);
    expect(readFileSync(inches, "utf8").split("\n\n").slice(1).join()).not.toMatch(/\d mm|A4/);
    expect((await casting("make", inches, "--dry-run")).code).toBe(0);
  });

  it("scales a job and shows what changes", async () => {
    const folder = emptyFolder();
    const { code, out } = await casting("scale", jobIn(folder), "--tool", "100 mm");
    expect(code).toBe(0);
    expect(out).toMatch(/tool diameter +150 mm +-> +100 mm/);
    expect(readFileSync(join(folder, "job-100mm.yaml"), "utf8")).toMatch(/100 mm/);
  });

  it.each(["pieces", "plasters", "papers", "grains"])("lists %s with their sources", async (table) => {
    const { code, out } = await casting("list", table);
    expect(code).toBe(0);
    expect(out).toMatch(/\nSources\n\[1\] /);
    const json = await casting("list", table, "--json");
    expect((JSON.parse(json.out) as { rows: { source: string }[] }).rows.every((row) => row.source.length > 5)).toBe(
      true,
    );
  });

  it("opens its help with examples", async () => {
    const { code, out } = await casting("--help");
    expect(code).toBe(0);
    expect(out).toMatch(/^Examples:\n/);
    expect((await casting("make", "--help")).out).toMatch(/^Examples:\n/);
    expect((await casting("--version")).out).toBe(`${VERSION}\n`);
  });
});

// The commands that need no job: mix and curve from options alone, and the tables.
import { describe, expect, it } from "vitest";
// The commands load these only when called; loaded beforehand, their tables count for every test, not for the first alone.
import "../../packages/casting-cli/src/commands/curve.js";
import "../../packages/casting-cli/src/commands/list.js";
import "../../packages/casting-cli/src/commands/mix.js";
import { VERSION } from "../../packages/casting-core/src/version.js";
import { casting } from "./support.js";

const said = async (...args: string[]) => {
  const { code, out, err } = await casting(...args);
  expect(err).toBe("");
  expect(code).toBe(0);
  return out;
};
const json = async (...args: string[]) => JSON.parse(await said(...args, "--json", "--quiet")) as Figures;
const refused = async (...args: string[]) => {
  const { code, out, err } = await casting(...args);
  expect([code, out]).toEqual([2, ""]);
  return err;
};

/** Options alone, without a job. */
const CURVE = ["curve", "--ring", "125mm", "--ball", "6mm"];
const MIX = ["mix", "--tool", "300mm", "--radius", "3060mm", "--fill", "32mm"];

/** Figures of a document, to be looked into. */
// biome-ignore lint/suspicious/noExplicitAny: read from JSON, and compared at once
type Figures = Record<string, any>;

describe("casting mix", () => {
  const bare = MIX;

  it("says how much of what, and how high in the container", async () => {
    expect(await said(...bare, "--container", "round 230mm x 240mm", "--quiet")).toBe(
      `tool              300 mm, no pieces counted
fill line         32 mm (1 17/64 in) above the glass at the tool's edge
plaster           model stone, ISO 6873 type 3, 0.300 g of water to 1 g of powder
mix               2.63 L (2.78 US qt), of it 2.39 L in the mold
weigh out         powder 3.921 kg (8.65 lb), water 1.176 kg (2.59 lb)
in the container  water to 28.4 mm (1 7/64 in), mix to 63.3 mm (2 1/2 in)
heat              up to 87 °C inside the cast
whole tool        4.634 kg wet, 4.229 kg dry
`,
    );
  });

  it("says its cautions beside, unless it is to be quiet", async () => {
    const { code, err } = await casting(...bare);
    expect(code).toBe(0);
    expect(err).toMatch(/^caution: Never put a hand[^\n]*\ncaution: /);
    expect(err).toContain("info: No container is given");
  });

  it("takes every figure from its option, bare ones in the units asked for", async () => {
    const pour = async (...more: string[]) => (await json(...bare, ...more))["pour"] as Figures;
    const plain = await pour();
    expect(plain["mixVolume"] / plain["castVolume"]).toBeCloseTo(1.1, 9);
    const changed = await pour("--spare", "25%", "--plaster", "custom", "--water", "0.5", "--density", "2.5");
    expect(changed["mixVolume"] / changed["castVolume"]).toBeCloseTo(1.25, 9);
    expect(changed["plaster"]).toMatchObject({ kind: "custom", water: 0.5, density: 2.5 });
    const convex = await pour("--curve", "convex");
    const flat = (await json("mix", "--tool", "300mm", "--fill", "32mm", "--curve", "flat"))["pour"] as Figures;
    expect(plain["moldVolume"] - flat["moldVolume"]).toBeCloseTo(flat["moldVolume"] - convex["moldVolume"], 6);
    expect(flat["moldVolume"]).toBeCloseTo(Math.PI * 15 * 15 * 3.2, 6);
    const inches = await json("mix", "--tool", "12", "--fill", "1 1/4", "--units", "in");
    expect(inches["job"]).toMatchObject({ units: "in", tool: { diameter: 304.8 }, plaster: { fill: 31.75 } });
    expect(await said("mix", "--tool", "12", "--fill", "1 1/4", "--units", "in", "--quiet")).toMatch(
      /^tool +12 in, no pieces counted\nfill line +1 1\/4 in \(31.8 mm\)/,
    );
  });

  it("finds the fill or the tool by the powder at hand", async () => {
    const deep = await json("mix", "--tool", "300mm", "--radius", "3060mm", "--powder", "3kg");
    const wide = await json("mix", "--fill", "32mm", "--radius", "3060mm", "--powder", "3kg");
    for (const { pour } of [deep, wide]) expect(pour["batches"][0]["powder"]).toBeCloseTo(3, 6);
  });

  it("has one JSON document with the figures and the notes", async () => {
    const document = await json(...bare);
    expect(Object.keys(document)).toEqual(["format", "generator", "job", "pour", "notes"]);
    expect(document).toMatchObject({
      format: "casting-plan/1",
      generator: { name: "casting", version: VERSION },
      job: {
        units: "mm",
        blank: { curve: "concave", radius: 3060 },
        tool: { diameter: 300 },
        plaster: { kind: "type-3", water: 0.3, fill: 32, spare: 0.1 },
      },
    });
    const given = ["--plaster", "custom", "--water", "0.5", "--density", "2.5", "--spare", "20%"];
    const { job } = await json("mix", "--tool", "300", "--powder", "5 kg", ...given, "--container", "round 230mm");
    expect(job).toMatchObject({
      blank: { curve: "flat" },
      plaster: { kind: "custom", water: 0.5, density: 2.5, spare: 0.2 },
      container: { shape: "round", diameter: 230 },
    });
    expect(job["plaster"]["fill"]).toBeGreaterThan(10);
  });

  it.each([
    [
      ["mix"],
      "mix needs a job, or --tool and --fill; for example casting mix --tool 300mm --radius 3060mm --fill 32mm",
    ],
    [["mix", "job.yaml", "--fill", "3mm"], "--fill stands beside a job; change the job, or leave the job out"],
    [["mix", "--tool", "x", "--fill", "1mm"], '--tool: "x" is not a length'],
    [["mix", "--tool", "300mm", "--fill", "1mm", "--radius", "x"], '--radius: "x" is not a length'],
    [["mix", "--tool", "300mm", "--fill", "x"], '--fill: "x" is not a length'],
    [["mix", "--tool", "300mm", "--powder", "3 litres"], "--powder: "],
    [[...bare, "--spare", "x"], "--spare: "],
    [[...bare, "--water", "x"], "--water: "],
    [[...bare, "--water", "9"], "--water: a water ratio of 9 cannot be mixed"],
    [[...bare, "--density", "x"], "--density: "],
    [[...bare, "--container", "pot 3"], "--container: "],
    [[...bare, "--plaster", "tyep-3"], '--plaster: "tyep-3" is not in the table of plasters; did you mean "type-3"?'],
    [[...bare, "--curve", "hollow"], "--curve hollow is not a curve; write concave, convex or flat"],
    [[...bare, "--curve", "x".repeat(60)], `--curve ${"x".repeat(40)} is not a curve`],
    [[...bare, "--units", "cm"], "--units cm is not known; write mm or in"],
    [[...bare, "--units", "x".repeat(60)], `--units ${"x".repeat(40)} is not known`],
    [["mix", "--tool", "300mm"], "--fill: "],
  ])("%j is refused by its option", async (args, words) => {
    expect((await refused(...args)).startsWith(`casting: ${words}`), await refused(...args)).toBe(true);
  });

  it("refuses and notes sizes as a job's own, since a slip of unit looks the same", async () => {
    const err = async (...args: string[]) => (await casting("mix", ...args)).err;
    expect(await refused("mix", "--tool", "20m", "--fill", "32mm")).toBe(
      "casting: --tool: 20000 mm is above the most, 5000 mm; check the figure and its unit\n",
    );
    expect(await refused("mix", "--tool", "300mm", "--fill", "32mm", "--water", "30%")).toBe(
      'casting: --water: "30%" is not a plain number; write 0.3\n',
    );
    expect(await refused("mix", "--tool", "300mm", "--fill", "0.1mm")).toContain(
      "--fill: 0.1 mm is below the least, 0.5 mm",
    );
    expect(await refused("mix", "--tool", "300mm", "--fill", "32mm", "--radius", "3060m")).toContain("--radius: ");
    expect(await err("--tool", "1200mm", "--fill", "300mm", "--radius", "40m", "--container", "round 30mm")).toMatch(
      /A tool's diameter of 1200 mm is unusually large \(mostly 50 mm to 1000 mm\)[^\n]*\n[^\n]*A radius of curvature of 40000 mm[^\n]*\n[^\n]*A fill line of 300 mm[^\n]*\n[^\n]*A container's width of 30 mm is unusually small/,
    );
    expect(await err("--tool", "40in", "--fill", "1in", "--units", "in")).toContain("A tool's diameter of 40 in");
    // Also a size that was found.
    expect(await err("--tool", "100mm", "--powder", "4kg")).toMatch(/A fill line of 31\d\.\d+ mm is unusually large/);
    expect(await err(...bare.slice(1), "--container", "round 230mm")).not.toContain("unusually");
  });
});

describe("casting curve", () => {
  it("tells the curve of a blank and what is left to the target", async () => {
    expect(
      await said("curve", "--diameter", "400mm", "--focal-ratio", "4", "--target-radius", "3000mm", "--quiet"),
    ).toBe(
      `blank        400 mm concave, radius 3200 mm, sagitta 6.256 mm
tool         300 mm, radius 3200 mm, sagitta 3.518 mm
wanted       radius 3000 mm, sagitta 6.674 mm
still to go  0.418 mm deeper, taken off at the centre
`,
    );
  });

  it("tells what an instrument spans where no blank is given", async () => {
    expect(await said("curve", "--ring", "125mm", "--ball", "6mm", "--readings", "0.642, 0.645", "--quiet")).toBe(
      `curve     concave, radius 3038 mm, sagitta 0.643 mm over 125 mm
readings  2 readings, standard deviation 2.1 µm; radius give or take 17 mm (one standard uncertainty)
`,
    );
  });

  it("takes each figure from its option", async () => {
    expect((await json("curve", "--radius", "3060", "--diameter", "400"))["job"]).not.toHaveProperty("pieces");
    const blank = async (...args: string[]) => (await json("curve", ...args))["blank"] as Figures;
    expect(await blank("--diameter", "10", "--units", "in", "--radius", "100")).toMatchObject({
      diameter: 254,
      curveRadius: 2540,
      curve: "concave",
    });
    expect(await blank("--diameter", "200mm", "--sagitta", "2mm", "--curve", "convex")).toMatchObject({
      curve: "convex",
      // r = (100² + 2²) / 4.
      curveRadius: 2501,
    });
    expect(await blank("--diameter", "200mm", "--curve", "flat")).toMatchObject({ curve: "flat" });
    // A ring of 125 mm on a sphere of 3000 mm sinks 0.651 mm in; so do legs of 125 / 2 × √3 and a bar of 125 mm.
    const sunk = 3000 - Math.sqrt(3000 * 3000 - 62.5 * 62.5);
    const legs = (125 / 2) * Math.sqrt(3);
    for (const span of [
      ["--ring", "125mm"],
      ["--legs", `${legs}mm`],
      ["--bar", "125mm"],
    ]) {
      const found = await blank("--diameter", "300mm", ...span, "--readings", `${sunk.toFixed(6)}mm`);
      expect(found["curveRadius"], span.join(" ")).toBeCloseTo(3000, -1);
      expect(found["diameter"]).toBe(300);
    }
    // Without a blank the curve is told over what the instrument spans: legs 100 mm apart stand on 2 / √3 of that.
    const spanned = await blank("--legs", "100mm", "--readings", "0.5mm");
    expect(spanned["diameter"]).toBeCloseTo(115.470054, 6);
    expect(spanned["sagitta"]).toBeCloseTo(0.5, 9);
    // On convex glass a ring stands on its inner edge.
    const inner = ["--ring", "135mm", "--wall", "5mm", "--curve", "convex", "--readings", `${sunk.toFixed(6)}mm`];
    expect((await blank(...inner))["curveRadius"]).toBeCloseTo(3000, -1);
    // Balls of 6 mm touch concave glass 3 mm nearer to its centre of curvature.
    const ball = await blank("--ring", "125mm", "--ball", "6mm", "--readings", `${sunk.toFixed(6)}mm`);
    expect(ball["curveRadius"]).toBeCloseTo(3003, -0.5);
  });

  it("tells readings too far apart to be of one curve, and how a decimal is written", async () => {
    const args = ["curve", "--ring", "125mm", "--ball", "6mm", "--readings"];
    const { code, err } = await casting(...args, "1,5");
    expect(code).toBe(0);
    expect(err).toBe(
      "warning: The 2 readings, 1 mm and 5 mm, spread by 4 mm, 133 % of their mean, where a sphere reads the same everywhere: check each, and write decimals with a point, such as 1.5 mm.\n",
    );
    const { notes } = JSON.parse((await casting(...args, "1,5", "--json")).out) as Figures;
    expect((notes as { text: string }[]).map(({ text }) => `warning: ${text}\n`)).toEqual([err]);
    expect((await casting(...args, "1,5,1,5,1")).err).toContain("The 5 readings from 1 mm to 5 mm spread by 4 mm");
    // Half a tenth of a millimetre is a bad spread, but a spread.
    expect((await casting(...args, "0.642,0.645,0.595")).err).toBe("");
    expect((await casting(...args, "0.6,0.8")).err).toBe("");
    expect((await casting(...args, "0.6,0.86")).err).toContain("spread by 0.26 mm, 36 %");
  });

  it("says beside what is to be known, unless it is to be quiet", async () => {
    const args = ["curve", "--diameter", "2400mm", "--radius", "30m"];
    const { err, out } = await casting(...args);
    expect(err).toMatch(/^warning: A blank's diameter of 2400 mm is unusually large/);
    expect(out).toBe(await said(...args, "--quiet"));
  });

  it.each([
    [
      ["curve"],
      "curve needs a job, or a curve; for example casting curve --ring 125mm --ball 6mm --readings 0.642,0.645,0.639",
    ],
    [["curve", "x.yaml", "--radius", "3m"], "--radius stands beside a job; change the job, or leave the job out"],
    [["curve", "x.yaml", "--focal-ratio", "4"], "--focal-ratio stands beside a job"],
    [
      ["curve", "--readings", "0.642"],
      "--readings needs the instrument's size; write --ring, --legs or --bar beside it",
    ],
    [["curve", "--ring", "125mm", "--readings", "0,642"], "--readings 0,642 has a decimal comma; write 0.642"],
    [["curve", "--ring", "125mm", "--readings", " 0,64"], "--readings  0,64 has a decimal comma; write 0.64"],
    [["curve", "--ring", "125mm", "--readings", `0,${"6".repeat(60)}`], `--readings 0,${"6".repeat(38)} has a decimal`],
    [["curve", "--ring", "125mm", "--readings", "0,64,"], "--readings 0,64, has a decimal comma; write 0.64"],
    [["curve", "--ring", "125mm", "--readings", "x"], '--readings: "x" is not a length'],
    [["curve", "--ring", "x", "--readings", "1"], '--ring: "x" is not a length'],
    [["curve", "--diameter", "300mm", "--ring", "x", "--readings", "1"], '--ring: "x" is not a length'],
    [["curve", "--diameter", "300mm", "--legs", "x", "--readings", "1"], '--legs: "x" is not a length'],
    [["curve", "--diameter", "300mm", "--bar", "x", "--readings", "1"], '--bar: "x" is not a length'],
    [["curve", "--ring", "125mm", "--ball", "x", "--readings", "1"], '--ball: "x" is not a length'],
    [["curve", "--ring", "125mm", "--wall", "x", "--readings", "1"], '--wall: "x" is not a length'],
    [["curve", "--diameter", "x", "--radius", "3m"], '--diameter: "x" is not a length'],
    [["curve", "--diameter", "300mm", "--radius", "x"], '--radius: "x" is not a length'],
    [["curve", "--diameter", "300mm", "--focal-ratio", "x"], '--focal-ratio: "x" is not a number'],
    [["curve", "--diameter", "300mm", "--sagitta", "x"], '--sagitta: "x" is not a length'],
    [
      ["curve", "--diameter", "300mm", "--radius", "3m", "--target-radius", "x"],
      '--target-radius: "x" is not a length',
    ],
    [["curve", "--diameter", "300mm", "--radius", "3m", "--curve", "x"], "--curve: "],
    [["curve", "--diameter", "300mm", "--ring", "1mm", "--legs", "2mm", "--readings", "1"], "--ring: "],
    [["curve", "--diameter", "300mm", "--radius", "3m", "--units", "cm"], "--units cm is not known; write mm or in"],
  ])("%j is refused by its option", async (args, words) => {
    const err = await refused(...args);
    expect(err.startsWith(`casting: ${words}`), err).toBe(true);
  });
});

it.each([
  ["mix", "tool radius curve fill plaster water density spare container powder units"],
  ["curve", "diameter radius focal-ratio sagitta ring legs bar ball wall readings curve target-radius units"],
])("casting %s takes no option of its own beside a job", async (command, options) => {
  for (const option of options.split(" ")) {
    expect(await refused(command, "job.yaml", `--${option}`, "1")).toBe(
      `casting: --${option} stands beside a job; change the job, or leave the job out\n`,
    );
  }
});

describe("casting list", () => {
  it("prints papers with their sources", async () => {
    expect(
      await said("list", "papers"),
    ).toBe(`Papers, in mm; or a size of your own as WIDTHxHEIGHT, or full for one true-size sheet.

paper    width  height
A4       210    297     [1]
A3       297    420     [1]
A2       420    594     [1]
A1       594    841     [1]
A0       841    1189    [1]
Letter   215.9  279.4   [2]
Legal    215.9  355.6   [3]
Tabloid  279.4  431.8   [2]
Ledger   279.4  431.8   [2]

Sources
[1] ISO 216:2007
[2] ANSI/ASME Y14.1
[3] US office paper, 8 1/2 x 14 in; common practice
`);
  });

  it.each([
    ["grains", /^Grains, in µm\.\n\ngrain +size\nF16 +1230 +\[1\]\n/, /\nF1200 +3 +\[2\]\n/],
    [
      "plasters",
      /^Plasters; water in g per g of powder, expansion in %, strength in MPa\. The bag's own figures come first\.\n\nkind +name +water +expansion +strength\n/,
      /\ntype-3 +model stone, ISO 6873 type 3 +0\.3 +0 to 0\.2 +20 +\[1\]\n/,
    ],
    [
      "pieces",
      /^Pieces that can be bought; lengths in mm, density in kg\/L\. Measured sizes of your own come first\.\n\nitem +what it is +shape +size +thick +bore +density\n/,
      /\niso-4032-m10 +M10 nut, ISO 4032 +hexagon +16 +8\.4 +8\.376 +7\.85 +\[1\]\n/,
    ],
    [
      "pieces",
      /^Pieces/,
      /\nmosaic-rectangle-1x2in +1 x 2 in mosaic tile +rectangle +49\.2125 x 23\.8125 +6\.35 +2\.35 +\[\d\]\n/,
    ],
    ["pieces", /^Pieces/, /\nasme-b18\.2\.2-1\/4 +1\/4 in nut, ASME B18\.2\.2 +hexagon +11\.1125 +5\.556 +4\.975 /],
    ["pieces", /^Pieces/, /\niso-7089-m8 +M8 washer, ISO 7089 +round +16 +1\.6 +8\.4 +7\.85 +\[\d\]\n/],
  ])("prints %s in columns that line up", async (table, head, row) => {
    const text = await said("list", table);
    expect(text).toMatch(head);
    expect(text).toMatch(row);
    const lines = text.split("\n").slice(2);
    const rows = lines.slice(1, lines.indexOf(""));
    expect(new Set(rows.map((line) => line.lastIndexOf("[")))).toHaveLength(1);
    for (const line of lines) expect(line).toBe(line.trimEnd());
  });

  it("prints sizes in inches, papers too, and strengths in psi", async () => {
    const pieces = await said("list", "pieces", "--units", "in");
    expect(pieces).toMatch(/^Pieces that can be bought; lengths in inches,/);
    expect(pieces).toMatch(/\nasme-b18\.2\.2-1\/4 +1\/4 in nut, ASME B18\.2\.2 +hexagon +7\/16 +7\/32 +0\.196 +7\.85 /);
    expect(pieces).toMatch(/ rectangle +1 15\/16 x 15\/16 +1\/4 /);
    expect(await said("list", "papers", "--units", "in")).toMatch(/\nLetter +8 1\/2 +11 +\[2\]\n/);
    expect(await said("list", "plasters", "--units", "in")).toMatch(/strength in psi.*\n[\s\S]*\npottery-70 .* 2400 /);
    expect(await refused("list", "papers", "--units", "cm")).toContain("--units cm is not known; write mm or in");
  });

  it("shows no figure with more than four decimals", async () => {
    for (const table of ["pieces", "plasters", "papers", "grains"]) {
      const [figures] = (await said("list", table)).split("\nSources\n");
      expect(figures).not.toMatch(/\d\.\d{5}/);
    }
  });

  it.each([
    ["pieces", "item"],
    ["plasters", "kind"],
    ["papers", "name"],
    ["grains", "name"],
  ])("has %s as JSON, in full, each with its source", async (table, key) => {
    const document = JSON.parse(await said("list", table, "--json")) as {
      table: string;
      rows: Record<string, string>[];
    };
    expect(document.table).toBe(table);
    expect(document.rows.length).toBeGreaterThan(5);
    for (const row of document.rows) expect([typeof row[key], typeof row["source"]]).toEqual(["string", "string"]);
  });

  it.each([
    ["peices", "there is no table peices; did you mean pieces?"],
    ["constructor", "there is no table constructor; choose from pieces, plasters, papers, grains"],
    ["x".repeat(60), `there is no table ${"x".repeat(40)}; choose from`],
  ])("refuses %s", async (table, words) => {
    expect((await refused("list", table)).startsWith(`casting: ${words}`)).toBe(true);
  });
});

it.each([
  [[...CURVE, "--readings", "0.642", "0.645"], '"0.645" was read as a job file; write --readings 0.642,0.645'],
  [
    [...CURVE, "--readings", "0.642,", "0.645,", "0.639"],
    '"0.645," was read as a job file; write --readings 0.642,0.645,0.639',
  ],
  [[...MIX, "--container", "round", "230mm"], '"230mm" was read as a job file; put quotes round "round 230mm"'],
  [[...MIX, "--container=box", "30cm", "20cm"], '"30cm" was read as a job file; put quotes round "box 30cm 20cm"'],
  [["curve", "--diameter", "250", "mm", "--radius", "3m"], '"mm" was read as a job file; put quotes round "250 mm"'],
  [["scale", "job.yaml", "--tool", "200", "mm"], '"mm" was read as a job file; put quotes round "200 mm"'],
  [
    [...MIX, "--container", "round", "fixtures/sample.yaml"],
    "--tool stands beside a job; change the job, or leave the job out",
  ],
  [[...MIX, "fixtures"], "--tool stands beside a job; change the job, or leave the job out"],
  [
    ["curve", "a", "b"],
    "too many arguments for 'curve': expected 1 argument but got 2; casting curve --help shows what it takes",
  ],
])("the shell parts what stands without quotes: %j", async (args, words) => {
  expect(await refused(...args)).toBe(`casting: ${words}\n`);
});

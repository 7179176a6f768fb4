import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { paperOf } from "../../packages/casting-core/src/drawing/paper.js";
import { jobNotes } from "../../packages/casting-core/src/job/notes.js";
import { placeInJob, readJob } from "../../packages/casting-core/src/job/read.js";
import { starterJob } from "../../packages/casting-core/src/job/starter.js";
import { faults } from "../support/faults.js";

const INCHES = "blank: {diameter: 16, focal-ratio: 4}\npieces: {item: iso-4032-m12}\n";
const LEAST = "blank: {diameter: 400, radius: 3060}\npieces: {item: iso-4032-m12}\n";

describe("a job", () => {
  it("is read with every default filled in", () => {
    const job = readJob(LEAST);
    expect(job.tool).toEqual({ diameter: 300, rim: 3 });
    expect(job.layout).toEqual({ gap: 4, seed: 1, count: "max", hand: 0, "keep-clear": [] });
    expect(job.plaster).toEqual({ kind: "type-3", water: 0.3, fill: "auto", cover: 20, spare: 0.1 });
    expect(job.setup.given).toBe(false);
    expect(job.container).toBeUndefined();
    expect(job.print).toEqual({ paper: "A4", overlap: 10, guides: { sectors: 0, rings: 0 } });
  });

  it("holds pieces that fit within the rim, and says which of the two is in the way", () => {
    const wide = (across: number, rim: number) =>
      faults(
        `blank: {diameter: 160, radius: 1600}\ntool: {diameter: 90, rim: ${rim}}\npieces: {shape: square, across: ${across}, thickness: 5, density: 2.35}\n`,
      );
    expect(wide(20, 40)).toEqual([
      "3:25 pieces.across: a piece of 20 mm is larger than the 10 mm within the rim of 40 mm; take a smaller piece, or write a smaller tool.rim",
    ]);
    expect(wide(100, 3)).toEqual([
      "3:25 pieces.across: a piece of 100 mm is larger than the tool of 90 mm; check both figures and their units",
    ]);
    expect(wide(10, 40)).toEqual([]);
  });

  it("may have a tool that turns against the mirror", () => {
    const turns = (text: string) => readJob(`${LEAST}setup: {tool-turns: ${text}}\n`).setup["tool-turns"];
    expect(turns("-0.7")).toBe(-0.7);
    expect(turns("0.7")).toBe(0.7);
    expect(faults(`${LEAST}setup: {tool-turns: -11}\n`)).toEqual([
      '3:9 setup.tool-turns: "-11" is below the least, -10; check the figure and its unit',
    ]);
    expect(faults(`${LEAST}setup: {tool-turns: --1}\n`)).toEqual([expect.stringContaining("setup.tool-turns")]);
  });

  it("tells a figure below 0 with its minus", () => {
    const told = (text: string) => faults(`${LEAST}${text}\n`)[0]!.replace(/^\S+ \S+ /, "");
    const x = (text: string) => told(`layout:\n  keep-clear:\n    - {y: 0, diameter: 9, x: ${text}}`);
    expect(x('"-3,5 mm"')).toBe('"-3,5 mm" is not a length; write it with a decimal point, "-3.5 mm"');
    expect(x('"-1,600 mm"')).toBe(
      '"-1,600 mm" is not a length; write it without a comma, "-1600 mm", or with a decimal point, "-1.600 mm"',
    );
    expect(x("-3 yd")).toMatch(/^"-3 yd" has a unit that a length cannot have; the units are mm, .*", ft, '$/);
    expect(x("-abc")).toBe('"-abc" is not a length; write -40 mm');
    expect(told("setup: {tool-turns: -50%}")).toBe('"-50%" is not a plain number; write -0.5');
  });

  it("takes bare numbers in its own units, and JSON", () => {
    const job = readJob(
      '{"units": "in", "blank": {"diameter": 16, "focal-ratio": 3.8}, "pieces": {"item": "iso-4032-m12"}}',
    );
    expect(job.blank.diameter).toBeCloseTo(406.4, 9);
    expect(job.tool.diameter).toBeCloseTo(304.8, 9);
  });

  it("names a mistyped key that would tell which kind it is", () => {
    expect(faults(LEAST.replace("item:", "itme:"))).toEqual([
      expect.stringMatching(/^2:\d+ pieces\.itme: "itme" is not a key that is known here; did you mean "item"\?$/),
    ]);
    expect(faults(LEAST.replace("{item: iso-4032-m12}", "{shpe: hexagon, across: 20}"))[0]).toMatch(/"shape"\?$/);
    expect(faults(`${LEAST}container: {shap: round, diameter: 230}\n`)[0]).toMatch(/container\.shap: .*"shape"\?$/);
    expect(faults(LEAST.replace("{item: iso-4032-m12}", "{across: 20}"))).toEqual([
      expect.stringContaining(
        "neither item nor shape is given; write item: for one from the catalogue, or shape: hexagon",
      ),
    ]);
  });

  it.each([
    ["M10", "pieces.item", "write iso-4032-m10, din-934-m10 or iso-7089-m10"],
    ["1/2", "pieces.item", "write asme-b18.2.2-1/2"],
    ["1/4-20 nut", "pieces.item", "write asme-b18.2.2-1/4"],
    ["nut", "pieces.item", "casting list pieces shows what there is"],
    ["M12 nut", "pieces.item", "write iso-4032-m12, din-934-m12 or iso-7089-m12"],
    ["nut, M12, DIN 934", "pieces.item", "write din-934-m12"],
  ])("names the pieces whose name holds the most words of %s", (word, key, remedy) => {
    expect(faults(LEAST.replace("iso-4032-m12", `"${word}"`))).toEqual([
      `2:10 ${key}: "${word}" is not a piece of the catalogue; ${remedy}`,
    ]);
  });

  it("says that a piece of the catalogue has no size or density of its own", () => {
    expect(faults(LEAST.replace("m12}", "m12, density: 7.85, bore: 9}"))).toEqual([
      '2:30 pieces.density: "density" does not stand beside item; the keys are item, share, stock, or write a shape of your own in place of item',
      '2:45 pieces.bore: "bore" does not stand beside item; the keys are item, share, stock, or write a shape of your own in place of item',
    ]);
  });

  it.each([
    ["plaster: {water: 30%}", '3:11 plaster.water: "30%" is not a plain number; write 0.3'],
    ["plaster: {water: f/5}", '3:11 plaster.water: "f/5" is not a number; write a number without a unit, such as 0.30'],
    [
      "plaster: {water: 300%}",
      '3:11 plaster.water: "300%" has a unit that a number cannot have; write a number without a unit, such as 0.30',
    ],
    ["blank: {diameter: 400, focal-ratio: f/5}", '2:24 blank.focal-ratio: "f/5" is not a plain number; write 5'],
    ["blank: {diameter: 400, focal-ratio: F4.5}", '2:24 blank.focal-ratio: "F4.5" is not a plain number; write 4.5'],
  ])("answers a number written in another way with what it means, within the key's limits: %s", (line, told) => {
    const text = line.startsWith("blank") ? `pieces: {item: iso-4032-m12}\n${line}\n` : `${LEAST}${line}\n`;
    expect(faults(text)).toEqual([told]);
  });

  it("tells the bound of a volume or mass in inches so that it is accepted as it is told", () => {
    const marks = (volume: string) =>
      `units: in\n${INCHES}container: {shape: marks, height: 40, marks: [{height: 30, volume: ${volume}}]}\n`;
    expect(faults(marks("3000 qt"))).toEqual([
      '4:60 container.marks.0.volume: "3000 qt" is above the most, 2113.37 US qt; check the figure and its unit',
    ]);
    expect(readJob(marks("2113.37 US qt")).container).toBeDefined();
  });

  it("notes the square of 4 in measured in place of the one of 100 mm", () => {
    const told = (x: string) =>
      jobNotes(readJob(`units: in\n${INCHES}print: {measured: {x: ${x}, y: 3.937}}\n`)).map(({ code }) => code);
    expect(told("3.99")).toEqual(["outer-square"]);
    expect(told("4.01")).toEqual(["outer-square"]);
    expect(told("3.95")).toEqual([]);
  });

  it("reads the sample and the starter", () => {
    expect(readJob(readFileSync("fixtures/sample.yaml", "utf8")).layout.hand).toBe(0.5);
    expect(readJob(starterJob()).pieces).toHaveLength(1);
    const inches = readJob(starterJob("tool.yaml", "in"));
    expect([inches.units, inches.print.paper, inches.blank.diameter]).toEqual(["in", "Letter", 203.2]);
    expect(jobNotes(inches)).toEqual([]);
  });

  it("reads the same of a starter in JSON", () => {
    for (const units of ["mm", "in"] as const) {
      const json = starterJob("tool.JSON", units);
      expect(JSON.parse(json)).toHaveProperty("title");
      expect(readJob(json)).toEqual(readJob(starterJob("tool.yaml", units)));
    }
  });

  it("knows a name in any case and with space around it, and calls it as its table does", () => {
    const job = readJob(
      'blank: {diameter: 400, radius: 3060, material: " Borosilicate "}\npieces: {item: ISO-4032-M12}\n' +
        'plaster: {kind: Type-4}\nsetup: {grain: " f80", grades: [{grain: f120}]}\nprint: {paper: " a3 "}\n',
    );
    const { blank, pieces, plaster, setup, print } = job;
    expect([blank.material, pieces, plaster.kind, setup.grain, setup.grades, print.paper]).toEqual([
      "borosilicate",
      [{ item: "iso-4032-m12" }],
      "type-4",
      "F80",
      [{ grain: "F120" }],
      "A3",
    ]);
    expect(jobNotes(job).map(({ code }) => code)).not.toContain("material-unknown");
    expect(readJob(`${LEAST}plaster: {kind: Custom, water: 0.3, density: 2.6}\nprint: {paper: FULL}\n`)).toMatchObject({
      plaster: { kind: "custom" },
      print: { paper: "full" },
    });
  });

  it("takes a seed and a paper from outside", () => {
    const job = readJob(LEAST, { seed: 9, paper: "letter" });
    expect(job.layout.seed).toBe(9);
    expect(job.print.paper).toBe("Letter");
  });

  it.each([
    ["8.5x11in", "mm", 215.9, 279.4],
    ["9x12in", "mm", 228.6, 304.8],
    ["8.5 in x 11 in", "mm", 215.9, 279.4],
    ["8 1/2 x 11 in", "mm", 215.9, 279.4],
    ["8.5 X 14", "in", 215.9, 355.6],
    ["297 x 210MM", "in", 210, 297],
    ["21 cm x 297 mm", "mm", 210, 297],
  ] as const)("takes a paper of %s (%s)", (text, units, width, height) => {
    const { print } = readJob(`${LEAST.replace("400, radius: 3060", "400 mm, radius: 3060 mm")}units: ${units}\n`, {
      paper: text,
    });
    expect(paperOf(print.paper, units)).toEqual({ name: text, width, height });
  });

  it.each([
    ["8.5x11inn", /"8.5inn" has a unit that a length cannot have/],
    ["8,5x11in", /"8,5x11in" is not a paper that is known; .* such as 210x297 or 8.5x11in$/],
    ["11x17", /paper of 11x17 is too small for the check squares; it takes 122 mm x 148 mm or more, so check its unit/],
    ["99999x99999", /paper of 99999x99999 is larger than the 5000 mm that a page may have; check its unit/],
    ["210x297x3", /is not a paper that is known/],
    ["8 3/2x11in", /"8 3\/2in" is not a length/],
  ])("refuses a paper of %s", (paper, words) => {
    expect(faults(`${LEAST}print: {paper: "${paper}"}\n`)).toEqual([expect.stringMatching(words)]);
  });

  it.each([
    [
      "container: {shape: box, diameter: 200, width: 90, height: 100}",
      '"diameter" is not a key of shape: box; did you mean "length"?',
    ],
    [
      "container: {shape: round, width: 200, height: 100}",
      '"width" is not a key of shape: round; did you mean "diameter"?',
    ],
  ])("takes a key of another shape for the one that is missing, as one fault: %s", (line, words) => {
    expect(faults(`${LEAST}${line}\n`)).toEqual([expect.stringContaining(words)]);
    // Two that are missing, or none, are no such slip.
    expect(faults(`${LEAST}container: {shape: box, diameter: 200, height: 100}\n`)).toHaveLength(3);
    expect(faults(`${LEAST}container: {shape: round, diameter: 200, width: 90, height: 100}\n`)).toHaveLength(1);
  });

  it.each([
    ["setup: {grain: F25}", 'did you mean "F24"?'],
    ["setup: {grain: F47}", 'did you mean "F46"?'],
    ["setup: {grain: P600}", "a grit of coated paper"],
    ["setup: {grain: 9000 um}", "or write a size such as 25 µm"],
    ["plaster: {kind: type-6}", 'did you mean "type-5"?'],
  ])("means of names that are equally like the nearest in number: %s", (line, words) => {
    expect(faults(`${LEAST}${line}\n`)).toEqual([expect.stringContaining(words)]);
  });

  it.each([
    [
      "a bevel without a face",
      "diameter: 200, radius: 2000, bevel: 100",
      "blank.bevel: a bevel of 100 mm leaves no face on a blank of 200 mm;",
    ],
    [
      "a bevel through the whole thickness",
      "diameter: 200, radius: 2000, thickness: 20, bevel: 20",
      "blank.bevel: a bevel of 20 mm leaves no side of a blank 20 mm thick; check both figures and their units",
    ],
    [
      "a ring without a hole",
      "diameter: 200, readings: {instrument: {ring: 80, wall: 40}, zones: [{at: 0, reading: 0.4}]}",
      "blank.readings.instrument.wall: a wall of 40 mm leaves no hole in a ring of 80 mm; check both",
    ],
  ])("refuses %s", (_, blank, words) => {
    expect(faults(`blank: {${blank}}\npieces: {item: iso-4032-m8}\n`)).toEqual([expect.stringContaining(words)]);
  });

  it("names every fault at once, at its place, with the remedy", () => {
    expect(faults("blank: {diameter: 12, radius: 3, thikness: 5}\npiece: 3\nunits: cm\n")).toEqual(
      [
        '1:9 blank.diameter: "12" is below the least, 20 mm; check the figure and its unit',
        '1:23 blank.radius: "3" is below the least, 20 mm; check the figure and its unit',
        '1:34 blank.thikness: "thikness" is not a key that is known here; did you mean "thickness"?',
        '2:1 piece: "piece" is not a key that is known here; did you mean "pieces"?',
        '3:1 units: "cm" is not known here; did you mean "mm"?',
      ].sort(
        (a, b) =>
          Number(a.split(":")[0]) - Number(b.split(":")[0]) || Number(a.split(/[: ]/)[1]) - Number(b.split(/[: ]/)[1]),
      ),
    );
  });

  it.each([
    ["a key that stands twice", `${LEAST}title: a\nunits: mm\ntitle: b\n`, "5:1"],
    ["a key that stands twice on one line", `${LEAST}tool: {rim: 2, rim: 3}\n`, "3:16"],
    ["an anchor", `${LEAST}tool:\n  rim:   &a 2\n`, "4:10"],
    ["an anchor before a list of keys", `${LEAST}tool: &a {rim: 2}\n`, "3:7"],
    ["an alias", `title: &a x\n${LEAST}print:\n  paper: *a\n`, "1:8 5:10"],
    ["an alias of nothing", `${LEAST}title: *a\n`, "3:8"],
    ["an anchored list below the root", `${LEAST}setup:\n  turntable: [30, &b 45]\n`, "4:19"],
    ["an anchor on the whole job", `&a\n${LEAST}`, "1:1"],
    ["a key that is no word", `${LEAST}? [a]\n: 1\n`, "3:3"],
  ])("says where %s stands", (_, text, wanted) => {
    const found = faults(text).map((line) => line.split(" ")[0]);
    expect(found.join(" ")).toBe(wanted);
  });

  it.each([
    [
      "two curves",
      LEAST.replace("radius: 3060", "radius: 3060, sagitta: 6"),
      /1:\d+ blank.sagitta: the curve is given twice/,
    ],
    ["a stock of nothing", LEAST.replace("m12}", "m12, stock: 0}"), /pieces.stock: "0" is below the least, 1/],
    [
      "a share without its sign",
      `${LEAST}plaster: {spare: 10}`,
      /plaster.spare: "10" is above the most, 100 %; write 10%/,
    ],
    [
      "a first mark at the floor",
      `${LEAST}container: {shape: marks, height: 200, marks: [{height: 0, volume: 0}, {height: 60, volume: 1}]}`,
      /marks.0.height: the first mark is at 0; the floor is 0 already/,
    ],
    [
      "grades that do not get finer",
      `${LEAST}setup: {grain: F80, grades: [{grain: F80}]}`,
      /setup.grades.0.grain: F80 is no finer than F80/,
    ],
    [
      "a rate that its error swallows",
      `${LEAST}setup: {rate: {minutes: 30, change: 0.005, error: 0.003}}`,
      /setup.rate.change: a change of 0.005 mm is no more than twice its error/,
    ],
    ["no curve", LEAST.replace(", radius: 3060", ""), /blank: the curve is missing/],
    [
      "a flat with a radius",
      LEAST.replace("radius", "curve: flat, radius"),
      /blank.radius: a flat blank has no radius/,
    ],
    ["a tool wider than the blank", `${LEAST}tool: {diameter: 500}`, /tool.diameter: a tool of 500 mm is wider/],
    [
      "a radius below half the blank",
      LEAST.replace("3060", "150"),
      /blank.radius: a radius of 150 mm is less than half/,
    ],
    [
      "shares above 100 %",
      LEAST.replace("{item: iso-4032-m12}", "[{item: iso-4032-m12, share: 70%}, {item: iso-4032-m10, share: 40%}]"),
      /pieces: the shares come to 110 %/,
    ],
    [
      "shares below 100 %",
      LEAST.replace("{item: iso-4032-m12}", "{item: iso-4032-m12, share: 70%}"),
      /pieces: the shares come to 70 %/,
    ],
    [
      "item beside a shape",
      LEAST.replace("m12", "m12, shape: round"),
      /pieces.item: it stands beside shape|pieces.0.item/,
    ],
    [
      "keys of another shape",
      LEAST.replace("{item: iso-4032-m12}", "{shape: round, across: 20, thickness: 5, density: 2}"),
      /across: "across" is not a key/,
    ],
    ["headroom", `${LEAST}container: {shape: round, diameter: 230, height: 100, headroom: 100}`, /container.headroom/],
    [
      "falling marks",
      `${LEAST}container: {shape: marks, height: 200, marks: [{height: 50, volume: 2}, {height: 60, volume: 1}]}`,
      /container.marks.1.volume: the marks do not rise/,
    ],
    ["water", `${LEAST}plaster: {water: 0.1}`, /plaster.water: "0.1" is below the least, 0.18/],
    ["a hidden letter", `${LEAST}title: "a\\u202eb"`, /title: .* hidden characters/],
    ["a soft hyphen", `${LEAST}title: "a\\u00adb"`, /title: "a\?b" holds .* hidden characters/],
    ["a filler", `${LEAST}title: "a\\u3164b"`, /title: "a\?b" holds .* hidden characters/],
    [
      "a decimal comma",
      `${LEAST}tool: {rim: "2,5 mm"}`,
      /tool.rim: "2,5 mm" is not a length; write it with a decimal point/,
    ],
    ["an anchor", `${LEAST}tool: &a {rim: 2}`, /tool: anchors and aliases/],
    ["a second document", `${LEAST}---\na: 1`, /a second document/],
    ["a directive", `%YAML 1.1\n---\n${LEAST}`, /directives/],
    ["a tag", `${LEAST}title: !!str x`, /title: tags/],
    ["the same key twice", `${LEAST}title: a\ntitle: b`, /the same key stands twice/],
    ["__proto__", `${LEAST}__proto__: {a: 1}`, /__proto__: "__proto__" is not a key/],
    ["nothing", "", /the job is empty/],
    ["a list", "[1, 2]", /not a list of keys and values/],
    ["65 KiB", "a".repeat(65 * 1024), /longer than 64 KiB/],
    [
      "a long plan",
      `{\n  "format": "casting-plan/1", "notes": ["${"a".repeat(65 * 1024)}"]}`,
      /^1:1 : this is a plan, not a job; name the job/,
    ],
    ["1,100 lines", "\n".repeat(1100), /more than 1,000 lines/],
  ])("refuses %s", (_, text, words) => {
    expect(faults(text).join("\n")).toMatch(words);
  });

  it.each([
    [
      "at the end of a line",
      'title: "Tool\nblank: {diameter: 400 mm, radius: 3 m}\npieces: {item: iso-4032-m12}',
      "1:8",
    ],
    ["before a key", `title: Tool\n'${LEAST}`, "2:1"],
    ["in braces", `${LEAST}tool: {diameter: 300, rim: "3 mm}\nlayout: {seed: 1}`, "3:28"],
  ])("tells a quote that nothing closes once, where it opens: %s", (_, text, place) => {
    expect(faults(text)).toEqual([expect.stringMatching(`^${place} : a quote opens here that nothing closes;`)]);
  });

  it("tells nothing that follows from a quote closed too early", () => {
    const told = faults(`"title: 9" tool\n${LEAST}tool:\n  rim: 3\nlayout:\n  seed: 1\n`);
    expect(told).toEqual([expect.stringMatching(/^1:\d+ : the text is not YAML/)]);
  });

  it("keeps a title whose sign says how it is to be shown", () => {
    expect(readJob(`${LEAST}title: "Tool \u2699\ufe0f"`).title).toBe("Tool \u2699\ufe0f");
  });

  it("tells every line that a tab indents", () => {
    expect(faults(`${LEAST}tool:\n\trim: 3\nlayout:\n\tseed: 1\n`)).toHaveLength(2);
  });

  it.each([
    ["a figure without its brackets", "setup: {turntable: 25, weights: 5 kg}", ["[25]", "[5 kg]"]],
    ["a word", "setup: {weights: heavy}", ["masses in [ ], or each after a dash"]],
    [
      "one of several keys",
      "layout: {keep-clear: {x: 0, y: 0, diameter: 9}}",
      ["circles with x, y and diameter in [ ]"],
    ],
    [
      "thousands parted",
      "tool: {rim: 1,600 mm}",
      ['it without a comma, "1600 mm", or with a decimal point, "1.600 mm"'],
    ],
  ])("shows the form to write for %s", (_, text, forms) => {
    const told = faults(LEAST + text);
    expect(told).toEqual(forms.map((form) => expect.stringContaining(`; write ${form}`)));
  });

  it("may have 1,000 lines, and no more", () => {
    const lines = (count: number) => LEAST + "# x\n".repeat(count - 2);
    expect(faults(lines(1000))).toEqual([]);
    expect(faults(lines(1000).trimEnd())).toEqual([]);
    expect(faults(`${lines(1000)}# x`).join()).toMatch(/more than 1,000 lines/);
  });

  it("finds the place of a key for faults found later", () => {
    const placed = placeInJob(LEAST, { path: ["pieces", 0, "item"], text: "" });
    expect(placed).toMatchObject({ path: ["pieces", "item"], line: 2, column: 10 });
    expect(placeInJob("[", { path: [], text: "x" })).toEqual({ path: [], text: "x" });
  });
});

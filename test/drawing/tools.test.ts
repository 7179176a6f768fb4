// The sheets that are worked from: former, gauge, dam, retainer, and the lists beside them.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { piecesCsv } from "../../packages/casting-core/src/drawing/csv.js";
import { inkOf, overlap, textBox, touches } from "../../packages/casting-core/src/drawing/ink.js";
import { bucketPicture } from "../../packages/casting-core/src/drawing/job-sheet/bucket.js";
import { jobSheetHtml } from "../../packages/casting-core/src/drawing/job-sheet/page.js";
import { removalPicture } from "../../packages/casting-core/src/drawing/job-sheet/removal.js";
import { cutByAxis, sectionPicture } from "../../packages/casting-core/src/drawing/job-sheet/section.js";
import { stagesOf } from "../../packages/casting-core/src/drawing/job-sheet/steps.js";
import { retainerDxf } from "../../packages/casting-core/src/drawing/retainer-dxf.js";
import type { Shape, Sheet } from "../../packages/casting-core/src/drawing/sheet.js";
import { SHEETS } from "../../packages/casting-core/src/drawing/sheets.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import type { JobContainer } from "../../packages/casting-core/src/job/types.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";
import { batchesOf, capacityOf } from "../../packages/casting-core/src/pour/batches.js";
import { lines as linesOf } from "../support/dxf.js";

const planOf = (name: string) => makePlan(readJob(readFileSync(`fixtures/${name}.yaml`, "utf8")));
const plan = planOf("sample");
const fullSize = planOf("small-full-size");

/** The job sheet with plain spaces in its figures, as it is read. */
const readSheet = (of: typeof plan, drawn = ""): string => jobSheetHtml(of, () => drawn).replaceAll("\u00a0", " ");

const marks = (sheet: Sheet): readonly Shape[] => sheet.groups.find(({ id }) => id === "marks")!.shapes;
const circles = (sheet: Sheet): number[] =>
  marks(sheet).flatMap((shape) => (shape.kind === "circle" ? [shape.radius] : []));

/** Heights of level lines above the lower edge of the first rectangle, for lines of one width and dash. */
function levels(sheet: Sheet, width: number, dashed = false): number[] {
  const box = marks(sheet).find((shape) => shape.kind === "polygon");
  if (box?.kind !== "polygon") throw new Error("no strip");
  const floor = Math.max(...box.points.map(([, y]) => y));
  return marks(sheet).flatMap((shape) => {
    if (shape.kind !== "polyline" || shape.style.line !== width || (shape.style.dash !== undefined) !== dashed)
      return [];
    const [[, from], [, to]] = shape.points as [[number, number], [number, number]];
    return from === to ? [floor - from] : [];
  });
}

describe("the former", () => {
  it("is as wide as the dam's inside, with a hole that the socket passes", () => {
    expect(circles(SHEETS.form(plan))).toEqual([plan.pour.dam.formDiameter / 2, (28 + 1) / 2]);
  });

  it("has three openings, or says that there is no room for them", () => {
    const openings = (sheet: Sheet) => marks(sheet).filter((shape) => shape.kind === "path").length;
    expect(openings(SHEETS.form(plan))).toBe(3);
    const tight = makePlan(
      readJob(
        "blank: {diameter: 80, radius: 900}\ntool: {diameter: 60}\npieces: {shape: square, across: 8, thickness: 4, density: 2.4}\nsocket: {diameter: 40, length: 50}\n",
      ),
    );
    expect(openings(SHEETS.form(tight))).toBe(0);
    expect(SHEETS.form(tight).facts.join(" ")).toMatch(/no room for openings/);
  });

  it("gives way to a bar that centres for a full-size tool", () => {
    const sheet = SHEETS.form(fullSize);
    expect(sheet.caption).toMatch(/centring gauge/);
    // The dashed lines across it stand where the dam's outside is.
    const across = marks(sheet).flatMap((shape) =>
      shape.kind === "polyline" && shape.style.dash ? [shape.points[0]![0]] : [],
    );
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(114 + 2, 9);
  });
});

describe("the former's spacer", () => {
  it.each([
    ["wide enough to hold its caption", 400, 300],
    ["of 24 mm", 150, 100],
    ["as wide as the sheet", 1000, 300],
  ])("%s has the caption in it or close beside it, so that no page of a small paper cuts it off", (_, blank, tool) => {
    const of = `blank: {diameter: ${blank}, radius: 3060}\ntool: {diameter: ${tool}}\npieces: {item: iso-4032-m12}\nlayout: {count: 3}\n`;
    const sheet = SHEETS.form(makePlan(readJob(of)))!;
    const spacer = marks(sheet)
      .filter((shape) => shape.kind === "polygon")
      .map((shape) => inkOf(shape).bounds)
      .find(({ height }) => height === 16)!;
    const words = sheet.groups
      .find(({ id }) => id === "labels")!
      .shapes.filter((shape) => shape.kind === "text")
      .filter(({ at: [, y] }) => y > spacer.y && y < spacer.y + spacer.height);
    expect(words.map(({ text }) => text).join(" ")).toMatch(
      /^spacer \d+ mm: dam to the mirror's edge, equal all round$/,
    );
    const boxes = words.map(textBox);
    for (const { x, y, width, height } of boxes) {
      const inside = x > spacer.x && x + width < spacer.x + spacer.width;
      expect(inside || (x > spacer.x + spacer.width && x + width < spacer.x + spacer.width + 45)).toBe(true);
      expect(y > spacer.y && y + height < spacer.y + spacer.height).toBe(true);
    }
    expect(boxes.some((box, n) => boxes.slice(n + 1).some((other) => overlap(box, other)))).toBe(false);
  });
});

describe("the gauge", () => {
  it("has its two lines at the marks, above the strip's lower end, and again on a strip to tape outside", () => {
    const { waterMark, mixMark } = plan.pour.batches[0]!;
    const both = [waterMark!.toFixed(6), mixMark!.toFixed(6)];
    expect(levels(SHEETS.gauge(plan)!, 0.6).map((up) => up.toFixed(6))).toEqual([...both, ...both]);
  });

  it("has a second strip along the wall of a tapered container", () => {
    const batch = fullSize.pour.batches[0]!;
    const found = levels(SHEETS.gauge(fullSize)!, 0.6);
    expect(found).toHaveLength(4);
    expect(found[2]).toBeCloseTo(batch.waterMarkAlongWall!, 6);
    expect(found[3]).toBeCloseTo(batch.mixMarkAlongWall!, 6);
  });
});

it("a strip along a flaring wall is as long as the wall, and holds its mix line", () => {
  const container: JobContainer = { shape: "tapered", bottom: 120, top: 215, height: 132, headroom: 0 };
  const batches = batchesOf(0.97 * capacityOf(container), plan.pour.plaster, container);
  const sheet = SHEETS.gauge({ ...plan, job: { ...plan.job, container }, pour: { ...plan.pour, batches } })!;
  const heights = marks(sheet).flatMap((shape) => {
    if (shape.kind !== "polygon") return [];
    const ups = shape.points.map(([, y]) => y);
    return [Math.max(...ups) - Math.min(...ups)];
  });
  const line = batches[0]!.mixMarkAlongWall!;
  expect(line).toBeGreaterThan(132);
  expect(heights).toEqual([expect.closeTo(132, 6), expect.closeTo(Math.hypot(132, 47.5), 6)]);
  expect(levels(sheet, 0.6)[3]).toBeCloseTo(line, 6);
  // No name is struck through by the strip's own end.
  const ends = marks(sheet).flatMap((shape) => (shape.kind === "polygon" ? shape.points.map(([, y]) => y) : []));
  const names = sheet.groups.find(({ id }) => id === "labels")!.shapes.filter((shape) => shape.kind === "text");
  for (const { y, height } of names.filter(({ text }) => /^(MIX|WATER)/.test(text)).map(textBox))
    expect(ends.filter((end) => end > y && end < y + height)).toEqual([]);
});

describe("what lies where it was measured", () => {
  const stepped = makePlan(
    readJob(
      `blank: {diameter: 120, readings: {instrument: {bar: 80}, zones: [${[0, 60, 120].map((along) => `{at: 0, along: ${along}, reading: 0.5}`)}]}}\n` +
        "pieces: {shape: square, across: 12, thickness: 4, density: 2.4}\nlayout: {count: 3}\n" +
        "container: {shape: stacked, sections: [{bottom: 60, top: 70, height: 30}, {bottom: 80, top: 90, height: 200}]}\n",
    ),
  );

  it("a gauge for a wall that steps stands upright alone", () => {
    const { waterMark, mixMark } = stepped.pour.batches[0]!;
    const [water, mix, ...more] = levels(SHEETS.gauge(stepped)!, 0.6);
    expect([water, mix, more]).toEqual([expect.closeTo(waterMark!, 6), expect.closeTo(mixMark!, 6), []]);
  });

  it("a gauge by marks, whose wall nobody told of, too", () => {
    const marks = [{ height: 200, volume: 8000 }];
    const container = { shape: "marks" as const, height: 200, headroom: 0, marks };
    const marked = { ...plan, job: { ...plan.job, container } };
    expect([levels(SHEETS.gauge(plan)!, 0.6).length, levels(SHEETS.gauge(marked)!, 0.6).length]).toEqual([4, 2]);
  });

  it("a bar's readings bear its direction, one below the other", () => {
    const labels = SHEETS.readings(stepped)!.groups.find(({ id }) => id === "labels")!.shapes;
    const found = labels.flatMap((shape) => (shape.kind === "text" && shape.text.includes("°") ? [shape] : []));
    expect(found.map(({ text }) => text)).toEqual(["0.0 along 0°", "0.0 along 60°", "0.0 along 120°"]);
    const boxes = found.map(textBox);
    expect(boxes.some((box, n) => boxes.slice(n + 1).some((other) => overlap(box, other)))).toBe(false);
  });
});

describe("a map of readings", () => {
  it("calls more curve deeper on concave glass, and higher and steeper on convex", () => {
    const words = (curve: string) => {
      const zones = [0, 60, 120].map((along) => `{at: 0, along: ${along}, reading: ${along === 60 ? 0.53 : 0.5}}`);
      const text = `{blank: {diameter: 120, curve: ${curve}, readings: {instrument: {bar: 80}, zones: [${zones}]}}, pieces: {shape: square, across: 12, thickness: 4, density: 2.4}, layout: {count: 3}}`;
      return SHEETS.readings(makePlan(readJob(text)))!.facts.join(" ");
    };
    expect(words("concave")).toMatch(/plus is deeper\..*deepest along 60 degrees/);
    expect(words("convex")).toMatch(/plus is higher, the dome steeper\..*steepest along 60 degrees/);
  });

  it("tells which side it shows, and where angles run from", () => {
    const zones = "[{at: 0, reading: 0.5}, {at: 30, angle: 90, reading: 0.5}]";
    const text = `{blank: {diameter: 120, readings: {instrument: {ring: 50}, zones: ${zones}}}, pieces: {shape: square, across: 12, thickness: 4, density: 2.4}, layout: {count: 3}}`;
    const sheet = SHEETS.readings(makePlan(readJob(text)))!;
    expect(sheet.facts.join(" ")).toContain(
      "Seen on its face; the mark at the top is 90 degrees, counter-clockwise from the right.",
    );
    const [blank, , centre, up] = sheet.groups.find(({ id }) => id === "marks")!.shapes;
    if (blank?.kind !== "circle" || centre?.kind !== "circle" || up?.kind !== "circle") throw new Error("not as drawn");
    expect(centre.centre).toEqual(blank.centre);
    expect(up.centre).toEqual([blank.centre[0], expect.closeTo(blank.centre[1] - 30, 9)]);
  });

  it("tells an inch job's readings in inches", () => {
    const zones = [0, 60, 120].map((along) => `{at: 0, along: ${along}, reading: ${along === 60 ? 0.021 : 0.02}}`);
    const text = `{units: in, blank: {diameter: 5, readings: {instrument: {bar: 3}, zones: [${zones}]}}, pieces: {shape: square, across: 1/2, thickness: 1/8, density: 2.4}, layout: {count: 3}}`;
    const sheet = SHEETS.readings(makePlan(readJob(text)))!;
    expect(sheet.facts.join(" ")).toMatch(
      /in thousandths of an inch against .* 3 readings, standard deviation 0\.0006 in\. Astigmatism: readings swing 0\.0007 in to either side of their mean \(give or take 0\.000\d in\)/,
    );
    const labels = sheet.groups.find(({ id }) => id === "labels")!.shapes;
    const words = labels.flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));
    expect(words.slice(0, 3)).toEqual(["-0.33 along 0°", "+0.67 along 60°", "-0.33 along 120°"]);
  });

  it("asks for a bar in three directions only where none was laid so", () => {
    const words = (instrument: string, alongs: (number | undefined)[]) => {
      const zones = alongs.map((along) => `{at: 0${along === undefined ? "" : `, along: ${along}`}, reading: 0.5}`);
      const text = `{blank: {diameter: 120, readings: {instrument: {${instrument}}, zones: [${zones}]}}, pieces: {shape: square, across: 12, thickness: 4, density: 2.4}, layout: {count: 3}}`;
      return SHEETS.readings(makePlan(readJob(text)))!.facts.join(" ");
    };
    expect(words("bar: 80", [0, 60, 120])).toMatch(/No astigmatism shows beyond the error of the readings\./);
    expect(words("bar: 80", [0, 90])).toContain("For astigmatism lay the bar in three directions.");
    expect(words("ring: 80", [undefined])).toContain("A ring or three legs see the mean curvature");
  });
});

describe("the gauge's scales", () => {
  const tiny = makePlan(
    readJob(
      "blank: {diameter: 40, radius: 400}\ntool: {diameter: 30, rim: 0.5}\npieces: {shape: square, across: 3, thickness: 2, density: 2.35}\nlayout: {gap: 1}\ngrooves: {cutter: 0.6, depth: 0.5, clearance: 0.1}\ncontainer: {shape: round, diameter: 80, height: 90, headroom: 10}\n",
    ),
  );
  const onePiece = makePlan(
    readJob(
      "blank: {diameter: 60, radius: 500}\ntool: {diameter: 40}\npieces: {shape: square, across: 12, thickness: 4, density: 2.4}\nlayout: {count: 1}\ncontainer: {shape: round, diameter: 80, height: 100}\n",
    ),
  );
  const wide = makePlan(
    readJob(
      "units: in\nblank: {diameter: 14, radius: 112}\ntool: {diameter: 10.5}\npieces: {shape: square, across: 2, thickness: 1/4, density: 2.4}\ncontainer: {shape: round, diameter: 5 1/2, height: 8}\n",
    ),
  );
  it.each([
    ["sample", plan],
    ["inches", planOf("inches")],
    ["a tool of 30 mm", tiny],
    ["one piece, whose 0 finds no room below its 10", onePiece],
    ["a wide container in inches, with long names beside the numbers", wide],
  ] as const)("have every number, none on a line or on another word (%s)", (_, of) => {
    const sheet = SHEETS.gauge(of)!;
    const box = inkOf(marks(sheet)[0]!).bounds;
    const words = sheet.groups
      .find(({ id }) => id === "labels")!
      .shapes.filter((shape) => shape.kind === "text")
      .filter(({ at: [, y] }) => y < box.y + box.height && y > box.y);
    const expected = [
      ...Array.from({ length: Math.floor(box.height / 10 + 1e-9) + 1 }, (_, n) => `${10 * n} mm`),
      ...Array.from({ length: Math.floor(box.height / 25.4 + 1e-9) + 1 }, (_, n) => `${n} in`),
    ];
    expect(words.map(({ text }) => text)).toEqual(expect.arrayContaining(expected));
    // Two strips, one to stand inside, one to tape outside or along the wall; of a wall known by its marks alone the first.
    const strips = of.job.container!.shape === "marks" ? 1 : 2;
    expect(words.filter(({ text }) => /WATER|MIX/.test(text))).toHaveLength(2 * strips);
    const lines = marks(sheet)
      .map(inkOf)
      .filter(({ bounds }) => bounds.height === 0 && bounds.width > 60);
    expect(lines).toHaveLength(2 * strips);
    for (const word of words) {
      const letters = textBox(word);
      expect(lines.filter((line) => touches(line, letters))).toEqual([]);
      expect(words.filter((other) => other !== word && overlap(textBox(other), letters))).toEqual([]);
    }
    // Upward in their order on each side, so that no leader crosses another's number.
    for (const unit of ["mm", "in"]) {
      for (const strip of [0, 1].slice(0, strips)) {
        const side = words.filter(
          ({ text, at: [x] }) => new RegExp(`^\\d+ ${unit}$`).test(text) && x > box.x + box.width === (strip === 1),
        );
        expect(side.length).toBeGreaterThan(1);
        side.slice(1).forEach(({ at: [, y] }, n) => void expect(y).toBeLessThan(side[n]!.at[1]));
      }
    }
  });
});

describe("the dam", () => {
  it("is as long and as high as worked out, with the fill line and the former's underside where they are", () => {
    const sheet = SHEETS.dam(plan);
    const strip = marks(sheet)[0]!;
    if (strip.kind !== "polygon") throw new Error("no strip");
    const [xs, ys] = [strip.points.map(([x]) => x), strip.points.map(([, y]) => y)];
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(plan.pour.dam.length, 6);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(plan.pour.dam.height, 6);
    expect(levels(sheet, 0.25)).toEqual([expect.closeTo(plan.pour.fill.edge, 6)]);
    expect(levels(sheet, 0.25, true)).toEqual([expect.closeTo(plan.pour.dam.formerAt!, 6)]);
  });

  it("of a full-size tool grips the blank's side, and shows where the glass begins", () => {
    const sheet = SHEETS.dam(fullSize);
    const { bevel = 0, thickness = Infinity } = fullSize.job.blank;
    // 20 mm down the side below the bevel, or down to the table; the fill line counts from the glass.
    const glass = Math.min(bevel + 20, thickness);
    const firm = levels(sheet, 0.25).sort((a, b) => a - b);
    expect(firm).toEqual([expect.closeTo(glass, 6), expect.closeTo(glass + fullSize.pour.fill.edge, 6)]);
    const words = sheet.groups
      .flatMap(({ shapes }) => shapes.flatMap((s) => (s.kind === "text" ? [s.text] : [])))
      .join(" ");
    expect(words).toContain("close it round the blank");
    expect(words).not.toMatch(/former|on the glass/);
  });

  it.each(["dam", "form"] as const)("of a full-size tool tells of a bevel only where there is one: %s", (name) => {
    const { bevel: _, ...blank } = fullSize.job.blank;
    const words = (plan: typeof fullSize) => {
      const { groups, facts } = SHEETS[name](plan)!;
      return [...groups.flatMap(({ shapes }) => shapes.map((s) => (s.kind === "text" ? s.text : ""))), ...facts].join();
    };
    expect(words(fullSize)).toMatch(/over the bevel|below the bevel/);
    expect(words({ ...fullSize, job: { ...fullSize.job, blank } })).not.toContain("bevel");
  });
});

describe("the steps", () => {
  const stages = stagesOf(plan);
  const steps = stages.flatMap((stage) => stage.steps);
  const at = (words: string) => steps.findIndex((step) => step.includes(words));

  it("mark the index before the tool leaves the template, which lies under the film", () => {
    expect(at("Mark the dam at the template's index")).toBeGreaterThan(-1);
    expect(at("Mark the dam at the template's index")).toBeLessThan(at("Lift the tool off"));
    expect(at("Carry the index from the tool's edge to its face")).toBeGreaterThan(at("Lift the tool off"));
  });

  it("begin with the bevels, and coat light pieces with a mix that is there", () => {
    expect(steps[0]).toBe("See that the blank is bevelled, front and back, before anything is laid on it.");
    const light = stagesOf(planOf("convex")).flatMap((stage) => stage.steps);
    expect(light.find((step) => step.startsWith("Tack"))).toMatch(/first coat of the mix .* before the rest is poured/);
  });

  it("say what is too heavy where it is lifted: the mix, the tool from the glass, and onto it", () => {
    const codes = ["heavy", "heavy-bucket"];
    const notes = codes.map((code) => ({ code, level: "caution" as const, text: code }));
    const warned = stagesOf({ ...plan, notes }).map(({ heading, cautions }) => [heading, ...cautions]);
    expect(warned.filter(([, ...cautions]) => codes.some((code) => cautions.includes(code)))).toEqual([
      ["Dam and pour", "heavy-bucket"],
      ["After setting", "heavy"],
      ["Drying and first pass", "heavy"],
    ]);
  });

  it("say of the least gap what the hand leaves of it: all that was asked for where one piece is off, not two", () => {
    expect(plan.layout.gap).toBe(4);
    expect(steps[at("of its outline")]).toMatch(
      /^Lay each within 0\.5 mm of its outline: of the least gap of 4\.5\d* mm one piece off leaves 4(?:\.00\d)? mm, two off toward each other leave less\.$/,
    );
  });

  it("grease a former only where there is one", () => {
    expect(steps[at("Grease")]).toContain("Grease dam, former and the socket's threads.");
    expect(
      stagesOf(fullSize)
        .flatMap((stage) => stage.steps)
        .join("\n"),
    ).not.toContain("former");
  });
});

describe("the retainer", () => {
  const { inside, outside, holes } = plan.setup.retainer;

  it("leaves the blank its clearance, on the sheet and in the DXF alike", () => {
    expect(inside).toBe(400 + 2 * plan.setup.retainer.clearance);
    const sheet = SHEETS.retainer(plan)!;
    const radii = circles(sheet);
    expect(radii.slice(0, 2)).toEqual([outside / 2, inside / 2]);
    const dxf = retainerDxf(plan)!
      .split("\n")
      .map((line) => line.trim());
    const found = dxf.flatMap((line, n) => (line === "CIRCLE" ? [Number(dxf[dxf.indexOf("40", n) + 1])] : []));
    const wanted = [inside / 2, outside / 2, ...Array.from({ length: holes.count }, () => holes.diameter / 2), 200];
    expect(found).toEqual(wanted);
    expect([...radii].sort()).toEqual([...wanted].sort());
  });

  it("has slots whose sides run from circle to circle, the same on the sheet and in the DXF", () => {
    for (const name of ["sample", "small-full-size"]) {
      const { setup, ...rest } = planOf(name);
      const [sheet, dxf] = [SHEETS.retainer({ setup, ...rest })!, retainerDxf({ setup, ...rest })!];
      const ring = marks(sheet)[0] as Extract<Shape, { kind: "circle" }>;
      const sides = marks(sheet).flatMap((shape) =>
        shape.kind === "polyline" && shape.style.line === 0.5
          ? [shape.points.map(([x, y]) => [x - ring.centre[0], ring.centre[1] - y])]
          : [],
      );
      expect(sides).toHaveLength(2 * setup.retainer.slots.count);
      for (const ends of sides) {
        const away = ends.map(([x, y]) => Math.hypot(x!, y!));
        expect(away[0]).toBeCloseTo(setup.retainer.inside / 2, 9);
        expect(away[1]).toBeCloseTo(setup.retainer.outside / 2, 9);
      }
      expect(sides.map((ends) => ends.flat())).toEqual(
        linesOf(dxf, "SLOTS").map((line) => line.map((value) => expect.closeTo(value, 9))),
      );
    }
  });

  it("is left out for a job without a set-up", () => {
    const without = planOf("flat");
    expect(SHEETS.retainer(without)).toBeUndefined();
    expect(retainerDxf(without)).toBeUndefined();
  });
});

describe("pieces.csv", () => {
  it("never begins a cell with a formula", () => {
    const piece = { ...plan.layout.pieces[0]!, item: '=1+"1"' };
    const lines = piecesCsv({ layout: { ...plan.layout, pieces: [piece] } }).split("\r\n");
    expect(lines[0]).toBe("id,kind,item,x,y,angle");
    expect(lines[1]).toMatch(/^1,0,"'=1\+""1""",-?\d+\.\d{3},-?\d+\.\d{3},-?\d+\.\d{3}$/);
  });
});

describe("the job sheet", () => {
  const html = readSheet(plan, "<svg></svg>");

  it("tells a start, loads and a retainer of the job's own set-up alone, never of the usual one", () => {
    const without = { ...plan, job: { ...plan.job, setup: { ...plan.job.setup, given: false } } };
    const usual = readSheet(without, "<svg></svg>");
    for (const table of ["Starting, step by step", "Pressure on the pieces", "Retainer", "Speeds"]) {
      expect(html).toContain(table);
      expect(usual).not.toContain(table);
    }
    expect(usual).toContain("Write setup into the job");
  });

  it("breaks no figure from its fraction or unit, and folds wide tables on a phone with each figure beside its heading", () => {
    const inches = readFileSync("fixtures/inches.yaml", "utf8");
    const setup = "setup: {weights: [0 lb, 10 lb], grain: F80}\n";
    const sheet = jobSheetHtml(makePlan(readJob(`${inches}${setup}`)), () => "");
    expect(sheet).toContain("1\u00a01/4\u00a0in");
    expect(sheet).toMatch(/\d\u00a0%.*\d\u00a0US\u00a0qt/s);
    expect(sheet).not.toMatch(/\d (?:\d+\/\d|%|in\)|mm)/);
    const [offsets] = /<table class="grid folds"><caption>Other offsets[\s\S]*?<\/table>/.exec(sheet) ?? [];
    expect(offsets).toContain('<td data-head="Stroke">');
    // Speeds have three columns, which fit side by side.
    expect(sheet).toContain('<table class="grid"><caption>Speeds');
    // One column is in fractions of an inch or in decimals, and grains take off what notes tell in inches.
    const column = [...offsets!.matchAll(/<th scope="row" data-head="Offset">([^<]*)</g)].map(([, text]) => text!);
    expect(new Set(column.map((text) => text.includes("/")))).toHaveLength(1);
    const [grains] = /Grains down to fine grinding<[\s\S]*?<\/table>/.exec(sheet) ?? [];
    expect(grains).toMatch(/<td>0\.0\d{3}\sin<\/td><td>0\.0\d{3} to 0\.0\d{3}\sin<\/td>/);
  });

  it("tells batches, which are equal, once", () => {
    const [batch] = plan.pour.batches;
    const three = { ...plan, pour: { ...plan.pour, batches: [batch!, batch!, batch!] } };
    const [table] = /Each of 3 batches<[\s\S]*?<\/table>/.exec(readSheet(three)) ?? [];
    expect(table?.match(/<tr/g)).toHaveLength(2);
  });

  it("names the weights, marks, times and heights to work by, from the plan", () => {
    const { pour } = plan;
    const steps = stagesOf(plan)
      .flatMap(({ steps }) => steps)
      .join("\n");
    expect(steps).toContain(
      `Weigh out ${pour.batches[0]!.powder.toFixed(3)} kg of powder and ${pour.batches[0]!.water.toFixed(3)} kg of water.`,
    );
    expect(steps).toContain(
      `Fill water to the water mark, ${pour.batches[0]!.waterMark!.toFixed(1)} mm, then sift powder in until the mix stands at ${pour.batches[0]!.mixMark!.toFixed(1)} mm.`,
    );
    expect(steps).toContain(
      `Pour within ${Math.floor(pour.schedule.pourBefore)} min of the powder going in, up to the fill line 32 mm above the glass`,
    );
    expect(steps).toContain("raise the former to 42 mm above the glass");
    expect(steps).toContain(`Cut ${plan.grooves.totals.cuts} ways`);
    for (const step of steps.split("\n")) expect(html).toContain(step.replaceAll('"', "&quot;"));
  });

  it("weighs a tool without what its channels took away", () => {
    const dried = (of: typeof plan) =>
      /until it has lost (.*?) (k?g): (with its channels cut )?from ([\d.]+) kg to ([\d.]+) kg/.exec(
        stagesOf(of)
          .flatMap(({ steps }) => steps)
          .join("\n"),
      )!;
    const { pour, grooves } = plan;
    const [, lost, unit, words, from, to] = dried(plan);
    const removed = grooves.totals.volume / 1000;
    expect([unit, words]).toEqual(["g", "with its channels cut "]);
    expect(Number(from)).toBeCloseTo(pour.mass.wet - removed * pour.plaster.wetDensity, 3);
    expect(Number(to)).toBeCloseTo(pour.mass.dry - removed * pour.plaster.dryDensity, 3);
    expect(Number(lost) / 1000).toBeCloseTo(Number(from) - Number(to), 2);
    expect(removed).toBeGreaterThan(0.01);
    const uncut = dried({ ...plan, grooves: { ...grooves, cuts: [], totals: { ...grooves.totals, volume: 0 } } });
    expect(uncut.slice(3)).toEqual([undefined, pour.mass.wet.toFixed(3), pour.mass.dry.toFixed(3)]);
  });

  it("greases before the dam stands, and brushes after cavities are filled", () => {
    const steps = stagesOf(plan).flatMap(({ steps }) => steps);
    const place = (word: RegExp) => steps.findIndex((step) => word.test(step));
    const order = [/^Grease/, /^Put the dam/, /^Centre it/, /^Seal the dam/, /fill cavities/, /^Brush plaster/].map(
      place,
    );
    expect(order).not.toContain(-1);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it("leaves out what does not apply", () => {
    const steps = (of: typeof plan) =>
      stagesOf(of)
        .flatMap((stage) => stage.steps)
        .join("\n");
    expect(steps(plan)).toMatch(/galvanised/);
    expect(steps(fullSize)).not.toMatch(/galvanised|raise the former|Stand the socket/);
    expect(steps(fullSize)).toMatch(/round the blank itself/);
  });

  it("warns of zinc on whatever is of metal, and soaks what is not", () => {
    const degrease = (pieces: string) =>
      stagesOf(
        makePlan(readJob(`{blank: {diameter: 120, radius: 900}, pieces: ${pieces}, layout: {count: 6}}`)),
      )[0]!.steps.filter((step) => step.startsWith("Degrease"));
    const [nuts, metal, tiles] = [
      /^Degrease the nuts\. .*galvanised/,
      /^Degrease the metal pieces\. .*galvanised/,
      /soak/,
    ];
    const matching = (...words: RegExp[]) => words.map((word) => expect.stringMatching(word));
    expect(degrease("{item: iso-4032-m8}")).toEqual(matching(nuts));
    expect(degrease("{item: iso-7089-m8}")).toEqual(matching(metal));
    expect(degrease("[{item: iso-4032-m8}, {item: iso-7089-m6}]")).toEqual(matching(metal));
    expect(degrease("[{item: iso-4032-m8}, {item: glass-square-20mm}]")).toEqual(matching(nuts, tiles));
    expect(degrease("{item: glass-square-20mm}")).toEqual(matching(tiles));
  });

  it("shows every caution of the plan once, in the work it belongs to", () => {
    const cautions = plan.notes.filter(({ level }) => level === "caution");
    expect(cautions).not.toEqual([]);
    for (const { text } of cautions) {
      expect(html.split(text.replaceAll('"', "&quot;")).length - 1).toBe(1);
    }
  });

  it("loads and runs nothing, and has each id once", () => {
    expect(html).toContain(`content="default-src 'none'; style-src 'unsafe-inline'"`);
    expect(html).not.toMatch(/<script|<link|https?:|url\(/);
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
    expect(html).not.toMatch(/NaN|undefined|\[object/);
  });
});

describe("the section of the job sheet", () => {
  it("shows the glass as thick as it is at its edge", () => {
    const shapes = sectionPicture(plan).groups.find(({ id }) => id === "section-glass")!.shapes;
    const ys = shapes.flatMap((shape) => (shape.kind === "polygon" ? shape.points.map(([, y]) => y) : []));
    // Its highest points are the edges of the hollow.
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(plan.job.blank.thickness!, 6);
  });

  it("stands the pieces on the film", () => {
    const piecesAt = (film: number) =>
      sectionPicture({ ...plan, job: { ...plan.job, plaster: { ...plan.job.plaster, film } } })
        .groups.flatMap(({ shapes }) => shapes)
        .flatMap((shape) => (shape.kind === "polygon" && shape.style.fill === "grey" ? [shape.points] : []));
    const [bare, lifted] = [piecesAt(0), piecesAt(2)];
    expect(bare.length).toBeGreaterThan(3);
    expect(lifted).toEqual(bare.map((points) => points.map(([x, y]) => [x, expect.closeTo(y - 2, 9)])));
  });

  it("says of a container known by its marks that only the heights are to scale", () => {
    expect(bucketPicture(plan)!.caption).toContain("from the side, to scale,");
    const marks = { shape: "marks", height: 200, headroom: 0, marks: [{ height: 200, volume: 8000 }] } as const;
    const marked = { ...plan, job: { ...plan.job, container: { ...marks, marks: [...marks.marks] } } };
    expect(bucketPicture(marked)!.caption).toContain("heights to scale, its width not known,");
  });

  it("keeps its words clear of each other on a tool that is wide and thin", () => {
    const wide = planOf("sample");
    const flat = { ...wide, blank: { ...wide.blank, diameter: 1400 }, tool: { ...wide.tool, diameter: 1100 } };
    const words = sectionPicture(flat).groups.find(({ id }) => id === "section-words")!.shapes;
    const boxes = words.flatMap((shape) => (shape.kind === "text" ? [textBox(shape)] : []));
    expect(boxes).toHaveLength(3);
    expect(boxes.some((box, n) => boxes.slice(n + 1).some((other) => overlap(box, other)))).toBe(false);
  });

  it("is read on a phone, 358 pixels wide, and holds its words", () => {
    const pour = { ...plan.pour, dam: { ...plan.pour.dam, height: 12.984375 * 25.4 } };
    const job = { ...plan.job, units: "in" } as const;
    for (const diameter of [60, 400, 1400]) {
      const { width, groups } = sectionPicture({ ...plan, blank: { ...plan.blank, diameter }, pour, job });
      const words = groups.find(({ id }) => id === "section-words")!.shapes;
      const texts = words.flatMap((shape) => (shape.kind === "text" ? [shape] : []));
      expect(texts.map(({ text }) => text)).toContain("dam 12 63/64 in");
      for (const shape of texts) {
        expect((shape.size / width) * 358).toBeGreaterThan(9.5);
        const box = textBox(shape);
        expect(box.x).toBeGreaterThan(0);
        expect(box.x + box.width).toBeLessThan(width);
      }
    }
  });

  it("cuts each piece where the axis' line does, and none beside it", () => {
    const triangle: [number, number][] = [
      [10, -3],
      [22, -3],
      [16, 6],
    ];
    // A third of the way up from its side of 12 mm it is 8 mm wide.
    expect(cutByAxis(triangle)).toEqual([12, 20]);
    expect(cutByAxis(triangle.map(([x, y]) => [x, y + 4]))).toBeUndefined();
  });

  it("stays inside the dam", () => {
    const radius = plan.tool.diameter / 2;
    for (const { outline } of plan.layout.pieces) {
      const [from, to] = cutByAxis(outline) ?? [0, 0];
      expect(from).toBeGreaterThanOrEqual(-radius);
      expect(to).toBeLessThanOrEqual(radius);
    }
    expect(plan.layout.pieces.filter(({ outline }) => cutByAxis(outline)).length).toBeGreaterThan(5);
  });
});

describe("the section of the glass to remove", () => {
  it.each([
    ["of 3 in, to a deeper curve", "units: in\nblank: {diameter: 3, radius: 40, target: {radius: 30}}"],
    ["of 3 in, to a flatter curve", "units: in\nblank: {diameter: 3, radius: 30, target: {radius: 40}}"],
    ["of 76 mm", "blank: {diameter: 76, radius: 900, target: {radius: 800}}"],
  ])("has no label on another, or off the picture, on a blank %s", (_, text) => {
    const job = readJob(
      `${text}\npieces: {shape: square, across: 10 mm, thickness: 4 mm, density: 2.4}\nlayout: {count: 3}\n`,
    );
    const picture = removalPicture(makePlan(job))!;
    const boxes = picture.groups
      .find(({ id }) => id === "removal-words")!
      .shapes.flatMap((shape) => (shape.kind === "text" ? [textBox(shape)] : []));
    expect(boxes).toHaveLength(10);
    boxes.forEach((box, n) => {
      expect(boxes.slice(n + 1).filter((other) => overlap(box, other))).toEqual([]);
      const { x, y, width, height } = box;
      expect(Math.min(x, y, picture.width - x - width, picture.height - y - height)).toBeGreaterThan(0);
    });
  });
});

describe("the first pass on the job sheet", () => {
  it("tells a run by the figures that the notes tell it by", () => {
    // The tangent position, 0.45 in, is no fraction: 29/64 in is 0.453.
    const text =
      "units: in\nblank: {diameter: 3.6, radius: 40}\ntool: {diameter: 2.7}\npieces: {shape: square, across: 3/8, thickness: 1/4, density: 2.4}\nlayout: {count: 3}\nsetup: {stroke: 0.9}\n";
    const sheet = readSheet(makePlan(readJob(text)));
    const [offsets] = /Other offsets and strokes[\s\S]*?<\/table>/.exec(sheet) ?? [];
    expect(offsets).toMatch(/>0\.45 in<[\s\S]*>0.585 in</);
    expect(sheet).toMatch(/Offset of the axes<[^0]*0\.45 in \(11\.43 mm\)/);
  });
});

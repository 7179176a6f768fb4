// What a report says of figures made by hand, word by word.
import { describe, expect, it, vi } from "vitest";
import { faultText, isCastingError, JobError } from "../../packages/casting-cli/src/report/faults.js";
import { planRows, pourRows, type Row, table } from "../../packages/casting-cli/src/report/figures.js";
import { printNotes } from "../../packages/casting-cli/src/report/notes.js";
import { progressLine } from "../../packages/casting-cli/src/report/progress.js";
import { CastingError } from "../../packages/casting-core/src/errors.js";
import { makePlan, type PartialPlan } from "../../packages/casting-core/src/plan/make.js";
import { exampleJob } from "../support/jobs.js";
import { heard } from "./support.js";

/** The rows of a plan of which only some parts are there. */
function rows(parts: object, bare = false): Row[] {
  return planRows({ job: exampleJob(), ...parts } as PartialPlan, bare);
}

const blank = { diameter: 400, curve: "concave", curveRadius: 3060, sagitta: 6.5429 } as const;
const tool = { diameter: 300, rim: 3, curveRadius: 3060, sagitta: 3.6787 };

describe("the curve", () => {
  it("is told of blank and tool, or alone over what it spans", () => {
    expect(rows({ blank, tool })).toEqual([
      ["blank", "400 mm concave, radius 3060 mm, sagitta 6.543 mm"],
      ["tool", "300 mm, radius 3060 mm, sagitta 3.679 mm"],
    ]);
    expect(rows({ blank, tool }, true)).toEqual([["curve", "concave, radius 3060 mm, sagitta 6.543 mm over 400 mm"]]);
    expect(rows({ blank })).toEqual([]);
    expect(rows({ tool })).toEqual([]);
  });

  it("of a flat is none", () => {
    const flat = { diameter: 400, curve: "flat", sagitta: 0 } as const;
    expect(rows({ blank: flat, tool: { diameter: 300, rim: 3, sagitta: 0 } })).toEqual([
      ["blank", "400 mm flat, no curve"],
      ["tool", "300 mm, no curve"],
    ]);
  });

  it("has no more digits than its uncertainty leaves", () => {
    const of = (uncertainty: number) =>
      rows(
        { blank: { ...blank, curveRadius: 3046.1234, measured: { readings: 1, uncertainty, zones: [] } }, tool },
        true,
      );
    expect(of(0.999)[0]).toEqual(["curve", "concave, radius 3046.123 mm, sagitta 6.543 mm over 400 mm"]);
    expect(of(1)[0]).toEqual(["curve", "concave, radius 3046 mm, sagitta 6.543 mm over 400 mm"]);
    expect(of(17.54)[1]).toEqual([
      "readings",
      "one reading, spread unknown; radius give or take 17.5 mm (one standard uncertainty)",
    ]);
  });

  it("tells its uncertainty in decimals, however small", () => {
    const of = (uncertainty: number, units: "mm" | "in") =>
      rows({
        job: exampleJob({ units }),
        blank: { ...blank, measured: { readings: 1, uncertainty, zones: [] } },
        tool,
      })[2];
    for (const [uncertainty, units, told] of [
      [12.3, "in", "0.48 in"],
      [0.04, "in", "0.0016 in"],
      [0.04, "mm", "0.04 mm"],
    ] as const)
      expect(of(uncertainty, units)![1]).toContain(`give or take ${told} (`);
  });

  it("tells zones, unless all were read at the centre, and the astigmatism", () => {
    const measured = {
      readings: 3,
      spread: 2.96,
      uncertainty: 17.54,
      zones: [
        { at: 0, off: -1.25, radius: 3061 },
        { at: 120, off: 0, radius: 3060 },
        { at: 120, angle: 90, off: 2.04, radius: 3055.55 },
      ],
      astigmatism: { amount: 1.26, uncertainty: 0.34, deepest: 44.6 },
    };
    expect(rows({ blank: { ...blank, measured }, tool }).slice(2)).toEqual([
      ["readings", "3 readings, standard deviation 3.0 µm; radius give or take 17.5 mm (one standard uncertainty)"],
      ["", "0 mm out: -1.3 µm, radius 3061 mm"],
      ["", "120 mm out: +0.0 µm, radius 3060 mm"],
      ["", "120 mm out at 90°: +2.0 µm, radius 3056 mm"],
      ["astigmatism", "readings swing 1.3 µm to either side of their mean, give or take 0.3 µm, deepest along 45°"],
    ]);
    const bars = [0, 60, 120].map((along) => ({ at: 0, along, off: 1, radius: 3060 }));
    expect(rows({ blank: { ...blank, measured: { ...measured, zones: bars } }, tool }).slice(3, 6)).toEqual(
      [0, 60, 120].map((along) => ["", `0 mm out, bar along ${along}°: +1.0 µm, radius 3060 mm`]),
    );
    const centre = { ...measured, zones: [{ at: 0, off: 1, radius: 3060 }], astigmatism: undefined };
    expect(rows({ blank: { ...blank, measured: centre }, tool })).toHaveLength(3);
  });

  it("tells zones in inches in one form", () => {
    const zones = [0, 60, 82.55].map((at, n) => ({ at, off: 12.7 * (n - 1), radius: 2400 + at }));
    const measured = { readings: 3, spread: 12.7, uncertainty: 12, zones };
    const inch = rows({ blank: { ...blank, measured }, tool, job: exampleJob({ units: "in" }) });
    expect(inch.slice(2)).toEqual([
      ["readings", "3 readings, standard deviation 0.0005 in; radius give or take 0.47 in (one standard uncertainty)"],
      ["", "0 in out: -0.0005 in, radius 94.49 in"],
      ["", "2.362 in out: +0.0000 in, radius 96.85 in"],
      ["", "3.25 in out: +0.0005 in, radius 97.74 in"],
    ]);
  });

  it("tells what is left to the target", () => {
    const to = (curveRadius: number, sagitta: number) =>
      rows({ blank: { ...blank, target: { curveRadius, sagitta } }, tool }).slice(2);
    expect(to(3000, 6.6745)).toEqual([
      ["wanted", "radius 3000 mm, sagitta 6.675 mm"],
      ["still to go", "0.132 mm deeper, taken off at the centre"],
    ]);
    expect(to(3100, 6.4582)[1]).toEqual(["still to go", "0.085 mm shallower, taken off at the edge"]);
    // 6.543 mm over a root of 3053.5 mm, times what the radius is off.
    const measured = { ...blank, measured: { readings: 1, uncertainty: 20, zones: [] } };
    expect(rows({ blank: { ...measured, target: { curveRadius: 3000, sagitta: 6.6745 } }, tool })[4]).toEqual([
      "still to go",
      "0.132 mm deeper give or take 0.043 mm, taken off at the centre",
    ]);
    const dome = { ...blank, curve: "convex" as const, target: { curveRadius: 3000, sagitta: 6.6745 } };
    expect(rows({ blank: dome, tool })[3]).toEqual(["still to go", "0.132 mm deeper, taken off at the edge"]);
    expect(to(3060, 6.5429)[1]).toEqual(["still to go", "0.000 mm deeper, taken off at the centre"]);
  });
});

describe("the layout", () => {
  const quality = {
    count: 120,
    coverage: 0.7123,
    hardCoverage: 0.6,
    gapMin: 4.5001,
    radialVariation: 0.0312,
    symmetry: 0.0456,
  };
  const of = (changes: object, more: object = {}) =>
    rows({ layout: { quality: { ...quality, ...changes }, gap: 4, hand: 0.5, seed: 7, ...more } });

  it("is told by its figures", () => {
    expect(of({ latticeCount: 150 })).toEqual([
      ["pieces", "120, 80.0 % of an ordered lattice, seed 7"],
      ["coverage", "71.2 %, hard 60.0 %"],
      ["least gap", "4.5 mm (4 mm asked + 0.5 mm for the hand)"],
      ["evenness", "rings differ by 3.1 % (standard deviation), likeness when turned 0.046"],
    ]);
  });

  it("is not held to a lattice that it passes, or that is not known", () => {
    expect(of({})[0]![1]).toBe("120, seed 7");
    expect(of({ latticeCount: 119 })[0]![1]).toBe("120, seed 7");
    expect(of({ latticeCount: 120 })[0]![1]).toBe("120, 100.0 % of an ordered lattice, seed 7");
  });

  it("has no gap for a single piece, and none for the hand where that is 0", () => {
    expect(of({ gapMin: undefined })[2]).toEqual(["least gap", "a single piece"]);
    expect(of({}, { hand: 0 })[2]).toEqual(["least gap", "4.5 mm"]);
  });
});

describe("the channels", () => {
  const totals = { length: 5123.44, cuts: 31, volume: 20.4, share: 0.1234, uncut: 2 };
  const nodes = [
    [0, 0],
    [150, 0],
    [0, 150],
    [-150, 0],
  ];
  const outlets = [1, 2, 3].map((b) => ({ a: 0, b, points: [nodes[0], nodes[b]], outlet: true, cut: true }));
  const fed = { a: 0, b: 0, points: [nodes[0]], cut: true };
  const of = (changes: object) =>
    rows({ grooves: { totals, cutter: 3, depth: 2.5, nodes, edges: [fed, ...outlets], ...changes } } as never);

  it("are told by length, size and outlets", () => {
    expect(of({})).toEqual([
      ["channels", "31 cuts, 5123.4 mm altogether, 2 ways left uncut"],
      ["cutter", "3 mm wide, 2.5 mm deep, 20 mL of plaster cut away, 12.3 % of the face"],
      ["outlets", "3 round the edge, at most 180° apart"],
    ]);
    expect(of({ edges: [fed, outlets[1]] })[2]).toEqual(["outlets", "1 round the edge"]);
    expect(of({ totals: { ...totals, uncut: 0 }, edges: [] })).toEqual([
      ["channels", "31 cuts, 5123.4 mm altogether"],
      ["cutter", "3 mm wide, 2.5 mm deep, 20 mL of plaster cut away, 12.3 % of the face"],
      ["outlets", "none"],
    ]);
  });

  it("are told with their time, and both patterns, where those are known", () => {
    const patterns = [
      { pattern: "all", totals: { ...totals, length: 5123.44, cuts: 31 } },
      { pattern: "mains", totals: { ...totals, length: 3000, cuts: 12, share: 0.08, volume: 12 } },
    ];
    expect(of({ totals: { ...totals, minutes: 90 }, patterns }).slice(3)).toEqual([
      ["cutting", "1 h 30 min at the feed given, without lifts"],
      ["pattern all", "31 cuts, 5123.4 mm altogether, 12.3 % of the face, 20 mL: the job's"],
      ["pattern mains", "12 cuts, 3000 mm altogether, 8.0 % of the face, 12 mL"],
    ]);
  });
});

describe("the pour", () => {
  const batch = { powder: 2, water: 0.6 };
  const pour = {
    fill: { edge: 31.75 },
    plaster: { name: "dental stone", water: 0.3 },
    mixVolume: 1340,
    castVolume: 1218.2,
    batches: [batch],
    heat: { ceiling: 87.4 },
    mass: { wet: 5.1234, dry: 4.5 },
  };
  const of = (changes: object, units: "mm" | "in" = "mm") =>
    pourRows({ pour: { ...pour, ...changes }, job: { units } } as never);

  it("is told in both units", () => {
    expect(of({})).toEqual([
      ["fill line", "31.8 mm (1 1/4 in) above the glass at the tool's edge"],
      ["plaster", "dental stone, 0.300 g of water to 1 g of powder"],
      ["mix", "1.34 L (1.42 US qt), of it 1.22 L in the mold"],
      ["weigh out", "powder 2.000 kg (4.41 lb), water 600 g (1.32 lb)"],
      ["heat", "up to 87 °C inside the cast"],
      ["whole tool", "5.123 kg wet, 4.500 kg dry"],
    ]);
    expect(of({}, "in")[2]).toEqual(["mix", "1.42 US qt (1.34 L), of it 1.29 US qt in the mold"]);
  });

  it("tells several batches, which are equal, once, with their marks", () => {
    const marked = { ...batch, waterMark: 14.46, mixMark: 32.26 };
    expect(of({ batches: [marked, marked, marked] }).slice(3)).toEqual([
      ["each of 3 batches", "powder 2.000 kg (4.41 lb), water 600 g (1.32 lb)"],
      ["in the container", "water to 14.5 mm (9/16 in), mix to 32.3 mm (1 17/64 in)"],
      ["heat", "up to 87 °C inside the cast"],
      ["whole tool", "5.123 kg wet, 4.500 kg dry"],
    ]);
    // No level without both marks.
    expect(of({ batches: [{ ...batch, waterMark: 3 }] })[4]![0]).toBe("heat");
  });
});

describe("the first pass", () => {
  const sweep = [
    { offset: 50, stroke: 0, edgePressure: 1.234, bend: 0.051, zoning: 0 },
    { offset: 60, stroke: 20, edgePressure: 1, bend: -0.02, zoning: 0, match: 0.923 },
    { offset: 70, stroke: 0, edgePressure: 1.5, bend: 0, zoning: 0, match: -0.2 },
  ];
  const setup = {
    offset: 50,
    stroke: 0,
    overhang: 12,
    edgePressure: 1.456,
    liftsAt: 61.53,
    loads: [{ weight: 4.5, worn: 6.894757, fresh: 13.789514 }],
    speeds: [{ turntable: 30, rim: 0.6283, tool: 27 }],
    drive: { height: 52, leading: 1.218 },
    wear: { does: "deepens" },
    sweep,
    sizes: [
      { diameter: 400, mass: 9.1, pieces: 220, hollow: 21.8, reason: "evens the whole face" },
      { diameter: 300, mass: 5.12, pieces: 120, hollow: 21.8, reason: "the job's" },
    ],
    bevel: { needed: 1.5, edgeRemoval: 0.2054 },
    grains: [{ name: "F80" }, { name: "F120" }],
    retainer: { inside: 401, height: 20 },
  };
  const of = (changes: object) => rows({ setup: { ...setup, ...changes } });
  const row = (what: string, changes: object) => of(changes).find(([name]) => name === what)?.[1];

  it("is told with runs and sizes to choose from where it was asked for by itself", () => {
    expect(of({})).toEqual([
      ["offset", "50 mm from axis to axis, overhang 12 mm, stroke 0 mm"],
      ["edge pressure", "1.46 times the mean; the far side lifts from 61.53 mm on"],
      // A pound per square inch is 6.894757 kPa.
      ["weight 4.500 kg", "6.9 kPa (1.00 psi) worn in, 13.8 kPa (2.00 psi) fresh"],
      ["turntable 30 rpm", "rim 0.63 m/s, tool 27.0 rpm"],
      ["drive", "52 mm above the face: leading edge 1.22 times the mean"],
      ["this pass", "deepens the curve"],
      ["other runs", "offset 50 mm, stroke 0 mm: edge 1.23 x, middle +5.1 %"],
      ["", "offset 60 mm, stroke 20 mm: edge 1.00 x, middle -2.0 %, follows the target to 92.3 %"],
      ["", "offset 70 mm, stroke 0 mm: edge 1.50 x, too much, middle 0.0 %, leads away from the target (-20.0 %)"],
      ["tool sizes", "400 mm: 9.100 kg as thick as this one, 220 pieces, hollow 22 µm; evens the whole face"],
      ["", "300 mm: 5.120 kg as thick as this one, 120 pieces, hollow 22 µm; the job's"],
      ["bevel", "1.5 mm needed now; the edge loses 0.205 mm by all grades"],
      ["grains", "F80, F120"],
      ["retainer", "inside 401 mm, 20 mm high, for a blank taken as 66.7 mm thick"],
    ]);
  });

  it("tells a run by the figures that the notes tell it by", () => {
    const job = exampleJob({ units: "in" });
    // Not 29/64 in, 0.453.
    const run = { offset: 11.43, stroke: 22.86, edgePressure: 1, bend: 0, zoning: 0 };
    const told = rows({ setup: { ...setup, ...run, overhang: 5.08, sweep: [run], closest: run }, job });
    const of = (what: string) => told.find(([name]) => name === what)?.[1];
    expect(of("offset")).toBe("0.45 in from axis to axis, overhang 0.2 in, stroke 0.9 in");
    expect(of("other runs")).toMatch(/^offset 0\.45 in, stroke 0\.9 in: /);
    expect(of("closest")).toBe("this one");
    const other = rows({ setup: { ...setup, closest: run }, job }).find(([name]) => name === "closest");
    expect(other?.[1]).toBe("offset 0.45 in, stroke 0.9 in");
  });

  const layout = { quality: { count: 1, coverage: 0, hardCoverage: 0, radialVariation: 0, symmetry: 0 } };

  it("leaves them out beside the layout", () => {
    const job = exampleJob({ setup: { ...exampleJob().setup, given: true } });
    const short = rows({ setup, layout, job }).map(([what]) => what);
    expect(short).not.toContain("other runs");
    expect(short).not.toContain("tool sizes");
    expect(short).toContain("bevel");
    expect(short).toContain("weight 4.500 kg");
  });

  it("beside the layout is none where the job has no set-up of its own", () => {
    expect(rows({ setup, layout }).slice(4)).toEqual([
      ["first pass", "the job has no setup; casting setup tells of the usual one"],
    ]);
  });

  it.each([
    ["toward", 1, "toward the target in middle against edge; judged by all zones it follows the target to 100.0 %"],
    [
      "away",
      -1,
      "away from the target in middle against edge; judged by all zones it leads away from the target (-100.0 %)",
    ],
    [
      "neither",
      0,
      "neither toward nor away from the target in middle against edge; judged by all zones it hardly follows the target (0.0 %)",
    ],
  ])("says where it leads, and by which figure: %s", (toward, match, words) => {
    expect(row("this pass", { wear: { does: "deepens", toward, match } })).toBe(`deepens the curve, ${words}`);
    // A plan of an earlier version has no such figure.
    expect(row("this pass", { wear: { does: "deepens", toward } })).toBe(`deepens the curve, ${words.split(";")[0]}`);
  });

  it("says what else is known", () => {
    expect(row("offset", { overhang: 0 })).toBe("50 mm from axis to axis, no overhang, stroke 0 mm");
    expect(row("to remove", { removal: { first: "centre", deepest: 131.6, volume: 12.4, mass: 31.2 } })).toBe(
      "132 µm at the centre, 12 mL, 31 g of glass in all",
    );
    expect(row("to remove", { removal: { first: "edge", deepest: 131.6, volume: 12.4 } })).toBe(
      "132 µm at the edge, 12 mL of glass in all",
    );
    expect(row("to remove", { removal: { first: "edge", deepest: 10517, volume: 12.4 } })).toBe(
      "10.52 mm at the edge, 12 mL of glass in all",
    );
    const one = { diameter: 45, mass: 0.069, pieces: 1, hollow: 72, reason: "the usual size" };
    expect(row("tool sizes", { sizes: [one] })).toBe(
      "45 mm: 69 g as thick as this one, 1 piece, hollow 72 µm; the usual size",
    );
    expect(row("turntable 90 rpm", { speeds: [{ turntable: 90, rim: 1.6, tool: 81 }] })).toMatch(/81.0 rpm: too fast$/);
    expect(row("weight 0 kg", { loads: [{ weight: 0, mass: 2, worn: 31, fresh: 32, edge: 31 }] })).toMatch(
      /: too much$/,
    );
    expect(row("edge pressure", { edgePressure: 10 })).toMatch(/^more than 10 times the mean; the far side lifts/);
    expect(row("other runs", { sweep: [{ ...sweep[0], edgePressure: 10 }] })).toMatch(/: edge over 10 x, too much, /);
    expect(row("closest", { closest: sweep[1] })).toBe("offset 60 mm, stroke 20 mm");
    expect(row("to the target", { time: { minutes: 100, least: 80, most: 130 } })).toBe(
      "1 h 40 min by the rate measured, 1 h 20 min to 2 h 10 min at twice its error",
    );
    expect(row("bevel", { bevel: { needed: 1.5, edgeRemoval: 0.2, renew: "F220", renewTo: 1.2 } })).toBe(
      "1.5 mm needed now; the edge loses 0.200 mm by all grades; renew it to 1.2 mm before F220",
    );
  });
});

describe("a table", () => {
  it("has its figures one below the other", () => {
    expect(
      table([
        ["a", "1"],
        ["long", "2"],
        ["", "3"],
      ]),
    ).toBe("a     1\nlong  2\n      3\n");
    expect(table([])).toBe("");
  });
});

describe("notes", () => {
  const notes = [
    { level: "info", code: "a", text: "good to know" },
    { level: "caution", code: "b", text: "hot\u202e" },
    { level: "warning", code: "c", text: "may spoil" },
    { level: "caution", code: "d", text: "sharp" },
  ] as const;

  it("come cautions first, and play nothing back", () => {
    const { said, terminal } = heard({ drawsProgress: true });
    printNotes(notes, terminal);
    expect(said.err).toBe("caution: hot?\ncaution: sharp\nwarning: may spoil\ninfo: good to know\n");
  });

  it("are broken between words on a terminal, never inside a figure", () => {
    const text = "a bevel of 3 mm loses 5.53 mm by all grades, and is gone at 1 1/8 in of the way";
    const { said, terminal } = heard({ drawsProgress: true, colour: true, width: 30 });
    printNotes([{ level: "warning", code: "a", text }], terminal);
    expect(said.err).toBe(
      "\x1b[33mwarning\x1b[0m: a bevel of 3 mm loses\n  5.53 mm by all grades, and\n  is gone at 1 1/8 in of the\n  way\n",
    );
    for (const width of [undefined, 20]) {
      const { said, terminal } = heard({ width });
      printNotes([{ level: "warning", code: "a", text }], terminal);
      expect(said.err).toBe(`warning: ${text}\n`);
    }
  });

  it("are red, yellow and faint where colours are shown", () => {
    const { said, terminal } = heard({ drawsProgress: true, colour: true });
    printNotes(notes.slice(0, 3), terminal);
    expect(said.err).toBe(
      "\x1b[31mcaution\x1b[0m: hot?\n\x1b[33mwarning\x1b[0m: may spoil\n\x1b[2minfo\x1b[0m: good to know\n",
    );
  });
});

describe("faults", () => {
  const faults = [
    { path: ["pieces", 0, "item"], text: "no such piece", line: 3, column: 9 },
    { path: [], text: "not\na job", line: 7 },
    { path: ["x".repeat(61)], text: "unknown" },
    { path: ["y".repeat(60)], text: "unknown" },
  ];

  it("are a line each, with file, line, column and key", () => {
    expect(faultText(new JobError(new CastingError("invalid", faults), "job.yaml")).split("\n")).toEqual([
      "job.yaml:3:9: pieces[0].item: no such piece",
      "job.yaml:7:1: not?a job",
      `job.yaml: ${"x".repeat(59)}…: unknown`,
      `job.yaml: ${"y".repeat(60)}: unknown`,
      "",
    ]);
  });

  it("name standard input, and no file where none is the cause", () => {
    expect(faultText(new JobError(new CastingError("invalid", faults.slice(0, 1)), "-"))).toBe(
      "standard input:3:9: pieces[0].item: no such piece\n",
    );
    expect(faultText(new CastingError("invalid", [{ path: [], text: "no" }]))).toBe("casting: no\n");
  });

  it("of a job keep their kind", () => {
    const error = new JobError(new CastingError("impossible", faults), "job.yaml");
    expect([error.kind, error.faults, error.file]).toEqual(["impossible", faults, "job.yaml"]);
    expect([isCastingError(error), isCastingError(new Error("x"))]).toEqual([true, false]);
  });
});

describe("progress", () => {
  it("is drawn on one line after a while, now and then, and wiped in the end", () => {
    vi.useFakeTimers({ now: 1000 });
    const { said, terminal } = heard({ drawsProgress: true });
    const { at, end } = progressLine(terminal);
    at!("layout", 0.1);
    vi.setSystemTime(1399);
    at!("layout", 0.2);
    expect(said.err).toBe("");
    end();
    expect(said.err).toBe("");
    vi.setSystemTime(1400);
    at!("layout", 0.299);
    vi.setSystemTime(1499);
    at!("grooves", 0.5);
    vi.setSystemTime(1500);
    at!("grooves", 1);
    vi.setSystemTime(1600);
    at!("blank", 0);
    expect(said.err).toBe(
      "\r\x1b[Klaying out the pieces … 29 %\r\x1b[Krouting the channels … 100 %\r\x1b[Kblank … 0 %",
    );
    end();
    expect(said.err.endsWith("0 %\r\x1b[K")).toBe(true);
    vi.useRealTimers();
  });

  it("names every stage that is told", () => {
    vi.useFakeTimers({ now: 0 });
    const { said, terminal } = heard({ drawsProgress: true });
    const { at } = progressLine(terminal);
    const stages = new Set<string>();
    const job = exampleJob({
      layout: { ...exampleJob().layout, count: 3 },
      setup: { ...exampleJob().setup, given: true },
    });
    makePlan(job, { progress: (stage) => stages.add(stage) });
    for (const [n, stage] of [...stages].entries()) {
      vi.setSystemTime(1000 * (n + 1));
      at!(stage, 0);
    }
    const names = ["laying out the pieces", "routing the channels"];
    expect(said.err.split("\r\x1b[K").slice(1)).toEqual(names.map((name) => `${name} … 0 %`));
    vi.useRealTimers();
  });

  it("is silent without a terminal, and when asked to be", () => {
    for (const line of [
      progressLine(heard({ drawsProgress: false }).terminal),
      progressLine(heard({ drawsProgress: true }).terminal, true),
    ]) {
      expect(line.at).toBeUndefined();
      expect(line.end()).toBeUndefined();
    }
  });
});

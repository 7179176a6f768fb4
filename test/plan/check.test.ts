import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { check } from "../../packages/casting-core/src/layout/check.js";
import type { PlacedPiece } from "../../packages/casting-core/src/layout/types.js";
import { checkPlan } from "../../packages/casting-core/src/plan/check.js";
import { planJson } from "../../packages/casting-core/src/plan/json.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";

const JOBS = readdirSync("fixtures").filter((name) => name.endsWith(".yaml"));
const written = (name: string) => planJson(makePlan(readJob(readFileSync(`fixtures/${name}`, "utf8"))));
const failed = (plan: unknown) => checkPlan(plan).findings.filter((finding) => !finding.holds);

describe("a plan as it was written", () => {
  it.each(JOBS)("%s holds", (name) => {
    expect(failed(JSON.parse(written(name)))).toEqual([]);
  });
});

it("tells the true least gap of pieces far apart where the plan tells a smaller one", () => {
  const sparse = "blank: {diameter: 260, focal-ratio: 5}\npieces: {item: iso-4032-m10}\nlayout: {count: 4}\n";
  const plan = JSON.parse(planJson(makePlan(readJob(sparse))));
  const least = plan.layout.quality.gapMin;
  expect(least).toBeGreaterThan(20);
  plan.layout.quality.gapMin = plan.layout.gap;
  expect(failed(plan).map(({ text }) => text)).toEqual([
    `the least gap is ${least.toFixed(6)} mm, not ${plan.layout.gap} mm`,
  ]);
});

it("tells an inch job's figures in inches, quarts and pounds, with the plan's own beside", () => {
  const text =
    "units: in\nblank: {diameter: 6, focal-ratio: 8}\npieces: {item: asme-b18.2.2-1/2}\nlayout: {gap: 1/4}\n";
  const found = (spoil: (plan: ReturnType<typeof makePlan>) => void) => {
    const plan = JSON.parse(planJson(makePlan(readJob(text))));
    spoil(plan);
    return failed(plan)[0]?.text;
  };
  expect(found((plan) => (plan.layout.gap = 8))).toBe(
    "the gap is 0.3150 in (8 mm) where the job asks for 0.2500 in (6.35 mm)",
  );
  expect(found((plan) => (plan.layout.quality.rimMin = 5.08))).toMatch(
    /^the least distance to the edge is 0\.\d{7} in \(\d\.\d{6} mm\), not 0\.2000 in \(5\.08 mm\)$/,
  );
  expect(found((plan) => (plan.pour.moldVolume = 946.352946))).toMatch(
    /^the mold holds 0\.\d\d US qt \([\d.]+ mL\), not 1\.00 US qt \(946\.352946 mL\)$/,
  );
  expect(found((plan) => (plan.pour.mass.wet = 0.45359237))).toMatch(
    /^the wet tool weighs [\d.]+ lb \(.* kg\), not 1\.00 lb/,
  );
  expect(found((plan) => (plan.layout.seed = 2))).toBe("the seed is 2 where the job asks for 1");
});

describe("a plan that was tampered with", () => {
  // A smaller tool for the same mirror: each plan is worked out again.
  const sample = planJson(makePlan(readJob(readFileSync("fixtures/sample.yaml", "utf8").replace("300 mm", "210 mm"))));
  // biome-ignore lint/suspicious/noExplicitAny: a plan from anywhere, to be spoilt
  const spoil: [string, string, (plan: any) => void][] = [
    [
      "another format",
      "format",
      (plan) => {
        plan.format = "casting-plan/0";
      },
    ],
    [
      "no format",
      "format",
      (plan) => {
        delete plan.format;
      },
    ],
    [
      "no layout",
      "format",
      (plan) => {
        delete plan.layout;
      },
    ],
    [
      "a piece left out",
      "pieces",
      (plan) => {
        plan.layout.pieces.pop();
      },
    ],
    [
      "a piece twice",
      "pieces",
      (plan) => {
        plan.layout.pieces.push({ ...plan.layout.pieces[0] });
        plan.layout.quality.count++;
      },
    ],
    [
      "a number twice",
      "pieces",
      (plan) => {
        plan.layout.pieces[4].id = 1;
      },
    ],
    [
      "a kind that is not",
      "pieces",
      (plan) => {
        plan.layout.pieces[3].kind = 7;
      },
    ],
    [
      "a centroid moved",
      "pieces",
      (plan) => {
        plan.layout.pieces[9].x += 0.01;
      },
    ],
    [
      "an outline turned round",
      "pieces",
      (plan) => {
        plan.layout.pieces[2].outline.reverse();
      },
    ],
    [
      "an outline cut",
      "pieces",
      (plan) => {
        plan.layout.pieces[2].outline.length = 2;
      },
    ],
    [
      "a piece moved toward another",
      "gap",
      (plan) => {
        move(plan.layout.pieces[5], plan.layout.pieces[6], 0.05);
      },
    ],
    [
      "a wider gap claimed",
      "gap",
      (plan) => {
        plan.layout.gap = 4.2;
      },
    ],
    [
      "a least gap claimed",
      "gap",
      (plan) => {
        plan.layout.quality.gapMin += 0.001;
      },
    ],
    [
      "a piece pushed into the rim",
      "rim",
      (plan) => {
        const reach = (piece: PlacedPiece) => Math.max(...piece.outline.map(([x, y]) => Math.hypot(x, y)));
        const pieces: PlacedPiece[] = plan.layout.pieces;
        outward(
          pieces.reduce((far, piece) => (reach(piece) > reach(far) ? piece : far)),
          1,
        );
      },
    ],
    [
      "a rim claimed",
      "rim",
      (plan) => {
        plan.layout.quality.rimMin = 5;
      },
    ],
    [
      "a piece on the axis",
      "axis",
      (plan) => {
        shift(plan.layout.pieces[0], -plan.layout.pieces[0].x, -plan.layout.pieces[0].y);
      },
    ],
    [
      "a circle to be kept clear",
      "kept clear",
      (plan) => {
        plan.job.layout["keep-clear"] = [{ x: 20, y: 20, diameter: 60 }];
      },
    ],
    [
      "a socket set down on the glass between the pieces",
      "kept clear",
      (plan) => {
        plan.job.socket = { ...plan.job.socket, diameter: 60, foot: "glass" };
      },
    ],
    [
      "more coverage claimed",
      "coverage",
      (plan) => {
        plan.layout.quality.coverage += 0.001;
      },
    ],
    [
      "a channel's room claimed",
      "channels",
      (plan) => {
        plan.grooves.edges[11].room += 0.5;
      },
    ],
    [
      "a channel bent",
      "totals",
      (plan) => {
        const edge = plan.grooves.edges.find((one: { points: unknown[] }) => one.points.length > 4);
        edge.points[2][0] += 1;
      },
    ],
    [
      "a channel led out of the tool",
      "channels",
      (plan) => {
        const edge = plan.grooves.edges.find((edge: { outlet?: boolean }) => edge.outlet);
        const [x, y] = edge.points.at(-1);
        edge.points.push([1.001 * x, 1.001 * y]);
      },
    ],
    [
      "a channel led through a piece",
      "channels",
      (plan) => {
        const [edge, piece] = [plan.grooves.edges[11], plan.layout.pieces[8]];
        const [[ax, ay], [bx, by]] = [piece.outline[0], piece.outline[1]];
        const [dx, dy] = [piece.x - (ax + bx) / 2, piece.y - (ay + by) / 2];
        edge.points = [-1.05, 1.05].map((share) => [piece.x + share * dx, piece.y + share * dy]);
        // What the corners and the line's ends alone would give.
        Object.assign(edge, { room: 0.9, cut: false });
      },
    ],
    [
      "a narrow channel cut",
      "channels",
      (plan) => {
        plan.grooves.edges.find((edge: { cut: boolean; room: number }) => !edge.cut && edge.room < 3.9).cut = true;
      },
    ],
    [
      "a channel to nowhere",
      "channels",
      (plan) => {
        plan.grooves.edges[0].a = 100000;
      },
    ],
    [
      "a cut left out",
      "cuts",
      (plan) => {
        plan.grooves.cuts.pop();
      },
    ],
    [
      "a cut made longer",
      "cuts",
      (plan) => {
        plan.grooves.cuts[0].push([0, 0]);
      },
    ],
    [
      "a length claimed",
      "totals",
      (plan) => {
        plan.grooves.totals.length += 1;
      },
    ],
    [
      "uncut ones hidden",
      "totals",
      (plan) => {
        plan.grooves.totals.uncut = 0;
      },
    ],
    [
      "a channel's volume claimed",
      "totals",
      (plan) => {
        plan.grooves.totals.volume *= 1.01;
      },
    ],
    [
      "a sagitta claimed",
      "curve",
      (plan) => {
        plan.blank.sagitta += 0.001;
      },
    ],
    [
      "a radius claimed",
      "curve",
      (plan) => {
        plan.tool.curveRadius += 1;
      },
    ],
    [
      "a mold claimed",
      "mold",
      (plan) => {
        plan.pour.moldVolume *= 1.0001;
      },
    ],
    [
      "a fill line claimed",
      "mold",
      (plan) => {
        plan.pour.fill.edge += 0.1;
      },
    ],
    [
      "the pieces' volume claimed",
      "volumes",
      (plan) => {
        plan.pour.piecesVolume *= 1.001;
      },
    ],
    [
      "a cast claimed",
      "volumes",
      (plan) => {
        plan.pour.castVolume -= 1;
      },
    ],
    [
      "a spare claimed",
      "volumes",
      (plan) => {
        plan.job.plaster.spare = 0.2;
      },
    ],
    [
      "less powder",
      "batches",
      (plan) => {
        plan.pour.batches[0].powder -= 0.01;
      },
    ],
    [
      "a batch too many",
      "batches",
      (plan) => {
        plan.pour.batches.push({ ...plan.pour.batches[0] });
      },
    ],
    [
      "a mix mark moved",
      "marks",
      (plan) => {
        plan.pour.batches[0].mixMark += 0.05;
      },
    ],
    [
      "a water mark moved",
      "marks",
      (plan) => {
        plan.pour.batches[0].waterMark += 0.1;
      },
    ],
    [
      "another container",
      "marks",
      (plan) => {
        plan.job.container.diameter = 240;
      },
    ],
    [
      "a tool that gains by drying",
      "masses",
      (plan) => {
        plan.pour.mass.dry = plan.pour.mass.wet + 1;
      },
    ],
    [
      "a cooler cast",
      "masses",
      (plan) => {
        plan.pour.heat.ceiling = 50;
      },
    ],
    [
      "a shorter dam",
      "dam",
      (plan) => {
        plan.pour.dam.length -= 5;
      },
    ],
    [
      "the hand left out, which would make any gap hold",
      "keys",
      (plan) => {
        delete plan.layout.hand;
      },
    ],
    [
      "the clearance left out of the job, which would let any channel be cut",
      "keys",
      (plan) => {
        delete plan.job.grooves.clearance;
      },
    ],
    [
      "a number without end",
      "keys",
      (plan) => {
        plan.pour.castVolume = Number.POSITIVE_INFINITY;
      },
    ],
    [
      "a word for a list",
      "keys",
      (plan) => {
        plan.grooves.cuts = "none";
      },
    ],
    [
      "a smaller gap than the job's",
      "job",
      (plan) => {
        plan.layout.gap = 3.9;
      },
    ],
    [
      "a narrower cutter than the job's",
      "job",
      (plan) => {
        plan.grooves.cutter = 2.5;
      },
    ],
    [
      "another fill line than the job's",
      "job",
      (plan) => {
        plan.job.plaster.fill = 30;
      },
    ],
    [
      "a piece made smaller by a hundredth",
      "pieces",
      (plan) => {
        const piece = plan.layout.pieces[7];
        piece.outline = piece.outline.map(([x, y]: [number, number]) => [
          piece.x + 0.99 * (x - piece.x),
          piece.y + 0.99 * (y - piece.y),
        ]);
      },
    ],
    [
      "a turn claimed",
      "pieces",
      (plan) => {
        plan.layout.pieces[7].angle += 1;
      },
    ],
    [
      "a piece of another kind of its job",
      "pieces",
      (plan) => {
        plan.job.pieces.push({ item: "iso-4032-m10" });
        plan.layout.pieces[7].kind = 1;
      },
    ],
    [
      "a wide channel left out",
      "channels",
      (plan) => {
        const wide = plan.grooves.edges.find((edge: { outlet?: true; cut: boolean }) => edge.outlet && edge.cut);
        const [a, b] = wide.points;
        wide.cut = false;
        plan.grooves.totals.uncut++;
        plan.grooves.totals.length -= Math.hypot(b[0] - a[0], b[1] - a[1]);
      },
    ],
    [
      "a cut moved aside",
      "cuts",
      (plan) => {
        plan.grooves.cuts[3] = plan.grooves.cuts[3].map(([x, y]: [number, number]) => [x + 1, y]);
      },
    ],
    [
      "one cut walked for another of its length",
      "cuts",
      (plan) => {
        const { cuts, totals } = plan.grooves;
        const length = (cut: [number, number][]) =>
          cut.reduce((sum, [x, y], n) => (n ? sum + Math.hypot(x - cut[n - 1]![0], y - cut[n - 1]![1]) : 0), 0);
        totals.retraced += length(cuts[1]) - length(cuts[2]);
        cuts[2] = cuts[1];
      },
    ],
    [
      "a rounded cut led into a piece",
      "rounded cuts",
      (plan) => {
        const way = plan.grooves.toolpath.find((points: unknown[]) => points.length > 20);
        way[10] = [plan.layout.pieces[0].x, plan.layout.pieces[0].y];
      },
    ],
    [
      "a rounded cut that ends early",
      "rounded cuts",
      (plan) => {
        plan.grooves.toolpath[0].pop();
      },
    ],
    [
      "a smaller socket, and more plaster to match",
      "volumes",
      (plan) => {
        plan.pour.socketVolume -= 5;
        plan.pour.castVolume += 5;
      },
    ],
    [
      "a lighter tool",
      "masses",
      (plan) => {
        plan.pour.mass.wet -= 0.05;
        plan.pour.mass.dry -= 0.05;
      },
    ],
    [
      "lighter pieces",
      "masses",
      (plan) => {
        plan.pour.mass.pieces *= 0.99;
      },
    ],
    [
      "a piece moved by a micrometre, least gap and all else as it was",
      "worked out again",
      (plan) => {
        const { pieces, gap, quality } = plan.layout;
        const { diameter, rim } = plan.tool;
        const field = { radius: diameter / 2 - rim, edge: diameter / 2, clear: [] };
        // The first piece that has a micrometre to spare in some direction.
        for (const piece of pieces) {
          for (const step of [0.001, -0.001]) {
            shift(piece, step, 0);
            const { pairs, misplaced, gapMin } = check(pieces, field, gap);
            if (pairs.length + misplaced.length === 0 && Math.abs(gapMin! - quality.gapMin) < 1e-9) return;
            shift(piece, -step, 0);
          }
        }
      },
    ],
    [
      "an evener layout claimed",
      "worked out again",
      (plan) => {
        plan.layout.quality.radialVariation *= 0.9;
      },
    ],
    [
      "a caution left out",
      "worked out again",
      (plan) => {
        plan.notes.splice(0, 1);
      },
    ],
    [
      "a pass that keeps longer",
      "worked out again",
      (plan) => {
        plan.setup.time = { minutes: 10, least: 5, most: 20 };
      },
    ],
    [
      "less heat",
      "worked out again",
      (plan) => {
        plan.pour.heat = { rise: 50, ceiling: 70 };
      },
    ],
    [
      "a plaster that is not",
      "worked out again",
      (plan) => {
        plan.job.plaster.kind = "type-9";
      },
    ],
    [
      "a text for a number",
      "mold",
      (plan) => {
        plan.pour.moldVolume = "2391";
      },
    ],
  ];

  function shift(piece: { x: number; y: number; outline: [number, number][] }, dx: number, dy: number): void {
    piece.x += dx;
    piece.y += dy;
    piece.outline = piece.outline.map(([x, y]) => [x + dx, y + dy]);
  }
  // biome-ignore lint/suspicious/noExplicitAny: pieces of a plan from anywhere
  function move(a: any, b: any, share: number): void {
    shift(a, (b.x - a.x) * share, (b.y - a.y) * share);
  }
  // biome-ignore lint/suspicious/noExplicitAny: a piece of a plan from anywhere
  function outward(piece: any, by: number): void {
    const far = Math.hypot(piece.x, piece.y);
    shift(piece, (piece.x / far) * by, (piece.y / far) * by);
  }

  it.each(spoil)("%s is found out: %s", (_, what, act) => {
    const plan = JSON.parse(sample);
    act(plan);
    expect(failed(plan).map((finding) => finding.what)).toContain(what);
  });

  it.each([null, 3, "x", [], {}, { format: "casting-plan/2" }])("%j is no plan", (value) => {
    expect(checkPlan(value).holds).toBe(false);
  });

  it("is so in more than thirty ways, and was whole before", () => {
    expect(new Set(spoil.map(([name]) => name)).size).toBe(spoil.length);
    expect(spoil.length).toBeGreaterThan(30);
    expect(failed(JSON.parse(sample))).toEqual([]);
  });
});

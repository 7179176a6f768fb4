import { describe, expect, test } from "vitest";
import { groovesDxf } from "../../packages/casting-core/src/drawing/dxf.js";
import { retainerDxf } from "../../packages/casting-core/src/drawing/retainer-dxf.js";
import { planGrooves } from "../../packages/casting-core/src/grooves/plan.js";
import type { GrooveEdge } from "../../packages/casting-core/src/grooves/types.js";
import type { Job } from "../../packages/casting-core/src/job/types.js";
import { VERSION } from "../../packages/casting-core/src/version.js";
import { circles, entities, groups, layers, lines, values } from "../support/dxf.js";
import { exampleJob } from "../support/jobs.js";
import { jittered, layoutOf, regular, toolOf } from "../support/layouts.js";

const layout = jittered(1, 150, 26, 4);
const tool = toolOf(150);

const planned = planGrooves(exampleJob(), tool, layout);

function drawn(title = "Coarse tool", changes: Partial<Job> = {}, grooves = planned): string {
  const job = exampleJob({ title, ...changes });
  return groovesDxf({ generator: { name: "casting", version: VERSION }, job, tool, layout, grooves });
}

describe("grooves.dxf", () => {
  const text = drawn();

  test("is of AC1021, in millimetres", () => {
    const all = groups(text);
    const follows = (name: string): string => all[all.findIndex(([, value]) => value === name) + 1]![1];
    expect(follows("$ACADVER") >= "AC1015").toBe(true);
    expect(follows("$INSUNITS")).toBe("4");
    expect(text.trimEnd().endsWith("EOF")).toBe(true);
  });

  test("holds every edge and piece once, mirrored left to right, rounds as true circles", () => {
    const cut = planned.edges.filter((edge) => edge.cut);
    const channels = entities(text, "LWPOLYLINE", "CHANNELS");
    expect(channels.length).toBe(cut.length);
    expect(entities(text, "LWPOLYLINE", "UNCUT").length).toBe(planned.totals.uncut);
    channels.forEach((entity, i) => {
      const xs = entity.filter(([code]) => code === 10).map(([, value]) => Number(value));
      const ys = entity.filter(([code]) => code === 20).map(([, value]) => Number(value));
      expect(xs.map((x) => (x === 0 ? 0 : -x))).toEqual(cut[i]!.points.map(([x]) => x));
      expect(ys).toEqual(cut[i]!.points.map(([, y]) => y));
    });
    const rounds = layout.pieces.filter((piece) => piece.radius !== undefined);
    expect(rounds.length).toBeGreaterThan(0);
    expect(entities(text, "CIRCLE", "PIECES").length).toBe(rounds.length);
    expect(entities(text, "LWPOLYLINE", "PIECES").length).toBe(layout.pieces.length - rounds.length);
    expect(entities(text, "CIRCLE", "TOOL_EDGE").length).toBe(1);
  });

  test("is the same text each time, numbers without exponents or minus zero", () => {
    expect(drawn()).toBe(text);
    for (const [code, value] of groups(text)) {
      if (code >= 10 && code < 60) expect(value).not.toMatch(/e|NaN|Infinity|^-0$/);
    }
  });

  test.each([
    ["back\\slash", "back\\U+005Cslash"],
    ["care^t", "care^ t"],
    ["100 %, 50%% off", "100 %, 50%%%%%% off"],
    ["line\nbreak", "line break"],
    ["Größe ½″", "Größe ½″"],
  ])("shows the title %j as it is", (title, value) => {
    expect(groups(drawn(title)).some(([code, text]) => code === 1 && text === value)).toBe(true);
  });

  test("tells the cutter and the depth in the job's unit", () => {
    const inches = drawn("Map", { units: "in" }, { ...planned, cutter: 3.175, depth: 2.38125 });
    expect(entities(inches, "TEXT", "MARKS")[1]!.find(([code]) => code === 1)![1]).toBe(
      `seed 1, casting ${VERSION}, cutter 1/8 in, depth 3/32 in`,
    );
  });

  test("shortens a title that no reader would take", () => {
    const values = groups(drawn("\\".repeat(10_000))).filter(([code]) => code === 1);
    for (const [, value] of values) expect(value.length).toBeLessThanOrEqual(255);
    expect(values.some(([, value]) => value.endsWith("…"))).toBe(true);
  });

  test.each([
    ["254 letters", "x".repeat(254), "x".repeat(254)],
    ["the first 254 letters of more", "x".repeat(255), `${"x".repeat(254)}…`],
    ["a code, not cut in two", `${"x".repeat(250)}\\end`, `${"x".repeat(250)}…`],
    ["a single % at an end", "% of", "% of"],
    ["a zero-width letter", "a\u200bb", "a b"],
  ])("fits in %s", (_, title, value) => {
    const [text] = entities(drawn(title), "TEXT", "MARKS");
    expect(text!.find(([code]) => code === 1)![1]).toBe(value);
  });
});

describe("a small map of channels", () => {
  const edge = (changes: Partial<GrooveEdge>): GrooveEdge => ({
    a: 0,
    b: 1,
    points: [],
    z: [],
    room: 5,
    cut: true,
    ...changes,
  });
  const way: [number, number][] = [
    [0, -50],
    [12.5, 0],
    [1, 50],
  ];
  const loop: [number, number][] = [
    [10, 0],
    [20, 0],
    [20, 10],
    [10, 0],
  ];
  const square = regular(4, 10, 20, 10, 0);
  const text = groovesDxf({
    generator: { name: "casting", version: VERSION },
    job: exampleJob({ title: "Map" }),
    tool: toolOf(100),
    layout: layoutOf([square, { x: -20, y: 5, radius: 8 }, { x: 0, y: -5, radius: 3 }], 3),
    grooves: {
      cutter: 3,
      depth: 2.5,
      nodes: [],
      cuts: [],
      edges: [edge({ points: way }), edge({ b: 0, points: loop, cut: false })],
    } as never,
  });

  test("has layers by colour, what is not cut dashed", () => {
    expect(layers(text)).toEqual({
      0: [7, "Continuous"],
      CHANNELS: [1, "Continuous"],
      UNCUT: [2, "DASHED"],
      PIECES: [5, "Continuous"],
      TOOL_EDGE: [7, "Continuous"],
      MARKS: [3, "Continuous"],
    });
    // The pattern of the dashes: 6 mm long in all, a dash of 4 and a gap of 2.
    const all = groups(text);
    const dashed = all.slice(all.findIndex(([code, value]) => code === 2 && value === "DASHED"));
    expect(
      dashed
        .slice(
          0,
          dashed.findIndex(([code]) => code === 0),
        )
        .filter(([code]) => [3, 40, 49].includes(code)),
    ).toEqual([
      [3, "Dashed _ _ _"],
      [40, "6"],
      [49, "4"],
      [49, "-2"],
    ]);
  });

  test("draws ways open, loops and outlines closed with each corner once, x turned about", () => {
    const drawn = (layer: string) =>
      entities(text, "LWPOLYLINE", layer).map((line) => [values(line, 70)[0], values(line, 10), values(line, 20)]);
    expect(drawn("CHANNELS")).toEqual([[0, [0, -12.5, -1], [-50, 0, 50]]]);
    expect(drawn("UNCUT")).toEqual([[1, [-10, -20, -20], [0, 0, 10]]]);
    expect(drawn("PIECES")).toEqual([[1, square.map(([x]) => -x), square.map(([, y]) => y)]]);
  });

  test("draws round pieces, the tool's edge, a cross on its axis and the index at the top", () => {
    expect(circles(text, "PIECES")).toEqual([
      [20, 5, 8],
      [0, -5, 3],
    ]);
    expect(circles(text, "TOOL_EDGE")).toEqual([[0, 0, 50]]);
    expect(lines(text, "MARKS")).toEqual([
      [-8, 0, 8, 0],
      [0, -8, 0, 8],
      [0, 50, 0, 58],
    ]);
  });

  test("has the circles kept clear on a layer of their own, a socket's foot on the glass among them", () => {
    const job = exampleJob({
      layout: { ...exampleJob().layout, "keep-clear": [{ x: 12.5, y: -20, diameter: 9 }] },
      socket: { diameter: 28, length: 48, foot: "glass", plugged: true },
    });
    const layout = layoutOf([square], 3);
    const grooves = { cutter: 3, depth: 2.5, nodes: [], cuts: [], edges: [] } as never;
    const kept = groovesDxf({
      generator: { name: "casting", version: VERSION },
      job,
      tool: toolOf(100),
      layout,
      grooves,
    });
    expect(layers(kept)["KEPT_CLEAR"]).toEqual([4, "Continuous"]);
    expect(circles(kept, "KEPT_CLEAR")).toEqual([
      [-12.5, -20, 4.5],
      [0, 0, 14],
    ]);
  });

  test("says below the tool, centred, what it is", () => {
    const words = entities(text, "TEXT", "MARKS").map((entity) => [
      entity.find(([code]) => code === 1)![1],
      ...[10, 20, 11, 21, 40, 72].flatMap((code) => values(entity, code)),
    ]);
    expect(words).toEqual([
      ["Map", 0, -66, 0, -66, 5, 1],
      [`seed 1, casting ${VERSION}, cutter 3 mm, depth 2.5 mm`, 0, -74, 0, -74, 5, 1],
      ["SEEN ON THE WORKING FACE: MIRRORED LEFT TO RIGHT, INDEX AT THE TOP", 0, -82, 0, -82, 5, 1],
    ]);
  });
});

describe("retainer.dxf", () => {
  const retainer = {
    inside: 402,
    outside: 462,
    slots: { count: 4, width: 20 },
    holes: { count: 3, diameter: 6, circle: 440 },
  };
  const job = exampleJob();
  const drawn = (given: boolean) =>
    retainerDxf({
      job: { ...job, setup: { ...job.setup, given } },
      setup: { retainer } as never,
      blank: { diameter: 400 } as never,
    });
  const text = drawn(true)!;

  test("is not there without a set-up", () => {
    expect(drawn(false)).toBeUndefined();
  });

  test("has layers by colour, the blank dashed", () => {
    expect(layers(text)).toEqual({
      0: [7, "Continuous"],
      RING: [7, "Continuous"],
      SLOTS: [1, "Continuous"],
      HOLES: [5, "Continuous"],
      BLANK: [2, "DASHED"],
      MARKS: [3, "Continuous"],
    });
  });

  test("has the ring, the blank in it and a cross, all about one centre", () => {
    expect(circles(text, "RING")).toEqual([
      [0, 0, 201],
      [0, 0, 231],
    ]);
    expect(circles(text, "BLANK")).toEqual([[0, 0, 200]]);
    expect(lines(text, "MARKS")).toEqual([
      [-5, 0, 5, 0],
      [0, -5, 0, 5],
    ]);
  });

  test("has slots whose two sides run from circle to circle, 10 mm beside lines from the centre", () => {
    const sides = lines(text, "SLOTS");
    expect(sides).toHaveLength(8);
    sides.forEach(([ax, ay, bx, by], n) => {
      expect(Math.hypot(ax!, ay!)).toBeCloseTo(201, 6);
      expect(Math.hypot(bx!, by!)).toBeCloseTo(231, 6);
      const length = Math.hypot(bx! - ax!, by! - ay!);
      // Counter-clockwise, a quarter turn on for each slot, and the second side on the slot's other hand.
      expect((bx! - ax!) / length).toBeCloseTo([1, 0, -1, 0][Math.floor(n / 2)]!, 6);
      expect((by! - ay!) / length).toBeCloseTo([0, 1, 0, -1][Math.floor(n / 2)]!, 6);
      expect((ax! * by! - ay! * bx!) / length).toBeCloseTo(n % 2 === 0 ? -10 : 10, 6);
    });
  });

  test("has its holes evenly on their circle, between the slots", () => {
    const round = (value: number) => Number(value.toFixed(6));
    expect(circles(text, "HOLES").map((circle) => circle.map(round))).toEqual(
      [60, 180, 300].map((turn) => [
        round(220 * Math.cos((turn * Math.PI) / 180)),
        round(220 * Math.sin((turn * Math.PI) / 180)) || 0,
        3,
      ]),
    );
  });
});

// The channels of a handful of pieces, against geometry by hand and a second library.
import { describe, expect, test } from "vitest";
import { CastingError } from "../../packages/casting-core/src/errors.js";
import type { Outline, Point } from "../../packages/casting-core/src/geometry/types.js";
import { grooveNotes } from "../../packages/casting-core/src/grooves/notes.js";
import { patternTotals, planGrooves } from "../../packages/casting-core/src/grooves/plan.js";
import { lengthOf } from "../../packages/casting-core/src/grooves/polyline.js";
import type { Grooves } from "../../packages/casting-core/src/grooves/types.js";
import type { Job, JobSocket } from "../../packages/casting-core/src/job/types.js";
import type { Layout } from "../../packages/casting-core/src/layout/types.js";
import {
  cutParts,
  fewestCuts,
  measuredTo,
  oddJunctions,
  pointsAlong,
  stretches,
  worstOffMiddle,
} from "../support/grooves.js";
import { exampleJob } from "../support/jobs.js";
import { hexagonKind } from "../support/kinds.js";
import { jittered, layoutOf, regular, toolOf } from "../support/layouts.js";

function jobOf(grooves: Partial<Job["grooves"]> = {}, changes: Partial<Job> = {}): Job {
  const job = exampleJob(changes);
  return { ...job, grooves: { ...job.grooves, ...grooves } };
}

const grooved = (layout: Layout, diameter: number, grooves: Partial<Job["grooves"]> = {}, changes: Partial<Job> = {}) =>
  planGrooves(jobOf(grooves, changes), toolOf(diameter), layout);

const clear = (...circles: { x: number; y: number; diameter: number }[]): Partial<Job> => ({
  layout: { ...exampleJob().layout, "keep-clear": circles },
});

const square = (x: number, y: number, half = 10): Outline => [
  [x - half, y - half],
  [x + half, y - half],
  [x + half, y + half],
  [x - half, y + half],
];
const between = ({ edges }: Grooves, kind: "pieces" | "rim" | "clear" | "outlet") =>
  edges.filter((edge) => (edge.outlet ? "outlet" : (edge.between ?? "pieces")) === kind);
const sorted = (points: Point[]) => [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);

describe("between two squares 4 mm apart in a tool of 100 mm", () => {
  const pair = layoutOf([square(-12, 0), square(12, 0)], 4);

  test("the channel is straight, and its junctions are as far from the corners as from the edge", () => {
    const grooves = grooved(pair, 100);
    // (0, y): √(2² + (y − 10)²) = 50 − y at y = 29.95.
    expect(sorted(grooves.nodes)).toEqual([
      [0, -50],
      [0, -29.95],
      [0, 29.95],
      [0, 50],
    ]);
    const [middle] = between(grooves, "pieces");
    expect(sorted(middle!.points)).toEqual([
      [0, -29.95],
      [0, 29.95],
    ]);
    expect(middle).toMatchObject({ room: expect.closeTo(4, 9), cut: true, z: [-2.5, -2.5] });
    expect(between(grooves, "rim").map(({ cut }) => cut)).toEqual([false, false]);
    for (const outlet of between(grooves, "outlet")) {
      expect(outlet).toMatchObject({ cut: true, room: expect.closeTo(2 * Math.hypot(2, 19.95), 6) });
    }
  });

  test("cutter, length, area and time follow", () => {
    const strip = 2 * (1.5 * Math.sqrt(2500 - 2.25) + 2500 * Math.asin(1.5 / 50));
    const { totals, cuts, cutter, depth } = grooved(pair, 100, { feed: 200 });
    expect(totals).toEqual({
      length: expect.closeTo(100, 9),
      cuts: 1,
      retraced: 0,
      area: expect.closeTo(strip, 6),
      share: expect.closeTo(strip / (Math.PI * 2500), 9),
      volume: expect.closeTo((strip * 2.5) / 1000, 9),
      uncut: 2,
      minutes: expect.closeTo(0.5, 9),
    });
    expect([cutter, depth]).toEqual([3, 2.5]);
    expect(cuts).toHaveLength(1);
    expect(grooved(pair, 100).totals).not.toHaveProperty("minutes");
    expect(grooved(pair, 100, { "rim-loop": true }).totals.uncut).toBe(0);
  });

  test("what the cutter does not fit stays uncut", () => {
    // The room of 4 mm, less 0.02 mm for rounding.
    expect(between(grooved(pair, 100, { cutter: 3.02 }), "pieces")[0]!.cut).toBe(true);
    const narrow = grooved(pair, 100, { cutter: 3.021 });
    expect(between(narrow, "pieces")[0]!.cut).toBe(false);
    expect(between(narrow, "outlet").every(({ cut }) => cut)).toBe(true);
    expect(narrow.totals).toMatchObject({ cuts: 2, uncut: 3 });
  });

  test("both patterns are told beside each other, the job's own as it is", () => {
    const job = jobOf({ pattern: "mains" });
    const own = { ...planGrooves(job, toolOf(100), pair).totals, length: 12_345 };
    const rows = patternTotals(job, toolOf(100), pair, own);
    expect(rows.map(({ pattern }) => pattern)).toEqual(["all", "mains"]);
    expect(rows[1]!.totals).toBe(own);
    expect(rows[0]!.totals).toEqual(grooved(pair, 100).totals);
  });
});

test("without pieces there is nothing to cut", () => {
  const none = { length: 0, cuts: 0, retraced: 0, area: 0, share: 0, volume: 0, uncut: 0 };
  const nothing = { cutter: 3, depth: 2.5, nodes: [], edges: [], cuts: [], totals: none };
  expect(grooved(layoutOf([], 4), 100)).toEqual(nothing);
});

test("what a hand may add to the gap counts as gap", () => {
  // So fine a gap alone would take samples without end.
  const pair = layoutOf([square(-12, 0), square(12, 0)], 1e-9);
  const grooves = grooved({ ...pair, hand: 4 }, 100);
  expect(between(grooves, "pieces")[0]!.room).toBeCloseTo(4, 9);
  expect(worstOffMiddle(grooves, pair, 100)).toBeLessThan(0.01);
});

test("no outlet runs through a small piece at the edge, straight before the end of a channel", () => {
  // The channel's end is as far from both squares as from the edge, and all but as far from the piece.
  const layout = layoutOf([square(-12, 0), square(12, 0), { x: 0, y: 49.95, radius: 0.03 }], 4);
  const grooves = grooved(layout, 100, { cutter: 0.1, clearance: 0 });
  expect(between(grooves, "outlet")).toHaveLength(3);
  for (const { room } of between(grooves, "outlet")) expect(room).toBeGreaterThan(0.1);
});

describe("round three discs", () => {
  const reach = 14;
  const at = (turn: number): Point => [
    Math.round(reach * 1000 * Math.cos(turn)) / 1000,
    Math.round(reach * 1000 * Math.sin(turn)) / 1000,
  ];
  const discs = [0, 1, 2].map((n) => {
    const [x, y] = at((n * 2 * Math.PI) / 3 + Math.PI / 2);
    return { x, y, radius: 10 };
  });
  const three = layoutOf(discs, 4);

  test("three channels meet in the middle and run out to the edge", () => {
    const grooves = grooved(three, 100);
    const centre = grooves.nodes.findIndex(([x, y]) => Math.hypot(x, y) < 0.005);
    expect(between(grooves, "pieces")).toHaveLength(3);
    for (const { a, b, room } of between(grooves, "pieces")) {
      expect([a, b]).toContain(centre);
      expect(room).toBeCloseTo(2 * (reach * Math.cos(Math.PI / 6) - 10), 2);
    }
    const turns = between(grooves, "outlet").map(({ points }) => {
      const [x, y] = points[1]!;
      expect(Math.hypot(x, y)).toBeCloseTo(50, 2);
      return Math.round((Math.atan2(y, x) * 180) / Math.PI);
    });
    expect(turns.sort((a, b) => a - b)).toEqual([-90, 30, 150]);
    expect(grooves.totals.cuts).toBe(2);
    const one = grooved(three, 100, { order: "one", feed: 100 }).totals;
    expect(one.cuts).toBe(1);
    // From edge to middle once more.
    expect(one.retraced).toBeCloseTo(one.length / 3, 2);
    expect(one.minutes).toBeCloseTo((one.length + one.retraced) / 100, 9);
    expect(worstOffMiddle(grooves, three, 100)).toBeLessThan(0.01);
  });

  test("a circle kept clear between them is gone round, cut where the cutter fits", () => {
    const spread = layoutOf(
      discs.map(({ x, y }) => ({ x: 1.6 * x, y: 1.6 * y, radius: 10 })),
      4,
    );
    const circle = { x: 0, y: 0, diameter: 8 };
    const grooves = grooved(spread, 120, {}, clear(circle));
    expect(worstOffMiddle(grooves, spread, 120, [circle])).toBeLessThan(0.01);
    const round = between(grooves, "clear");
    expect(round).toHaveLength(3);
    expect(round.every(({ cut }) => cut)).toBe(true);
    expect(between(grooves, "outlet")).toHaveLength(3);
    // A socket on the glass is such a circle; one on the pieces is none.
    const socket: JobSocket = { diameter: 8, length: 40, foot: "glass", plugged: true };
    expect(grooved(spread, 120, {}, { socket }).edges).toEqual(grooves.edges);
    expect(between(grooved(spread, 120, {}, { socket: { ...socket, foot: "pieces" } }), "clear")).toEqual([]);
    // Another circle that touches it makes one with it: no channel between the two.
    const both = grooved(spread, 120, {}, clear(circle, { x: 6, y: 0, diameter: 4 }));
    expect(
      worstOffMiddle({ ...both, edges: both.edges }, spread, 120, [circle, { x: 6, y: 0, diameter: 4 }]),
    ).toBeLessThan(12);
    expect(between(both, "clear").length).toBe(3);
    const apart = grooved(spread, 120, {}, clear(circle, { x: 7, y: 0, diameter: 4 }));
    expect(between(apart, "clear").length).toBeGreaterThan(3);
    // Two circles that a third one joins.
    const joined = grooved(spread, 120, {}, clear(circle, { x: 9, y: 0, diameter: 4 }, { x: 5.5, y: 0, diameter: 4 }));
    expect(between(joined, "clear").length).toBe(3);
  });

  test("a circle kept clear that reaches the tool's edge belongs to it: no outlet beside it", () => {
    const circle = { x: 50, y: 0, diameter: 20 };
    const grooves = grooved(three, 110, {}, clear(circle));
    expect(between(grooves, "clear")).toEqual([]);
    expect(worstOffMiddle(grooves, three, 110, [circle])).toBeLessThan(12);
    expect(between(grooves, "outlet")).toHaveLength(2);
    // One that stands free has its own line to the rim, from which no outlet starts.
    const free = grooved(three, 130, {}, clear({ x: 50, y: 0, diameter: 20 }));
    expect(between(free, "clear").length).toBeGreaterThan(0);
    expect(between(free, "outlet").length).toBeLessThanOrEqual(3);
  });
});

describe.each([3, 5])("in a small jittered layout (seed %i)", (seed) => {
  const layout = jittered(seed, 116, 27, 4.2);
  const far = layout.pieces.map(measuredTo);
  // Worked out by the first test that asks, so that a fault fails tests instead of keeping them from being found.
  let found: Grooves | undefined;
  const grooves = () => (found ??= grooved(layout, 116));

  test("the lines are in the middle to 0.01 mm, and meet as lines between so many pieces must", () => {
    const all = grooves();
    const n = layout.pieces.length;
    expect(n).toBeGreaterThan(6);
    expect(worstOffMiddle(all, layout, 116)).toBeLessThan(0.01);
    const outlets = between(all, "outlet").length;
    expect(all.nodes.length - outlets).toBe(2 * (n - 1));
    expect(all.edges.length - outlets).toBe(3 * (n - 1));
    for (const { a, b, points } of all.edges) {
      expect([points[0], points.at(-1)]).toEqual([all.nodes[a], all.nodes[b]]);
      for (const value of points.flat()) expect(Number(value.toFixed(3))).toBe(value);
    }
    // No more points than the shape needs: some 30 for a bend between two corners.
    expect(all.edges.flatMap(({ points }) => points).length).toBeLessThan(40 * all.edges.length);
  });

  test("room is twice the least distance to a piece, and decides what is cut", () => {
    const all = grooves();
    for (const edge of all.edges) {
      const measured = 2 * Math.min(...pointsAlong(edge, 0.2).map((point) => Math.min(...far.map((to) => to(point)))));
      expect(edge.room).toBeLessThanOrEqual(measured + 1e-9);
      expect(edge.room).toBeGreaterThan(measured - 0.02);
      expect(edge.cut).toBe(edge.between !== "rim" && edge.room >= 3.98);
    }
  });

  test("the cuts go along each cut edge once, in the fewest ways, one after the other", () => {
    const all = grooves();
    const cut = all.edges.filter((edge) => edge.cut);
    expect(stretches(all.cuts)).toEqual(stretches(cut.map(({ points }) => points)));
    expect(all.cuts.length).toBe(fewestCuts(all));
    // Travel between them stays short beside the cuts themselves.
    let travel = 0;
    all.cuts.slice(1).forEach((way, i) => {
      const end = all.cuts[i]!.at(-1)!;
      travel += Math.hypot(way[0]![0] - end[0], way[0]![1] - end[1]);
    });
    expect(travel).toBeLessThan(0.5 * all.totals.length);
    // The longest of the lifts is left out: the first way begins after it.
    const start = all.cuts[0]![0]!;
    const end = all.cuts.at(-1)!.at(-1)!;
    if (all.cuts.length > 2 && cutParts(all).length === 1) {
      const lifts = all.cuts.slice(1).map((way, i) => {
        const last = all.cuts[i]!.at(-1)!;
        return Math.hypot(way[0]![0] - last[0], way[0]![1] - last[1]);
      });
      expect(Math.hypot(start[0] - end[0], start[1] - end[1])).toBeGreaterThanOrEqual(Math.max(...lifts) - 1e-9);
    }
  });

  test("one cut for each part goes along all of them, and the retraced length is told", () => {
    const all = grooves();
    const one = grooved(layout, 116, { order: "one" });
    expect(one.cuts.length).toBe(cutParts(one).length);
    const times = stretches(one.cuts);
    expect([...times.keys()].sort()).toEqual([...stretches(all.cuts).keys()].sort());
    const whole = one.cuts.reduce((sum, way) => sum + lengthOf(way), 0);
    expect(whole - one.totals.length).toBeCloseTo(one.totals.retraced, 6);
    expect(one.totals.retraced).toBeGreaterThan(0);
    for (const way of one.cuts) way.slice(1).forEach((point, i) => void expect(point).not.toEqual(way[i]));
  });

  test("the wider pattern groups up to three pieces, shuts none in, leaves no end blind and no part alone", () => {
    const fine = grooved(layout, 116, { cutter: 1, clearance: 0.2 });
    const mains = grooved(layout, 116, { cutter: 1, clearance: 0.2, pattern: "mains" });
    expect(cutParts(mains).length).toBe(cutParts(fine).length);
    expect(mains.totals.length).toBeLessThan(0.95 * fine.totals.length);
    expect(mains.edges.map(({ points }) => points)).toEqual(fine.edges.map(({ points }) => points));
    const degree = mains.nodes.map(() => 0);
    for (const { a, b, cut } of mains.edges) if (cut) for (const node of [a, b]) degree[node]!++;
    for (const node of oddJunctions(mains)) {
      if (degree[node] === 1) expect(Math.hypot(...mains.nodes[node]!)).toBeCloseTo(58, 2);
    }
    // Pieces between which nothing is cut are in one group.
    const root = layout.pieces.map((_, i) => i);
    const find = (i: number): number => (root[i] === i ? i : find(root[i]!));
    const dropped = mains.edges.filter((edge, i) => fine.edges[i]!.cut && !edge.cut);
    for (const { points, between: kind, outlet } of dropped) {
      expect(kind).toBeUndefined();
      const middle = points[Math.floor(points.length / 2)]!;
      const from = points[Math.floor(points.length / 2) - 1] ?? middle;
      const halfway: Point = [(middle[0] + from[0]) / 2, (middle[1] + from[1]) / 2];
      const nearest = far.map((to, i) => [to(halfway), i] as const).sort((p, q) => p[0] - q[0]);
      if (!outlet) root[find(nearest[0]![1])] = find(nearest[1]![1]);
    }
    const sizes = new Map<number, number>();
    layout.pieces.forEach((_, i) => void sizes.set(find(i), (sizes.get(find(i)) ?? 0) + 1));
    expect(Math.max(...sizes.values())).toBeLessThanOrEqual(3);
    expect(Math.max(...sizes.values())).toBeGreaterThan(1);
    // The same for the same seed, another for another.
    const again = planGrooves(jobOf({ cutter: 1, clearance: 0.2, pattern: "mains" }), toolOf(116), layout);
    expect(again.edges.map(({ cut }) => cut)).toEqual(mains.edges.map(({ cut }) => cut));
    const others = [2, 3, 4].map((other) =>
      grooved({ ...layout, seed: other }, 116, { cutter: 1, clearance: 0.2, pattern: "mains" }).edges.map(
        ({ cut }) => cut,
      ),
    );
    expect(others.some((cuts) => cuts.join() !== mains.edges.map(({ cut }) => cut).join())).toBe(true);
  });

  test("rounded ways keep the clearance, their ends, and cut corners alone", () => {
    const all = grooves();
    const total = (ways: Point[][]) => ways.reduce((sum, way) => sum + lengthOf(way), 0);
    const paths = all.toolpath!;
    expect(paths).toHaveLength(all.cuts.length);
    expect(total(paths)).toBeLessThan(total(all.cuts) - 0.5);
    expect(total(paths)).toBeGreaterThan(0.94 * total(all.cuts));
    paths.forEach((path, i) => {
      const way = all.cuts[i]!;
      expect([path[0], path.at(-1)]).toEqual([way[0], way.at(-1)]);
      for (const [n, point] of path.entries()) {
        expect(Math.min(...far.map((to) => to(point)))).toBeGreaterThan(2 - 0.011);
        for (const value of point) expect(Number(value.toFixed(3))).toBe(value);
        if (n > 0) expect(point).not.toEqual(path[n - 1]);
        // Never farther from the way than a corner's rounding takes it: within a cutter's width.
        const off = Math.min(
          ...way.slice(1).map(([bx, by], k) => {
            const [ax, ay] = way[k]!;
            const squared = (bx - ax) ** 2 + (by - ay) ** 2;
            const t = Math.max(0, Math.min(1, ((point[0] - ax) * (bx - ax) + (point[1] - ay) * (by - ay)) / squared));
            return Math.hypot(point[0] - ax - t * (bx - ax), point[1] - ay - t * (by - ay));
          }),
        );
        // A quarter of the cutter between straight sides; these bend a little.
        expect(off).toBeLessThan(3 / 4 + 5e-3);
      }
    });
  });

  test("notes of a sound job are none", () => {
    expect(
      grooveNotes(jobOf({ cutter: 2 }), toolOf(116), [hexagonKind(20)], layout, grooved(layout, 116, { cutter: 2 })),
    ).toEqual([]);
  });
});

describe("pieces of every shape, long, sharp and nearly touching", () => {
  test.each([
    [
      "slabs",
      [
        square(-21, 0, 9),
        [
          [-10, -2],
          [30, -2],
          [30, 2],
          [-10, 2],
        ] as Outline,
        square(10, 14, 11),
        square(8, -15, 12),
      ],
      0.2,
    ],
    [
      "triangles",
      [0, 1, 2, 3, 4, 5].map((n) => regular(3, 11, 17 * Math.cos(n * 1.047), 17 * Math.sin(n * 1.047), n * 1.047)),
      0.5,
    ],
    [
      "a disc among squares",
      [{ x: 0, y: 0, radius: 6 }, square(18, 0), square(-18, 0), square(0, 18), square(0, -18)],
      2,
    ],
  ] as const)("%s: the lines are in the middle", (_, shapes, gap) => {
    const layout = layoutOf(shapes as never, gap);
    const grooves = grooved(layout, 90, { cutter: 1, clearance: 0.2 });
    expect(worstOffMiddle(grooves, layout, 90)).toBeLessThan(0.01);
    expect(between(grooves, "pieces").length).toBeGreaterThanOrEqual(shapes.length - 1);
  });

  test("one piece: the rim loop alone, as far from the piece as from the edge", () => {
    const layout = layoutOf([{ x: 0, y: 0, radius: 10 }], 4);
    const grooves = grooved(layout, 100, { "rim-loop": true });
    expect(grooves.edges).toHaveLength(1);
    const [loop] = grooves.edges;
    for (const [x, y] of pointsAlong(loop!, 1)) expect(Math.abs(Math.hypot(x, y) - 30)).toBeLessThan(0.01);
    expect(loop).toMatchObject({ a: 0, b: 0, between: "rim", cut: true });
    expect(loop!.room).toBeCloseTo(40, 1);
    expect(lengthOf(loop!.points) / (2 * Math.PI * 30)).toBeCloseTo(1, 3);
    expect(grooves.cuts).toHaveLength(1);
    expect(grooves.totals.area / (2 * Math.PI * 30 * 3)).toBeCloseTo(1, 3);
  });

  test.each([
    ["a round", { x: 45, y: 0, radius: 10 }, "piece 1 reaches 55.000 mm from the axis"],
    ["a square", square(45, 0), "piece 1 reaches 55.902 mm from the axis"],
    ["one far away", square(2000, 0), "piece 1 reaches 2010.025 mm from the axis"],
    ["one without corners", [], "piece 1 has no outline"],
    ["one that is nowhere", [[Number.NaN, 0]] as unknown as Outline, "piece 1 has no outline"],
  ] as const)("%s that does not lie within the tool is refused", (_, shape, told) => {
    const lay = () => grooved(layoutOf([shape as Outline, square(0, 0)], 4), 100);
    expect(lay).toThrow(CastingError);
    expect(lay).toThrow(`layout.pieces[0]: ${told}, where the tool ends at 50.000 mm; lay the pieces within the tool`);
  });

  test("pieces that touch the tool's edge lie within it", () => {
    expect(grooved(layoutOf([{ x: 40, y: 0, radius: 10 }], 4), 100).edges.length).toBeGreaterThan(0);
  });
});

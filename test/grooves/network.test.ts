import { describe, expect, test } from "vitest";
import type { Outline } from "../../packages/casting-core/src/geometry/types.js";
import { planGrooves } from "../../packages/casting-core/src/grooves/plan.js";
import type { Grooves } from "../../packages/casting-core/src/grooves/types.js";
import type { Job } from "../../packages/casting-core/src/job/types.js";
import { layOut } from "../../packages/casting-core/src/layout/layout.js";
import type { Layout } from "../../packages/casting-core/src/layout/types.js";
import { pieceKinds } from "../../packages/casting-core/src/pieces/kinds.js";
import { measuredTo, pointsAlong, worstOffMiddle } from "../support/grooves.js";
import { exampleJob } from "../support/jobs.js";
import { jittered, layoutOf, regular, toolOf } from "../support/layouts.js";

function grooved(layout: Layout, diameter: number, changes: Partial<Job> = {}): Grooves {
  return planGrooves(exampleJob(changes), toolOf(diameter), layout);
}

describe("the middle lines", () => {
  test.each([1, 2, 3])("of mixed pieces are within 0.01 mm of the middle, by a second library (seed %i)", (seed) => {
    const layout = jittered(seed, 200, 26, 3);
    expect(worstOffMiddle(grooved(layout, 200), layout, 200)).toBeLessThan(0.01);
  });

  test("keep to the middle round circles kept clear and a socket on the glass", () => {
    const layout = jittered(5, 200, 26, 3);
    const kept = { x: 0, y: 0, diameter: 28 };
    layout.pieces = layout.pieces.filter(
      (piece) => Math.min(...piece.outline.map(([x, y]) => Math.hypot(x, y))) > 18 && Math.hypot(piece.x, piece.y) > 25,
    );
    const grooves = grooved(layout, 200, {
      socket: { diameter: 28, length: 40, foot: "glass", plugged: true },
    });
    expect(worstOffMiddle(grooves, layout, 200, [kept])).toBeLessThan(0.01);
    const round = grooves.edges.filter((edge) => edge.between === "clear");
    expect(round.length).toBeGreaterThan(2);
    expect(round.every((edge) => edge.cut)).toBe(true);
  });

  test("keep to the middle in the wedges between long and odd pieces that all but touch", () => {
    const job = exampleJob({
      tool: { diameter: 150, rim: 3 },
      pieces: [
        { shape: "rectangle", length: 40, width: 5, thickness: 6, density: 2.35 },
        {
          shape: "polygon",
          points: [
            [0, 0],
            [30, 2],
            [25, 20],
            [3, 15],
          ],
          thickness: 6,
          density: 2.35,
        },
      ],
      layout: { gap: 0.05, seed: 22, count: "max", hand: 0, "keep-clear": [] },
    });
    const layout = layOut(job, toolOf(150), pieceKinds(job));
    expect(worstOffMiddle(planGrooves(job, toolOf(150), layout), layout, 150)).toBeLessThan(0.01);
  });

  test.each([0.1, 3])("are the same at %f times the size", (scale) => {
    const layout = jittered(4, 200, 26, 3);
    const scaled = scaledLayout(layout, scale);
    const first = grooved(layout, 200);
    const second = planGrooves(exampleJob(), toolOf(200 * scale), scaled);
    expect(second.edges.length).toBe(first.edges.length);
    const rooms = first.edges.map((edge) => edge.room * scale).sort((p, q) => p - q);
    const others = second.edges.map((edge) => edge.room).sort((p, q) => p - q);
    rooms.forEach((room, i) => void expect(others[i]!).toBeCloseTo(room, 1));
  });

  test("have 2(n − 1) junctions of three edges and 3(n − 1) edges, outlets apart", () => {
    const layout = jittered(1, 200, 26, 3);
    const grooves = grooved(layout, 200);
    const n = layout.pieces.length;
    const outlets = grooves.edges.filter((edge) => edge.outlet).length;
    expect(grooves.nodes.length - outlets).toBe(2 * (n - 1));
    expect(grooves.edges.length - outlets).toBe(3 * (n - 1));
  });

  test("end on their nodes, and coordinates have three decimals", () => {
    const grooves = grooved(jittered(2, 200, 26, 3), 200);
    for (const { a, b, points } of grooves.edges) {
      expect(points[0]).toEqual(grooves.nodes[a]);
      expect(points[points.length - 1]).toEqual(grooves.nodes[b]);
      for (const value of points.flat()) expect(Number(value.toFixed(3))).toBe(value);
    }
  });
});

describe("room", () => {
  test("is twice the least distance to any piece, and decides what is cut", () => {
    const layout = jittered(3, 200, 26, 3.2);
    const job = exampleJob();
    job.grooves = { ...job.grooves, cutter: 3.4, clearance: 0.4 };
    const grooves = planGrooves(job, toolOf(200), layout);
    const far = layout.pieces.map(measuredTo);
    const counts = { cut: 0, uncut: 0 };
    for (const edge of grooves.edges) {
      const measured = 2 * Math.min(...pointsAlong(edge, 0.2).map((point) => Math.min(...far.map((to) => to(point)))));
      expect(edge.room).toBeLessThanOrEqual(measured + 1e-9);
      expect(edge.room).toBeGreaterThan(measured - 0.02);
      expect(edge.cut).toBe(edge.between !== "rim" && edge.room >= 3.4 + 0.8 - 0.02);
      counts[edge.cut ? "cut" : "uncut"]++;
    }
    expect(Math.min(counts.cut, counts.uncut)).toBeGreaterThan(5);
    expect(grooves.totals.uncut).toBe(counts.uncut);
  });

  test("a cutter wider than any gap cuts nothing", () => {
    const job = exampleJob();
    job.grooves = { ...job.grooves, cutter: 40 };
    const grooves = planGrooves(job, toolOf(200), jittered(1, 200, 26, 3));
    expect(grooves.cuts).toEqual([]);
    expect(grooves.totals).toEqual({
      length: 0,
      cuts: 0,
      retraced: 0,
      area: 0,
      share: 0,
      volume: 0,
      uncut: grooves.edges.length,
    });
  });
});

describe("outlets", () => {
  test("run straight and radially from junctions of two pieces and the tool's edge to the edge", () => {
    const layout = jittered(1, 200, 26, 3);
    const grooves = grooved(layout, 200);
    const outlets = grooves.edges.filter((edge) => edge.outlet);
    const rim = grooves.edges.filter((edge) => edge.between === "rim");
    expect(outlets.length).toBe(rim.length);
    for (const { points } of outlets) {
      expect(points.length).toBe(2);
      const [[ax, ay], [bx, by]] = points as [[number, number], [number, number]];
      expect(Math.hypot(bx, by)).toBeCloseTo(100, 2);
      expect(Math.abs(ax * by - ay * bx) / 100).toBeLessThan(2e-3);
    }
    expect(rim.every((edge) => !edge.cut)).toBe(true);
  });
});

describe("degenerate layouts", () => {
  const square = (x: number, y: number, half = 10): Outline => [
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
  ];

  test("no piece: nothing", () => {
    const grooves = grooved(layoutOf([], 4), 100);
    expect([grooves.nodes, grooves.edges, grooves.cuts]).toEqual([[], [], []]);
  });

  test("one piece: the rim loop alone, closed on one node", () => {
    const grooves = grooved(layoutOf([regular(6, 12, 1, 2, 0)], 4), 100);
    expect(grooves.edges.length).toBe(1);
    expect(grooves.edges[0]).toMatchObject({ a: 0, b: 0, between: "rim", cut: false });
    expect(grooves.edges[0]!.points[0]).toEqual(grooves.edges[0]!.points.at(-1));
  });

  test("two pieces: one channel between them with an outlet at each end", () => {
    const grooves = grooved(layoutOf([square(-12, 0), square(12, 0)], 4), 100);
    expect(grooves.edges.map((edge) => edge.between ?? (edge.outlet ? "outlet" : "pieces")).sort()).toEqual([
      "outlet",
      "outlet",
      "pieces",
      "rim",
      "rim",
    ]);
    expect(grooves.cuts.length).toBe(1);
    expect(grooves.edges.find((edge) => !edge.between && !edge.outlet)!.points.length).toBe(2);
    expect(grooves.totals.length).toBeCloseTo(100, 2);
  });

  test("four squares that meet have one junction of four", () => {
    const layout = layoutOf([square(-12, -12), square(12, -12), square(12, 12), square(-12, 12)], 4);
    const grooves = grooved(layout, 120);
    const centre = grooves.nodes.findIndex(([x, y]) => Math.hypot(x, y) < 0.01);
    expect(grooves.edges.filter((edge) => edge.a === centre || edge.b === centre).length).toBe(4);
    expect(grooves.cuts.length).toBe(2);
    expect(worstOffMiddle(grooves, layout, 120)).toBeLessThan(0.01);
  });

  test("aligned squares with equal gaps", () => {
    const shapes = [-36, -12, 12, 36].flatMap((x) => [-36, -12, 12, 36].map((y) => square(x, y)));
    const layout = layoutOf(shapes, 4);
    const grooves = grooved(layout, 150);
    expect(worstOffMiddle(grooves, layout, 150)).toBeLessThan(0.01);
    expect(grooves.edges.filter((edge) => !edge.between && !edge.outlet).length).toBe(24);
  });

  test("pieces that touch leave a channel without room", () => {
    const layout = layoutOf([square(-10, 0), square(10, 0), square(0, 24)], 0);
    const grooves = grooved(layout, 120);
    expect(worstOffMiddle(grooves, layout, 120)).toBeLessThan(0.01);
    expect(grooves.edges.some((edge) => edge.room < 0.001 && !edge.cut)).toBe(true);
  });
});

function scaledLayout(layout: Layout, scale: number): Layout {
  const pieces = layout.pieces.map((piece) => ({
    ...piece,
    x: piece.x * scale,
    y: piece.y * scale,
    outline: piece.outline.map(([x, y]): [number, number] => [x * scale, y * scale]),
    ...(piece.radius !== undefined && { radius: piece.radius * scale }),
  }));
  return { ...layout, gap: layout.gap * scale, pieces };
}

// What is said of channels made by hand, word by word.
import { describe, expect, test } from "vitest";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { grooveNotes } from "../../packages/casting-core/src/grooves/notes.js";
import type { GrooveEdge, Grooves } from "../../packages/casting-core/src/grooves/types.js";
import type { Job } from "../../packages/casting-core/src/job/types.js";
import { exampleJob } from "../support/jobs.js";
import { hexagonKind } from "../support/kinds.js";
import { layoutOf, regular, toolOf } from "../support/layouts.js";

const NODES: Point[] = [
  [0, -100],
  [0, 0],
  [0, 100],
  [50, 0],
  [60, 0],
  [70, 0],
];
const edge = (a: number, b: number, changes: Partial<GrooveEdge> = {}): GrooveEdge => ({
  a,
  b,
  points: [NODES[a]!, NODES[b]!],
  z: [],
  room: 5,
  cut: true,
  ...changes,
});
/** From edge to edge through the middle. */
const THROUGH = [edge(0, 1), edge(1, 2)];
/** Three channels from one of a case's own nodes to the next and back: a part that meets no other. */
const loop = (first: number): GrooveEdge[] =>
  [0, 1, 2].map((n) => ({ ...edge(0, 0), a: first + n, b: first + ((n + 1) % 3) }));
/** From the middle to the edge by a place 11 mm from (16, 50), and so much aside. */
const bent = (aside: number): Point[] => [
  [0, 0],
  [5 + aside, 50],
  [0, 100],
];
const two = layoutOf([regular(6, 10, -13, 0, 0), regular(6, 10, 13, 0, 0)], 4);

interface Case {
  edges?: GrooveEdge[];
  grooves?: Partial<Job["grooves"]>;
  tool?: Partial<ReturnType<typeof toolOf> & { curveRadius: number }>;
  layout?: Partial<typeof two>;
  kinds?: ReturnType<typeof hexagonKind>[];
  growth?: number;
  job?: Partial<Job>;
  cuts?: Point[][];
  nodes?: Point[];
}

function said({ edges = THROUGH, grooves = {}, tool = {}, layout = {}, kinds = [hexagonKind(20)], ...more }: Case) {
  const example = exampleJob(more.job);
  const job = { ...example, grooves: { ...example.grooves, ...grooves } };
  const { cutter, depth } = job.grooves;
  const cuts = more.cuts ?? [[NODES[0]!, NODES[2]!]];
  const found = { cutter, depth, nodes: more.nodes ?? NODES, edges, cuts, totals: {} } as unknown as Grooves;
  const notes = grooveNotes(job, { ...toolOf(200), ...tool }, kinds, { ...two, ...layout }, found, more.growth);
  return notes.map(({ level, code, text }) => `${level} ${code}: ${text}`);
}

test("a rim loop that is cut only in bits is told, beside its wall; one that is not asked for is not", () => {
  const edges = [
    ...THROUGH,
    edge(1, 1, { between: "rim", points: [[0, 95]] }),
    edge(4, 4, { between: "rim", cut: false, room: 1 }),
  ];
  expect(said({ edges, grooves: { "rim-loop": true } })[1]).toBe(
    "warning rim-loop-in-bits: The rim loop is cut only in bits: 1 of its 2 parts stays uncut; leave the loop uncut, or take a wider rim.",
  );
  expect(said({ edges: [...THROUGH, edge(4, 4, { between: "rim", cut: false })] })).toEqual([]);
});

describe("of channels", () => {
  test("nothing where all is well, or nothing is laid", () => {
    expect(said({})).toEqual([]);
    expect(said({ layout: { gap: 3.5, hand: 0.5 } })).toEqual([]);
    expect(said({ layout: { pieces: [] }, cuts: [], growth: 1 })).toEqual([]);
    // A single piece with a loop round it.
    expect(said({ layout: { pieces: two.pieces.slice(1) } })).toEqual([]);
    expect(said({ grooves: { depth: 3 } })).toEqual([]);
    expect(said({ growth: 0.0049, tool: { curveRadius: 30_000 } })).toEqual([]);
  });

  test.each<[string, Case]>([
    [
      "info no-channels: A single piece has no neighbours, so there is no channel to cut between any.",
      { cuts: [], edges: [], layout: { pieces: two.pieces.slice(1) } },
    ],
    [
      "warning no-channels: No channel can be cut: the cutter of 3 mm with 0.5 mm on each side needs 4 mm, and no gap is that wide; take a narrower cutter or a wider gap.",
      { cuts: [], edges: [edge(0, 1, { cut: false })] },
    ],
    [
      "warning gap-too-small: The gap of 3.9 mm is too small for every channel: the cutter of 3 mm with 0.5 mm on each side needs 4 mm; 3 channels between pieces stay uncut.",
      {
        layout: { gap: 3.6, hand: 0.3 },
        edges: [
          ...THROUGH,
          edge(3, 4, { cut: false }),
          edge(4, 5, { cut: false }),
          edge(5, 3, { cut: false }),
          edge(3, 4, { cut: false, between: "rim" }),
          edge(3, 4, { cut: false, between: "clear" }),
          edge(3, 4, { cut: false, outlet: true }),
        ],
      },
    ],
    [
      "warning gap-too-small: The gap of 3.9 mm is too small for every channel: the cutter of 3 mm with 0.5 mm on each side needs 4 mm; 1 channel between pieces stays uncut.",
      { layout: { gap: 3.9 }, edges: [...THROUGH, edge(3, 4, { cut: false })] },
    ],
    [
      "info gap-too-small: The gap of 3.9 mm is too small for every channel: the cutter of 3 mm with 0.5 mm on each side needs 4 mm; these pieces stand far enough apart, and none stays uncut.",
      { layout: { gap: 3.9 } },
    ],
    [
      // 4 mm are 0.1575 in: a gap of 5/32 in would not do.
      "warning gap-too-small: The gap of 5/32 in is too small for every channel: the cutter of 0.118 in with 0.02 in on each side needs 0.158 in; 1 channel between pieces stays uncut.",
      { layout: { gap: 3.96875 }, edges: [...THROUGH, edge(3, 4, { cut: false })], job: { units: "in" } },
    ],
    [
      "warning channels-in-parts: The channels fall into 2 parts that do not meet, because the cutter does not fit everywhere: a narrower cutter or a wider gap joins them.",
      { edges: [...THROUGH, edge(3, 4), edge(4, 5), edge(5, 3), edge(2, 3, { cut: false })] },
    ],
    [
      "warning channels-in-parts: The channels fall into 2 parts that do not meet, because pieces stand close to circles kept clear: join the channels there by hand, inside the circle, which must be wider than what stands in it by 7 mm or more.",
      { edges: [...THROUGH, edge(3, 4), edge(4, 5), edge(5, 3), edge(2, 3, { cut: false, between: "clear" })] },
    ],
    [
      "warning channels-in-parts: The channels fall into 3 parts that do not meet, because pieces stand close to circles kept clear: join the channels there by hand, inside the circle, which must be wider than what stands in it by 7 mm or more; elsewhere the cutter does not fit everywhere: a narrower cutter or a wider gap joins them.",
      {
        nodes: [...NODES, [-50, 0], [-60, 0], [-60, 10]],
        edges: [
          ...THROUGH,
          ...[edge(3, 4), edge(4, 5), edge(5, 3), edge(2, 3, { cut: false, between: "clear" })],
          ...loop(6),
        ],
      },
    ],
    [
      "warning channels-in-parts: The channels fall into 4 parts that do not meet, mostly because the cutter does not fit everywhere: a narrower cutter or a wider gap joins them; some because pieces stand close to circles kept clear: join the channels there by hand, inside the circle, which must be wider than what stands in it by 7 mm or more.",
      {
        nodes: [...NODES, [-50, 0], [-60, 0], [-60, 10], [-70, 0], [-80, 0], [-80, 10]],
        edges: [
          ...THROUGH,
          ...[edge(3, 4), edge(4, 5), edge(5, 3), edge(2, 3, { cut: false, between: "clear" })],
          ...loop(6),
          ...loop(9),
        ],
      },
    ],
    [
      "warning channels-in-parts: The channels fall into 2 parts that do not meet, because pieces stand close to the socket's foot: join the channels there by hand, for which a circle of 35 mm or more at 0, 0 in layout.keep-clear leaves room round the foot.",
      {
        // Past the foot at x = 20.
        edges: [...THROUGH, ...[edge(3, 4), edge(4, 5), edge(5, 3), edge(2, 3, { cut: false, between: "clear" })]].map(
          (way) => ({ ...way, points: way.points.map(([x, y]): Point => [x + 20, y]) }),
        ),
        job: { socket: { diameter: 28, length: 48, foot: "glass", plugged: true } },
      },
    ],
    [
      "warning blind-channels: One channel ends blind where the cutter fits no further: swarf collects there; a narrower cutter or a wider gap opens it.",
      { edges: [...THROUGH, edge(1, 3)] },
    ],
    [
      "warning blind-channels: 2 channels end blind where the cutter fits no further: swarf collects there; a narrower cutter or a wider gap opens them.",
      { edges: [...THROUGH, edge(1, 3), edge(1, 4), edge(1, 5, { cut: false })] },
    ],
    [
      "warning blind-channels: One channel ends blind where pieces stand close to a circle kept clear: swarf collects there; lead it on by hand, inside the circle, which must be wider than what stands in it by 7 mm or more.",
      { edges: [...THROUGH, edge(1, 3), edge(3, 5, { cut: false, between: "clear" })] },
    ],
    [
      "warning blind-channels: One channel ends blind where pieces stand close to the socket's foot: swarf collects there; lead it on by hand, for which a circle of 35 mm or more at 0, 0 in layout.keep-clear leaves room round the foot.",
      {
        // Past the foot at x = 20.
        edges: [...THROUGH, edge(1, 3), edge(3, 5, { cut: false, between: "clear" })].map((way) => ({
          ...way,
          points: way.points.map(([x, y]): Point => [x + 20, y]),
        })),
        job: { socket: { diameter: 28, length: 48, foot: "glass", plugged: true } },
      },
    ],
    [
      "warning channel-in-circle: 2 channels of the cutter's width run into circles kept clear by up to 0.5 mm: end them short of what is kept clear.",
      // The cutter is 3 mm wide: 1 mm from the circle it takes 0.5 mm of it; 1.6 mm from another nothing.
      {
        job: {
          layout: {
            ...exampleJob().layout,
            "keep-clear": [
              { x: 11, y: 0, diameter: 20 },
              { x: -11.6, y: 0, diameter: 20 },
            ],
          },
        },
      },
    ],
    [
      "warning channel-in-circle: 2 channels of the cutter's width run into circles kept clear by up to 0.5 mm: end them short of what is kept clear.",
      {
        edges: [edge(0, 1, { points: bent(-0.2) }), edge(1, 2, { points: bent(0) })],
        job: {
          layout: {
            ...exampleJob().layout,
            "keep-clear": [{ x: 16, y: 50, diameter: 20 }],
          },
        },
      },
    ],
    [
      "warning rim-loop-in-bits: The rim loop is cut only in bits: 2 of its 3 parts stay uncut; leave the loop uncut, or take a wider rim.",
      {
        edges: [
          ...THROUGH,
          edge(1, 1, { between: "rim", points: [[0, 80]] }),
          edge(4, 4, { between: "rim", cut: false, room: 1 }),
          edge(4, 4, { between: "rim", cut: false, room: 1 }),
        ],
        grooves: { "rim-loop": true },
      },
    ],
    [
      "warning channel-in-circle: 1 channel of the cutter's width runs into circles kept clear by up to 0.5 mm: end it short of what is kept clear.",
      {
        edges: [THROUGH[0]!, edge(1, 2, { points: bent(0) })],
        job: { layout: { ...exampleJob().layout, "keep-clear": [{ x: 16, y: 50, diameter: 20 }] } },
      },
    ],
    [
      "warning blind-channels: 2 channels end blind where pieces stand close to a circle kept clear: swarf collects there; lead them on by hand, inside the circle, which must be wider than what stands in it by 7 mm or more.",
      { edges: [...THROUGH, edge(1, 3), edge(1, 4), edge(3, 4, { cut: false, between: "clear" })] },
    ],
    [
      // A circle as wide as the foot's own note asks for takes that note away, and is no fault itself.
      "info blind-channels: One channel ends blind where pieces stand close to a circle kept clear: swarf collects there; lead it on by hand, inside the circle, which leaves room round the socket's foot.",
      {
        edges: [...THROUGH, edge(1, 3), edge(3, 5, { cut: false, between: "clear" })].map((way) => ({
          ...way,
          points: way.points.map(([x, y]): Point => [x + 30, y]),
        })),
        job: {
          socket: { diameter: 28, length: 48, foot: "glass", plugged: true },
          layout: { ...exampleJob().layout, "keep-clear": [{ x: 0, y: 0, diameter: 35 }] },
        },
      },
    ],
    [
      "warning groove-as-deep-as-piece: The channels are as deep as the thinnest piece is thick, 6 mm: nothing holds it at the sides; cut at most 3 mm deep.",
      { grooves: { depth: 6 } },
    ],
    [
      "warning groove-as-deep-as-piece: The channels are 6.5 mm deep and the thinnest piece only 6 mm: nothing holds it at the sides; cut at most 3 mm deep.",
      { grooves: { depth: 6.5 } },
    ],
    [
      "warning pieces-held-shallow: Below the channels' floor only 2.9 mm of the thinnest piece (6 mm) is held, less than half of it: cut at most 3 mm deep.",
      // The thinnest kind is not laid, a thicker one is.
      {
        grooves: { depth: 3.1 },
        layout: { pieces: two.pieces.map((piece, n) => ({ ...piece, kind: n })) },
        kinds: [
          hexagonKind(20),
          hexagonKind(20, { kind: 1, thickness: 12 }),
          hexagonKind(9, { kind: 2, thickness: 1 }),
        ],
      },
    ],
    [
      "warning outlets-close: In one place, near 12 o'clock on the groove template with its index at 12, two channels run out over the edge with less than 2 mm of plaster between them, which can break off into the grit: cut one of the two to the edge, and end the other in it.",
      {
        // The cutter is 3 mm wide: 4.9 mm from middle to middle leave 1.9 mm, 5.1 mm more than 2.
        nodes: [
          [0, 100],
          [4.9, 99.88],
          [-5.1, 99.87],
          [0, 0],
        ],
        edges: [edge(3, 0, { outlet: true }), edge(3, 1, { outlet: true }), edge(2, 3, { outlet: true })],
      },
    ],
    [
      "warning outlets-close: In 2 places, near 12 o'clock on the groove template with its index at 12, two channels run out over the edge with less than 2 mm of plaster between them, which can break off into the grit: cut one of the two to the edge, and end the other in it.",
      {
        nodes: [
          [0, 100],
          [4.9, 99.88],
          [-4.9, 99.88],
          [0, 0],
        ],
        edges: [edge(3, 0, { outlet: true }), edge(3, 1, { outlet: true }), edge(2, 3, { outlet: true })],
      },
    ],
    [
      "warning rim-loop-wall: The rim loop leaves a wall of only 4.5 mm at the tool's edge beside a channel 2.5 mm deep, which can break off into the grit: leave the loop uncut, or bevel the wall away.",
      {
        edges: [
          ...THROUGH,
          edge(1, 1, {
            between: "rim",
            points: [
              [50, 0],
              [0, 94],
              [-54, -72],
              [50, 0],
            ],
          }),
          edge(4, 4, {
            between: "rim",
            cut: false,
            points: [
              [0, 99],
              [1, 99],
            ],
          }),
        ],
      },
    ],
    [
      "warning rim-loop-wall: The rim loop leaves a wall of only 0 mm at the tool's edge beside a channel 2.5 mm deep, which can break off into the grit: leave the loop uncut, or bevel the wall away.",
      { edges: [...THROUGH, edge(1, 1, { between: "rim", points: [[0, 99.5]] })] },
    ],
    [
      "warning rim-loop-in-bits: No part of the rim loop is cut, although it is asked for: there is no room for the cutter.",
      { grooves: { "rim-loop": true }, edges: [...THROUGH, edge(4, 4, { between: "rim", cut: false, room: 1 })] },
    ],
    [
      // 2.5 mm deep, 100 mm from the axis, on a radius of 1000 mm.
      "info channel-floor: The clearance holds on the sheet; near the tool's edge the pieces lean by the glass's curve, so that at the channel's floor the outer piece is nearer by up to 0.25 mm: lean the cutter with the face, or allow for it in the clearance.",
      { tool: { curveRadius: 1000 } },
    ],
    [
      "info channel-floor: The clearance holds on the sheet; near the tool's edge the pieces lean by the glass's curve, so that at the channel's floor the inner piece is nearer by up to 0.01 in: lean the cutter with the face, or allow for it in the clearance.",
      { tool: { curveRadius: 1000 }, job: { units: "in", blank: { diameter: 300, curve: "convex", radius: 1000 } } },
    ],
    [
      "info map-growth: The set cast has grown: at the tool's edge the pieces lie up to 0.29 mm further out than the groove sheet says; lay the sheet from the centre out, so that the error is shared all round.",
      { growth: 0.294 },
    ],
  ])("%s", (sentence, given) => {
    expect(said(given)).toEqual([sentence]);
  });

  test("places of outlets too close are told by the clock, as the mirrored template shows them", () => {
    // Seen from the back: twice to the left of the index, once to the right, once at the bottom.
    const middles = [95, 119, 30, -89];
    const ends = middles.flatMap((middle) => [middle - 1, middle + 1]);
    const outlets = ends.map((angle): Point => {
      const turn = (angle * Math.PI) / 180;
      return [100 * Math.cos(turn), 100 * Math.sin(turn)];
    });
    const edges = outlets.map((end, n) => edge(0, 0, { b: n + 1, points: [[0, 0], end], outlet: true }));
    expect(said({ nodes: [[0, 0], ...outlets], edges })).toEqual([
      expect.stringContaining("In 4 places, near 1, 6, 10, 12 o'clock on the groove template"),
    ]);
  });

  test("nothing of floors and growth where nothing is cut", () => {
    const codes = said({ cuts: [], tool: { curveRadius: 1000 }, growth: 1, grooves: { depth: 9 } });
    expect(codes).toHaveLength(1);
    expect(codes[0]).toMatch(/^warning no-channels/);
  });

  test("ends blind beside a circle are told apart from those where the cutter is too wide", () => {
    const edges = [...THROUGH, edge(1, 3), edge(1, 4), edge(3, 5, { cut: false, between: "clear" })];
    const ends = said({ edges }).map((text) => /(.*) where (the cutter|pieces stand)/.exec(text)!.slice(1));
    expect(ends).toEqual([
      ["warning blind-channels: One channel ends blind", "the cutter"],
      ["warning blind-channels: One channel ends blind", "pieces stand"],
    ]);
  });

  test("an outlet that drains nothing is neither a part of its own nor a blind end", () => {
    const nodes: Point[] = [...NODES, [90, 0], [100, 0]];
    expect(said({ nodes, edges: [...THROUGH, { ...edge(0, 1), a: 6, b: 7, outlet: true }] })).toEqual([]);
    expect(said({ nodes, edges: [...THROUGH, { ...edge(0, 1), a: 6, b: 7 }] })).toHaveLength(2);
  });

  test("an end on the tool's edge is not blind, to 2 µm", () => {
    const nodes = (out: number) => said({ tool: { diameter: 200 + 2 * out } });
    expect(nodes(0.0019)).toEqual([]);
    expect(nodes(0.0021)).toHaveLength(1);
    expect(nodes(-0.0021)).toHaveLength(1);
  });

  test("a wall beside the rim loop is told below two depths of the channel, and below 3 mm", () => {
    // Half the cutter of 3 mm and the wall lie beyond the loop's middle.
    const wall = (mm: number, depth: number) =>
      said({ edges: [...THROUGH, edge(1, 1, { between: "rim", points: [[0, 98.5 - mm]] })], grooves: { depth } });
    expect(wall(11, 2.5)).toEqual([]);
    expect(wall(5.01, 2.5)).toEqual([]);
    expect(wall(4.99, 2.5)).toHaveLength(1);
    expect(wall(3.01, 1)).toEqual([]);
    expect(wall(2.99, 1)).toHaveLength(1);
  });

  test("growth and lean are said from 5 and 10 µm on", () => {
    expect(said({ growth: 0.005 })).toHaveLength(1);
    expect(said({ tool: { curveRadius: 25_000 } })).toHaveLength(1);
    expect(said({ tool: { curveRadius: 25_100 } })).toEqual([]);
  });
});

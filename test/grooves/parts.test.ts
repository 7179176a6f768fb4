// The parts that the channels are worked out with, each against its own definition.
import Flatten from "@flatten-js/core";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { distance } from "../../packages/casting-core/src/geometry/distance.js";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { channelArea } from "../../packages/casting-core/src/grooves/area/area.js";
import { lineToPiece, surroundingsOf } from "../../packages/casting-core/src/grooves/cuts/room.js";
import { cutterFits, leaveUncut, uncutEdges } from "../../packages/casting-core/src/grooves/cuts/uncut.js";
import { floorHeights } from "../../packages/casting-core/src/grooves/floor.js";
import { closedWay, linksAt, partsOf } from "../../packages/casting-core/src/grooves/network/graph.js";
import { outletGaps, outletsOf, outletsText } from "../../packages/casting-core/src/grooves/outlets.js";
import { along, evenly, lengthOf, rounded, simplified } from "../../packages/casting-core/src/grooves/polyline.js";
import { random } from "../../packages/casting-core/src/random.js";
import { links, places } from "../support/arbitrary.js";
import { exampleJob } from "../support/jobs.js";
import { layoutOf, regular } from "../support/layouts.js";

describe("a line", () => {
  it("is as long as its parts together", () => {
    expect(lengthOf([])).toBe(0);
    expect(lengthOf([[3, 4]])).toBe(0);
    expect(
      lengthOf([
        [0, 0],
        [3, 4],
        [3, 16],
        [-2, 4],
      ]),
    ).toBe(5 + 12 + 13);
    expect(distance([1, 2], [-2, 6])).toBe(5);
  });

  it("has points at equal steps along it, near the length that is asked for, and its ends", () => {
    const bent: Point[] = [
      [0, 0],
      [3, 0],
      [3, 7],
    ];
    const at = (step: number, line = bent) => evenly(line, step).map(([x, y]) => `${x} ${y}`);
    expect(at(2)).toEqual(["0 0", "2 0", "3 1", "3 3", "3 5", "3 7"]);
    // A quarter of the whole is nearest to 2.4.
    expect(at(2.4)).toEqual(["0 0", "2.5 0", "3 2", "3 4.5", "3 7"]);
    expect(at(1).slice(2, 5)).toEqual(["2 0", "3 0", "3 1"]);
    expect(at(1)).toHaveLength(11);
    expect(at(6)).toEqual(["0 0", "3 2", "3 7"]);
    expect(at(100)).toEqual(["0 0", "3 7"]);
    const still: Point[] = [
      [3, 1],
      [3, 1],
      [3, 5],
    ];
    expect(at(2, still)).toEqual(["3 1", "3 3", "3 5"]);
    expect(at(2, still.slice(0, 2))).toEqual(["3 1", "3 1"]);
  });

  it("has points at any share of it, and on whole micrometres, none of them minus zero", () => {
    expect(along([10, -10], [20, 30], 0.25)).toEqual([12.5, 0]);
    expect(rounded([1.23456, -0.0001])).toEqual([1.235, 0]);
    expect(rounded([-7.0004, 2.34567])).toEqual([-7, 2.346]);
    expect(Object.is(rounded([-0.0001, -0.0001])[0], 0)).toBe(true);
    expect(Object.is(rounded([-0.0001, -0.0001])[1], 0)).toBe(true);
  });

  it("is simplified to points of its own that all others lie near to, ends kept", () => {
    const distance = ([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number => {
      const squared = (bx - ax) ** 2 + (by - ay) ** 2;
      const t = squared === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / squared));
      return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay));
    };
    fc.assert(
      fc.property(fc.array(places(20), { minLength: 2, maxLength: 14 }), fc.constantFrom(0.5, 3, 9), (points, most) => {
        const kept = simplified(points, most);
        expect([kept[0], kept.at(-1)]).toEqual([points[0], points.at(-1)]);
        let part = 0;
        for (const point of points) {
          if (point === kept[part + 1]) part++;
          const [a, b] = [kept[part]!, kept[Math.min(part + 1, kept.length - 1)]!];
          expect(distance(point, a, b)).toBeLessThanOrEqual(most + 1e-9);
        }
        expect(part).toBe(kept.length - 1);
      }),
      { numRuns: 200 },
    );
  });

  it("loses what lies within the tolerance, and keeps what is farther", () => {
    const line: Point[] = [
      [0, 0],
      [5, 1],
      [10, 0],
      [10, 7],
      [10, 20],
    ];
    expect(simplified(line, 1)).toEqual([line[0], line[2], line[4]]);
    expect(simplified(line, 0.999)).toEqual([line[0], line[1], line[2], line[4]]);
    expect(simplified(line, 30)).toEqual([line[0], line[4]]);
  });
});

/** The same area by scanning: each level's share of the union of capsules, in closed form. */
function scanned(lines: readonly (readonly Point[])[], half: number, radius: number): number {
  const levels = 1000;
  let area = 0;
  for (let n = 0; n < levels; n++) {
    const y = radius * ((2 * n + 1) / levels - 1);
    const chord = Math.sqrt(radius * radius - y * y);
    const hits: [number, number][] = [];
    const add = (from: number, to: number) => {
      if (Math.min(to, chord) > Math.max(from, -chord)) hits.push([Math.max(from, -chord), Math.min(to, chord)]);
    };
    for (const points of lines) {
      points.forEach(([bx, by], i) => {
        const off = y - by;
        if (Math.abs(off) < half) {
          const reach = Math.sqrt(half * half - off * off);
          add(bx - reach, bx + reach);
        }
        const a = points[i - 1];
        if (!a) return;
        const [ux, uy] = [bx - a[0], by - a[1]];
        const length = Math.hypot(ux, uy);
        if (length === 0) return;
        const [nx, ny] = [(-uy / length) * half, (ux / length) * half];
        const corners = [
          [a[0] + nx, a[1] + ny],
          [bx + nx, by + ny],
          [bx - nx, by - ny],
          [a[0] - nx, a[1] - ny],
        ];
        const xs = corners.flatMap(([px, py], c) => {
          const [qx, qy] = corners[(c + 1) % 4]! as [number, number];
          return py! > y === qy > y ? [] : [px! + ((y - py!) * (qx - px!)) / (qy - py!)];
        });
        if (xs.length === 2) add(Math.min(...xs), Math.max(...xs));
      });
    }
    hits.sort((p, q) => p[0] - q[0]);
    let end = Number.NEGATIVE_INFINITY;
    for (const [from, to] of hits) {
      area += Math.max(0, to - Math.max(from, end));
      end = Math.max(end, to);
    }
  }
  return (area * 2 * radius) / levels;
}

describe("the area of channels", () => {
  const area = (width: number, ...lines: Point[][]) => channelArea(lines, width, 100);
  const straight = (...points: Point[]) => points;
  const round = Math.PI * 2.25;

  it("of none is 0, of a point a disc, of a line its length by its width and its ends", () => {
    expect(area(3)).toBe(0);
    expect(area(3, straight([10, 20]))).toBeCloseTo(round, 6);
    expect(area(3, straight([10, 20], [10, 20]))).toBeCloseTo(round, 6);
    expect(area(3, straight([10, 20], [13, 24], [16, 28]))).toBeCloseTo(30 + round, 6);
  });

  it("counts what lies twice once", () => {
    // Two side by side, 1 mm apart: their union is 4 mm wide; ends of two half discs each.
    const lens = 2 * 2.25 * Math.acos(0.5 / 1.5) - 0.5 * 2 * Math.sqrt(2.25 - 0.25);
    expect(area(3, straight([0, 0], [20, 0]), straight([0, 1], [20, 1]))).toBeCloseTo(80 + 2 * round - lens, 6);
    // Discs apart, touching, one over the other.
    expect(area(3, straight([0, 0]), straight([10, 0]))).toBeCloseTo(2 * round, 6);
    expect(area(3, straight([0, 0]), straight([3, 0]))).toBeCloseTo(2 * round, 6);
    expect(area(3, straight([0, 0]), straight([1, 0]))).toBeCloseTo(2 * round - lens, 6);
  });

  it.each([30, 45, 90, 120, 150])("of two that cross at %i° lacks the rhombus once", (degrees) => {
    const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    for (const [x, y] of [
      [0, 0],
      [-40, 30],
    ] as const) {
      const lines = [straight([x - 20, y], [x + 20, y]), straight([x - 20 * c, y - 20 * s], [x + 20 * c, y + 20 * s])];
      const wanted = 2 * 120 + 2 * round - 9 / s;
      expect(area(3, ...lines)).toBeCloseTo(wanted, 6);
      // The same drawn in many short parts.
      const shares = Array.from({ length: 81 }, (_, n) => n / 80);
      const drawn = lines.map(([from, to]) => shares.map((share) => along(from!, to!, share)));
      expect(area(3, ...drawn)).toBeCloseTo(wanted, 4);
    }
  });

  it("of a ring with a tail is the same in one line as in two, and agrees with the scan", () => {
    const loop = Array.from({ length: 41 }, (_, n): Point => {
      const turn = (n * Math.PI) / 20;
      return [4 + 2 * Math.cos(turn), 5 + 2 * Math.sin(turn)];
    });
    const tail = Array.from({ length: 30 }, (_, n): Point => [6 + n / 3, 5 - n / 20]);
    for (const lines of [[loop], [loop, tail], [[...loop, ...tail.slice(1)]], [[...tail].reverse(), loop]]) {
      expect(Math.abs(channelArea(lines, 3, 20) - scanned(lines, 1.5, 20))).toBeLessThan(0.05);
    }
  });

  it.each([10, 60, 90, 120])("of a bend by %i° has a round corner outside, and its inside once", (degrees) => {
    const turn = (degrees * Math.PI) / 180;
    const bent = straight([-20, 3], [0, 3], [20 * Math.cos(turn), 3 + 20 * Math.sin(turn)]);
    const wanted = 120 + round + 2.25 * (turn / 2 - Math.tan(turn / 2));
    expect(area(3, bent)).toBeCloseTo(wanted, 6);
    // The same in two lines that meet.
    expect(area(3, bent.slice(0, 2), bent.slice(1))).toBeCloseTo(wanted, 6);
    expect(area(3, [...bent].reverse())).toBeCloseTo(wanted, 6);
  });

  it("ends at the tool's edge, wherever a channel runs out", () => {
    const half = 1.5;
    const strip = half * Math.sqrt(100 * 100 - half * half) + 100 * 100 * Math.asin(half / 100);
    for (const end of [
      [120, 0],
      [0, 120],
      [-120, 0],
      [0, -120],
      [-90, -90],
    ] as Point[]) {
      expect(area(3, straight([0, 0], end))).toBeCloseTo(strip + round / 2, 7);
    }
    expect(area(3, straight([101.5, 0], [120, 0]))).toBeCloseTo(0, 6);
    expect(area(3, straight([98.5, 0]))).toBeCloseTo(round, 7);
    // A disc on the edge itself: the lens of two circles that far apart.
    const lens = (r: number, s: number, d: number) =>
      r * r * Math.acos((d * d + r * r - s * s) / (2 * d * r)) +
      s * s * Math.acos((d * d + s * s - r * r) / (2 * d * s)) -
      Math.sqrt((-d + r + s) * (d + r - s) * (d - r + s) * (d + r + s)) / 2;
    for (const far of [98.6, 99.5, 100, 101]) {
      expect(area(3, straight([0.6 * far, 0.8 * far]))).toBeCloseTo(lens(1.5, 100, far), 7);
    }
    // A channel wider than the tool covers it all.
    expect(channelArea([straight([0, 0], [1, 0])], 400, 100)).toBeCloseTo(Math.PI * 10_000, 6);
    // Along a chord beside the edge.
    const chord = (from: number) => 100 * 100 * Math.acos(from / 100) - from * Math.sqrt(100 * 100 - from * from);
    expect(area(3, straight([-60, 95], [60, 95]))).toBeCloseTo(chord(93.5) - chord(96.5), 7);
    expect(area(3, straight([-60, 99], [60, 99]))).toBeCloseTo(chord(97.5), 7);
  });

  it("of a line that bends tightly over short parts agrees with the scan, whichever way it runs", () => {
    const corner: Point[] = [
      [-8, -2],
      [-0.06, 0.02],
      [-0.02, 0.03],
      [0, 0.06],
      [0.03, 0.4],
      [0.02, 0.44],
      [-5, 6],
    ];
    const hairpin: Point[] = [
      [-9, -0.4],
      [0, -0.4],
      [0.3, -0.2],
      [0.4, 0],
      [0.3, 0.2],
      [0, 0.4],
      [-9, 0.4],
    ];
    const hook: Point[] = [
      [-9, 0],
      [0, 0],
      [0.2, 0.3],
      [0.1, 0.7],
    ];
    for (const line of [corner, hairpin, hook]) {
      for (const turn of [1, 2.6]) {
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        const drawn = line.map(([x, y]): Point => [c * x - s * y, s * x + c * y]);
        expect(channelArea([[...drawn].reverse()], 3, 20)).toBeCloseTo(channelArea([drawn], 3, 20), 6);
        expect(Math.abs(channelArea([drawn], 3, 20) - scanned([drawn], 1.5, 20)), JSON.stringify(drawn)).toBeLessThan(
          0.02,
        );
      }
    }
  });

  it("agrees with a scan of many lines that wind and cross", () => {
    const source = random(11);
    const lines = Array.from({ length: 60 }, () => {
      const line: Point[] = [[200 * source.next() - 100, 200 * source.next() - 100]];
      let turn = 2 * Math.PI * source.next();
      for (let n = 0; n < 30; n++) {
        turn += 0.8 * source.next() - 0.4;
        const [x, y] = line[n]!;
        line.push([x + 2 * Math.cos(turn), y + 2 * Math.sin(turn)]);
      }
      return line;
    });
    const found = area(3, ...lines);
    expect(found).toBeGreaterThan(5000);
    expect(Math.abs(found / scanned(lines, 1.5, 100) - 1)).toBeLessThan(1e-3);
  });

  it("agrees with a scan of any straight lines, inside and over the edge", () => {
    const source = random(7);
    for (let n = 0; n < 100; n++) {
      const place = (): Point => [60 * source.next() - 30, 60 * source.next() - 30];
      const lines = Array.from({ length: 1 + source.index(9) }, () =>
        Array.from({ length: 1 + source.index(2) }, place),
      );
      const width = [1, 4, 11][source.index(3)]!;
      const radius = [20, 33, 60][source.index(3)]!;
      const found = channelArea(lines, width, radius);
      expect(Math.abs(found - scanned(lines, width / 2, radius)), JSON.stringify([lines, width, radius])).toBeLessThan(
        0.003 * radius * width,
      );
    }
  });
});

describe("the floor of a channel", () => {
  const curved = { diameter: 200, rim: 3, curveRadius: 1000, sagitta: 1000 - Math.sqrt(990_000) };
  const points: Point[] = [
    [0, 0],
    [60, -80],
    [0, 50],
    [300, 0],
  ];

  it("lies as deep below a face that is the glass's own sphere", () => {
    // 5.013 mm at the centre, 3.762 mm at 50 mm; level from the edge on.
    expect(floorHeights(points, curved, "concave", 2.5)).toEqual([2.513, -2.5, 1.262, -2.5]);
    expect(floorHeights(points, curved, "convex", 2.5)).toEqual([-7.513, -2.5, -6.262, -2.5]);
  });

  it("is level on a flat, and never minus zero", () => {
    expect(floorHeights(points, { diameter: 200, rim: 3, sagitta: 0 }, "concave", 2.5)).toEqual([
      -2.5, -2.5, -2.5, -2.5,
    ]);
    expect(floorHeights(points, curved, "flat", 2.5)).toEqual([-2.5, -2.5, -2.5, -2.5]);
    expect(Object.is(floorHeights([[100, 0]], curved, "concave", 0.0001)[0], 0)).toBe(true);
  });
});

describe("a graph", () => {
  it("lists each node's links, a loop twice", () => {
    expect(
      linksAt(4, [
        { a: 0, b: 1 },
        { a: 1, b: 1 },
        { a: 2, b: 0 },
      ]),
    ).toEqual([[0, 2], [0, 1, 1], [2], []]);
  });

  it("falls into parts: nodes are in one where a way leads from one to the other", () => {
    fc.assert(
      fc.property(links, (list) => {
        const at = linksAt(7, list);
        const { part, count } = partsOf(list, at);
        const reach = Array.from({ length: 7 }, (_, a) => Array.from({ length: 7 }, (_, b) => a === b));
        for (const { a, b } of list) {
          reach[a]![b] = true;
          reach[b]![a] = true;
        }
        for (let k = 0; k < 7; k++)
          for (let a = 0; a < 7; a++) for (let b = 0; b < 7; b++) if (reach[a]![k] && reach[k]![b]) reach[a]![b] = true;
        for (let a = 0; a < 7; a++) {
          expect(part[a]! < 0).toBe(at[a]!.length === 0);
          for (let b = 0; b < 7; b++) {
            if (part[a]! >= 0 && part[b]! >= 0) expect(part[a] === part[b]).toBe(reach[a]![b]);
          }
        }
        // Counted from 0 in the order of the nodes.
        const numbers = [...new Set(part.filter((one) => one >= 0))];
        expect(numbers).toEqual(numbers.map((_, n) => n));
        expect(count).toBe(numbers.length);
      }),
      { numRuns: 200 },
    );
  });

  it("whose nodes all have an even number of links is gone round once, along each link once", () => {
    fc.assert(
      fc.property(links, (list) => {
        // Every link twice: every node even.
        const twice = [...list, ...list.map(({ a, b, length }) => ({ a: b, b: a, length }))];
        const at = linksAt(7, twice);
        const { part } = partsOf(twice, at);
        const start = twice[0]!.a;
        const way = closedWay(start, twice, at);
        let node = start;
        for (const { link, forward } of way) {
          const { a, b } = twice[link]!;
          expect(forward ? a : b).toBe(node);
          node = forward ? b : a;
        }
        expect(node).toBe(start);
        expect(way.map(({ link }) => link).sort((p, q) => p - q)).toEqual(
          twice.flatMap(({ a }, i) => (part[a] === part[start] ? [i] : [])),
        );
      }),
      { numRuns: 200 },
    );
  });
});

describe("outlets", () => {
  const nodes: Point[] = [
    [0, 0],
    ...[0, 90, 100, 250].map((turn): Point => {
      const angle = (turn * Math.PI) / 180;
      return [100 * Math.cos(angle), 100 * Math.sin(angle)];
    }),
  ];
  const outlet = (end: number, changes: object = {}) =>
    ({ a: 0, b: end, points: [], z: [], room: 5, cut: true, outlet: true, ...changes }) as never;

  it("are counted with the widest angle between neighbours", () => {
    const fed = outlet(0, { outlet: undefined });
    const of = (...edges: never[]) => outletsOf({ nodes, edges: edges.length > 0 ? [fed, ...edges] : [] });
    expect(of()).toEqual({ count: 0, widest: 0 });
    expect(of(outlet(2))).toEqual({ count: 1, widest: expect.closeTo(360, 9) });
    expect(of(outlet(1), outlet(2), outlet(3), outlet(4))).toEqual({ count: 4, widest: expect.closeTo(150, 9) });
    expect(of(outlet(4), outlet(1), outlet(3))).toEqual({ count: 3, widest: expect.closeTo(150, 9) });
    // Whichever of its ends an edge begins with, the outer one counts.
    const inner: Point[] = [
      [30, 40],
      [-100, 0],
      [0, -100],
    ];
    const turned = [outlet(0, { a: 1, b: 0 }), outlet(0, { a: 2, b: 0 }), fed];
    expect(outletsOf({ nodes: inner, edges: turned }).widest).toBeCloseTo(270, 9);
    // An end stands on either side of its edge; what is not cut or no outlet does not count.
    expect(
      of(outlet(1), outlet(0, { a: 2, b: 0 }), outlet(3, { cut: false }), outlet(4, { outlet: undefined })),
    ).toEqual({
      count: 2,
      widest: expect.closeTo(270, 9),
    });
  });

  it("that no cut channel leads to drain nothing, and are none", () => {
    const [channel, stub] = [outlet(1, { a: 2, outlet: undefined }), outlet(3)];
    const told = (...edges: never[]) => outletsText({ nodes, edges });
    expect(outletsOf({ nodes, edges: [channel, stub, outlet(4)] })).toEqual({ count: 0, widest: 0 });
    expect(told(channel, stub, outlet(4))).toBe("none; 2 drain nothing");
    expect(told(channel, stub, outlet(4, { a: 2 }))).toBe("1 round the edge; 1 more drains nothing");
    expect(told(outlet(2, { outlet: undefined }), stub, outlet(4))).toBe("2 round the edge, at most 210° apart");
    expect(told(outlet(2, { outlet: undefined, cut: false }), stub)).toBe("none; 1 drains nothing");
    // "At most" is never less than what is there: 209.3 degrees.
    const tilted = nodes.map(
      ([x, y], n): Point => (n === 4 ? [100 * Math.cos(4.3755), 100 * Math.sin(4.3755)] : [x, y]),
    );
    expect(outletsText({ nodes: tilted, edges: [outlet(2, { outlet: undefined }), outlet(4), stub] })).toMatch(
      "at most 210°",
    );
    // What parts them at the edge is as thin for one that drains nothing.
    expect(outletGaps({ nodes, edges: [channel, stub, outlet(4, { a: 2 })] })).toHaveLength(2);
  });
});

describe("room beside a line", () => {
  const [square, disc] = layoutOf(
    [regular(4, Math.SQRT2 * 5, 0, 0, Math.PI / 4), { x: 30, y: 0, radius: 5 }],
    3,
  ).pieces;

  it("is the least distance to a piece's sides, corners or round, by either's points", () => {
    expect(
      lineToPiece(
        [
          [8, -20],
          [8, 20],
        ],
        square!,
      ),
    ).toBeCloseTo(3, 9);
    expect(
      lineToPiece(
        [
          [-20, 9],
          [0, 9],
          [20, 9],
        ],
        square!,
      ),
    ).toBeCloseTo(4, 9);
    // Its end lies nearest: to a side, then to a corner.
    expect(
      lineToPiece(
        [
          [20, 1],
          [7, 1],
        ],
        square!,
      ),
    ).toBeCloseTo(2, 9);
    expect(
      lineToPiece(
        [
          [7, 1],
          [20, 1],
        ],
        square!,
      ),
    ).toBeCloseTo(2, 9);
    expect(
      lineToPiece(
        [
          [8, 9],
          [20, 20],
        ],
        square!,
      ),
    ).toBeCloseTo(5, 9);
    expect(
      lineToPiece(
        [
          [20, -20],
          [20, 20],
        ],
        disc!,
      ),
    ).toBeCloseTo(5, 9);
    expect(
      lineToPiece(
        [
          [5, -20],
          [5, 20],
        ],
        square!,
      ),
    ).toBeCloseTo(0, 9);
    expect(
      lineToPiece(
        [
          [27, -20],
          [27, 20],
        ],
        disc!,
      ),
    ).toBe(0);
  });

  it("agrees with another library, also where a line crosses, and is measured from a single place", () => {
    const source = random(3);
    const within = (by: number) => by * (2 * source.next() - 1);
    let crossed = 0;
    for (let n = 0; n < 400; n++) {
      const [x, y] = [within(40), within(40)];
      const [piece] = layoutOf(
        [regular(3 + source.index(4), 4 + 6 * source.next(), x, y, 6 * source.next())],
        3,
      ).pieces;
      const polygon = new Flatten.Polygon(piece!.outline);
      const [a, b] = [0, 1].map((): Point => [x + within(14), y + within(14)]) as [Point, Point];
      if ([a, b].every(([px, py]) => polygon.contains(new Flatten.Point(px, py)))) continue;
      const segment = Flatten.segment(a[0], a[1], b[0], b[1]);
      const wanted = polygon.intersect(segment).length > 0 ? 0 : polygon.distanceTo(segment)[0];
      if (wanted === 0) crossed++;
      expect(lineToPiece([a, b], piece!), JSON.stringify([a, b, piece!.outline])).toBeCloseTo(wanted, 6);
    }
    expect(crossed).toBeGreaterThan(50);
    expect(
      lineToPiece(
        [
          [8, 1],
          [8, 1],
        ],
        square!,
      ),
    ).toBeCloseTo(3, 9);
  });

  it("is looked for no farther than asked, or until one is found", () => {
    const { within, nearest } = surroundingsOf([square!, disc!]);
    const line: Point[] = [
      [20, 3],
      [20, -3],
    ];
    expect(within(line, 9)).toBeCloseTo(5, 9);
    expect(within(line, 4)).toBe(4);
    expect(nearest(line)).toBeCloseTo(5, 9);
    for (const far of [13, 21, 37, 69, 500]) {
      expect(
        nearest([
          [-far, 0],
          [-far, 4],
        ]),
      ).toBeCloseTo(far - 5, 9);
      expect(
        nearest([
          [0, far],
          [4, far],
        ]),
      ).toBeCloseTo(far - 5, 9);
      expect(
        nearest([
          [30 + far, 0],
          [40 + far, 4],
        ]),
      ).toBeCloseTo(far - 5, 9);
      expect(
        nearest([
          [30, -far],
          [30, -far - 1],
        ]),
      ).toBeCloseTo(far - 5, 9);
    }
  });
});

describe("what is not cut", () => {
  const job = exampleJob();
  const edge = (room: number, cut: boolean) => ({ a: 0, b: 1, points: [], z: [], room, cut });

  it("is too narrow for cutter and clearance, or left out by choice", () => {
    // 3 mm and 0.5 mm on each side, less 0.02 mm for rounding.
    expect(cutterFits(3.98, job.grooves)).toBe(true);
    expect(cutterFits(3.979, job.grooves)).toBe(false);
    const edges = [edge(5, true), edge(3, true), edge(3.97, false), edge(2, false), edge(4, false)];
    expect(uncutEdges(edges, job)).toEqual({ rim: 0, narrow: 2, chosen: 1 });
    expect(leaveUncut(edges, job)).toBe("Leave the dashed ones: 2 too narrow for the cutter, 1 left out by choice.");
    expect(leaveUncut([edge(2, false)], job)).toBe("Leave the dashed one: 1 too narrow for the cutter.");
    expect(leaveUncut([edge(9, false)], job)).toBe("Leave the dashed one: 1 left out by choice.");
    expect(leaveUncut([edge(5, true)], job)).toBeUndefined();
    // Nobody chose: the loop along the rim is cut only where it is asked for, whatever its room.
    const rim = [9, 2].map((room) => ({ ...edge(room, false), between: "rim" as const }));
    expect(leaveUncut(rim, job)).toBe(
      "Leave the dashed ones: 2 of the loop along the rim, which is cut only with rim-loop: true.",
    );
    expect(leaveUncut(rim.slice(1), job)).toBe(
      "Leave the dashed one: 1 of the loop along the rim, which is cut only with rim-loop: true.",
    );
    expect(leaveUncut([edge(2, false), edge(2, false), rim[0]!], job)).toBe(
      "Leave the dashed ones: 2 too narrow for the cutter, 1 of the loop along the rim, which is cut only with rim-loop: true.",
    );
    expect(uncutEdges(rim, { ...job, grooves: { ...job.grooves, "rim-loop": true } })).toEqual({
      rim: 0,
      narrow: 1,
      chosen: 1,
    });
  });
});

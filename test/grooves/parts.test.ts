// The parts that the channels are worked out with, each against its own definition.
import Flatten from "@flatten-js/core";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../packages/casting-core/src/geometry/types.js";
import { channelArea } from "../../packages/casting-core/src/grooves/area.js";
import { floorHeights } from "../../packages/casting-core/src/grooves/floor.js";
import { closedWay, type Link, linksAt, partsOf } from "../../packages/casting-core/src/grooves/graph.js";
import { leastMatching } from "../../packages/casting-core/src/grooves/matching.js";
import { outletsOf } from "../../packages/casting-core/src/grooves/outlets.js";
import { nearPairs } from "../../packages/casting-core/src/grooves/pairing.js";
import { along, between, lengthOf, rounded, simplified } from "../../packages/casting-core/src/grooves/polyline.js";
import { leastRetrace } from "../../packages/casting-core/src/grooves/retrace.js";
import { lineToPiece, surroundingsOf } from "../../packages/casting-core/src/grooves/room.js";
import { cutterFits, leaveUncut, uncutEdges } from "../../packages/casting-core/src/grooves/uncut.js";
import { random } from "../../packages/casting-core/src/random.js";
import { exampleJob } from "../support/jobs.js";
import { layoutOf, regular } from "../support/layouts.js";

const places = (most: number) =>
  fc.tuple(fc.integer({ min: -most, max: most }), fc.integer({ min: -most, max: most })) as fc.Arbitrary<Point>;

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
    expect(between([1, 2], [-2, 6])).toBe(5);
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

/** Random links among a few nodes, loops among them. */
const links = fc
  .array(fc.tuple(fc.nat(6), fc.nat(6), fc.integer({ min: 1, max: 30 })), { minLength: 1, maxLength: 12 })
  .map((list) => list.map(([a, b, length]): Link => ({ a, b, length })));

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

describe("a matching", () => {
  it("of no nodes is empty, of all at no cost is whole", () => {
    expect(leastMatching(0, [])).toEqual([]);
    expect(
      leastMatching(4, [
        { a: 0, b: 3, cost: 0 },
        { a: 1, b: 2, cost: 0 },
      ]),
    ).toEqual([3, 2, 1, 0]);
    expect(leastMatching(2, [{ a: 0, b: 1, cost: 5 }])).toEqual([1, 0]);
    expect(leastMatching(3, [{ a: 0, b: 1, cost: 1 }])).toBeUndefined();
    expect(leastMatching(4, [{ a: 0, b: 1, cost: 1 }])).toBeUndefined();
  });

  it("takes the least in all, not the least pair first", () => {
    const pairs = [
      { a: 0, b: 1, cost: 1 },
      { a: 2, b: 3, cost: 10 },
      { a: 0, b: 2, cost: 2 },
      { a: 1, b: 3, cost: 2 },
      { a: 0, b: 3, cost: 3 },
      { a: 1, b: 2, cost: 7 },
    ];
    for (const unit of [1, 1e-9, 1e9]) {
      const scaled = pairs.map(({ a, b, cost }) => ({ a, b, cost: cost * unit }));
      expect(leastMatching(4, scaled)).toEqual([2, 3, 0, 1]);
    }
  });

  it("leaves the global scope as it was", () => {
    const scope = globalThis as unknown as Record<string, unknown>;
    scope["path"] = "mine";
    leastMatching(2, [{ a: 0, b: 1, cost: 1 }]);
    expect(scope["path"]).toBe("mine");
    expect(["b", "v"].filter((name) => Object.hasOwn(scope, name))).toEqual([]);
    delete scope["path"];
    expect(() => leastMatching(2, [{ a: Number.NaN, b: 1, cost: 1 }])).not.toThrow(ReferenceError);
    expect(["b", "path", "v"].filter((name) => Object.hasOwn(scope, name))).toEqual([]);
  });
});

describe("what is gone along again", () => {
  /** Least length to double so that no more than two nodes of a part are odd, by trying every set of links. */
  function byTrying(list: readonly Link[], part: readonly number[], one: number): number {
    let least = Number.POSITIVE_INFINITY;
    for (let doubled = 0; doubled < 1 << list.length; doubled++) {
      const degree = new Array<number>(7).fill(0);
      let length = 0;
      list.forEach((link, i) => {
        const twice = (doubled >> i) & 1;
        degree[link.a]! += 1 + twice;
        degree[link.b]! += 1 + twice;
        length += twice * link.length;
      });
      const odd = degree.filter((n, node) => n % 2 === 1 && part[node] === one).length;
      if (odd <= 2) least = Math.min(least, length);
    }
    return least;
  }

  it("is the least there is, and as good as a matching with few partners offered", () => {
    fc.assert(
      fc.property(links, (all) => {
        const list = all.slice(0, 10);
        const at = linksAt(7, list);
        const { part, count } = partsOf(list, at);
        for (let one = 0; one < count; one++) {
          const odd = at.flatMap((here, node) => (here.length % 2 === 1 && part[node] === one ? [node] : []));
          const length = (nearest?: number) =>
            leastRetrace(odd, list, at, nearest).reduce((sum, link) => sum + list[link]!.length, 0);
          expect(length()).toBe(byTrying(list, part, one));
          expect(length(1)).toBeGreaterThanOrEqual(length());
          const degree = at.map((here) => here.length);
          for (const link of leastRetrace(odd, list, at, 1)) {
            degree[list[link]!.a]!++;
            degree[list[link]!.b]!++;
          }
          expect(degree.filter((n, node) => n % 2 === 1 && part[node] === one).length).toBeLessThanOrEqual(2);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("of a star leaves its two longest rays out, though each end has but its middle near", () => {
    const star = [1, 2, 3, 4, 5].map((length): Link => ({ a: 0, b: length, length }));
    const at = linksAt(6, star);
    for (const nearest of [1, 2, 8]) {
      expect(leastRetrace([0, 1, 2, 3, 4, 5], star, at, nearest).sort()).toEqual([0, 1, 2]);
    }
  });

  it("cannot be found where no way joins the odd ends", () => {
    const apart = [0, 2, 4, 6].map((a): Link => ({ a, b: a + 1, length: 1 }));
    const odd = [0, 2, 4, 6];
    expect(() => leastRetrace(odd, apart, linksAt(8, apart))).toThrow(
      "the odd junctions of a connected part could not be matched",
    );
  });

  it("is nothing where one way does, and the middle of a letter H else", () => {
    const h: Link[] = [
      { a: 0, b: 1, length: 5 },
      { a: 1, b: 2, length: 5 },
      { a: 1, b: 4, length: 3 },
      { a: 3, b: 4, length: 5 },
      { a: 4, b: 5, length: 7 },
    ];
    const at = linksAt(6, h);
    expect(leastRetrace([0, 1], h, at)).toEqual([]);
    // Six odd ends, two of them the cut's own: the two shortest ways that make the others even are one stem each side.
    const again = leastRetrace([0, 1, 2, 3, 4, 5], h, at);
    expect(again.reduce((sum, link) => sum + h[link]!.length, 0)).toBe(10);
  });
});

describe("pairs for short travel", () => {
  it("hold every node once, and of four the shortest", () => {
    const all = (points: Point[]) =>
      nearPairs(
        points.map((_, i) => i),
        points,
      );
    expect(nearPairs([], [])).toEqual([]);
    fc.assert(
      fc.property(fc.uniqueArray(places(50), { minLength: 4, maxLength: 4, selector: String }), (points) => {
        const length = (pairs: number[][]) => pairs.reduce((sum, [a, b]) => sum + between(points[a!]!, points[b!]!), 0);
        const found = all(points);
        expect(found.flat().sort()).toEqual([0, 1, 2, 3]);
        for (const [a, b] of found) expect(a).toBeLessThan(b);
        const least = Math.min(
          ...[
            [
              [0, 1],
              [2, 3],
            ],
            [
              [0, 2],
              [1, 3],
            ],
            [
              [0, 3],
              [1, 2],
            ],
          ].map(length),
        );
        expect(length(found)).toBeCloseTo(least, 5);
      }),
      { numRuns: 200 },
    );
  });

  it("are made also of what lies far from all others, and of some of the points alone", () => {
    fc.assert(
      fc.property(fc.uniqueArray(places(900), { minLength: 24, maxLength: 40, selector: String }), (points) => {
        const nodes = points.flatMap((_, i) => (i % 2 === 0 || i < 2 ? [i] : []));
        const even = nodes.slice(0, nodes.length - (nodes.length % 2));
        const pairs = nearPairs(even, points);
        expect(pairs.flat().sort((p, q) => p - q)).toEqual(even);
        // A node's own partner apart, none of the eight nearest would serve both pairs better.
        const off = (a: number, b: number) => between(points[a]!, points[b]!);
        const partner = new Map(pairs.flatMap(([a, b]) => [[a, b] as const, [b, a] as const]));
        for (const a of even) {
          const near = even.filter((b) => b !== a).sort((b, c) => off(a, b) - off(a, c));
          for (const b of near.slice(0, 8)) {
            const [c, d] = [partner.get(a)!, partner.get(b)!];
            if (b !== c) expect(off(a, b) + off(c, d)).toBeGreaterThanOrEqual(off(a, c) + off(b, d) - 1e-6);
          }
        }
      }),
      { numRuns: 40 },
    );
    const clusters = Array.from({ length: 22 }, (_, i): Point => (i < 11 ? [i, 0] : [1000 + i, 0]));
    const lengths = nearPairs(
      clusters.map((_, i) => i),
      clusters,
    ).map(([a, b]) => clusters[b]![0] - clusters[a]![0]);
    expect(lengths.filter((length) => length > 100)).toHaveLength(1);
    expect(lengths.filter((length) => length === 1)).toHaveLength(10);
  });

  it("join what is left of crowds to the nearest of what is left", () => {
    for (const order of [
      [0, 5000, 1000, 6000],
      [5000, 0, 6000, 1000],
      [1000, 6000, 5000, 0],
    ]) {
      const crowds = order.flatMap((start) => Array.from({ length: 11 }, (_, n): Point => [start + n, 0]));
      const far = nearPairs(
        crowds.map((_, i) => i),
        crowds,
      ).filter(([a, b]) => between(crowds[a]!, crowds[b]!) > 20);
      expect(far).toHaveLength(2);
      for (const [a, b] of far) expect(between(crowds[a]!, crowds[b]!)).toBeLessThan(1011);
    }
  });

  it("are on average within 2.5 % of the shortest there are", () => {
    const source = random(5);
    let [made, least] = [0, 0];
    for (let n = 0; n < 60; n++) {
      const points = Array.from({ length: 24 }, (): Point => [100 * source.next(), 100 * source.next()]);
      const off = (a: number, b: number) => between(points[a]!, points[b]!);
      const nodes = points.map((_, i) => i);
      const all = nodes.flatMap((a) => nodes.slice(a + 1).map((b) => ({ a, b, cost: off(a, b) })));
      made += nearPairs(nodes, points).reduce((sum, [a, b]) => sum + off(a, b), 0);
      least += leastMatching(24, all)!.reduce((sum, b, a) => sum + off(a, b) / 2, 0);
    }
    expect(made / least).toBeGreaterThanOrEqual(1);
    expect(made / least).toBeLessThan(1.025);
  });

  it("are of equal ones those of the nodes that come first", () => {
    const square: Point[] = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ];
    for (const [numbers, wanted] of [
      ["0123", "01 23"],
      ["0132", "01 23"],
      ["0213", "02 13"],
      ["3120", "02 13"],
    ] as const) {
      // The square's corners, by the numbers they have.
      const points = square.map((_, number) => square[numbers.indexOf(String(number))]!);
      expect(
        nearPairs([0, 1, 2, 3], points)
          .map((pair) => pair.join(""))
          .join(" "),
      ).toBe(wanted);
    }
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
    const of = (...edges: never[]) => outletsOf({ nodes, edges });
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
    const turned = [outlet(0, { a: 1, b: 0 }), outlet(0, { a: 2, b: 0 })];
    expect(outletsOf({ nodes: inner, edges: turned }).widest).toBeCloseTo(270, 9);
    // An end stands on either side of its edge; what is not cut or no outlet does not count.
    expect(
      of(outlet(1), outlet(0, { a: 2, b: 0 }), outlet(3, { cut: false }), outlet(4, { outlet: undefined })),
    ).toEqual({
      count: 2,
      widest: expect.closeTo(270, 9),
    });
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
    expect(uncutEdges(edges, job)).toEqual({ narrow: 2, chosen: 1 });
    expect(leaveUncut(edges, job)).toBe("Leave the dashed ones: 2 too narrow for the cutter, 1 left out by choice.");
    expect(leaveUncut([edge(2, false)], job)).toBe("Leave the dashed ones: 1 too narrow for the cutter.");
    expect(leaveUncut([edge(9, false)], job)).toBe("Leave the dashed ones: 1 left out by choice.");
    expect(leaveUncut([edge(5, true)], job)).toBeUndefined();
  });
});

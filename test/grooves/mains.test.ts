// The wider pattern on channels made by hand: a grid of square pieces, its crossings the junctions.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Channel } from "../../packages/casting-core/src/grooves/cuts/choice.js";
import { mainsOf } from "../../packages/casting-core/src/grooves/cuts/mains.js";
import { linksAt, partsOf } from "../../packages/casting-core/src/grooves/network/graph.js";

/** Channels between and round `wide` by `high` pieces; `outlets` go out from the ends of those between. */
function grid(wide: number, high: number, rim: boolean, uncut: (n: number) => boolean) {
  const piece = (x: number, y: number) => (x < 0 || y < 0 || x >= wide || y >= high ? [] : [y * wide + x]);
  const node = (x: number, y: number) => y * (wide + 1) + x;
  let nodes = (wide + 1) * (high + 1);
  const channels: Channel[] = [];
  const add = (a: number, b: number, beside: number[], more: Partial<Channel> = {}) => {
    const between = beside.length === 2 ? {} : ({ between: "rim" } as const);
    const cut = (beside.length === 2 || rim) && !uncut(channels.length);
    channels.push({ a, b, points: [], room: 4, cut, beside, ...between, ...more });
  };
  for (let y = 0; y <= high; y++)
    for (let x = 0; x < wide; x++) add(node(x, y), node(x + 1, y), [...piece(x, y - 1), ...piece(x, y)]);
  for (let x = 0; x <= wide; x++)
    for (let y = 0; y < high; y++) add(node(x, y), node(x, y + 1), [...piece(x - 1, y), ...piece(x, y)]);
  for (let x = 1; x < wide; x++)
    for (const y of [0, high])
      add(node(x, y), nodes++, [...piece(x - 1, Math.min(y, high - 1)), ...piece(x, Math.min(y, high - 1))], {
        outlet: true,
      });
  for (let y = 1; y < high; y++)
    for (const x of [0, wide])
      add(node(x, y), nodes++, [...piece(Math.min(x, wide - 1), y - 1), ...piece(Math.min(x, wide - 1), y)], {
        outlet: true,
      });
  return { nodes, channels, pieces: wide * high };
}

const parts = (channels: Channel[], nodes: number) => {
  const cut = channels.filter((channel) => channel.cut);
  return partsOf(cut, linksAt(nodes, cut)).count;
};
const ends = (channels: Channel[], nodes: number) =>
  linksAt(
    nodes,
    channels.filter(({ cut }) => cut),
  ).map((at) => at.length);
/** Group of each piece: those with a channel between them that is cut no more. */
function groups(before: Channel[], after: Channel[], pieces: number): number[] {
  const group = Array.from({ length: pieces }, (_, i) => i);
  for (const [i, { cut, beside, outlet }] of after.entries()) {
    if (cut || !before[i]!.cut || outlet) continue;
    const [a, b] = beside.map((one) => group[one]!);
    group.forEach((of, one) => {
      if (of === b) group[one] = a!;
    });
  }
  return group;
}
const grids = fc
  .record({
    wide: fc.integer({ min: 1, max: 5 }),
    high: fc.integer({ min: 1, max: 5 }),
    rim: fc.boolean(),
    missing: fc.array(fc.nat(60), { maxLength: 5 }),
    seed: fc.nat(99),
  })
  .map(({ wide, high, rim, missing, seed }) => ({ ...grid(wide, high, rim, (n) => missing.includes(n)), seed }));

describe("the wider pattern", () => {
  it("cuts nothing that was not cut, and changes nothing else, the channels that it was given least of all", () => {
    fc.assert(
      fc.property(grids, ({ channels, nodes, pieces, seed }) => {
        const given = structuredClone(channels);
        const mains = mainsOf(channels, nodes, pieces, seed);
        expect(channels).toEqual(given);
        expect(mains.map((channel, i) => ({ ...channel, cut: channels[i]!.cut }))).toEqual(channels);
        for (const [i, { cut }] of mains.entries()) if (cut) expect(channels[i]!.cut).toBe(true);
        expect(mainsOf(channels, nodes, pieces, seed)).toEqual(mains);
      }),
    );
  });

  it("joins no more than three pieces, leaves none without a channel, no end blind and nothing cut off", () => {
    fc.assert(
      fc.property(grids, ({ channels, nodes, pieces, seed }) => {
        const mains = mainsOf(channels, nodes, pieces, seed);
        const group = groups(channels, mains, pieces);
        for (const one of group) expect(group.filter((other) => other === one).length).toBeLessThanOrEqual(3);
        const touched = (all: Channel[], piece: number) => all.some(({ cut, beside }) => cut && beside.includes(piece));
        for (let piece = 0; piece < pieces; piece++) expect(touched(mains, piece)).toBe(touched(channels, piece));
        const before = ends(channels, nodes);
        const width = linksAt(nodes, channels).map((at) => at.length);
        ends(mains, nodes).forEach((count, node) => {
          if (count === 1 && width[node]! > 1) expect(before[node]).toBe(1);
        });
        expect(parts(mains, nodes)).toBeLessThanOrEqual(parts(channels, nodes));
      }),
      { numRuns: 300 },
    );
  });

  it("cuts nothing between the pieces of a group, nor its outlets, and all between groups", () => {
    fc.assert(
      fc.property(grids, ({ channels, nodes, pieces, seed }) => {
        const mains = mainsOf(channels, nodes, pieces, seed);
        const group = groups(channels, mains, pieces);
        for (const [i, { cut, beside }] of mains.entries()) {
          const within = beside.length === 2 && group[beside[0]!] === group[beside[1]!];
          expect(cut).toBe(channels[i]!.cut && !within);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("of a large grid joins most pieces, and otherwise for another seed", () => {
    const { channels, nodes, pieces } = grid(12, 12, false, () => false);
    const patterns = [1, 2].map((seed) => mainsOf(channels, nodes, pieces, seed));
    for (const mains of patterns) {
      const group = groups(channels, mains, pieces);
      const sizes = group.map((one) => group.filter((other) => other === one).length);
      expect(sizes.filter((size) => size === 1).length).toBeLessThan(0.15 * pieces);
      expect(sizes.filter((size) => size === 3).length).toBeGreaterThan(0.4 * pieces);
    }
    expect(patterns[0]).not.toEqual(patterns[1]);
  });

  it("joins what it can where the first joinings by lot would cut the channels in two", () => {
    const { channels, nodes, pieces } = grid(2, 3, false, () => false);
    for (let seed = 1; seed <= 30; seed++) {
      const mains = mainsOf(channels, nodes, pieces, seed);
      expect(parts(mains, nodes)).toBe(1);
      expect(new Set(groups(channels, mains, pieces)).size).toBeLessThanOrEqual(pieces - 2);
    }
  });
});

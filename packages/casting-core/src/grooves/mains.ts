import { type Random, random } from "../random.js";
import type { Channel } from "./choice.js";
import { linksAt, partsOf } from "./graph.js";

/** Pieces that share one mesh of the wider pattern, at the most. */
const PIECES_TOGETHER = 3;
/** The pattern's own draws, apart from those of the layout. */
const STREAM = 4;

/**
 * `channels` with fewer of them cut: neighbouring pieces are joined, by lot, into groups of up to three, and only the
 * channels between groups and their outlets stay. Every piece keeps a channel beside it, the network stays in as many
 * parts as before, and no end is left blind that was not.
 */
export function mainsOf(channels: readonly Channel[], nodeCount: number, pieceCount: number, seed: number): Channel[] {
  const source = random(seed, STREAM);
  const group = Array.from({ length: pieceCount }, (_, i) => i);
  const members = group.map((piece) => [piece]);
  const cut = channels.map((channel) => channel.cut);
  const at = linksAt(nodeCount, channels);
  const parts = countParts(channels, cut, nodeCount);
  const inner = shuffled(
    channels.flatMap((channel, i) => (channel.cut && channel.beside.length === 2 && !channel.outlet ? [i] : [])),
    source,
  );
  for (const candidate of inner) {
    const [a, b] = channels[candidate]!.beside.map((piece) => group[piece]!) as [number, number];
    if (a === b || members[a]!.length + members[b]!.length > PIECES_TOGETHER) continue;
    const joined = [...members[a]!, ...members[b]!];
    const dropped = channels.flatMap(({ beside }, i) =>
      cut[i] && beside.length === 2 && beside.every((piece) => joined.includes(piece)) ? [i] : [],
    );
    for (const i of dropped) cut[i] = false;
    if (allowed(dropped, joined)) {
      for (const piece of members[b]!) group[piece] = a;
      members[a] = joined;
      members[b] = [];
    } else {
      for (const i of dropped) cut[i] = true;
    }
  }
  return channels.map((channel, i) => (channel.cut && !cut[i] ? { ...channel, cut: false } : channel));

  function allowed(dropped: number[], joined: number[]): boolean {
    const blind = dropped
      .flatMap((i) => [channels[i]!.a, channels[i]!.b])
      .some((node) => at[node]!.length > 1 && at[node]!.filter((i) => cut[i]).length === 1);
    if (blind) return false;
    const touched = joined.every((piece) => channels.some(({ beside }, i) => cut[i] && beside.includes(piece)));
    return touched && countParts(channels, cut, nodeCount) <= parts;
  }
}

function countParts(channels: readonly Channel[], cut: readonly boolean[], nodeCount: number): number {
  const links = channels.flatMap(({ a, b }, i) => (cut[i] ? [{ a, b }] : []));
  return partsOf(links, linksAt(nodeCount, links)).count;
}

function shuffled(items: number[], source: Random): number[] {
  for (let i = items.length - 1; i > 0; i--) {
    const j = source.index(i + 1);
    [items[i], items[j]] = [items[j]!, items[i]!];
  }
  return items;
}

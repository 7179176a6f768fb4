import { type Random, random } from "../../random.js";
import { linksAt, partsOf } from "../network/graph.js";
import type { Channel } from "./choice.js";

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
  // Counting the parts after each joining is slow and hardly ever needed: a group of three seldom shuts anything in.
  const parts = countParts(channels, nodeCount);
  const quick = joinedByLot(channels, nodeCount, pieceCount, seed, () => true);
  if (countParts(quick, nodeCount) <= parts) return quick;
  return joinedByLot(channels, nodeCount, pieceCount, seed, (tried) => countParts(tried, nodeCount) <= parts);
}

function joinedByLot(
  channels: readonly Channel[],
  nodeCount: number,
  pieceCount: number,
  seed: number,
  whole: (tried: readonly Channel[]) => boolean,
): Channel[] {
  const result = channels.map((channel) => ({ ...channel }));
  const at = linksAt(nodeCount, channels);
  const besidePiece: Channel[][] = Array.from({ length: pieceCount }, () => []);
  for (const channel of result) for (const piece of channel.beside) besidePiece[piece]!.push(channel);
  const group = besidePiece.map((_, piece) => piece);
  const members = group.map((piece) => [piece]);
  const inner = result.filter(({ cut, beside, outlet }) => cut && beside.length === 2 && !outlet);
  for (const candidate of shuffled(inner, random(seed, STREAM))) {
    const [a, b] = candidate.beside.map((piece) => group[piece]!) as [number, number];
    const joined = [...members[a]!, ...members[b]!];
    if (a === b || joined.length > PIECES_TOGETHER) continue;
    const dropped = new Set(
      joined
        .flatMap((piece) => besidePiece[piece]!)
        .filter(({ cut, beside }) => cut && beside.length === 2 && beside.every((piece) => joined.includes(piece))),
    );
    for (const channel of dropped) channel.cut = false;
    const touched = joined.every((piece) => besidePiece[piece]!.some(({ cut }) => cut));
    const blind = [...dropped]
      .flatMap((channel) => [channel.a, channel.b])
      .some((node) => at[node]!.filter((i) => result[i]!.cut).length === 1);
    if (touched && !blind && whole(result)) {
      for (const piece of members[b]!) group[piece] = a;
      members[a] = joined;
    } else {
      for (const channel of dropped) channel.cut = true;
    }
  }
  return result;
}

function countParts(channels: readonly Channel[], nodeCount: number): number {
  const cut = channels.filter((channel) => channel.cut);
  return partsOf(cut, linksAt(nodeCount, cut)).count;
}

function shuffled<T>(items: T[], source: Random): T[] {
  for (let i = items.length - 1; i > 0; i--) {
    const j = source.index(i + 1);
    [items[i], items[j]] = [items[j]!, items[i]!];
  }
  return items;
}

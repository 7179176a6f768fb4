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
  // Counting the parts before each joining is slow and hardly ever needed: a group of three seldom shuts anything in.
  const parts = countParts(channels, nodeCount);
  const quick = joinedByLot(channels, nodeCount, pieceCount, seed);
  return countParts(quick, nodeCount) <= parts ? quick : joinedByLot(channels, nodeCount, pieceCount, seed, parts);
}

/** Copies of `channels` with those inside groups not cut; `mostParts`: none is joined that leaves the network in more. */
function joinedByLot(
  channels: readonly Channel[],
  nodeCount: number,
  pieceCount: number,
  seed: number,
  mostParts?: number,
): Channel[] {
  const result = channels.map((channel) => ({ ...channel }));
  const at = linksAt(nodeCount, channels);
  const besidePiece: Channel[][] = Array.from({ length: pieceCount }, () => []);
  for (const channel of result) for (const piece of channel.beside) besidePiece[piece]!.push(channel);
  const groupOf = besidePiece.map((_, piece) => [piece]);
  const inner = result.filter(({ cut, beside, outlet }) => cut && beside.length === 2 && !outlet);
  for (const { beside } of shuffled(inner, random(seed, STREAM))) {
    const [one, other] = beside.map((piece) => groupOf[piece]!) as [number[], number[]];
    const joined = [...one, ...other];
    if (one === other || joined.length > PIECES_TOGETHER) continue;
    const inside = new Set(
      joined.flatMap((piece) => besidePiece[piece]!).filter((channel) => isInside(channel, joined)),
    );
    const stays = (channel: Channel): boolean => channel.cut && !inside.has(channel);
    const touched = joined.every((piece) => besidePiece[piece]!.some(stays));
    const blind = [...inside]
      .flatMap(({ a, b }) => [a, b])
      .some((node) => at[node]!.filter((n) => stays(result[n]!)).length === 1);
    if (!touched || blind) continue;
    if (mostParts !== undefined && countParts(result.filter(stays), nodeCount) > mostParts) continue;
    for (const channel of inside) channel.cut = false;
    for (const piece of joined) groupOf[piece] = joined;
  }
  return result;
}

function isInside({ cut, beside }: Channel, group: readonly number[]): boolean {
  return cut && beside.length === 2 && beside.every((piece) => group.includes(piece));
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

import type { Point } from "../../geometry/types.js";
import { along } from "../polyline.js";
import { linksAt } from "./graph.js";
import { distanceTo, type Site } from "./sites.js";
import { junction, type Way } from "./ways.js";

/** How much nearer than its own three sites another must be to a junction, mm: less cannot be told in whole micrometres. */
const NEARER = 5e-4;
/** What a junction may be off by, mm. */
const OFF = 0.004;

/**
 * Puts right, in place, short ways that the samples have between the wrong sites: where by exact distances the site beyond
 * one end of a way is nearer to its other end than the way's own two sites, it is the sites beyond its ends that meet
 * (Lawson's flip, 1977, on whole outlines). Returns whether every junction is then as far from all its sites, and no
 * farther from them than from those beyond its ways.
 */
export function putRight(nodes: Point[], ways: readonly Way[], sites: readonly Site[], spacing: number): boolean {
  const at = linksAt(nodes.length, ways);
  const nearer = (site: number, than: number, point: Point): number =>
    distanceTo(sites[than]!, point) - distanceTo(sites[site]!, point);
  // By how much the site beyond one end of a way, from `first` to `last`, is nearer to the other end, mm.
  const wrong = ({ left, ends: [before, after] }: Way, first: Point, last: Point): number =>
    before === after ? 0 : Math.max(nearer(after!, left, first), nearer(before!, left, last));
  const wrongNow = (way: Way): number => wrong(way, nodes[way.a]!, nodes[way.b]!);
  const flip = (n: number): number[] => {
    const way = ways[n]!;
    const { a, b, left, right } = way;
    const [before, after] = way.ends as [number, number];
    const middle = along(nodes[a]!, nodes[b]!, 0.5);
    const [first, last] = [left, right].map((own) =>
      junction(middle, sites[own]!, sites[before]!, sites[after]!, spacing),
    ) as [Point, Point];
    const flipped: Omit<Way, "a" | "b"> = { left: after, right: before, ends: [left, right], through: [] };
    if (wrong({ ...way, ...flipped }, first, last) > wrongNow(way)) return [];
    const beside = (node: number, site: number): number =>
      at[node]!.find((m) => m !== n && (ways[m]!.left === site || ways[m]!.right === site))!;
    const [stays, goes, comes, keeps] = [beside(a, left), beside(a, right), beside(b, left), beside(b, right)];
    lead(ways[stays]!, a, a, after);
    lead(ways[goes]!, a, b, after);
    lead(ways[comes]!, b, a, before);
    lead(ways[keeps]!, b, b, before);
    at[a] = [n, stays, comes];
    at[b] = [n, goes, keeps];
    nodes[a] = first;
    nodes[b] = last;
    Object.assign(way, flipped);
    return [n, stays, goes, comes, keeps];
  };
  const open = ways.map((_, n) => n);
  // Each flip makes what is wrong less; rounding must not make two of them undo each other for ever.
  for (let left = open.length; left > 0 && open.length > 0; ) {
    const n = open.pop()!;
    if (wrongNow(ways[n]!) <= NEARER) continue;
    open.push(...flip(n));
    left--;
  }
  const isRight = (way: Way): boolean => {
    const { left, right, ends } = way;
    const off = ends.flatMap((third, end) =>
      [right, third].map((site) => Math.abs(nearer(site, left, nodes[end === 0 ? way.a : way.b]!))),
    );
    return Math.max(wrongNow(way), ...off) <= OFF;
  };
  return ways.every(isRight);
}

/** Has the end of a way at node `from` stand at node `to`, with another third site. */
function lead(way: Way, from: number, to: number, third: number): void {
  if (way.a === from) {
    way.a = to;
    way.ends[0] = third;
  } else {
    way.b = to;
    way.ends[1] = third;
  }
}

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
  const wrongNow = (way: Way): number => wrongBy(way, nodes[way.a]!, nodes[way.b]!, sites);
  const open = ways.map((_, n) => n);
  // Each flip makes what is wrong less; rounding must not make two of them undo each other for ever.
  for (let left = open.length; left > 0 && open.length > 0; ) {
    const n = open.pop()!;
    const way = ways[n]!;
    const wrong = wrongNow(way);
    if (wrong <= NEARER) continue;
    left--;
    const { flipped, first, last } = flip(way, nodes, sites, spacing);
    if (wrongBy(flipped, first, last, sites) > wrong) continue;
    open.push(n, ...rejoin(n, ways, at));
    nodes[way.a] = first;
    nodes[way.b] = last;
    Object.assign(way, flipped);
  }
  return ways.every((way) => {
    const { left, right, ends } = way;
    const off = ends.flatMap((third, end) => {
      const node = nodes[end === 0 ? way.a : way.b]!;
      return [right, third].map((site) => Math.abs(nearerBy(sites[site]!, sites[left]!, node)));
    });
    return Math.max(wrongNow(way), ...off) <= OFF;
  });
}

/** How much nearer a site is to a point than another, mm. */
function nearerBy(site: Site, than: Site, point: Point): number {
  return distanceTo(than, point) - distanceTo(site, point);
}

/** By how much the site beyond one end of a way, from `first` to `last`, is nearer to the other end than its own, mm. */
function wrongBy({ left, ends }: Way, first: Point, last: Point, sites: readonly Site[]): number {
  const [before, after] = ends;
  if (before === after) return 0;
  return Math.max(nearerBy(sites[after!]!, sites[left]!, first), nearerBy(sites[before!]!, sites[left]!, last));
}

/** A way between the sites beyond its ends instead of its own, and where its two junctions then are. */
function flip(
  way: Way,
  nodes: readonly Point[],
  sites: readonly Site[],
  spacing: number,
): { flipped: Way; first: Point; last: Point } {
  const { a, b, left, right } = way;
  const [before, after] = way.ends as [number, number];
  const middle = along(nodes[a]!, nodes[b]!, 0.5);
  const junctionWith = (own: number): Point => junction(middle, sites[own]!, sites[before]!, sites[after]!, spacing);
  const flipped: Way = { a, b, left: after, right: before, ends: [left, right], through: [] };
  return { flipped, first: junctionWith(left), last: junctionWith(right) };
}

/**
 * Joins the four ways that meet a way, itself not yet flipped, to its junctions as they are once it is: a then has both
 * that run beside its left site, b both beside its right one. Returns the four.
 */
function rejoin(n: number, ways: readonly Way[], at: number[][]): number[] {
  const { a, b, left, right, ends } = ways[n]!;
  const [before, after] = ends as [number, number];
  const beside = (node: number, site: number): number =>
    at[node]!.find((m) => m !== n && (ways[m]!.left === site || ways[m]!.right === site))!;
  // Each by the two sites that it runs between. All are found before any is led elsewhere.
  const [leftBefore, rightBefore] = [beside(a, left), beside(a, right)];
  const [leftAfter, rightAfter] = [beside(b, left), beside(b, right)];
  lead(ways[leftBefore]!, a, a, after);
  lead(ways[rightBefore]!, a, b, after);
  lead(ways[leftAfter]!, b, a, before);
  lead(ways[rightAfter]!, b, b, before);
  at[a] = [n, leftBefore, leftAfter];
  at[b] = [n, rightBefore, rightAfter];
  return [leftBefore, rightBefore, leftAfter, rightAfter];
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

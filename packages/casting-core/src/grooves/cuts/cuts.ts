import { distance } from "../../geometry/distance.js";
import type { Point } from "../../geometry/types.js";
import { closedWay, type Link, linksAt, partsOf } from "../network/graph.js";
import { lengthOf } from "../polyline.js";
import type { GrooveEdge } from "../types.js";
import { nearPairs } from "./pairing.js";
import { leastRetrace } from "./retrace.js";

/** What the ways are worked out from. */
type CutEdge = Pick<GrooveEdge, "a" | "b" | "points" | "cut">;

/** The cutter's continuous ways in the order to cut them, and the length gone along twice, mm. */
export interface Cuts {
  cuts: Point[][];
  retraced: number;
}

/** What a closed way runs over: along a cut edge, or a lift from the end of one cut to the start of the next. */
interface Stretch extends Link {
  /** None: a lift. */
  edge?: CutEdge;
}

/** A cut edge as it is gone along, from a to b or back. */
interface Along {
  edge: CutEdge;
  forward: boolean;
}

/**
 * Ways along the cut edges. `fewest`: each edge exactly once, in as few ways as can be (half the odd junctions of each
 * connected part, one where there are none), the travel between them short. `one`: one way for each connected part,
 * going along some edges again, the least length possible.
 */
export function cutsOf(nodes: readonly Point[], edges: readonly CutEdge[], order: "fewest" | "one"): Cuts {
  const once = edges
    .filter(({ cut }) => cut)
    .map((edge): Stretch => ({ a: edge.a, b: edge.b, length: lengthOf(edge.points), edge }));
  const at = linksAt(nodes.length, once);
  const { part, count } = partsOf(once, at);
  const odd = order === "one" ? oddNodes(at, part, count) : [];
  const again = odd.flatMap((ofPart) => leastRetrace(ofPart, once, at).map((link) => once[link]!));
  const cut = [...once, ...again];
  // With a lift between each two of what ends are still loose, one closed way goes over all of a part.
  const loose = oddNodes(linksAt(nodes.length, cut), part, count);
  const lifts = loose
    .flatMap((ofPart) => nearPairs(ofPart, nodes))
    .map(([a, b]): Stretch => ({ a, b, length: distance(nodes[a]!, nodes[b]!) }));
  const all = [...cut, ...lifts];
  const allAt = linksAt(nodes.length, all);
  const trails = Array.from({ length: count }, (_, one) => {
    const way = closedWay(part.indexOf(one), all, allAt);
    return trailsOf(way.map(({ link, forward }) => ({ ...all[link]!, forward }))).map(traced);
  });
  return { cuts: inOrder(trails), retraced: again.reduce((sum, { length }) => sum + length, 0) };
}

/** For each connected part the nodes that an odd number of links meet at. */
function oddNodes(at: readonly (readonly number[])[], part: readonly number[], count: number): number[][] {
  const odd: number[][] = Array.from({ length: count }, () => []);
  at.forEach((here, node) => {
    if (here.length % 2 === 1) odd[part[node]!]!.push(node);
  });
  return odd;
}

/** A closed way taken apart at its lifts, beginning after the longest one. */
function trailsOf(way: readonly (Stretch & { forward: boolean })[]): Along[][] {
  let longest = -1;
  way.forEach(({ edge, length }, i) => {
    if (!edge && (longest < 0 || length > way[longest]!.length)) longest = i;
  });
  const trails: Along[][] = [[]];
  for (const { edge, forward } of [...way.slice(longest + 1), ...way.slice(0, longest + 1)]) {
    if (edge) trails[trails.length - 1]!.push({ edge, forward });
    else trails.push([]);
  }
  return trails.filter((trail) => trail.length > 0);
}

/** The points along a trail; where two edges join, one. */
function traced(trail: readonly Along[]): Point[] {
  const points: Point[] = [];
  for (const { edge, forward } of trail) {
    const along = forward ? edge.points : [...edge.points].reverse();
    for (const [x, y] of points.length === 0 ? along : along.slice(1)) points.push([x, y]);
  }
  return points;
}

/** The parts' ways one part after the other, each time the part that begins nearest to where the last one ended. */
function inOrder(parts: Point[][][]): Point[][] {
  const left = [...parts];
  const ordered: Point[][] = [];
  let here: Point = [0, 0];
  while (left.length > 0) {
    let nearest = 0;
    left.forEach((ways, i) => {
      if (distance(here, ways[0]![0]!) < distance(here, left[nearest]![0]![0]!)) nearest = i;
    });
    const ways = left.splice(nearest, 1)[0]!;
    ordered.push(...ways);
    const last = ways[ways.length - 1]!;
    here = last[last.length - 1]!;
  }
  return ordered;
}

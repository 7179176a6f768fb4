import { distance } from "../../geometry/distance.js";
import type { Point } from "../../geometry/types.js";
import { closedWay, type Link, linksAt, partsOf, type Step } from "../network/graph.js";
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

/**
 * Ways along the cut edges. `fewest`: each edge exactly once, in as few ways as can be (half the odd junctions of each
 * connected part, one where there are none), the travel between them short. `one`: one way for each connected part,
 * going along some edges again, the least length possible.
 */
export function cutsOf(nodes: readonly Point[], edges: readonly CutEdge[], order: "fewest" | "one"): Cuts {
  const cut = edges.filter((edge) => edge.cut);
  const links: Link[] = cut.map(({ a, b, points }) => ({ a, b, length: lengthOf(points) }));
  const at = linksAt(nodes.length, links);
  const { part, count } = partsOf(links, at);
  const oddOf = oddNodes(at, part, count);
  // Links beyond the cut edges: edges gone along again, then lifts from the end of one way to the start of the next.
  const whole: Link[] = [...links];
  const source: number[] = links.map((_, i) => i);
  let retraced = 0;
  for (const odd of order === "one" ? oddOf : []) {
    for (const link of leastRetrace(odd, links, at)) {
      whole.push(links[link]!);
      source.push(link);
      retraced += links[link]!.length;
    }
  }
  const loose = oddNodes(linksAt(nodes.length, whole), part, count);
  for (const [a, b] of loose.flatMap((odd) => nearPairs(odd, nodes)))
    whole.push({ a, b, length: distance(nodes[a]!, nodes[b]!) });
  const wholeAt = linksAt(nodes.length, whole);
  const trails = oddOf.map((_, one) =>
    trailsOf(closedWay(part.indexOf(one), whole, wholeAt), whole, source.length).map((steps) =>
      traced(steps.map(({ link, forward }) => ({ edge: cut[source[link]!]!, forward }))),
    ),
  );
  return { cuts: inOrder(trails), retraced };
}

/** For each connected part the nodes that an odd number of links meet at. */
function oddNodes(at: readonly (readonly number[])[], part: readonly number[], count: number): number[][] {
  const odd: number[][] = Array.from({ length: count }, () => []);
  at.forEach((here, node) => {
    if (here.length % 2 === 1) odd[part[node]!]!.push(node);
  });
  return odd;
}

/** A closed way taken apart at its lifts (links from `firstLift` on), beginning after the longest one. */
function trailsOf(way: readonly Step[], links: readonly Link[], firstLift: number): Step[][] {
  let longest = -1;
  way.forEach(({ link }, i) => {
    if (link >= firstLift && (longest < 0 || links[link]!.length > links[way[longest]!.link]!.length)) longest = i;
  });
  const turned = [...way.slice(longest + 1), ...way.slice(0, longest + 1)];
  const trails: Step[][] = [[]];
  for (const step of turned) {
    if (step.link >= firstLift) trails.push([]);
    else trails[trails.length - 1]!.push(step);
  }
  return trails.filter((trail) => trail.length > 0);
}

function traced(steps: readonly { edge: CutEdge; forward: boolean }[]): Point[] {
  const points: Point[] = [];
  for (const { edge, forward } of steps) {
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

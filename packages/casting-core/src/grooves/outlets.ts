import { atan2, degrees, TAU } from "../trig.js";
import { fixed } from "../units/figure-text.js";
import type { Grooves } from "./types.js";

/** The open ends at the tool's edge: how many, and the widest angle between neighbours, degrees; 360 for one, none: 0. */
export function outletsOf(grooves: Pick<Grooves, "nodes" | "edges">): { count: number; widest: number } {
  const gaps = outletGaps(grooves);
  return { count: gaps.length, widest: degrees(Math.max(0, ...gaps)) };
}

/** The outlets in words: `28 round the edge, at most 20° apart`, `1 round the edge`, `none`. */
export function outletsText(grooves: Pick<Grooves, "nodes" | "edges">): string {
  const { count, widest } = outletsOf(grooves);
  if (count === 0) return "none";
  return `${count} round the edge${count > 1 ? `, at most ${fixed(widest, 0)}° apart` : ""}`;
}

/** The angles from each open end at the tool's edge to the next, radians; a whole turn for a single one. */
export function outletGaps({ nodes, edges }: Pick<Grooves, "nodes" | "edges">): number[] {
  const turns = edges
    .filter((edge) => edge.outlet && edge.cut)
    .map(({ a, b }) => {
      const [[ax, ay], [bx, by]] = [nodes[a]!, nodes[b]!];
      return ax * ax + ay * ay > bx * bx + by * by ? atan2(ay, ax) : atan2(by, bx);
    })
    .sort((one, other) => one - other);
  return turns.map((turn, n) => (turns[n + 1] ?? turns[0]! + TAU) - turn);
}

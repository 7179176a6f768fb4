import { atan2, degrees, TAU } from "../trig.js";
import type { GrooveEdge, Grooves } from "./types.js";

/** A whole number of degrees is told as it is, whatever rounding adds to it. */
const ROUNDING = 1e-6;

type Network = Pick<Grooves, "nodes" | "edges">;

/** From one open end at the tool's edge to the next, counter-clockwise: the first one's direction, the angle; radians. */
interface OutletGap {
  from: number;
  angle: number;
}

/** The open ends at the tool's edge: how many, and the widest angle between neighbours, degrees; 360 for one, none: 0. */
export function outletsOf(grooves: Network): { count: number; widest: number } {
  const gaps = gapsOf(grooves, outletsIn(grooves).draining);
  return { count: gaps.length, widest: degrees(Math.max(0, ...gaps.map(({ angle }) => angle))) };
}

/** The outlets in words: `28 round the edge, at most 20° apart`, `1 round the edge`, `none`; and what drains nothing. */
export function outletsText(grooves: Network): string {
  const { count, widest } = outletsOf(grooves);
  const idle = idleOutlets(grooves).size;
  const apart = count > 1 ? `, at most ${Math.ceil(widest - ROUNDING)}° apart` : "";
  const told = count === 0 ? "none" : `${count} round the edge${apart}`;
  return idle === 0 ? told : `${told}; ${idle}${count === 0 ? "" : " more"} ${idle === 1 ? "drains" : "drain"} nothing`;
}

/** The cut ends at the tool's edge that no other channel leads to. */
export function idleOutlets(grooves: Pick<Grooves, "edges">): ReadonlySet<GrooveEdge> {
  const { cut, draining } = outletsIn(grooves);
  return new Set(cut.filter((outlet) => !draining.includes(outlet)));
}

/** From each cut end at the tool's edge to the next; a whole turn for a single one. */
export function outletGaps(grooves: Network): OutletGap[] {
  return gapsOf(grooves, outletsIn(grooves).cut);
}

/** The outlets that are cut, and those of them that a cut channel leads to: the others drain nothing. */
function outletsIn({ edges }: Pick<Grooves, "edges">): { cut: GrooveEdge[]; draining: GrooveEdge[] } {
  const cut = edges.filter((edge) => edge.outlet && edge.cut);
  const fed = new Set(edges.flatMap((edge) => (edge.cut && !edge.outlet ? [edge.a, edge.b] : [])));
  return { cut, draining: cut.filter(({ a, b }) => fed.has(a) || fed.has(b)) };
}

function gapsOf({ nodes }: Network, outlets: readonly GrooveEdge[]): OutletGap[] {
  const turns = outlets
    .map(({ a, b }) => {
      const [[ax, ay], [bx, by]] = [nodes[a]!, nodes[b]!];
      return ax * ax + ay * ay > bx * bx + by * by ? atan2(ay, ax) : atan2(by, bx);
    })
    .sort((one, other) => one - other);
  return turns.map((from, n) => ({ from, angle: (turns[n + 1] ?? turns[0]! + TAU) - from }));
}

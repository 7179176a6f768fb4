import { clearDistance, pointToOutline } from "../geometry/distance.js";
import type { Outline, Point } from "../geometry/types.js";
import { clearCircles } from "../layout/field.js";
import { pieceKinds } from "../pieces/kinds.js";
import type { PieceKind } from "../pieces/types.js";
import { radians, sinCos } from "../trig.js";
import { areaOf, distance, type Look, must, type Piece, SHARP, toldIn } from "./measure.js";
import { type Near, nearOf, spanOf } from "./near.js";
import type { Plan } from "./types.js";

/** No centroid within this of the axis, mm (contract of the plan). */
const AXIS = 0.1;

/** What of the layout is measured again: each piece, the gap, the rim, the axis, kept circles, coverage. */
export const layoutLooks: Look[] = [
  ["pieces", piecesFault],
  ["gap", gapFault],
  ["rim", rimFault],
  ["axis", axisFault],
  ["kept clear", clearFault],
  ["coverage", coverageFault],
];

function piecesFault({ layout, job }: Plan): string | undefined {
  const { pieces, quality } = layout;
  if (quality.count !== pieces.length) return `the plan counts ${quality.count} pieces and holds ${pieces.length}`;
  const ids = new Set(pieces.map((piece) => piece.id));
  if (ids.size !== pieces.length || pieces.some(({ id }) => id < 1 || id > pieces.length))
    return "the pieces' numbers are not 1 to their count, each once";
  const kinds = pieceKinds(job);
  for (const { id, kind, x, y, angle, outline, radius } of pieces) {
    if (!kinds[kind]) return `piece ${id} is of a kind that the job does not have`;
    if (outline.length < 3 || !outline.flat().every(Number.isFinite)) return `piece ${id} has no outline`;
    const [cx, cy, area] = centroidOf(outline);
    if (area <= 0) return `the outline of piece ${id} runs clockwise`;
    if (Math.abs(cx - x) > 0.002 || Math.abs(cy - y) > 0.002) return `piece ${id} is not where its outline is`;
    if (radius !== undefined && outline.some(([px, py]) => Math.abs(distance([px, py], [x, y]) - radius) > 0.002))
      return `piece ${id} is not as round as it says`;
    if (!isTrue({ x, y, angle, outline, ...(radius !== undefined && { radius }) }, kinds[kind]))
      return `piece ${id} is not its kind's true shape`;
  }
  return undefined;
}

/** Corners are written to a micrometre, angles to a millionth of a degree. */
const CORNER = 0.0012;

/** Whether a piece is its kind's outline, turned and moved as it says. */
function isTrue({ x, y, angle, outline, radius }: Omit<Piece, "id" | "kind">, kind: PieceKind): boolean {
  const [sine, cosine] = sinCos(radians(angle));
  return (
    Math.abs((radius ?? 0) - (kind.radius ?? 0)) <= SHARP &&
    outline.length === kind.outline.length &&
    kind.outline.every(([px, py], n) => {
      const corner: Point = [x + cosine * px - sine * py, y + sine * px + cosine * py];
      return distance(outline[n]!, corner) <= CORNER;
    })
  );
}

function gapFault(plan: Plan): string | undefined {
  const { pieces, gap, hand, quality } = plan.layout;
  const { length } = toldIn(plan);
  const near = nearOf(pieces);
  const told = Math.max(gap + hand, quality.gapMin ?? 0) + SHARP;
  const found = nearestPair(pieces, near, told);
  // No pair is as near as the plan tells: how near one truly is takes a look at all.
  const { clear, pair } = found.clear > told ? nearestPair(pieces, near, Infinity) : found;
  if (clear < gap + hand - SHARP)
    return `pieces ${pair} are ${length(clear, 4)} apart, less than the ${length(gap + hand)} asked for`;
  return must(
    pieces.length < 2 || Math.abs(clear - (quality.gapMin ?? Infinity)) <= SHARP,
    `the least gap is ${length(clear, 6)}, not ${length(quality.gapMin ?? 0)}`,
  );
}

/** The two pieces that lie nearest to each other, of those whose boxes come within `within` mm; Infinity where none do. */
function nearestPair(pieces: readonly Piece[], near: Near, within: number): { clear: number; pair: string } {
  let least = { clear: Infinity, pair: "" };
  for (const a of pieces) {
    for (const b of near(spanOf(a), within)) {
      if (a === b) continue;
      const clear = clearOf(a, b);
      if (clear < least.clear) least = { clear, pair: `${a.id} and ${b.id}` };
    }
  }
  return least;
}

function clearOf(a: Piece, b: Piece): number {
  if (a.radius !== undefined && b.radius !== undefined) return distance([a.x, a.y], [b.x, b.y]) - a.radius - b.radius;
  if (a.radius !== undefined) return toOutline([a.x, a.y], b.outline) - a.radius;
  if (b.radius !== undefined) return toOutline([b.x, b.y], a.outline) - b.radius;
  const apart = clearDistance(a.outline, b.outline);
  return inside([a.x, a.y], b.outline) || inside([b.x, b.y], a.outline) ? -apart - 1 : apart;
}

function rimFault(plan: Plan): string | undefined {
  const { layout, tool } = plan;
  const { length } = toldIn(plan);
  let least = Infinity;
  for (const { x, y, radius, outline } of layout.pieces) {
    const farthest =
      radius === undefined
        ? Math.max(...outline.map((corner) => distance(corner, [0, 0])))
        : distance([x, y], [0, 0]) + radius;
    least = Math.min(least, tool.diameter / 2 - farthest);
  }
  if (least < tool.rim - SHARP)
    return `a piece comes within ${length(least, 4)} of the tool's edge, nearer than the rim of ${length(tool.rim)}`;
  return must(
    layout.pieces.length === 0 || Math.abs(least - layout.quality.rimMin) <= SHARP,
    `the least distance to the edge is ${length(least, 6)}, not ${length(layout.quality.rimMin)}`,
  );
}

function axisFault({ layout }: Plan): string | undefined {
  const near = layout.pieces.find(({ x, y }) => distance([x, y], [0, 0]) < AXIS);
  return near && `piece ${near.id} sits on the axis`;
}

function clearFault(plan: Plan): string | undefined {
  const { layout, job } = plan;
  const { gap, hand } = layout;
  for (const [n, { x, y, radius }] of clearCircles(job).entries()) {
    for (const piece of layout.pieces) {
      const to =
        piece.radius === undefined
          ? toOutline([x, y], piece.outline)
          : distance([x, y], [piece.x, piece.y]) - piece.radius;
      if (to >= radius - SHARP) continue;
      const circle =
        n < job.layout["keep-clear"].length ? `circle ${n + 1} that is to be kept clear` : "the socket's foot";
      return `piece ${piece.id} lies in ${circle} (gap ${toldIn(plan).length(gap + hand)})`;
    }
  }
  return undefined;
}

function coverageFault({ layout, tool }: Plan): string | undefined {
  const whole = Math.PI * (tool.diameter / 2) * (tool.diameter / 2);
  const covered =
    layout.pieces.reduce(
      (sum, { radius, outline }) => sum + (radius === undefined ? areaOf(outline) : Math.PI * radius * radius),
      0,
    ) / whole;
  // Corners are written to a micrometre.
  return must(
    Math.abs(covered - layout.quality.coverage) < 1e-4,
    `the pieces cover ${covered.toFixed(6)} of the tool, not ${layout.quality.coverage}`,
  );
}

function toOutline(point: Point, outline: Outline): number {
  return inside(point, outline) ? -1 : pointToOutline(point, outline);
}

/** By the sign of every side: outlines are convex and run counter-clockwise. */
function inside([x, y]: readonly [number, number], outline: Outline): boolean {
  return outline.every(([ax, ay], n) => {
    const [bx, by] = outline[(n + 1) % outline.length]!;
    return (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 0;
  });
}

function centroidOf(outline: Outline): [number, number, number] {
  let [x, y, twice] = [0, 0, 0];
  const [ox, oy] = outline[0]!;
  outline.forEach(([ax, ay], n) => {
    const [bx, by] = outline[(n + 1) % outline.length]!;
    const cross = (ax - ox) * (by - oy) - (ay - oy) * (bx - ox);
    twice += cross;
    x += (ax + bx - 2 * ox) * cross;
    y += (ay + by - 2 * oy) * cross;
  });
  return [ox + x / (3 * twice), oy + y / (3 * twice), twice / 2];
}

import { clearDistance, pointToOutline, pointToSegment } from "../geometry/distance.js";
import type { Outline, Point } from "../geometry/types.js";
import { checkPour } from "./check-pour.js";
import { areaOf } from "./measure.js";
import type { Plan } from "./types.js";

/** One thing that was measured again: whether it holds, and what was found. */
export interface Finding {
  what: string;
  holds: boolean;
  text: string;
}

export interface PlanCheck {
  holds: boolean;
  findings: Finding[];
}

/** Lengths are proved to a micrometre's millionth; figures to nine digits. */
const SHARP = 1e-6;
/** A channel's middle line is as wide as it says to this, mm (contract of the plan). */
const ROOM = 0.02;
/** No centroid within this of the axis, mm (contract of the plan). */
const AXIS = 0.1;

/**
 * Measures a saved plan again from its geometry alone: gap, rim, axis, counts, coverage, channels, volumes, marks. It
 * shares nothing with what worked the plan out but plain distances. Anything at all may be given: what is no plan of
 * this version is said so in one finding.
 */
export function checkPlan(value: unknown): PlanCheck {
  const fault = notAPlan(value);
  const findings = fault ? [{ what: "format", holds: false, text: fault }] : measured(value as Plan);
  return { holds: findings.every((finding) => finding.holds), findings };
}

function notAPlan(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null)
    return "this is no plan: it is not an object; name a plan.json that casting make wrote";
  const { format } = value as { format?: unknown };
  if (format !== "casting-plan/1") {
    const given = typeof format === "string" ? `"${format.slice(0, 40)}"` : "missing";
    return `the format is ${given}, not "casting-plan/1": make the plan again with this version`;
  }
  const missing = ["job", "blank", "tool", "layout", "grooves", "pour"].filter((key) => {
    const part = (value as Record<string, unknown>)[key];
    return typeof part !== "object" || part === null;
  });
  return missing.length > 0 ? `the plan lacks ${missing.join(", ")}: it was cut or changed` : undefined;
}

function measured(plan: Plan): Finding[] {
  const checks: [string, (plan: Plan) => string | undefined][] = [
    ["pieces", piecesFault],
    ["gap", gapFault],
    ["rim", rimFault],
    ["axis", axisFault],
    ["kept clear", clearFault],
    ["coverage", coverageFault],
    ["channels", channelFault],
    ["cuts", cutFault],
    ["totals", totalFault],
    ["curve", curveFault],
    ...checkPour,
  ];
  return checks.map(([what, look]) => {
    try {
      const text = look(plan);
      return { what, holds: text === undefined, text: text ?? "holds" };
    } catch {
      return { what, holds: false, text: "could not be measured: the plan was cut or changed there" };
    }
  });
}

/** Whether two figures agree to nine digits. */
export function same(a: number, b: number, digits = 1e-9): boolean {
  return Math.abs(a - b) <= digits * Math.max(1, Math.abs(a), Math.abs(b));
}

function must(condition: boolean, text: string): string | undefined {
  return condition ? undefined : text;
}

function piecesFault({ layout, job }: Plan): string | undefined {
  const { pieces, quality } = layout;
  if (quality.count !== pieces.length) return `the plan counts ${quality.count} pieces and holds ${pieces.length}`;
  const ids = new Set(pieces.map((piece) => piece.id));
  if (ids.size !== pieces.length || pieces.some(({ id }) => id < 1 || id > pieces.length))
    return "the pieces' numbers are not 1 to their count, each once";
  for (const { id, kind, x, y, outline, radius } of pieces) {
    if (!job.pieces[kind]) return `piece ${id} is of a kind that the job does not have`;
    if (outline.length < 3 || !outline.flat().every(Number.isFinite)) return `piece ${id} has no outline`;
    const [cx, cy, area] = centroidOf(outline);
    if (area <= 0) return `the outline of piece ${id} runs clockwise`;
    if (Math.abs(cx - x) > 0.002 || Math.abs(cy - y) > 0.002) return `piece ${id} is not where its outline is`;
    if (radius !== undefined && outline.some(([px, py]) => Math.abs(distance([px, py], [x, y]) - radius) > 0.002))
      return `piece ${id} is not as round as it says`;
  }
  return undefined;
}

function gapFault({ layout }: Plan): string | undefined {
  const { pieces, gap, hand, quality } = layout;
  let least = Infinity;
  let pair = "";
  const reach = pieces.map(
    ({ x, y, outline, radius }) => radius ?? Math.max(...outline.map((corner) => distance(corner, [x, y]))),
  );
  pieces.forEach((a, i) => {
    for (let j = i + 1; j < pieces.length; j++) {
      const b = pieces[j]!;
      if (distance([a.x, a.y], [b.x, b.y]) - reach[i]! - reach[j]! >= least) continue;
      const clear = clearOf(a, b);
      if (clear >= least) continue;
      least = clear;
      pair = `${a.id} and ${b.id}`;
    }
  });
  if (least < gap + hand - SHARP)
    return `pieces ${pair} are ${least.toFixed(4)} mm apart, less than the ${gap + hand} mm asked for`;
  return must(
    pieces.length < 2 || Math.abs(least - (quality.gapMin ?? Infinity)) <= SHARP,
    `the least gap is ${least.toFixed(6)} mm, not ${quality.gapMin}`,
  );
}

type Piece = Plan["layout"]["pieces"][number];

function clearOf(a: Piece, b: Piece): number {
  if (a.radius !== undefined && b.radius !== undefined) return distance([a.x, a.y], [b.x, b.y]) - a.radius - b.radius;
  if (a.radius !== undefined) return toOutline([a.x, a.y], b.outline) - a.radius;
  if (b.radius !== undefined) return toOutline([b.x, b.y], a.outline) - b.radius;
  const apart = clearDistance(a.outline, b.outline);
  return inside([a.x, a.y], b.outline) || inside([b.x, b.y], a.outline) ? -apart - 1 : apart;
}

function rimFault({ layout, tool }: Plan): string | undefined {
  let least = Infinity;
  for (const { x, y, radius, outline } of layout.pieces) {
    const farthest =
      radius === undefined
        ? Math.max(...outline.map((corner) => distance(corner, [0, 0])))
        : distance([x, y], [0, 0]) + radius;
    least = Math.min(least, tool.diameter / 2 - farthest);
  }
  if (least < tool.rim - SHARP)
    return `a piece comes within ${least.toFixed(4)} mm of the tool's edge, nearer than the rim of ${tool.rim} mm`;
  return must(
    layout.pieces.length === 0 || Math.abs(least - layout.quality.rimMin) <= SHARP,
    `the least distance to the edge is ${least.toFixed(6)} mm, not ${layout.quality.rimMin}`,
  );
}

function axisFault({ layout }: Plan): string | undefined {
  const near = layout.pieces.find(({ x, y }) => distance([x, y], [0, 0]) < AXIS);
  return near && `piece ${near.id} sits on the axis`;
}

function clearFault({ layout, job }: Plan): string | undefined {
  const { gap, hand } = layout;
  for (const [n, { x, y, diameter }] of job.layout["keep-clear"].entries()) {
    for (const piece of layout.pieces) {
      const to =
        piece.radius === undefined
          ? toOutline([x, y], piece.outline)
          : distance([x, y], [piece.x, piece.y]) - piece.radius;
      if (to < diameter / 2 - SHARP)
        return `piece ${piece.id} lies in circle ${n + 1} that is to be kept clear (gap ${gap + hand} mm)`;
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

function channelFault({ grooves, layout, job }: Plan): string | undefined {
  const needed = grooves.cutter + 2 * job.grooves.clearance - ROOM;
  for (const [n, edge] of grooves.edges.entries()) {
    if (!grooves.nodes[edge.a] || !grooves.nodes[edge.b] || edge.points.length < 2)
      return `channel ${n} does not run between two junctions`;
    if (edge.cut && edge.room < needed - SHARP)
      return `channel ${n} is cut where only ${edge.room.toFixed(3)} mm are clear`;
    const room = 2 * leastRoom(edge.points, layout.pieces);
    if (Math.abs(room - edge.room) > ROOM) return `channel ${n} has ${room.toFixed(3)} mm of room, not ${edge.room}`;
  }
  return undefined;
}

function leastRoom(points: readonly Point[], pieces: readonly Piece[]): number {
  let least = Infinity;
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  for (const piece of pieces) {
    const reach = piece.radius ?? Math.max(...piece.outline.map((corner) => distance(corner, [piece.x, piece.y])));
    const [dx, dy] = [Math.max(left - piece.x, 0, piece.x - right), Math.max(low - piece.y, 0, piece.y - high)];
    if (Math.sqrt(dx * dx + dy * dy) - reach >= least) continue;
    for (let n = 1; n < points.length; n++) {
      const [from, to] = [points[n - 1]!, points[n]!];
      if (piece.radius !== undefined)
        least = Math.min(least, pointToSegment([piece.x, piece.y], from, to) - piece.radius);
      else {
        for (const corner of piece.outline) least = Math.min(least, pointToSegment(corner, from, to));
        least = Math.min(least, pointToOutline(from, piece.outline), pointToOutline(to, piece.outline));
      }
    }
  }
  return least;
}

/** Each cut edge is walked by the cuts: once, or again where retracing is counted. */
function cutFault({ grooves }: Plan): string | undefined {
  const length = grooves.cuts.reduce((sum, cut) => sum + lengthOf(cut), 0);
  const { totals } = grooves;
  if (grooves.cuts.length !== totals.cuts) return `there are ${grooves.cuts.length} cuts, not ${totals.cuts}`;
  return must(
    Math.abs(length - totals.length - totals.retraced) < 1e-3 * Math.max(1, totals.length / 100),
    `the cuts are ${length.toFixed(3)} mm long, not ${totals.length} and ${totals.retraced} again`,
  );
}

function totalFault({ grooves }: Plan): string | undefined {
  const { totals, edges, depth } = grooves;
  const length = edges.reduce((sum, edge) => sum + (edge.cut ? lengthOf(edge.points) : 0), 0);
  if (Math.abs(length - totals.length) > 1e-3 * Math.max(1, length / 100))
    return `the channels are ${length.toFixed(3)} mm long, not ${totals.length}`;
  const uncut = edges.filter((edge) => !edge.cut).length;
  if (uncut !== totals.uncut) return `${uncut} channels are left uncut, not ${totals.uncut}`;
  const ends = 0.8 * grooves.cutter * grooves.cutter * (edges.length - uncut);
  if (totals.area > length * grooves.cutter + ends + 1e-6)
    return `the channels' area of ${totals.area} mm² is more than their length and width give`;
  return must(
    same(totals.volume, (totals.area * depth) / 1000, 1e-8),
    `the channels hold ${(totals.area * depth) / 1000} mL, not ${totals.volume}`,
  );
}

function curveFault({ blank, tool }: Plan): string | undefined {
  for (const [what, radius, sagitta, half] of [
    ["blank", blank.curveRadius, blank.sagitta, blank.diameter / 2],
    ["tool", tool.curveRadius, tool.sagitta, tool.diameter / 2],
    ["target", blank.target?.curveRadius, blank.target?.sagitta ?? 0, blank.diameter / 2],
  ] as const) {
    const wanted = radius === undefined ? 0 : radius - Math.sqrt(radius * radius - half * half);
    if (!(Math.abs(wanted - sagitta) <= 1e-8 * Math.max(1, radius ?? 1)))
      return `the sagitta of the ${what} is ${wanted}, not ${sagitta}`;
  }
  return must(blank.curve === "flat" || blank.curveRadius !== undefined, "the blank is curved, but has no radius");
}

function lengthOf(points: readonly Point[]): number {
  return points.reduce((sum, point, n) => (n === 0 ? 0 : sum + distance(points[n - 1]!, point)), 0);
}

function distance([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): number {
  return Math.sqrt((ax - bx) * (ax - bx) + (ay - by) * (ay - by));
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

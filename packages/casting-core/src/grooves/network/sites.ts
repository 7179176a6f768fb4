import type { Outline, Point } from "../../geometry/types.js";
import type { Job } from "../../job/types.js";
import { clearCircles } from "../../layout/field.js";
import type { Layout } from "../../layout/types.js";
import { cos, hypot, PI, sin, TAU } from "../../trig.js";

/** One thing that the channels keep to the middle of: a piece, the tool's edge, or circles kept clear. */
export interface Site {
  kind: "piece" | "rim" | "clear";
  /** Index in `layout.pieces`, for a piece. */
  piece?: number;
  shapes: Shape[];
}

/** A convex outline, a disc, or the tool's circle seen from its inside. */
export type Shape =
  | { form: "outline"; outline: Outline }
  | { form: "disc"; x: number; y: number; radius: number }
  | { form: "hollow"; radius: number };

/** Signed distance from a site (negative inside it) and the direction in which it grows fastest, a unit vector. */
export interface Measure {
  distance: number;
  nx: number;
  ny: number;
}

/**
 * All sites of a tool. Keep-clear circles that touch or overlap one another form one site, and those that reach the
 * tool's edge belong to it: no channel can run between them.
 */
export function sitesOf(job: Job, toolDiameter: number, layout: Layout): Site[] {
  const pieces = layout.pieces.map(
    (piece, index): Site => ({
      kind: "piece",
      piece: index,
      shapes:
        piece.radius === undefined
          ? [{ form: "outline", outline: piece.outline }]
          : [{ form: "disc", x: piece.x, y: piece.y, radius: piece.radius }],
    }),
  );
  const rim: Site = { kind: "rim", shapes: [{ form: "hollow", radius: toolDiameter / 2 }] };
  const others = [rim];
  for (const disc of clearCircles(job).map((circle): Disc => ({ form: "disc", ...circle }))) {
    const met = others.filter((site) => site.shapes.some((shape) => meets(disc, shape)));
    const target = met[0] ?? { kind: "clear", shapes: [] };
    target.shapes.push(disc);
    for (const site of met.slice(1)) {
      target.shapes.push(...site.shapes);
      others.splice(others.indexOf(site), 1);
    }
    if (met.length === 0) others.push(target);
  }
  return [...pieces, ...others];
}

type Disc = Extract<Shape, { form: "disc" }>;

function meets(disc: Disc, shape: Shape): boolean {
  if (shape.form === "hollow") return hypot(disc.x, disc.y) + disc.radius >= shape.radius;
  return shape.form === "disc" && hypot(disc.x - shape.x, disc.y - shape.y) <= disc.radius + shape.radius;
}

/** Distance from `site` at (x, y), written into `out`. */
export function measure(site: Site, x: number, y: number, out: Measure): void {
  measureShape(site.shapes[0]!, x, y, out);
  if (site.shapes.length === 1) return;
  const other: Measure = { distance: 0, nx: 0, ny: 0 };
  for (const shape of site.shapes) {
    measureShape(shape, x, y, other);
    if (other.distance < out.distance) Object.assign(out, other);
  }
}

const measured: Measure = { distance: 0, nx: 0, ny: 0 };

/** Signed distance from `site` to `point`, mm. */
export function distanceTo(site: Site, point: Point): number {
  measure(site, point[0], point[1], measured);
  return measured.distance;
}

function measureShape(shape: Shape, x: number, y: number, out: Measure): void {
  if (shape.form === "outline") {
    measureOutline(shape.outline, x, y, out);
    return;
  }
  const dx = shape.form === "disc" ? x - shape.x : x;
  const dy = shape.form === "disc" ? y - shape.y : y;
  const length = hypot(dx, dy);
  const sign = shape.form === "disc" ? 1 : -1;
  out.distance = sign * (length - shape.radius);
  out.nx = length > 0 ? (sign * dx) / length : sign;
  out.ny = length > 0 ? (sign * dy) / length : 0;
}

// Asked for a hundred thousand times, the most before it is made fast: without arrays taken apart.
function measureOutline(outline: Outline, x: number, y: number, out: Measure): void {
  let least = Infinity;
  let inside = true;
  // Of the nearest side: from its foot to the point, and along it.
  let offX = 0;
  let offY = 0;
  let sideX = 0;
  let sideY = 0;
  let corner = outline[outline.length - 1]!;
  let ax = corner[0];
  let ay = corner[1];
  for (let n = 0; n < outline.length; n++) {
    corner = outline[n]!;
    const bx = corner[0];
    const by = corner[1];
    const ex = bx - ax;
    const ey = by - ay;
    const px = x - ax;
    const py = y - ay;
    const cross = ex * py - ey * px;
    if (cross < 0) inside = false;
    const squared = ex * ex + ey * ey;
    const t = squared > 0 ? Math.max(0, Math.min(1, (px * ex + py * ey) / squared)) : 0;
    const dx = px - t * ex;
    const dy = py - t * ey;
    const gap = dx * dx + dy * dy;
    if (gap < least) {
      least = gap;
      offX = dx;
      offY = dy;
      sideX = ex;
      sideY = ey;
    }
    ax = bx;
    ay = by;
  }
  const length = Math.sqrt(least);
  const sign = inside ? -1 : 1;
  out.distance = sign * length;
  if (length > 1e-9) {
    out.nx = (sign * offX) / length;
    out.ny = (sign * offY) / length;
  } else {
    // On the outline itself the foot gives no direction: the side's outward normal does.
    const side = hypot(sideX, sideY);
    out.nx = sideY / side;
    out.ny = -sideX / side;
  }
}

/**
 * Appends to `out`, as x, y, x, y …, points along the boundary of `site`, no farther apart than `spacing`, one for each
 * corner; none outside the tool. All are drawn `inset` into the site, so that sites that touch stay apart.
 */
export function sampleSite(site: Site, spacing: number, inset: number, out: number[]): void {
  if (site.shapes.length > 1) {
    sampleUnion(site, spacing, inset, out);
    return;
  }
  for (const shape of site.shapes) sampleShape(shape, spacing, inset, out);
}

function sampleShape(shape: Shape, spacing: number, inset: number, out: number[]): void {
  if (shape.form === "outline") sampleOutline(shape.outline, spacing, inset, out);
  else if (shape.form === "disc") sampleCircle(shape.x, shape.y, shape.radius - inset, spacing, out);
  else sampleCircle(0, 0, shape.radius + inset, spacing, out);
}

/** As each shape by itself, less what lies within another. */
function sampleUnion(site: Site, spacing: number, inset: number, out: number[]): void {
  const all: number[] = [];
  for (const shape of site.shapes) sampleShape(shape, spacing, inset, all);
  const here: Measure = { distance: 0, nx: 0, ny: 0 };
  for (let i = 0; i < all.length; i += 2) {
    measure(site, all[i]!, all[i + 1]!, here);
    if (here.distance > -1.5 * inset) out.push(all[i]!, all[i + 1]!);
  }
}

function sampleOutline(outline: Outline, spacing: number, inset: number, out: number[]): void {
  for (let i = 0; i < outline.length; i++) {
    const a = outline[i]!;
    const b = outline[(i + 1) % outline.length]!;
    const [nx, ny] = inward(a, b);
    const [mx, my] = inward(b, outline[(i + 2) % outline.length]!);
    const steps = Math.max(1, Math.ceil(hypot(b[0] - a[0], b[1] - a[1]) / spacing));
    for (let step = 1; step < steps; step++) {
      out.push(a[0] + ((b[0] - a[0]) * step) / steps + inset * nx, a[1] + ((b[1] - a[1]) * step) / steps + inset * ny);
    }
    // Where the two drawn-in sides meet, for corners that are not all too sharp.
    const miter = inset / Math.max(0.2, 1 + nx * mx + ny * my);
    out.push(b[0] + miter * (nx + mx), b[1] + miter * (ny + my));
  }
}

function inward([ax, ay]: Point, [bx, by]: Point): Point {
  const length = hypot(bx - ax, by - ay);
  return [(ay - by) / length, (bx - ax) / length];
}

function sampleCircle(x: number, y: number, radius: number, spacing: number, out: number[]): void {
  const steps = Math.max(12, Math.ceil((2 * PI * radius) / spacing));
  for (let i = 0; i < steps; i++) {
    const angle = (TAU * i) / steps;
    out.push(x + radius * cos(angle), y + radius * sin(angle));
  }
}

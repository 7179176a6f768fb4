import { Delaunay } from "d3-delaunay";
import type { Random } from "../../random.js";
import { hypot, sinCos, TAU } from "../../trig.js";
import { add, type Bed, countOf, piecesOf, restore, snapshot } from "./bed.js";
import { settle } from "./settle.js";

/** Holes tried in vain before the bed counts as full. */
const TRIES = 2;

/** Distance from the nearest centroids, as a share of that of two pieces side by side, from which a hole is tried. */
const PROMISING = 0.8;

/** Sweeps that a bed gets to make room for one more piece. */
const PATIENCE = 150;

/**
 * Puts the next pieces of the mix into the largest holes, one by one, and lets the others make room; a piece for which
 * they do not is taken out again. Stops after a few holes in vain.
 */
export function fill(bed: Bed, gap: number, skin: number, mix: Int32Array, source: Random): void {
  const { inner, radius } = bed.shapes;
  const needed = PROMISING * (2 * Math.min(...inner.map((depth, k) => depth + radius[k]!)) + gap);
  let vain = 0;
  while (countOf(bed) < mix.length && vain < TRIES) {
    const holes = holesOf(bed);
    const hole = holes[vain];
    if (hole === undefined || hole.room < needed) return;
    const before = snapshot(bed);
    const [s, c] = sinCos(TAU * source.next());
    add(bed, mix[countOf(bed)]!, hole.x, hole.y, c, s);
    if (settle(bed, gap, skin, PATIENCE)) vain = 0;
    else {
      restore(bed, before);
      vain++;
    }
  }
}

/** Points of the field farthest from pieces, rim and kept circles, largest hole first; `room` is their distance, mm. */
function holesOf(bed: Bed): { x: number; y: number; room: number }[] {
  const { shapes, field } = bed;
  const laid = piecesOf(bed);
  const around = field.radius;
  const points: number[] = [];
  for (let i = 0; i < laid.count; i++) points.push(laid.x[i]!, laid.y[i]!);
  // Points just outside, so that holes at the rim are corners of triangles too.
  const reach = shapes.reach[laid.kind[0] ?? 0]!;
  const guards = Math.max(12, Math.round((TAU * around) / (2 * reach)));
  for (let g = 0; g < guards; g++) {
    const [s, c] = sinCos((TAU * g) / guards);
    points.push((around + reach) * c, (around + reach) * s);
  }
  const { triangles } = new Delaunay(Float64Array.from(points));
  const holes: { x: number; y: number; room: number }[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const corner = (n: number): [number, number] => [
      points[2 * triangles[t + n]!]!,
      points[2 * triangles[t + n]! + 1]!,
    ];
    const [ax, ay] = corner(0);
    const [bx, by] = corner(1);
    const [cx, cy] = corner(2);
    const twice = 2 * ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax));
    if (twice === 0) continue;
    const b2 = (bx - ax) * (bx - ax) + (by - ay) * (by - ay);
    const c2 = (cx - ax) * (cx - ax) + (cy - ay) * (cy - ay);
    const x = ax + ((cy - ay) * b2 - (by - ay) * c2) / twice;
    const y = ay + ((bx - ax) * c2 - (cx - ax) * b2) / twice;
    let room = Math.min(hypot(x - ax, y - ay), around - hypot(x, y));
    for (const circle of field.clear) room = Math.min(room, hypot(x - circle.x, y - circle.y) - circle.radius);
    if (room > 0) holes.push({ x, y, room });
  }
  return holes.sort((a, b) => b.room - a.room || a.x - b.x || a.y - b.y);
}

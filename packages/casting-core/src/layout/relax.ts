import { type Bed, shift } from "./bed.js";
import { type Contact, newContact, separate } from "./contact.js";
import { fromCircle } from "./from-circle.js";
import { listNeighbours, type Neighbours, outdated } from "./neighbours.js";
import { ROW } from "./shapes.js";

/** Over-relaxation of each push (measured to settle soonest). */
const PUSH = 1.3;

/** No centroid within 0.1 mm of the axis (contract, section 3); a little more, so that rounding cannot undo it. */
const AXIS_KEPT = 0.15;

const contact: Contact = newContact();

/**
 * One sweep over all pairs: each overlap of the outlines grown by `gap` moves and turns both partners apart by their
 * lever arms, then pieces outside the field are pushed in. Returns the largest overlap met, mm. `strain`, where given,
 * collects each piece's sum of overlaps.
 */
export function sweep(bed: Bed, list: Neighbours, gap: number, skin: number, strain?: Float64Array): number {
  if (outdated(bed, list)) listNeighbours(bed, list, gap, skin);
  const { kind, x, y } = bed;
  const { reach, radius } = bed.shapes;
  const { start, other, hint, corner } = list;
  let most = 0;
  strain?.fill(0, 0, bed.count);
  for (let i = 0; i < bed.count; i++) {
    const ki = kind[i]!;
    for (let p = start[i]!; p < start[i + 1]!; p++) {
      const j = other[p]!;
      const kj = kind[j]!;
      const dx = x[j]! - x[i]!;
      const dy = y[j]! - y[i]!;
      const near = reach[ki]! + reach[kj]! + gap;
      if (dx * dx + dy * dy >= near * near) continue;
      const want = gap + radius[ki]! + radius[kj]!;
      const separation = separate(bed, i, j, want, hint[p]!, corner[p]!, contact);
      hint[p] = contact.edge;
      corner[p] = contact.corner;
      const overlap = want - separation;
      if (overlap <= 0) continue;
      if (overlap > most) most = overlap;
      if (strain !== undefined) {
        strain[i] = strain[i]! + overlap;
        strain[j] = strain[j]! + overlap;
      }
      pushApart(bed, i, j, overlap);
    }
  }
  return Math.max(most, holdInField(bed, strain));
}

function pushApart(bed: Bed, i: number, j: number, overlap: number): void {
  const { shapes, kind } = bed;
  const { axisX, axisY, pointX, pointY } = contact;
  const ki = kind[i]!;
  const kj = kind[j]!;
  const leverI = (pointX - bed.x[i]!) * axisY - (pointY - bed.y[i]!) * axisX;
  const leverJ = (pointX - bed.x[j]!) * axisY - (pointY - bed.y[j]!) * axisX;
  const lightI = 1 / shapes.area[ki]!;
  const lightJ = 1 / shapes.area[kj]!;
  const turnI = lightI * leverI * shapes.turnEase[ki]!;
  const turnJ = lightJ * leverJ * shapes.turnEase[kj]!;
  const push = (PUSH * overlap) / (lightI + lightJ + turnI * leverI + turnJ * leverJ);
  shift(bed, i, -push * lightI * axisX, -push * lightI * axisY, -push * turnI);
  shift(bed, j, push * lightJ * axisX, push * lightJ * axisY, push * turnJ);
}

function holdInField(bed: Bed, strain: Float64Array | undefined): number {
  const { shapes, kind, field } = bed;
  let most = 0;
  for (let i = 0; i < bed.count; i++) {
    const k = kind[i]!;
    const x = bed.x[i]!;
    const y = bed.y[i]!;
    const out = x * x + y * y;
    const safe = field.radius - shapes.reach[k]!;
    let overlap = 0;
    if (safe < 0 || out > safe * safe) overlap = pushIn(bed, i);
    if (out < AXIS_KEPT * AXIS_KEPT) {
      const distance = Math.sqrt(out);
      const ux = distance > 0 ? x / distance : 1;
      const uy = distance > 0 ? y / distance : 0;
      shift(bed, i, ux * (AXIS_KEPT * 1.01 - distance), uy * (AXIS_KEPT * 1.01 - distance), 0);
      overlap = Math.max(overlap, AXIS_KEPT - distance);
    }
    for (const circle of field.clear) {
      const cx = bed.x[i]! - circle.x;
      const cy = bed.y[i]! - circle.y;
      const reach = shapes.reach[k]! + circle.radius;
      if (cx * cx + cy * cy < reach * reach) overlap = Math.max(overlap, pushOff(bed, i, circle));
    }
    if (strain !== undefined) strain[i] = strain[i]! + overlap;
    if (overlap > most) most = overlap;
  }
  return most;
}

/** Pushes piece `i` in by its farthest corner; returns how far that stood out. */
function pushIn(bed: Bed, i: number): number {
  const { shapes, field, outline } = bed;
  const k = bed.kind[i]!;
  let farthest = 0;
  let corner = -1;
  let c = i * shapes.stride * ROW;
  for (let n = shapes.corners[k]!; n > 0; n--, c += ROW) {
    const squared = outline[c]! * outline[c]! + outline[c + 1]! * outline[c + 1]!;
    if (squared > farthest) {
      farthest = squared;
      corner = c;
    }
  }
  const distance = Math.sqrt(farthest);
  const overlap = distance + shapes.radius[k]! - field.radius;
  if (overlap <= 0) return 0;
  const x = outline[corner]!;
  const y = outline[corner + 1]!;
  pushOne(bed, i, x, y, -x / distance, -y / distance, overlap);
  return overlap;
}

/** Pushes piece `i` off a circle kept clear; returns how deep it stood in it. */
function pushOff(bed: Bed, i: number, circle: { x: number; y: number; radius: number }): number {
  const overlap = circle.radius + bed.shapes.radius[bed.kind[i]!]! - fromCircle(bed, i, circle, contact);
  if (overlap > 0) pushOne(bed, i, contact.pointX, contact.pointY, contact.axisX, contact.axisY, overlap);
  return Math.max(0, overlap);
}

/** Moves and turns piece `i` so that its point (px, py) gives way along (ux, uy). */
function pushOne(bed: Bed, i: number, px: number, py: number, ux: number, uy: number, overlap: number): void {
  const ease = bed.shapes.turnEase[bed.kind[i]!]!;
  const lever = (px - bed.x[i]!) * uy - (py - bed.y[i]!) * ux;
  const push = (PUSH * overlap) / (1 + lever * lever * ease);
  shift(bed, i, push * ux, push * uy, push * lever * ease);
}

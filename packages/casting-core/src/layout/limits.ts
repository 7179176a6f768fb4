import type { Bed } from "./bed.js";
import { type Contact, newContact, separate } from "./contact.js";
import { fromCircle } from "./from-circle.js";
import type { Neighbours } from "./neighbours.js";
import { ROW } from "./shapes.js";

/**
 * What stands in the way of small moves. Every limit has a place of its own: two for each pair of neighbours (pieces side
 * by side touch at two corners), one for each corner at the rim, one for each piece at each kept circle. It says that
 * `first` may come nearer to `second` (−1: what does not move) along the axis by `room` mm.
 */
export interface Limits {
  first: Int32Array;
  second: Int32Array;
  axisX: Float64Array;
  axisY: Float64Array;
  /** Lever arms of the axis about the centroids, mm. */
  leverFirst: Float64Array;
  leverSecond: Float64Array;
  room: Float64Array;
  /** How hard each was leaned on, kept from one time to the next. */
  lean: Float64Array;
  /** Places of the `count` limits within reach. */
  active: Int32Array;
  count: number;
}

/** No limits yet, with places for all of `bed` and of the pairs in `list`. */
export function newLimits({ shapes, field, count }: Bed, list: Neighbours): Limits {
  const places = 2 * list.start[count]! + count * (shapes.stride + field.clear.length);
  const each = () => new Float64Array(places);
  return {
    first: new Int32Array(places),
    second: new Int32Array(places),
    axisX: each(),
    axisY: each(),
    leverFirst: each(),
    leverSecond: each(),
    room: each(),
    lean: each(),
    active: new Int32Array(places),
    count: 0,
  };
}

const contact: Contact = newContact();

/** Finds the limits of `bed` with less than `reach` mm of room; `gap` is the least distance between pieces, mm. */
export function findLimits(bed: Bed, list: Neighbours, gap: number, reach: number, limits: Limits): void {
  limits.count = 0;
  let place = 0;
  for (let i = 0; i < bed.count; i++) {
    for (let p = list.start[i]!; p < list.start[i + 1]!; p++, place += 2)
      betweenTwo(bed, i, list.other[p]!, gap, reach, limits, place);
  }
  for (let i = 0; i < bed.count; i++) place = aroundOne(bed, i, reach, limits, place);
  // What is out of reach is no longer leaned on.
  let active = 0;
  for (let n = 0; n < limits.lean.length; n++) {
    if (limits.active[active] === n && active < limits.count) active++;
    else limits.lean[n] = 0;
  }
}

function betweenTwo(bed: Bed, i: number, j: number, gap: number, reach: number, limits: Limits, place: number): void {
  const { shapes, kind, outline } = bed;
  const want = gap + shapes.radius[kind[i]!]! + shapes.radius[kind[j]!]!;
  const room = separate(bed, i, j, want + reach, -1, 0, contact) - want;
  if (room >= reach) return;
  const { axisX, axisY, pointX, pointY, edge } = contact;
  add(bed, limits, place, i, j, room);
  if (edge < 0) return;
  // The same axis at the next corner of the piece whose corner it is.
  const ofFirst = edge < shapes.corners[kind[i]!]!;
  const owner = ofFirst ? j : i;
  const sign = ofFirst ? 1 : -1;
  let least = reach - room;
  let next = -1;
  let at = owner * shapes.stride * ROW;
  for (let n = shapes.corners[kind[owner]!]!; n > 0; n--, at += ROW) {
    const [dx, dy] = [outline[at]! - pointX, outline[at + 1]! - pointY];
    const farther = sign * (dx * axisX + dy * axisY);
    if (farther >= least || (dx === 0 && dy === 0)) continue;
    least = farther;
    next = at;
  }
  if (next < 0) return;
  contact.pointX = outline[next]!;
  contact.pointY = outline[next + 1]!;
  add(bed, limits, place + 1, i, j, room + least);
}

function aroundOne(bed: Bed, i: number, reach: number, limits: Limits, place: number): number {
  const { shapes, kind, field, outline } = bed;
  const k = kind[i]!;
  for (let c = 0; c < shapes.corners[k]!; c++) {
    const at = (i * shapes.stride + c) * ROW;
    contact.pointX = outline[at]!;
    contact.pointY = outline[at + 1]!;
    const out = Math.sqrt(contact.pointX * contact.pointX + contact.pointY * contact.pointY);
    const room = field.radius - shapes.radius[k]! - out;
    if (room >= reach || out === 0) continue;
    contact.axisX = contact.pointX / out;
    contact.axisY = contact.pointY / out;
    add(bed, limits, place + c, i, -1, room);
  }
  field.clear.forEach((circle, n) => {
    const room = fromCircle(bed, i, circle, contact) - circle.radius - shapes.radius[k]!;
    if (room >= reach) return;
    contact.axisX = -contact.axisX;
    contact.axisY = -contact.axisY;
    add(bed, limits, place + shapes.stride + n, i, -1, room);
  });
  return place + shapes.stride + field.clear.length;
}

/** Adds the limit of `contact`'s axis and point. */
function add(bed: Bed, limits: Limits, place: number, i: number, j: number, room: number): void {
  const { axisX, axisY, pointX, pointY } = contact;
  limits.first[place] = i;
  limits.second[place] = j;
  limits.axisX[place] = axisX;
  limits.axisY[place] = axisY;
  limits.leverFirst[place] = (pointX - bed.x[i]!) * axisY - (pointY - bed.y[i]!) * axisX;
  limits.leverSecond[place] = j < 0 ? 0 : (pointX - bed.x[j]!) * axisY - (pointY - bed.y[j]!) * axisX;
  limits.room[place] = room;
  limits.active[limits.count++] = place;
}

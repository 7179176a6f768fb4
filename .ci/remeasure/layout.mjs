// Pieces measured again: each is its kind's true shape, on whole micrometres, clear of all others and of the rim.
import { areApart, clearance, isOutside, isWithin, reachOf, whole } from "./exact.mjs";
import { massOf } from "./shapes.mjs";

/** What a corner may be off its true place: half a micrometre of rounding, and the last digits of doubles, mm. */
const CORNER = 0.0005 + 1e-9;
/** Lengths that were worked out agree to this, mm. */
const SAME = 1e-8;

/** What does not hold of the pieces of a plan; `kinds` as kindsOf gives them. */
export function layoutFaults({ layout, tool, job }, kinds) {
  const faults = [];
  const pieces = layout.pieces.map(shapeOfPiece);
  layout.pieces.forEach((piece, n) => {
    const kind = kinds[piece.kind];
    const fault = kind ? pieceFault(piece, kind) : "is of no kind of the job";
    if (fault) faults.push(`piece ${piece.id} ${fault}`);
    if (piece.id !== n + 1) faults.push(`piece ${piece.id} stands where number ${n + 1} should`);
    if (Math.hypot(piece.x, piece.y) < 0.1 - SAME) faults.push(`piece ${piece.id} sits on the axis`);
  });
  faults.push(...gapAndRimFaults(pieces, { ...layout, ...tool }));
  const { quality } = layout;
  const least = leastGap(pieces);
  if (pieces.length > 1 && !(Math.abs(least - quality.gapMin) < SAME))
    faults.push(`the least gap is ${least} mm, not ${quality.gapMin}`);
  const rim = tool.diameter / 2 - Math.max(0, ...pieces.map(reachOf));
  if (pieces.length > 0 && !(Math.abs(rim - quality.rimMin) < SAME))
    faults.push(`the least rim is ${rim} mm, not ${quality.rimMin}`);
  const circles = job.layout["keep-clear"].map(({ x, y, diameter }) => ({ centre: [x, y], diameter }));
  if (job.socket?.foot === "glass") circles.push({ centre: [0, 0], diameter: job.socket.diameter });
  for (const { centre, diameter } of circles) {
    const bad = pieces.findIndex((piece) => !isOutside(piece, centre, whole(diameter) / 2n));
    if (bad >= 0) faults.push(`piece ${bad + 1} lies in a circle to be kept clear`);
  }
  faults.push(...countFaults(layout, job, kinds, tool.diameter));
  return faults;
}

/** Pieces nearer to each other than gap and hand, or to the tool's edge than the rim: exactly, nothing allowed. */
export function gapAndRimFaults(pieces, { gap, hand, diameter, rim }) {
  const faults = [];
  const wanted = whole(gap) + whole(hand);
  const reach = whole(diameter) / 2n - whole(rim);
  pieces.forEach((piece, n) => {
    if (!isWithin(piece, reach)) faults.push(`piece ${n + 1} reaches into the rim`);
  });
  for (const [i, j] of nearPairs(pieces, gap + hand)) {
    const [a, b] = [pieces[i], pieces[j]];
    if (!areApart(a, b, wanted))
      faults.push(`pieces ${i + 1} and ${j + 1} are ${clearance(a, b)} mm apart, not ${gap} and ${hand}`);
  }
  return faults;
}

/** A written piece as it is measured: corners, or centre and radius. */
export function shapeOfPiece({ x, y, outline, radius }) {
  return radius === undefined ? { corners: outline } : { centre: [x, y], radius };
}

function pieceFault({ x, y, angle, outline, radius }, kind) {
  if (![x, y, ...outline.flat()].every(isMicrometres)) return "is not on whole micrometres";
  if (radius !== undefined)
    return Math.abs(radius - kind.radius) > 1e-6 ? `has a radius of ${radius} mm, not ${kind.radius}` : undefined;
  const [sine, cosine] = [Math.sin((angle * Math.PI) / 180), Math.cos((angle * Math.PI) / 180)];
  const wanted = kind.corners.map(([cx, cy]) => [x + cosine * cx - sine * cy, y + sine * cx + cosine * cy]);
  if (outline.length !== wanted.length) return `has ${outline.length} corners, not ${wanted.length}`;
  const from = wanted.findIndex((corner) => isNear(corner, outline[0]));
  const fits = from >= 0 && outline.every((corner, n) => isNear(corner, wanted[(from + n) % wanted.length]));
  if (!fits) return "has a corner that is not the true one, rounded to a micrometre";
  return massOf(outline).area > 0 ? undefined : "runs clockwise";
}

function isMicrometres(length) {
  return whole(length) % 10n ** 15n === 0n;
}

function isNear([ax, ay], [bx, by]) {
  return Math.abs(ax - bx) <= CORNER && Math.abs(ay - by) <= CORNER;
}

function leastGap(pieces) {
  for (let look = 1; ; look *= 4) {
    let least = Infinity;
    for (const [i, j] of nearPairs(pieces, look)) least = Math.min(least, clearance(pieces[i], pieces[j]));
    if (least <= look || look > 1e5) return least;
  }
}

/** Pairs of pieces whose boxes come within `gap` mm of each other, by a sweep from left to right. */
function* nearPairs(pieces, gap) {
  const boxes = pieces.map(({ corners, centre, radius }, n) => {
    const [xs, ys] = corners
      ? [corners.map(([x]) => x), corners.map(([, y]) => y)]
      : [0, 1].map((axis) => [centre[axis] - radius, centre[axis] + radius]);
    return { n, left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
  });
  boxes.sort((a, b) => a.left - b.left);
  for (let i = 0; i < boxes.length; i++) {
    for (let j = i + 1; j < boxes.length && boxes[j].left <= boxes[i].right + gap + 0.001; j++) {
      const apart = Math.max(boxes[i].low - boxes[j].high, boxes[j].low - boxes[i].high);
      if (apart <= gap + 0.001) yield [boxes[i].n, boxes[j].n].sort((a, b) => a - b);
    }
  }
}

function countFaults(layout, job, kinds, diameter) {
  const faults = [];
  const { count } = job.layout;
  if (layout.quality.count !== layout.pieces.length) faults.push("the pieces are miscounted");
  if (count !== "max" && layout.pieces.length !== count)
    faults.push(`${layout.pieces.length} pieces are laid where ${count} were asked for`);
  kinds.forEach(({ stock = Infinity }, kind) => {
    const laid = layout.pieces.filter((piece) => piece.kind === kind).length;
    if (laid > stock) faults.push(`${laid} pieces of kind ${kind} are laid where there are ${stock}`);
  });
  const covered = layout.pieces.reduce((sum, piece) => sum + kinds[piece.kind].area, 0);
  const coverage = covered / ((Math.PI * diameter * diameter) / 4);
  if (!(Math.abs(coverage - layout.quality.coverage) < 1e-9))
    faults.push(`the pieces cover ${coverage}, not ${layout.quality.coverage}`);
  return faults;
}

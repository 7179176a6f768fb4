// Plain ways to lay pieces, to compare with: each returns laid pieces that keep gap and rim.
import { forceCollide, forceSimulation, forceX, forceY } from "d3-force";
import { clearDistance, farthest } from "../../packages/casting-core/dist/geometry/distance.js";
import { seedPoints } from "../../packages/casting-core/dist/layout/laying/seeds.js";
import { laidOutline } from "../../packages/casting-core/dist/layout/laying/snap.js";
import { random } from "../../packages/casting-core/dist/random.js";

function pieceAt(kind, x, y, angle) {
  const piece = { id: 0, kind: kind.kind, x, y, angle, outline: laidOutline(kind.outline, x, y, angle) };
  if (kind.radius !== undefined) piece.radius = kind.radius;
  return piece;
}

function fits(piece, kind, pieces, kinds, radius, gap) {
  if (farthest(piece.outline) > radius) return false;
  return pieces.every((other) => {
    const near = kind.reach + kinds[other.kind].reach + gap;
    const distance = Math.hypot(other.x - piece.x, other.y - piece.y);
    if (distance >= near) return true;
    if (kind.radius !== undefined && other.radius !== undefined) return false;
    return clearDistance(piece.outline, other.outline) >= gap;
  });
}

/** A kind by its share. */
function pick(kinds, source) {
  let draw = source.next();
  for (const kind of kinds) {
    draw -= kind.share ?? 1 / kinds.length;
    if (draw < 0) return kind;
  }
  return kinds[0];
}

/** One after the other at random places and turns, until 400 tries a piece-area find none. */
export function randomSequential({ kinds, diameter, gap }, seed) {
  const source = random(seed);
  const radius = diameter / 2 - 3;
  const pieces = [];
  const tries = Math.round((400 * Math.PI * radius * radius) / kinds[0].area);
  for (let n = 0; n < tries; n++) {
    const kind = pick(kinds, source);
    const x = (2 * source.next() - 1) * radius;
    const y = (2 * source.next() - 1) * radius;
    const piece = pieceAt(kind, x, y, 360 * source.next());
    if (fits(piece, kind, pieces, kinds, radius, gap)) pieces.push(piece);
  }
  return pieces;
}

/** At the points of a Poisson-disk sampling whose distance keeps any two turns apart. */
export function poissonDisk({ kinds, diameter, gap }, seed) {
  const source = random(seed);
  const reach = Math.max(...kinds.map((kind) => kind.reach));
  const radius = diameter / 2 - 3 - reach;
  const distance = 2 * reach + gap;
  const count = Math.round((0.7 * Math.PI * radius * radius) / (distance * distance));
  const pieces = [];
  for (const [x, y] of seedPoints(radius, count, source)) {
    const kind = pick(kinds, source);
    const piece = pieceAt(kind, x, y, 360 * source.next());
    if (fits(piece, kind, pieces, kinds, diameter / 2 - 3, gap)) pieces.push(piece);
  }
  return pieces;
}

/** Circles round the pieces pushed apart by d3-force toward the middle; what still overlaps is left out. */
export function forceLayout({ kinds, diameter, gap }, seed) {
  const source = random(seed);
  const radius = diameter / 2 - 3;
  const cell = Math.sqrt(kinds[0].area) + gap;
  const count = Math.round((Math.PI * radius * radius) / (cell * cell));
  const nodes = seedPoints(radius, count, source).map(([x, y]) => ({ x, y, kind: pick(kinds, source) }));
  forceSimulation(nodes)
    .randomSource(() => source.next())
    .force("collide", forceCollide(({ kind }) => Math.sqrt(kind.area / Math.PI) * 1.06 + gap / 2).iterations(4))
    .force("x", forceX(0).strength(0.002))
    .force("y", forceY(0).strength(0.002))
    .stop()
    .tick(300);
  const pieces = [];
  for (const { x, y, kind } of nodes) {
    const piece = pieceAt(kind, x, y, 360 * source.next());
    if (fits(piece, kind, pieces, kinds, radius, gap)) pieces.push(piece);
  }
  return pieces;
}

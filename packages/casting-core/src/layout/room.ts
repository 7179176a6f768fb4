import { hexagonRound } from "../geometry/polygon.js";
import type { PieceKind } from "../pieces/types.js";
import { hypot, PI } from "../trig.js";
import { blockedArea, type Field } from "./field.js";

/** Width of the edge that an ordered lattice leaves unused, in square roots of its cell; fits the lattices of the bench to 2 %. */
const EDGE_LOSS = 0.46;

/** Share of an ordered lattice that spreads evenly with ease: what `spreadFor` aims at. */
const EASY = 0.88;

/**
 * Share of an ordered lattice that one start can jam without order, by shape (measured): rounds slide past each other,
 * square corners fill a wedge that other angles leave open, and five corners hardly ever fit together.
 */
const JAMMED = { round: 0.98, square: 0.96, pentagon: 0.93, other: 0.925 };

/** The same for a mix of kinds: their lattice is a guess, and evenness suffers before density does. */
const MIXED = 0.98;

/** Pieces of `mix` to begin with, as a share of what an ordered lattice would hold. */
export function jamShare(kinds: readonly PieceKind[], mix: Int32Array): number {
  const shares = kinds.map((kind) => {
    if (kind.radius !== undefined) return JAMMED.round;
    if (kind.outline.length === 4) return JAMMED.square;
    if (kind.outline.length === 5) return JAMMED.pentagon;
    // The rounder a shape, the more its own lattice leaves open, and the more like rounds it jams.
    return Math.min(JAMMED.round, JAMMED.other / packed(kind));
  });
  let sum = 0;
  for (const kind of mix) sum += shares[kind]!;
  return (kinds.length > 1 ? MIXED : 1) * (mix.length > 0 ? sum / mix.length : shares[0]!);
}

/** No convex shape is known to pack much worse: regular heptagons to 0.893 (value from memory). */
const LEAST_PACKED = 0.9;

/**
 * About the share of the plane that pieces of `kind` can cover: that of a small hexagon round it. The smallest is a bound
 * (L. Fejes Tóth, 1950, value from memory).
 */
function packed({ area, outline }: PieceKind): number {
  return outline.length > 6 ? Math.max(LEAST_PACKED, area / hexagonRound(outline)) : 1;
}

/** Area that a piece takes in a simple dense lattice of its kind with `gap` between neighbours, mm². */
function cellOf(kind: PieceKind, gap: number): number {
  if (kind.radius !== undefined) {
    const pitch = 2 * kind.radius + gap;
    return (pitch * pitch * Math.sqrt(3)) / 2;
  }
  let girth = 0;
  kind.outline.forEach(([ax, ay], c) => {
    const [bx, by] = kind.outline[(c + 1) % kind.outline.length]!;
    girth += hypot(bx - ax, by - ay);
  });
  return (kind.area + (girth * gap) / 2 + gap * gap) / packed(kind);
}

/** Mean cell of a mix (see mixOf), mm². */
export function meanCell(kinds: readonly PieceKind[], mix: Int32Array, gap: number): number {
  const cells = kinds.map((kind) => cellOf(kind, gap));
  let sum = 0;
  for (const kind of mix) sum += cells[kind]!;
  return mix.length > 0 ? sum / mix.length : cells[0]!;
}

/**
 * About how many cells of `cell` mm² an ordered lattice would put in `field`, at least 0; `blocked`: what kept circles take
 * of it, mm².
 */
export function latticeGuess(field: Field, cell: number, gap: number, blocked: number = blockedArea(field)): number {
  const radius = field.radius + gap / 2 - EDGE_LOSS * Math.sqrt(cell);
  if (radius <= 0) return field.radius > 0 ? 1 : 0;
  return Math.max(0, (PI * radius * radius - blocked) / cell);
}

/** About how many pieces of `mix` an ordered lattice would hold; the whole mix where all of it goes in. */
export function roomFor(kinds: readonly PieceKind[], mix: Int32Array, field: Field, gap: number): number {
  const cells = kinds.map((kind) => cellOf(kind, gap));
  const blocked = blockedArea(field);
  let sum = 0;
  for (let n = 0; n < mix.length; n++) {
    sum += cells[mix[n]!]!;
    if (n + 1 > latticeGuess(field, sum / (n + 1), gap, blocked)) return n;
  }
  return mix.length;
}

/** Distance between neighbours at which the pieces of `mix` spread over the whole field with ease; at least `gap`, mm. */
export function spreadFor(kinds: readonly PieceKind[], mix: Int32Array, field: Field, gap: number): number {
  let low = gap;
  let high = 2 * field.radius;
  const blocked = blockedArea(field);
  const fits = (spread: number) => {
    // The rim takes half of what neighbours stand farther apart.
    const room = { ...field, radius: field.radius - (spread - gap) / 2 };
    return EASY * latticeGuess(room, meanCell(kinds, mix, spread), spread, blocked) >= mix.length;
  };
  if (!fits(low)) return gap;
  for (let n = 0; n < 40; n++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

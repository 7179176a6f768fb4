import Flatten from "@flatten-js/core";
import Flatbush from "flatbush";
import { clearDistance, pointToOutline } from "../geometry/distance.js";
import { type Box, boxOf, convexContains } from "../geometry/polygon.js";
import type { Outline } from "../geometry/types.js";
import { hypot } from "../trig.js";
import type { Field } from "./field.js";
import type { PlacedPiece } from "./types.js";

/** What the exact check found: least clear distances, mm (Infinity where there is nothing to compare), and the pieces (indices) that break a rule. */
export interface Verdict {
  gapMin: number;
  rimMin: number;
  /** Pairs nearer than the gap. */
  pairs: [number, number][];
  /** Pieces over the rim, in a circle kept clear or on the axis. */
  misplaced: number[];
}

/** Nearest a centroid may come to the axis, mm (contract, section 3). */
const AXIS = 0.1;

/** A distance is taken as kept when it is short by no more than the rounding of doubles can explain, mm. */
const ROUNDING = 1e-9;

/** Pairs farther than this beyond the gap, mm, need no second opinion. */
const PLAIN = 0.01;

/**
 * Checks laid pieces from their written numbers alone, with none of the engine's code: every pair's clear distance
 * against `gap`, every corner against the rim, the circles kept clear and the axis. Near pairs are measured a second
 * time by a general geometry library, and the smaller distance counts.
 */
export function check(pieces: readonly PlacedPiece[], field: Field, gap: number): Verdict {
  const verdict: Verdict = { gapMin: Infinity, rimMin: Infinity, pairs: [], misplaced: [] };
  if (pieces.length === 0) return verdict;
  const index = new Flatbush(pieces.length);
  const boxes = pieces.map(pieceBox);
  for (const [left, low, right, high] of boxes) index.add(left, low, right, high);
  index.finish();
  let least = Infinity;
  const again = secondOpinions();
  pieces.forEach((piece, i) => {
    const far = piece.radius === undefined ? farthest(piece) : hypot(piece.x, piece.y) + piece.radius;
    verdict.rimMin = Math.min(verdict.rimMin, field.edge - far);
    const blocked = field.clear.some((circle) => fromCircle(piece, circle) < -ROUNDING);
    if (far > field.radius + ROUNDING || hypot(piece.x, piece.y) < AXIS || blocked) verdict.misplaced.push(i);
    const [left, low, right, high] = boxes[i]!;
    // A wider look than the gap, so that the least gap is found also where it is larger than asked.
    const look = gap + (right - left + high - low) / 4;
    least = Math.min(least, look);
    for (const j of index.search(left - look, low - look, right + look, high + look)) {
      if (j <= i) continue;
      const distance = clearBetween(piece, pieces[j]!, gap, again);
      verdict.gapMin = Math.min(verdict.gapMin, Math.max(0, distance));
      if (distance < gap - ROUNDING) verdict.pairs.push([i, j]);
    }
  });
  // Farther apart than was looked: the least gap may lie between pieces that were not compared.
  if (verdict.gapMin > least) verdict.gapMin = leastGap(pieces, boxes, gap, again);
  return verdict;
}

/** The least clear distance of any two pieces, mm: all pairs but those whose boxes are farther apart than one found. */
function leastGap(pieces: readonly PlacedPiece[], boxes: readonly Box[], gap: number, again: SecondOpinion): number {
  let found = Infinity;
  pieces.forEach((piece, i) => {
    const [left, low, right, high] = boxes[i]!;
    for (let j = i + 1; j < pieces.length; j++) {
      const [otherLeft, otherLow, otherRight, otherHigh] = boxes[j]!;
      const across = Math.max(0, otherLeft - right, left - otherRight);
      const up = Math.max(0, otherLow - high, low - otherHigh);
      if (hypot(across, up) >= found) continue;
      found = Math.min(found, clearBetween(piece, pieces[j]!, gap, again));
    }
  });
  return found;
}

/** Clear distance of two laid pieces, mm; less than 0 where they overlap, so that a gap of 0 is no leave to. */
function clearBetween(a: PlacedPiece, b: PlacedPiece, gap: number, again: SecondOpinion): number {
  if (a.radius !== undefined && b.radius !== undefined) {
    return hypot(a.x - b.x, a.y - b.y) - a.radius - b.radius;
  }
  const away = (a.radius ?? 0) + (b.radius ?? 0);
  const coreA: Outline = a.radius === undefined ? a.outline : [[a.x, a.y]];
  const coreB: Outline = b.radius === undefined ? b.outline : [[b.x, b.y]];
  const distance = coreDistance(coreA, coreB) - away;
  if (distance > gap + PLAIN) return distance;
  return Math.min(distance, again(coreA, coreB) - away);
}

/** Clear distance of two convex outlines, either of which may be a single point; less than 0 where two outlines overlap. */
function coreDistance(a: Outline, b: Outline): number {
  if (a.length > 1 && b.length > 1) {
    const distance = clearDistance(a, b);
    return distance > 0 ? distance : Math.min(0, Math.max(beyondSides(a, b), beyondSides(b, a)));
  }
  const [point, outline] = a.length === 1 ? [a[0]!, b] : [b[0]!, a];
  return convexContains(outline, point) ? 0 : pointToOutline(point, outline);
}

/** How far `b` lies beyond that side of `a` which parts them most, mm; less than 0 where none parts them. */
function beyondSides(a: Outline, b: Outline): number {
  return Math.max(
    ...a.map(([ax, ay], n) => {
      const [bx, by] = a[(n + 1) % a.length]!;
      const length = hypot(bx - ax, by - ay);
      return Math.min(...b.map(([x, y]) => ((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / length));
    }),
  );
}

/** Least distance between the corners of each outline and the sides of the other. */
type SecondOpinion = (a: Outline, b: Outline) => number;

/** That by the geometry library, each outline made one of its own once. */
function secondOpinions(): SecondOpinion {
  const known = new Map<Outline, Drawn>();
  const drawn = (outline: Outline): Drawn => {
    let found = known.get(outline);
    if (!found) {
      const corners = outline.map(([x, y]) => Flatten.point(x, y));
      const sides = corners.map((corner, n) => Flatten.segment(corner, corners[(n + 1) % corners.length]!));
      found = { corners, sides, box: boxOf(outline) };
      known.set(outline, found);
    }
    return found;
  };
  const least = ({ corners }: Drawn, { sides, box }: Drawn, known: number): number => {
    let found = known;
    for (const corner of corners) {
      // No side is nearer than the box round all of them.
      if (beyondBox(corner, box) > found) continue;
      for (const side of sides) found = Math.min(found, corner.distanceTo(side)[0]);
    }
    return found;
  };
  return (a, b) => least(drawn(b), drawn(a), least(drawn(a), drawn(b), Infinity));
}

interface Drawn {
  corners: readonly Flatten.Point[];
  sides: readonly Flatten.Segment[];
  box: Box;
}

/** How far a point lies from a box, mm. */
function beyondBox({ x, y }: Flatten.Point, [left, low, right, high]: Box): number {
  return hypot(Math.max(0, left - x, x - right), Math.max(0, low - y, y - high));
}

/** Clear distance of a piece from a circle, mm; negative inside. */
function fromCircle(piece: PlacedPiece, circle: { x: number; y: number; radius: number }): number {
  const centre: Outline = [[circle.x, circle.y]];
  if (piece.radius !== undefined) return hypot(piece.x - circle.x, piece.y - circle.y) - piece.radius - circle.radius;
  return coreDistance(piece.outline, centre) - circle.radius;
}

function farthest({ outline }: PlacedPiece): number {
  let most = 0;
  for (const [x, y] of outline) most = Math.max(most, x * x + y * y);
  return Math.sqrt(most);
}

function pieceBox({ outline, x, y, radius }: PlacedPiece): Box {
  return radius === undefined ? boxOf(outline) : [x - radius, y - radius, x + radius, y + radius];
}

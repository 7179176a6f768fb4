import { lineEnd, points } from "../channels/strips";
import { cos, hypot, sin, TAU } from "../src/arc";
import { pointToLine } from "./box";
import { firstOf } from "./place";

/*
 * The number of a bored piece beside the bore. Lengths mm.
 */

/** What is larger by less is not looked for. */
const LARGER: f64 = 0.1;
/** Halvings by which the largest size in a direction is found. */
const HALVINGS = 7;
/** Directions from the bore that are tried, below it first. */
const DIRECTIONS = 48;
/** Between a number and any line. */
const CLEAR: f64 = 0.6;

/** The piece: which line its outline is, its centroid, its radius where it is round, else 0; and its bore's radius. */
let outline: i32 = 0;
let pieceX: f64 = 0;
let pieceY: f64 = 0;
let round: f64 = 0;
let bore: f64 = 0;

/** Half the room of its number as large as 1 mm. */
let halfWidth: f64 = 0;
let halfHeight: f64 = 0;

/** Where the middle of the number laid last lies from the centroid. */
export let offX: f64 = 0;
export let offY: f64 = 0;

/** Turns to a piece. */
export function turnToPiece(line: i32, x: f64, y: f64, radius: f64, boreRadius: f64): void {
  outline = line;
  pieceX = x;
  pieceY = y;
  round = radius;
  bore = boreRadius;
}

/**
 * Size of the largest number, up to `most`, that fits beside the piece's bore, laid there; 0 where none does. Half its room
 * is given for one as large as 1 mm.
 */
export function besideBore(width: f64, height: f64, most: f64): f64 {
  halfWidth = width;
  halfHeight = height;
  let largest: f64 = 0;
  let best = 0;
  for (let n = 0; n < DIRECTIONS && largest < most; n++) {
    // Nothing is looked for that is no larger than what another direction has.
    let size = largest + LARGER;
    if (!fits(size, n)) continue;
    let above = most + LARGER;
    for (let h = 0; h < HALVINGS; h++) {
      const middle = (size + above) / 2;
      if (fits(middle, n)) size = middle;
      else above = middle;
    }
    largest = size;
    best = n;
  }
  layBeside(largest, best);
  return Math.min(most, largest);
}

/** Whether a number of this size, laid in a direction from the bore, keeps inside the piece. */
function fits(size: f64, direction: i32): bool {
  layBeside(size, direction);
  const width = size * halfWidth;
  const height = size * halfHeight;
  if (round > 0) return hypot(Math.abs(offX) + width, Math.abs(offY) + height) <= round - CLEAR;
  const x = pieceX + offX;
  const y = pieceY + offY;
  return (
    isInside(x - width, y - height) &&
    isInside(x - width, y + height) &&
    isInside(x + width, y - height) &&
    isInside(x + width, y + height)
  );
}

/** Lays a number of this size in a direction as near as is clear of the bore. */
function layBeside(size: f64, direction: i32): void {
  const angle = TAU * (f64(direction) / DIRECTIONS - 0.25);
  const s = sin(angle);
  const c = cos(angle);
  const across = Math.abs(c);
  const up = Math.abs(s);
  const width = size * halfWidth;
  const height = size * halfHeight;
  const radius = bore + CLEAR;
  const bySide = (width + radius) / across;
  const byTop = (height + radius) / up;
  const along = across * width + up * height;
  const byCorner = along + Math.sqrt(Math.max(0, along * along - width * width - height * height + radius * radius));
  const far = bySide * up <= height ? bySide : byTop * across <= width ? byTop : byCorner;
  offX = far * c;
  offY = far * s;
}

/** Whether (x, y) lies inside the piece's convex outline and keeps clear of it. */
function isInside(x: f64, y: f64): bool {
  const first = firstOf(outline);
  const end = 2 * lineEnd[outline];
  let fromX = points[end - 2];
  let fromY = points[end - 1];
  for (let at = first; at < end; at += 2) {
    const toX = points[at];
    const toY = points[at + 1];
    if ((toX - fromX) * (y - fromY) - (toY - fromY) * (x - fromX) < 0) return false;
    if (pointToLine(x, y, fromX, fromY, toX, toY) < CLEAR) return false;
    fromX = toX;
    fromY = toY;
  }
  return true;
}

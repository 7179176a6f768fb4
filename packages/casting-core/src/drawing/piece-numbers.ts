import { pointToOutline } from "../geometry/distance.js";
import { convexContains } from "../geometry/polygon.js";
import type { Point } from "../geometry/types.js";
import type { PlacedPiece } from "../layout/types.js";
import type { PieceKind } from "../pieces/types.js";
import { hypot, sinCos, TAU } from "../trig.js";
import { textBox } from "./ink.js";
import { type Text, text } from "./sheet.js";

/** Sizes of the numbers, mm: as large as fits between these. */
const SIZE = { least: 1.5, most: 6 };
/** A number takes so much more room than its letters. */
const ROOM = 1 / 0.9;
/** Between a number beside a bore and any line, mm. */
const CLEAR = 0.6;
/** Sine and cosine of the directions from the bore that are tried, below it first. */
const DIRECTIONS = Array.from({ length: 48 }, (_, n) => sinCos(TAU * (n / 48 - 0.25)));
/** Halvings by which the largest size in a direction is found. */
const HALVINGS = 7;

/** Where a number's middle lies from the piece's centroid, and its size. */
interface Place {
  off: Point;
  size: number;
}

/**
 * Each piece's number at its centroid; where that is bored, inside the bore or beside it, whichever leaves more room: over
 * its line only where neither can be read. All pieces of a kind have theirs alike and of one size.
 */
export function pieceNumbers(
  pieces: readonly PlacedPiece[],
  kinds: readonly PieceKind[],
  at: (point: Point) => Point,
): Text[] {
  const places = new Map<PlacedPiece, Place>();
  for (const { kind, bore } of kinds) {
    const own = pieces.filter((piece) => piece.kind === kind);
    const within = own.map((piece) => centred(piece.id, bore > 0 ? bore / 2 : inradius(piece)));
    const beside = bore > 0 ? own.map((piece) => besideBore(piece, bore / 2)) : [];
    const best = bore > 0 && smallest(beside) > smallest(within) ? beside : within;
    const size = smallest(best.filter(readable));
    own.forEach((piece, n) => {
      const place = best[n]!;
      places.set(piece, readable(place) ? { ...place, size } : centred(piece.id, inradius(piece)));
    });
  }
  return pieces.flatMap((piece) => {
    const place = places.get(piece);
    if (!place || !readable(place)) return [];
    const [x, y] = at([piece.x + place.off[0], piece.y + place.off[1]]);
    return [text([x, y + 0.36 * place.size], String(piece.id), place.size, "middle")];
  });
}

function readable({ size }: Place): boolean {
  return size >= SIZE.least;
}

function smallest(places: readonly Place[]): number {
  return places.reduce((least, { size }) => Math.min(least, size), SIZE.most);
}

function inradius({ x, y, radius, outline }: PlacedPiece): number {
  return radius ?? pointToOutline([x, y], outline);
}

/** Half the room of a number as large as 1 mm. */
function halfOf(id: number): Point {
  const { width, height } = textBox(text([0, 0], String(id), ROOM));
  return [width / 2, height / 2];
}

/** A number inside a circle round the centroid. */
function centred(id: number, radius: number): Place {
  const [width, height] = halfOf(id);
  return { off: [0, 0], size: Math.min(SIZE.most, radius / hypot(width, height)) };
}

/** The largest number beside a bore; of size 0 where none fits. */
function besideBore(piece: PlacedPiece, bore: number): Place {
  const [width, height] = halfOf(piece.id);
  let best: Place = { off: [0, 0], size: 0 };
  for (const direction of DIRECTIONS) {
    const placed = (size: number): Place | undefined => {
      const half: Point = [size * width, size * height];
      const off = awayFrom(bore + CLEAR, half, direction);
      return isInside(piece, [off, half]) ? { off, size } : undefined;
    };
    // Nothing is looked for closer than what another direction has.
    let found = placed(best.size + 0.1);
    if (!found) continue;
    let above = SIZE.most + 0.1;
    for (let n = 0; n < HALVINGS; n++) {
      const next = placed((found.size + above) / 2);
      if (next) found = next;
      else above = (found.size + above) / 2;
    }
    best = { ...found, size: Math.min(SIZE.most, found.size) };
    if (found.size >= SIZE.most) break;
  }
  return best;
}

/** How far off a circle's centre a box of these half sides, its middle in this direction, is clear of the circle. */
function awayFrom(radius: number, [width, height]: Point, [s, c]: readonly [number, number]): Point {
  const [across, up] = [Math.abs(c), Math.abs(s)];
  const [bySide, byTop] = [(width + radius) / across, (height + radius) / up];
  const along = across * width + up * height;
  const byCorner = along + Math.sqrt(Math.max(0, along * along - width * width - height * height + radius * radius));
  const far = bySide * up <= height ? bySide : byTop * across <= width ? byTop : byCorner;
  return [far * c, far * s];
}

/** Whether a box about the centroid keeps inside the piece. */
function isInside(
  { x, y, radius, outline }: PlacedPiece,
  [[dx, dy], [width, height]]: readonly [Point, Point],
): boolean {
  if (radius !== undefined) return hypot(Math.abs(dx) + width, Math.abs(dy) + height) <= radius - CLEAR;
  return [-1, 1].every((right) =>
    [-1, 1].every((up) => {
      const corner: Point = [x + dx + right * width, y + dy + up * height];
      return convexContains(outline, corner) && pointToOutline(corner, outline) >= CLEAR;
    }),
  );
}

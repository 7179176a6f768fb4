import { pointToOutline } from "../geometry/distance.js";
import type { Point } from "../geometry/types.js";
import type { PlacedPiece } from "../layout/types.js";
import type { PieceKind } from "../pieces/types.js";
import { hypot } from "../trig.js";
import { textBox } from "./ink.js";
import { openLabels } from "./labels.js";
import { type Text, text } from "./sheet.js";

/** Sizes of the numbers, mm: as large as fits between these. */
const SIZE = { least: 1.5, most: 6 };
/** A number takes so much more room than its letters. */
const ROOM = 1 / 0.9;

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
    const beside = bore > 0 ? besideBores(own, bore / 2) : [];
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

/** The largest number beside each piece's bore; of size 0 where none fits. */
function besideBores(pieces: readonly PlacedPiece[], bore: number): Place[] {
  const labels = openLabels(pieces.map(({ outline }) => outline));
  return pieces.map(({ id, x, y, radius }, n) => {
    labels.turnToPiece(n, x, y, radius ?? 0, bore);
    const size = labels.besideBore(...halfOf(id), SIZE.most);
    return { off: [labels.offX.value, labels.offY.value], size };
  });
}

import type { Point } from "../geometry/types.js";
import { CHECK, checkSquares } from "./block.js";
import { andFind, finderOf, freeOf, grown, inkOf, overlap, type Rect, textBox } from "./ink.js";
import type { Page, Tiling } from "./pages.js";
import { cross, onEdge, places, type Shared, sharedEdges, trimLine } from "./shared-edges.js";
import { type Shape, type Text, text } from "./sheet.js";

/** How far from a shared edge its neighbour's name may stand, and the sizes of the name, mm. */
const ASIDE = 16;
const NAMES = [3.4, 2.8];
/** Between a mark and what is drawn, mm. */
const CLEAR = 0.5;
/** Steps in which free places are looked for, mm. */
const STEP = 1;

/**
 * What a page carries besides its part of the drawing, on the paper: the check squares with their sizes, and on each
 * shared edge a trim line, two crosses and the neighbour's name. The squares alone may lie over the drawing: the lines
 * stop before it, the crosses stand where they meet the fewest lines and no word, names only in free places.
 */
export function pageMarks(tiling: Tiling, page: Page): Shape[] {
  const { window, at } = page;
  const [dx, dy] = [at[0] - window.x, at[1] - window.y];
  const corner: Point = [page.check[0] - dx, page.check[1] - dy];
  const squares = checkSquares(corner).shapes.filter((shape) => shape.kind !== "text");
  const drawn = finderOf(tiling.drawn.filter(({ bounds }) => overlap(bounds, window)));
  const edges = sharedEdges(tiling, page);
  const spots = edges.map((edge) => places(edge, drawn));
  const crosses = edges.flatMap((edge, n) => spots[n]!.flatMap((along) => cross(edge, along)));
  const withCrosses = andFind(drawn, crosses.map(inkOf));
  const trims = edges.flatMap((edge) => trimLine(edge, withCrosses));
  const marks = [...squares, ...crosses, ...trims];
  const names: Shape[] = [];
  edges.forEach((edge, n) => {
    const name = nameOf(edge, spots[n]!, window, freeOf(drawn, [...marks, ...names].map(inkOf)));
    if (name) names.push(name);
  });
  const sizes = squareWords(corner, window, freeOf(drawn, [...marks, ...names].map(inkOf)));
  return [...marks, ...names, ...(sizes ? [sizes] : [])].map((shape) => moved(shape, dx, dy));
}

/** The neighbour's name on the page's side of the edge, in the free place nearest to one of the crosses. */
function nameOf(edge: Shared, crosses: readonly number[], window: Rect, free: Free): Text | undefined {
  const { name, from, to, upright, inward } = edge;
  const spot = (along: number, aside: number, size: number): Text => {
    const [x, y] = onEdge(edge, along, inward * aside);
    if (upright) return text([x, y], `to ${name}`, size, inward === 1 ? "start" : "end");
    return text([x, inward === 1 ? y + 0.72 * size : y], `to ${name}`, size, "middle");
  };
  for (const size of NAMES) {
    for (let off = 0; off <= (to - from) / 2; off += STEP) {
      for (let aside = 1.5; aside <= ASIDE; aside += STEP) {
        for (const along of crosses.flatMap((at) => [at - off, at + off])) {
          const words = spot(along, aside, size);
          if (isFree(words, window, free)) return words;
        }
      }
    }
  }
  return undefined;
}

/** What the squares are, inside or beside them where nothing else is drawn. */
function squareWords([left, top]: Point, window: Rect, free: Free): Text | undefined {
  for (const words of ["inner square 100 mm, outer 4 in", "100 mm / 4 in"]) {
    for (const size of NAMES) {
      for (let down = top + 3 + size; down < top + CHECK.inch - 2; down += 2) {
        for (let right = left + 3; right < left + CHECK.inch - 10; right += 4) {
          const spot = text([right, down], words, size);
          const box = textBox(spot);
          if (box.x + box.width < left + CHECK.inch - 2 && isFree(spot, window, free)) return spot;
        }
      }
      for (const down of [top - 1.5, top + CHECK.inch + 1 + size]) {
        const spot = text([left, down], words, size);
        if (isFree(spot, window, free)) return spot;
      }
    }
  }
  return undefined;
}

/** Whether nothing is drawn in a rectangle. */
type Free = (room: Rect) => boolean;

function isFree(words: Text, window: Rect, free: Free): boolean {
  const room = grown(textBox(words), CLEAR);
  if (room.x < window.x || room.x + room.width > window.x + window.width) return false;
  if (room.y < window.y || room.y + room.height > window.y + window.height) return false;
  return free(room);
}

function moved<S extends Shape>(shape: S, dx: number, dy: number): Shape {
  if (shape.kind === "text") return { ...shape, at: [shape.at[0] + dx, shape.at[1] + dy] };
  if (shape.kind === "polyline" || shape.kind === "polygon") {
    return { ...shape, points: shape.points.map(([x, y]): Point => [x + dx, y + dy]) };
  }
  throw new Error(`a page's marks hold no ${shape.kind}`);
}

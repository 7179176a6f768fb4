import type { Point } from "../geometry/types.js";
import { CHECK, checkSquares } from "./block.js";
import { type Finder, finderOf, freeOf, grown, inkOf, type Rect, textBox } from "./ink.js";
import type { Page, Tiling } from "./pages.js";
import { cross, type Near, nearEdge, onEdge, places, type Shared, sharedEdges, trimLine } from "./shared-edges.js";
import { type Shape, type Text, text } from "./sheet.js";

/** How far from a shared edge its neighbour's name may stand, and the sizes of the name, mm. */
const ASIDE = 16;
const NAMES = [3.4, 2.8];
/** Between a mark and what is drawn, mm. */
const CLEAR = 0.5;
/** Steps in which free places are looked for, mm. */
const STEP = 1;

/**
 * What pages carry besides their part of the drawing, on the paper: the check squares with their sizes, and on each
 * shared edge a trim line, two crosses and the neighbour's name. The squares alone may lie over the drawing: the lines
 * stop before it, the crosses stand where they meet the fewest lines and no word, names only in free places. A page that
 * holds a whole sheet carries nothing more.
 */
export function pageMarks(tiling: Tiling): (page: Page) => Shape[] {
  const drawn = finderOf(tiling.drawn);
  const seams = new Map<string, Seam>();
  // Worked out once for both pages of an edge.
  const seamOf = (edge: Shared): Seam => {
    const key = `${edge.upright} ${edge.across} ${edge.from}`;
    const found = seams.get(key);
    if (found) return found;
    const near = nearEdge(edge, drawn);
    const seam = { near, crosses: places(edge, near) };
    seams.set(key, seam);
    return seam;
  };
  return (page) => (page.whole ? [] : marksOf(tiling, page, drawn, seamOf));
}

/** What lies about an edge, and where its crosses stand. */
interface Seam {
  near: readonly Near[];
  crosses: readonly number[];
}

function marksOf(tiling: Tiling, page: Page, drawn: Finder, seamOf: (edge: Shared) => Seam): Shape[] {
  const { window, at } = page;
  const [dx, dy] = [at[0] - window.x, at[1] - window.y];
  const corner: Point = [page.check[0] - dx, page.check[1] - dy];
  const squares = checkSquares(corner).shapes.filter((shape) => shape.kind !== "text");
  const edges = sharedEdges(tiling, page);
  const seams = edges.map(seamOf);
  const crosses = edges.flatMap((edge, n) => seams[n]!.crosses.flatMap((along) => cross(edge, along)));
  const crossInk = crosses.map(inkOf);
  const trims = edges.flatMap((edge, n) => trimLine(edge, seams[n]!.near, crossInk));
  const marks = [...squares, ...crosses, ...trims];
  const ink = marks.map(inkOf);
  const names: Text[] = [];
  edges.forEach((edge, n) => {
    const name = nameOf(edge, seams[n]!.crosses, window, freeOf(drawn, ink));
    if (!name) return;
    names.push(name);
    ink.push(inkOf(name));
  });
  const sizes = squareWords(corner, window, freeOf(drawn, ink));
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

import { centroid, signedArea } from "../geometry/polygon.js";
import type { Outline, Point } from "../geometry/types.js";
import type { JobOwnPiece, Units } from "../job/types.js";
import { sinCos, TAU } from "../trig.js";
import { lengthText } from "../units/length-text.js";

/** Corners that stand for a circle where an outline is drawn. */
const ROUND_CORNERS = 96;

/** A shape's outline about its centroid, counter-clockwise, in the job's pose, with its true area, mm and mm². */
export interface Shaped {
  outline: Outline;
  area: number;
  /** Turning by 360/fold degrees brings the outline onto itself. */
  fold: number;
  /** Only for a round piece. */
  radius?: number;
}

/**
 * The outline of `piece`: hexagon and triangle with a corner on +x, square and rectangle with sides along the axes,
 * polygon as given. A polygon that is not convex and simple comes back as the sentence that says why, in `units`.
 */
export function shaped(piece: JobOwnPiece, units: Units): Shaped | string {
  switch (piece.shape) {
    case "hexagon": {
      const r = piece.across / Math.sqrt(3);
      const h = piece.across / 2;
      const corners: Outline = [[r, 0], [r / 2, h], [-r / 2, h], [-r, 0], [-r / 2, -h], [r / 2, -h]]; // biome-ignore format: one row of corners
      return { outline: corners, area: (Math.sqrt(3) / 2) * piece.across * piece.across, fold: 6 };
    }
    case "triangle": {
      const r = piece.across / Math.sqrt(3);
      const h = piece.across / 2;
      const corners: Outline = [[r, 0], [-r / 2, h], [-r / 2, -h]]; // biome-ignore format: one row of corners
      return { outline: corners, area: (Math.sqrt(3) / 4) * piece.across * piece.across, fold: 3 };
    }
    case "square":
      return { ...box(piece.across, piece.across), fold: 4 };
    case "rectangle":
      return { ...box(piece.length, piece.width), fold: piece.length === piece.width ? 4 : 2 };
    case "round":
      return circle(piece.diameter / 2);
    case "polygon":
      return polygon(piece.points, units);
  }
}

function box(length: number, width: number): { outline: Outline; area: number } {
  const a = length / 2;
  const b = width / 2;
  return { outline: [[a, -b], [a, b], [-a, b], [-a, -b]], area: length * width }; // biome-ignore format: one row of corners
}

function circle(radius: number): Shaped {
  const outline = Array.from({ length: ROUND_CORNERS }, (_, i): Point => {
    const [s, c] = sinCos((TAU * i) / ROUND_CORNERS);
    return [radius * c, radius * s];
  });
  return { outline, area: (TAU / 2) * radius * radius, fold: Infinity, radius };
}

/** Least area of three corners in a row that makes a corner, mm²: below it they lie on one line. */
const FLAT = 1e-9;

function polygon(points: readonly Point[], units: Units): Shaped | string {
  const place = ([x, y]: Point): string => `(${lengthText(x, units)}, ${lengthText(y, units)})`;
  const given = points.map(([x, y]): Point => [x, y]);
  if (given.length < 3) return `a polygon needs at least 3 points, not ${given.length}; give each corner once`;
  for (const [i, [x, y]] of given.entries()) {
    const twin = given.findIndex(([px, py], j) => j > i && px === x && py === y);
    if (twin >= 0) return `points ${i + 1} and ${twin + 1} are both at ${place([x, y])}; give each corner once`;
  }
  const area = signedArea(given);
  const bends = given.some(
    (point, i) =>
      Math.abs(turn(given[(i + given.length - 1) % given.length]!, point, given[(i + 1) % given.length]!)) > FLAT,
  );
  if (Math.abs(area) < FLAT && bends)
    return "the polygon crosses itself; give the corners of a convex shape in order round it";
  if (Math.abs(area) < FLAT)
    return "the points of the polygon lie on one line; give the corners of a shape with an area";
  if (area < 0) given.reverse();
  const corners = given.filter((_, i) => {
    const before = given[(i + given.length - 1) % given.length]!;
    return Math.abs(turn(before, given[i]!, given[(i + 1) % given.length]!)) > FLAT;
  });
  const after = (i: number): Point => corners[(i + 1) % corners.length]!;
  const inward = corners.findIndex((corner, i) => turn(corners.at(i - 1)!, corner, after(i)) < -FLAT);
  const crossed = corners.findIndex((corner, i) => corners.some((point) => turn(corner, after(i), point) < -FLAT));
  if (crossed >= 0)
    return `the polygon is not convex, or crosses itself, near ${place(corners[inward] ?? corners[crossed]!)}; give the corners of a convex shape in order`;
  const [cx, cy] = centroid(corners);
  const outline = corners.map(([x, y]): Point => [x - cx, y - cy]);
  return { outline, area: Math.abs(area), fold: foldOf(outline) };
}

/** Twice the area of the triangle a, b, c; positive where the way turns left at b. */
function turn([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number {
  return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
}

/** Largest n for which a turn by 360/n degrees brings `outline` onto itself to 1 nm. */
function foldOf(outline: Outline): number {
  const n = outline.length;
  for (let fold = n; fold > 1; fold--) {
    if (n % fold !== 0) continue;
    const [s, c] = sinCos(TAU / fold);
    const fits = outline.every(([x, y], i) => {
      const [ex, ey] = outline[(i + n / fold) % n]!;
      return Math.abs(c * x - s * y - ex) < 1e-6 && Math.abs(s * x + c * y - ey) < 1e-6;
    });
    if (fits) return fold;
  }
  return 1;
}

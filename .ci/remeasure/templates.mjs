// Reads placement and channels back out of templates.pdf, page by page. Coordinates as in the plan.
import { readPages } from "./pdf.mjs";
import { less } from "./svg.mjs";

/** Points in a millimetre. */
const POINTS = 72 / 25.4;
/** Widths of the lines that the sheets are drawn with, mm. */
const LINES = { edge: 0.5, piece: 0.25, outline: 0.2, cut: 0.4 };

/**
 * Each page of the placement (or, `mirrored`, of the channels): the tool's radius, the pieces and the cut lines that it
 * draws, the window of the drawing that it shows (none where it shows all), and how far its scale is from the true one.
 */
export function readTemplates(bytes, { mirrored, correction }) {
  const title = mirrored ? /groove template/i : /placement template/i;
  const pages = readPages(bytes)
    .filter(({ words, paths }) => title.test(words) && paths.some((path) => path.clip ?? toolOf([path])))
    .map(({ paths }) => paths.filter(({ stroked, filled, dash }) => stroked && !filled && dash === "[]"));
  // A page draws what it shows; the sheet that it is cut from is the same for all.
  const tool = toolOf(pages.flat());
  if (!tool) return [];
  const place = ([x, y]) => [mirrored ? less(tool.centre[0], x) : less(x, tool.centre[0]), less(tool.centre[1], y)];
  const [kx, ky] = [correction?.x ?? 1, correction?.y ?? 1];
  return pages.map((paths) => {
    const { matrix, clip } = paths.find((path) => path.clip) ?? paths.find((path) => toolOf([path]));
    const ruled = (width) => paths.filter((path) => path.width === width && `${path.matrix}` === `${matrix}`);
    const pieces = ruled(mirrored ? LINES.outline : LINES.piece)
      .filter(({ steps }) => steps.at(-1).kind === "h")
      .map(({ steps }) => (isCircle(steps) ? placed(circleOf(steps), place) : cornersOf(steps, place)))
      // What is round the tool or beside it is the mirror's edge and the check squares.
      .filter(({ corners: [first] = [[0, 0]], radius = 0 }) => Math.hypot(...first) + radius < tool.radius);
    const cut = ruled(LINES.cut).map(({ steps }) => steps.map(({ points }) => place(points[0])));
    const off = Math.max(Math.abs(matrix[0] / (POINTS * kx) - 1), Math.abs(-matrix[3] / (POINTS * ky) - 1));
    const window = clip && windowOf(clip, matrix, tool.centre, mirrored);
    return { toolRadius: tool.radius, pieces, cut, off, window };
  });
}

/** The tool's edge among some paths. Its radius may have more decimals than are written; its centre is on a whole micrometre. */
function toolOf(paths) {
  const edge = paths.find(({ width, steps, dash }) => width === LINES.edge && dash === "[]" && isCircle(steps));
  if (!edge) return undefined;
  const { centre, radius } = circleOf(edge.steps);
  return { centre: centre.map((value) => Math.round(value * 1000) / 1000), radius };
}

function isCircle(steps) {
  return steps.map(({ kind }) => kind).join("") === "mcccch";
}

/** A circle by the ends of its four curves. */
function circleOf(steps) {
  const ends = steps.slice(1, 5).map(({ points }) => points[2]);
  const [xs, ys] = [ends.map(([x]) => x), ends.map(([, y]) => y)];
  const middle = (list) => (Math.round(Math.min(...list) * 1e6) + Math.round(Math.max(...list) * 1e6)) / 2e6;
  return { centre: [middle(xs), middle(ys)], radius: less(Math.max(...xs), Math.min(...xs)) / 2 };
}

function placed({ centre, radius }, place) {
  return { centre: place(centre), radius };
}

function cornersOf(steps, place) {
  return { corners: steps.filter(({ kind }) => kind !== "h").map(({ points }) => place(points[0])) };
}

/** The part of the drawing that a page shows, in the plan's coordinates. */
function windowOf({ at, size, matrix: outer }, matrix, [cx, cy], mirrored) {
  const shift = [(matrix[4] - outer[4]) / outer[0], (matrix[5] - outer[5]) / outer[3]];
  const [left, top] = [at[0] - shift[0] - cx, at[1] - shift[1] - cy];
  const [right, low] = [left + size[0], top + size[1]];
  return { left: mirrored ? -right : left, right: mirrored ? -left : right, low: -low, high: -top };
}

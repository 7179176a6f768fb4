import type { Point } from "../geometry/types.js";
import type { Plan } from "../plan/types.js";
import { PI } from "../trig.js";
import { lengthText } from "../units/length-text.js";
import { block } from "./block.js";
import { textWidth } from "./letters.js";
import { indexMarks, toolSheet } from "./placement.js";
import { circle, DASHED, FIRM, onSheet, type Shape, type Sheet, type THIN, text } from "./sheet.js";

/** Numbers of cuts, mm: this share of the distance from piece to piece, between these; an arrow's head beside them. */
const NUMBER = { share: 0.15, least: 1.2, most: 2.6 };
const HEAD = 0.75;

/** The groove template: the channels' middle lines as they are seen on the working face, which mirrors the layout. */
export function groovesSheet(plan: Plan): Sheet {
  const { tool, grooves, layout, job } = plan;
  const { width, height, blockTop, view } = toolSheet(tool.diameter, true);
  const at = (point: Point) => onSheet(view, point);
  const edges = (cut: boolean, style: typeof THIN): Shape[] =>
    grooves.edges
      .filter((edge) => edge.cut === cut)
      .map(({ points }) => ({ kind: "polyline", points: points.map(at), style }));
  const outlines = layout.pieces.map(({ x, y, radius, outline }): Shape => {
    const style = { line: 0.2, ink: "grey" } as const;
    return radius === undefined
      ? { kind: "polygon", points: outline.map(at), style }
      : { kind: "circle", centre: at([x, y]), radius, style };
  });
  const { arrows, numbers } = cutMarks(
    grooves.cuts.map((cut) => cut.map(at)),
    layout.pieces.map(({ x, y }) => at([x, y])),
    numberSize(tool.diameter, layout.pieces.length),
  );
  const mm = (value: number) => lengthText(value, job.units);
  const { totals } = grooves;
  const { labels, check, facts } = block(plan, blockTop, width, [
    "GROOVE TEMPLATE, MIRRORED left to right: lay it on the WORKING FACE as it is, ink up, index to index.",
    `Cutter ${mm(grooves.cutter)}, depth ${mm(grooves.depth)}, clearance ${mm(job.grooves.clearance)}; ${totals.cuts} cuts, ${mm(Math.round(totals.length))} in all.`,
    "Firm lines are cut, in the order of their numbers, from each number along its arrow; dashed ones are too narrow.",
  ]);
  return {
    name: "grooves",
    width,
    height,
    caption: "groove template, mirrored, seen on the working face",
    facts,
    bodyHeight: blockTop,
    groups: [
      { id: "tool-edge", shapes: [circle([view.x, view.y], tool.diameter / 2, FIRM)] },
      { id: "outlines", shapes: outlines },
      { id: "uncut", shapes: edges(false, DASHED) },
      { id: "grooves", shapes: edges(true, { line: 0.4 }) },
      { id: "marks", shapes: [...indexMarks(view, tool.diameter), ...arrows] },
      { id: "labels", shapes: [...numbers, ...labels] },
      check,
    ],
  };
}

function numberSize(diameter: number, count: number): number {
  const pitch = diameter * Math.sqrt(PI / 4 / Math.max(1, count));
  return Math.max(NUMBER.least, Math.min(NUMBER.most, NUMBER.share * pitch));
}

/** An arrow where each cut begins and its number, pushed into the nearest piece and clear of the numbers before it. */
function cutMarks(
  cuts: readonly (readonly Point[])[],
  centres: readonly Point[],
  size: number,
): { arrows: Shape[]; numbers: Shape[] } {
  const arrows: Shape[] = [];
  const numbers: Shape[] = [];
  const taken: { at: Point; reach: number }[] = [];
  const head = HEAD * size;
  cuts.forEach((points, index) => {
    const [start, next] = [points[0], points.find((point) => apart(point, points[0]!) > 1e-9)];
    if (!start || !next) return;
    const length = apart(start, next);
    const along: Point = [(next[0] - start[0]) / length, (next[1] - start[1]) / length];
    const step = Math.min(2 * head, length / 2 + head / 2);
    arrows.push(arrow([start[0] + along[0] * step, start[1] + along[1] * step], along, head));
    const words = String(index + 1);
    const reach = textWidth(words, size) / 2;
    const spot = freeSpot(start, centres, taken, reach, size);
    taken.push({ at: spot, reach });
    numbers.push(text([spot[0], spot[1] + 0.36 * size], words, size, "middle"));
  });
  return { arrows, numbers };
}

/** Of the three nearest pieces, the first with room beside the number's cut; else the last tried. */
function freeSpot(
  start: Point,
  centres: readonly Point[],
  taken: readonly { at: Point; reach: number }[],
  reach: number,
  size: number,
): Point {
  const near = [...centres].sort((a, b) => apart(a, start) - apart(b, start)).slice(0, 3);
  let spot = start;
  for (const share of [0.62, 0.8, 0.5]) {
    for (const centre of near) {
      spot = [start[0] + (centre[0] - start[0]) * share, start[1] + (centre[1] - start[1]) * share];
      if (taken.every((other) => clear(other, spot, reach, size))) return spot;
    }
  }
  return spot;
}

function clear(other: { at: Point; reach: number }, spot: Point, reach: number, size: number): boolean {
  return Math.abs(other.at[0] - spot[0]) > other.reach + reach + 0.3 || Math.abs(other.at[1] - spot[1]) > size;
}

function arrow(tip: Point, [dx, dy]: Point, head: number): Shape {
  const back = (side: number): Point => [
    tip[0] - dx * head - dy * side * head * 0.4,
    tip[1] - dy * head + dx * side * head * 0.4,
  ];
  return { kind: "polygon", points: [tip, back(1), back(-1)], style: { line: 0, fill: "black" } };
}

function apart([ax, ay]: Point, [bx, by]: Point): number {
  return Math.sqrt((ax - bx) * (ax - bx) + (ay - by) * (ay - by));
}

import type { Point } from "../geometry/types.js";
import { leaveUncut } from "../grooves/cuts/uncut.js";
import type { Plan } from "../plan/types.js";
import { countText, roughLength } from "../units/figure-text.js";
import { lengthText } from "../units/length-text.js";
import { arrowsOf } from "./arrows.js";
import { block } from "./block.js";
import { cutNumbers } from "./cut-numbers.js";
import { axisCross, indexMark, keptClear, toolSheet } from "./placement.js";
import { circle, DASHED, FIRM, onSheet, pieceShape, type Shape, type Sheet, type Style, type THIN } from "./sheet.js";

/** What already is in the cast; and what is kept clear of it, in a line of its own. */
const LAID: Style = { line: 0.2, ink: "grey" };
const KEPT: Style = { line: 0.3, ink: "grey" };

/** The groove template: the channels' middle lines as they are seen on the working face, which mirrors the layout. */
export function groovesSheet(plan: Plan): Sheet {
  const { tool, grooves, layout, job } = plan;
  const { width, height, blockTop, view } = toolSheet(tool.diameter, true);
  const at = (point: Point) => onSheet(view, point);
  const edges = (cut: boolean, style: typeof THIN): Shape[] =>
    grooves.edges
      .filter((edge) => edge.cut === cut)
      .map(({ points }) => ({ kind: "polyline", points: points.map(at), style }));
  const outlines = layout.pieces.map((piece) => pieceShape(view, piece, LAID));
  const edge = circle([view.x, view.y], tool.diameter / 2, FIRM);
  const uncut = edges(false, DASHED);
  const clear = keptClear(plan, at, KEPT);
  const index = indexMark(view, tool.diameter);
  const marks = [...axisCross(view, tool.diameter), ...clear];
  const cuts = grooves.cuts.map((cut) => cut.map(at));
  const arrows = arrowsOf(cuts);
  const { leaders, numbers } = cutNumbers(cuts, [edge, ...uncut], [...outlines, ...marks], arrows, index);
  const mm = (value: number) => lengthText(value, job.units);
  const { totals } = grooves;
  const { labels, check, facts } = block(plan, blockTop, width, [
    "GROOVE TEMPLATE, MIRRORED left to right: lay it on the WORKING FACE as it is, ink up, index to index.",
    `Cutter ${mm(grooves.cutter)}, depth ${mm(grooves.depth)}, clearance ${mm(job.grooves.clearance)}; ${countText(totals.cuts, "cut")}, ${roughLength(totals.length, job.units)} altogether.`,
    ...(clear.length > 0 ? ["Grey: the pieces, and the circles kept clear of them."] : []),
    totals.cuts === 0 ? "Nothing is to be cut." : `${orderText(plan)} ${leaveUncut(grooves.edges, job) ?? ""}`.trim(),
  ]);
  return {
    name: "grooves",
    width,
    height,
    caption: "groove template, mirrored, seen on the working face",
    facts,
    bodyHeight: blockTop,
    groups: [
      { id: "tool-edge", shapes: [edge] },
      { id: "outlines", shapes: outlines },
      { id: "uncut", shapes: uncut },
      { id: "grooves", shapes: edges(true, { line: 0.4 }) },
      { id: "marks", shapes: [...index, ...marks, ...arrows] },
      { id: "leaders", shapes: leaders },
      { id: "labels", shapes: [...numbers, ...labels] },
      check,
    ],
  };
}

/** In which order the firm lines are cut. */
function orderText({ grooves: { totals }, job }: Plan): string {
  if (job.grooves.order !== "one" || totals.retraced === 0)
    return "Firm lines are cut in the order of their numbers, each from its number's dot along the arrow.";
  const again = roughLength(totals.retraced, job.units);
  return `Each number's cut goes on from junction to junction, ${again} of it along channels already cut: a machine follows it in grooves.dxf; by hand cut the firm lines in any order.`;
}

import type { Point } from "../geometry/types.js";
import { clearCircles } from "../layout/field.js";
import { countsOf, pieceKinds } from "../pieces/kinds.js";
import type { Plan } from "../plan/types.js";
import { countText, shareText } from "../units/figure-text.js";
import { lengthText } from "../units/length-text.js";
import { BLOCK_HEIGHT, BLOCK_WIDTH, block, MARGIN } from "./block.js";
import { guideLines } from "./guides.js";
import { paperOf } from "./paper.js";
import { pieceNumbers } from "./piece-numbers.js";
import {
  circle,
  DASHED,
  FIRM,
  line,
  onSheet,
  pieceShape,
  type Shape,
  type Sheet,
  type Style,
  THIN,
  text,
  type View,
} from "./sheet.js";

/** Room for the index mark round the tool's edge, mm. */
const BAND = 12;

/** The circle of the tool on a sheet with its block below, `band` mm free round it: the sheet's size, where the axis lies. */
export function toolSheet(
  diameter: number,
  mirrored: boolean,
  band = BAND,
): { width: number; height: number; blockTop: number; view: View } {
  const across = diameter + 2 * (band + MARGIN);
  const width = Math.max(across, BLOCK_WIDTH);
  const blockTop = across;
  // The axis on a whole micrometre, like the pieces: so no corner is rounded a second time.
  const onGrid = (length: number) => Math.round(length * 1000) / 1000;
  const view = { x: onGrid(width / 2), y: onGrid(across / 2), mirrored };
  return { width, height: blockTop + BLOCK_HEIGHT + MARGIN, blockTop, view };
}

/** The index mark at the tool's +y: its stroke and its word. */
export function indexMark(view: View, diameter: number): [stroke: Shape, word: Shape] {
  const edge = diameter / 2;
  return [
    line(onSheet(view, [0, edge]), onSheet(view, [0, edge + 8]), FIRM),
    text([view.x + 3, view.y - edge - 3], "INDEX", 4),
  ];
}

/** A cross on the tool's axis. */
export function axisCross(view: View, diameter: number): Shape[] {
  const arm = Math.min(3, diameter / 60);
  const at = (point: Point) => onSheet(view, point);
  return [line(at([-arm, 0]), at([arm, 0])), line(at([0, -arm]), at([0, arm]))];
}

/** The placement template: every piece at its true size and place, as it is laid on the film, seen from the back. */
export function placementSheet(plan: Plan): Sheet {
  const { tool, layout, job } = plan;
  const mirror = mirrorEdge(plan);
  const band = mirror === undefined ? BAND : Math.max(BAND, mirror - tool.diameter / 2 + 1);
  const { width, height, blockTop, view } = toolSheet(tool.diameter, false, band);
  const kinds = pieceKinds(job);
  const centre: Point = [view.x, view.y];
  const at = (point: Point) => onSheet(view, point);
  const pieces = layout.pieces.map((piece): Shape => ({ ...pieceShape(view, piece, THIN), piece: piece.id }));
  const bores = layout.pieces.flatMap(({ kind, x, y }) => {
    const bore = kinds[kind]?.bore ?? 0;
    return bore > 0 ? [circle(at([x, y]), bore / 2, { line: 0.2 })] : [];
  });
  const mm = (value: number) => lengthText(value, job.units);
  const { labels, check, facts } = block(plan, blockTop, width, [
    "PLACEMENT TEMPLATE, as the pieces are laid on the glass: seen from the back of the tool.",
    `Tool ${mm(tool.diameter)}, rim ${mm(tool.rim)}, ${countText(layout.pieces.length, "piece")}${gapWords(plan)}, coverage ${shareText(layout.quality.coverage)}.`,
    ...legend(plan),
    ...kindsLaid(plan),
    "Lay from number 1 on, the index away from you.",
  ]);
  return {
    name: "placement",
    width,
    height,
    caption: "placement template, seen from the back",
    facts,
    bodyHeight: blockTop,
    groups: [
      { id: "tool-edge", shapes: [circle(centre, tool.diameter / 2, FIRM), ...rimCircle(centre, plan)] },
      { id: "pieces", shapes: pieces },
      {
        id: "marks",
        shapes: [
          ...indexMark(view, tool.diameter),
          ...axisCross(view, tool.diameter),
          ...bores,
          ...keptClear(plan, at, DASHED),
          ...guideLines(plan, view),
          ...(mirror === undefined ? [] : [circle(centre, mirror, THIN)]),
        ],
      },
      {
        id: "labels",
        shapes: [
          ...pieceNumbers(layout.pieces, kinds, at),
          ...(mirror === undefined ? [] : [text([view.x, view.y + mirror - 2], "mirror edge", 4, "middle")]),
          ...labels,
        ],
      },
      check,
    ],
  };
}

/** How many of each kind are laid, each by its name. */
export function kindsLaid({ layout, job }: Plan): string[] {
  const kinds = pieceKinds(job);
  const counts = countsOf(kinds, layout.pieces);
  return kinds.map(({ name }, n) => `${counts[n]} of ${name}`);
}

/** The circles kept clear of pieces, a socket's foot on the glass among them; `at` takes the tool's places to the sheet's. */
export function keptClear({ job }: Plan, at: (point: Point) => Point, style: Style): Shape[] {
  return clearCircles(job).map(({ x, y, radius }) => circle(at([x, y]), radius, style));
}

/** The least gap that was proved, and how much of it is for the hand; nothing for a single piece. */
function gapWords({ layout, job }: Plan): string {
  const { gapMin } = layout.quality;
  if (gapMin === undefined) return "";
  const hand = layout.hand > 0 ? `, ${lengthText(layout.hand, job.units)} of it for the hand` : "";
  return `, least gap ${lengthText(gapMin, job.units)}${hand}`;
}

/** What the dashed circles are. */
function legend({ tool, job }: Plan): string[] {
  const parts = [
    ...(tool.rim > 0 ? [`the rim of ${lengthText(tool.rim, job.units)}`] : []),
    ...(job.layout["keep-clear"].length > 0 ? ["the job's circles"] : []),
    ...(job.socket?.foot === "glass" ? ["the socket's foot"] : []),
  ];
  return parts.length > 0 ? [`Dashed: ${parts.join(" and ")}, kept clear of pieces.`] : [];
}

/** Words and index between the tool's edge and the mirror's need so much, mm. */
const WORDS_BAND = 11;

/**
 * Radius of the mirror's edge where it fits the page: on paper as large as the sheet, or on one page of the job's. Not
 * where it runs through the index or is the tool's own edge.
 */
function mirrorEdge({ blank, tool, job }: Plan): number | undefined {
  if (blank.diameter < tool.diameter + 2 * WORDS_BAND) return undefined;
  const paper = paperOf(job.print.paper, job.units);
  if (!paper.full) {
    const { width, height } = toolSheet(blank.diameter + 2, false, 0);
    const [short, long] = width < height ? [width, height] : [height, width];
    if (short > paper.width || long > paper.height) return undefined;
  }
  return blank.diameter / 2;
}

function rimCircle(centre: Point, { tool }: Plan): Shape[] {
  return tool.rim > 0 ? [circle(centre, tool.diameter / 2 - tool.rim, DASHED)] : [];
}

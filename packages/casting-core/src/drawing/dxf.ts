import { Colors, LWPolylineFlags, point2d, point3d, TextHorizontalAlignment } from "@tarikjabiri/dxf";
import type { Point } from "../geometry/types.js";
import { clearCircles } from "../layout/field.js";
import type { Plan } from "../plan/types.js";
import { lengthText } from "../units/length-text.js";
import { dxfInMillimetres } from "./dxf-file.js";

/** Height of the sheet's text, mm. */
const TEXT = 5;
/** Length of the marks, mm. */
const MARK = 8;

/**
 * The channels as a DXF drawing (AC1021, millimetres), mirrored left to right (x → −x) as the working face is seen.
 * Layers: `CHANNELS` (each cut edge once), `UNCUT`, `PIECES`, `KEPT_CLEAR` (the job's circles and a socket's foot on the
 * glass, where there are any), `TOOL_EDGE`, `MARKS`. No times: the same plan gives the same text.
 */
export function groovesDxf(plan: Pick<Plan, "generator" | "job" | "tool" | "layout" | "grooves">): string {
  const { job, tool, layout, grooves } = plan;
  const { dxf, onto } = dxfInMillimetres();
  const line = (points: readonly Point[], closed: boolean): void => {
    const vertices = points.map(([x, y]) => ({ point: point2d(mirrored(x), y) }));
    dxf.addLWPolyline(vertices, { flags: closed ? LWPolylineFlags.Closed : LWPolylineFlags.None });
  };
  const edges = (cut: boolean): void => {
    for (const { a, b, points } of grooves.edges.filter((edge) => edge.cut === cut)) {
      line(a === b ? points.slice(0, -1) : points, a === b);
    }
  };

  onto("CHANNELS", Colors.Red);
  edges(true);
  onto("UNCUT", Colors.Yellow, "DASHED");
  edges(false);
  onto("PIECES", Colors.Blue);
  for (const { x, y, radius, outline } of layout.pieces) {
    if (radius === undefined) line(outline, true);
    else dxf.addCircle(point3d(mirrored(x), y), radius);
  }
  const clear = clearCircles(job);
  if (clear.length > 0) onto("KEPT_CLEAR", Colors.Cyan);
  for (const { x, y, radius } of clear) dxf.addCircle(point3d(mirrored(x), y), radius);
  const edge = tool.diameter / 2;
  onto("TOOL_EDGE", Colors.White);
  dxf.addCircle(point3d(0, 0), edge);
  onto("MARKS", Colors.Green);
  dxf.addLine(point3d(-MARK, 0), point3d(MARK, 0));
  dxf.addLine(point3d(0, -MARK), point3d(0, MARK));
  // The index: the layout's +y, which the mirroring leaves at the top.
  dxf.addLine(point3d(0, edge), point3d(0, edge + MARK));
  const size = (mm: number) => lengthText(mm, job.units);
  const words = [
    job.title,
    `seed ${layout.seed}, casting ${plan.generator.version}, cutter ${size(grooves.cutter)}, depth ${size(grooves.depth)}`,
    "SEEN ON THE WORKING FACE: MIRRORED LEFT TO RIGHT, INDEX AT THE TOP",
  ];
  words.forEach((text, i) => {
    const at = point3d(0, -edge - MARK - 1.6 * TEXT * (i + 1));
    dxf.addText(at, TEXT, escaped(text), {
      horizontalAlignment: TextHorizontalAlignment.Center,
      secondAlignmentPoint: at,
    });
  });
  return dxf.stringify();
}

function mirrored(x: number): number {
  return x === 0 ? 0 : -x;
}

/** Most characters of a text value (DXF reference, group code 1). */
const LONGEST = 255;

/**
 * `text` so that a DXF reader shows it as it is: `\\`, `^` and `%%` begin codes of their own there, and a control
 * character could begin a new value. Shortened with … where it does not fit.
 */
function escaped(text: string): string {
  let value = "";
  const characters = [...text.replace(/\p{C}/gu, " ")];
  for (const [i, character] of characters.entries()) {
    const paired = characters[i - 1] === "%" || characters[i + 1] === "%";
    const coded =
      character === "\\" ? "\\U+005C" : character === "^" ? "^ " : character === "%" && paired ? "%%%" : character;
    if (value.length + coded.length >= LONGEST) return `${value}…`;
    value += coded;
  }
  return value;
}

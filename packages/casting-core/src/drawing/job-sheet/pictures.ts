import { pieceKinds } from "../../pieces/kinds.js";
import type { Plan } from "../../plan/types.js";
import { circle, FIRM, line, onSheet, pieceShape, type Shape, type Sheet, type View } from "../sheet.js";
import { picture } from "./frame.js";

/** The layout as seen from the back, without numbers. */
export function layoutPicture({ tool, layout, job }: Pick<Plan, "tool" | "layout" | "job">): Sheet {
  const { view, size } = round(tool.diameter, false);
  const pieces = layout.pieces.map((piece) =>
    pieceShape(view, piece, { line: 0.4, fill: piece.kind % 2 === 0 ? "pale" : "grey" }),
  );
  const bores = pieceKinds(job).map((kind) => kind.bore / 2);
  const holes = layout.pieces.flatMap(({ x, y, kind }) => {
    const radius = bores[kind] ?? 0;
    return radius > 0
      ? [{ ...circle(onSheet(view, [x, y]), radius), style: { line: 0.3, fill: "white" } } as Shape]
      : [];
  });
  return picture("layout", size, "The pieces as they are laid on the glass, seen from the back of the tool.", [
    { id: "layout-edge", shapes: [circle([view.x, view.y], tool.diameter / 2, FIRM), ...index(view, tool.diameter)] },
    { id: "layout-pieces", shapes: [...pieces, ...holes] },
  ]);
}

/** The channels at their true width, as seen on the working face. */
export function channelsPicture({ tool, grooves, layout }: Plan): Sheet {
  const { view, size } = round(tool.diameter, true);
  const channels = grooves.edges
    .filter((edge) => edge.cut)
    .map(
      ({ points }): Shape => ({
        kind: "polyline",
        points: points.map((point) => onSheet(view, point)),
        style: { line: grooves.cutter, ink: "grey" },
      }),
    );
  const pieces = layout.pieces.map((piece) => pieceShape(view, piece, { line: 0.4, fill: "white" }));
  return picture("channels", size, "The channels as they are cut, seen on the working face: mirrored left to right.", [
    { id: "channels-cut", shapes: channels },
    { id: "channels-pieces", shapes: pieces },
    { id: "channels-edge", shapes: [circle([view.x, view.y], tool.diameter / 2, FIRM), ...index(view, tool.diameter)] },
  ]);
}

function round(diameter: number, mirrored: boolean): { view: View; size: { width: number; height: number } } {
  const across = diameter + 24;
  return { view: { x: across / 2, y: across / 2, mirrored }, size: { width: across, height: across } };
}

/** The index mark alone: a cross on the axis would lie over the pieces. */
function index(view: View, diameter: number): Shape[] {
  return [line(onSheet(view, [0, diameter / 2]), onSheet(view, [0, diameter / 2 + 8]), FIRM)];
}

import { sagittaOf } from "../blank/sphere.js";
import type { Blank, Tool } from "../blank/types.js";
import type { Job } from "../job/types.js";
import { seatOf } from "../layout/notes/seat.js";
import type { Layout } from "../layout/types.js";
import type { PieceKind } from "../pieces/types.js";
import { moldVolume } from "../pour/mold.js";
import type { Pour } from "../pour/types.js";
import { liftOf } from "../pour/weights.js";
import type { ToolSize } from "./types.js";

/** Plaster behind the pieces, as a share of the tool's diameter, that keeps it from bending (common practice). */
const STIFF = 1 / 12;

/** What speaks for each share of the blank (common practice). */
const SIZES = [
  { share: 1, reason: "works every zone at once; needs a stroke" },
  { share: 0.75, reason: "the usual size: runs at the tangent position with no overhang" },
  { share: 0.5, reason: "for small corrections; leaves a button without a stroke" },
];

/**
 * Full size, three quarters and half of the blank, each as thick as this tool where it is thinnest: pieces in proportion to
 * the area, plaster to what they leave of the mold, and the same socket.
 */
export function sizesOf(
  { plaster: { film = 0 } }: Pick<Job, "plaster">,
  blank: Blank,
  tool: Tool,
  kinds: readonly PieceKind[],
  layout: Layout,
  pour: Pour,
): ToolSize[] {
  return SIZES.map(({ share, reason }) => {
    const diameter = share * blank.diameter;
    const sagitta = blank.curveRadius === undefined ? 0 : sagittaOf(blank.curveRadius, diameter / 2);
    const area = (diameter / tool.diameter) * (diameter / tool.diameter);
    const edge = blank.curve === "convex" ? pour.fill.centre + sagitta : pour.fill.edge;
    const mold = moldVolume(blank, { ...tool, diameter }, edge - film);
    const plaster = (mold - pour.piecesVolume * area - pour.socketVolume) / pour.castVolume;
    const { dry, pieces, socket } = pour.mass;
    const mass = (dry - pieces - socket) * plaster + pieces * area + socket;
    const { people } = liftOf(diameter, mass);
    const { hollows } = seatOf(blank.curve, { ...tool, diameter }, kinds, []);
    return {
      diameter,
      sagitta,
      mass,
      hollow: Math.max(...hollows.map(({ hollow }) => hollow)),
      pieces: Math.round(layout.pieces.length * area),
      thickness: STIFF * diameter,
      reason: people > 1 ? `${reason}; takes ${people} people to lift` : reason,
    };
  });
}

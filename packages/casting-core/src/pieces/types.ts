import type { Outline } from "../geometry/types.js";
import type { PieceShape } from "../job/types.js";

/** One kind of piece, ready to be laid: its true outline in the job's pose, its hole, height and mass. */
export interface PieceKind {
  /** Index in `job.pieces`. */
  kind: number;
  /** Catalogue name, only for catalogue pieces. */
  item?: string;
  /** What it is called on sheets, e.g. `M12 nut, ISO 4032`. */
  name: string;
  shape: PieceShape;
  /** Corners about the centroid (0, 0), counter-clockwise, exact; 96 corners on the circle for a round piece. */
  outline: Outline;
  /** Only for a round piece: its true radius, mm. */
  radius?: number;
  /** Largest distance of the outline from the centroid, mm. */
  reach: number;
  /** Area of the outline without taking the bore out, mm². A round piece's is that of its circle. */
  area: number;
  /** Diameter of the round hole through the centroid, 0 for none, mm. */
  bore: number;
  thickness: number;
  /** kg/L */
  density: number;
  /** Inside and outside diameter of the flat ring that a fresh piece bears on, where its standard gives them, mm. */
  bearing?: { inner: number; outer: number };
  /** Whether a fresh piece bears on a ring, its edges chamfered, of which its standard gives no size. */
  chamfered?: true;
  /** Turning by 360/n degrees brings the outline onto itself; 1 for none, Infinity for a round piece. */
  fold: number;
  share?: number;
  stock?: number;
}

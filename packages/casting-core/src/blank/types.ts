import type { Curve } from "../job/types.js";

/** The glass as it stands and, where asked for, as it is wanted. Lengths mm; radii and sagittas positive for both curves. */
export interface Blank {
  diameter: number;
  curve: Curve;
  /** Absent for a flat. */
  curveRadius?: number;
  /** Over the whole diameter; 0 for a flat. */
  sagitta: number;
  target?: { curveRadius: number; sagitta: number };
  /** Behind a flat back, kg; only where the thickness at the edge and a known glass are given. */
  mass?: number;
  /** Only where the curve comes from spherometer readings. */
  measured?: Measured;
}

/** What spherometer readings say. Lengths mm, `spread`, `off` and astigmatism in µm of reading. */
export interface Measured {
  /** Least-squares radius of all readings, and its standard uncertainty. */
  radius: number;
  uncertainty: number;
  readings: number;
  /** Standard deviation of the readings; absent for a single one. */
  spread?: number;
  /** Radius of the instrument's circle of contact, or half its bar. */
  contact: number;
  /** Each reading's place, a bar's direction, how much deeper than the mean it is, and the radius it gives by itself. */
  zones: { at: number; angle?: number; along?: number; off: number; radius: number }[];
  /**
   * From a bar in three directions or more: how much the reading swings to either side of its mean, the standard
   * uncertainty of that, and along which direction it is deepest, degrees.
   */
  astigmatism?: { amount: number; uncertainty: number; deepest: number };
}

/** The tool's circle on that glass. */
export interface Tool {
  diameter: number;
  rim: number;
  curveRadius?: number;
  /** Of the blank's curve over the tool's diameter. */
  sagitta: number;
}

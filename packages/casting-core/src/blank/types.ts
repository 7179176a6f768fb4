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
}

/** The tool's circle on that glass. */
export interface Tool {
  diameter: number;
  rim: number;
  curveRadius?: number;
  /** Of the blank's curve over the tool's diameter. */
  sagitta: number;
}

/** The first grinding pass. Lengths mm, masses kg, pressures kPa, speeds rpm and m/s; removal relative unless it says µm. */
export interface Setup {
  /** Distance of the tool's axis from the mirror's axis. */
  offset: number;
  /** Whole travel of the arm along the line of the two axes. */
  stroke: number;
  /** How far the tool's edge stands over the mirror's at the end of a stroke; negative where it stays inside. */
  overhang: number;
  /** Pressure at the mirror's edge over load per tool area, 10 for that and more; overhang at which the far side lifts off. */
  edgePressure: number;
  liftsAt: number;
  /** Whether pieces wear the mirror's centre, and come to the end of its face inside the bevel, somewhere in the stroke. */
  reachesCentre: boolean;
  reachesEdge: boolean;
  /** One for each weight of the job, lightest first. */
  loads: Load[];
  /** One for each turntable speed, slowest first. */
  speeds: Speed[];
  drive: Drive;
  /** The start, step by step: slow and light first. */
  ladder: { step: number; turntable: number; weight: number; reason: string }[];
  wear: SetupWear;
  /** Offsets and strokes that can run and what they do, see SetupWear.bend. */
  sweep: SweepRow[];
  /**
   * Only with a target, and where a safe run follows it: the one that comes closest to the removal wanted, and this one
   * itself where none of the sweep is clearly better.
   */
  closest?: SweepRow;
  /** Only with a target: what is to be removed. */
  removal?: Removal;
  /** Only with a target and a measured rate that leads to it: minutes of this pass, and the range at twice the rate's error. */
  time?: { minutes: number; least: number; most: number };
  bevel: Bevel;
  grains: GrainStep[];
  /** Hollow under a flat piece, and the cast's mismatch by setting expansion, µm, beside the grain. */
  grain: { name: string; size: number; mismatch: number; bridges: boolean };
  /** Full size, three quarters and half of the blank side by side. */
  sizes: ToolSize[];
  retainer: Retainer;
}

/** Where the arm runs: the tool's axis from the mirror's in its middle, and its whole travel. */
export interface Place {
  offset: number;
  stroke: number;
}

export interface SweepRow extends Place {
  edgePressure: number;
  bend: number;
  zoning: number;
  /** Correlation over the mirror's area of what is removed with what is wanted; only with a target. */
  match?: number;
}

/** `thickness`: least plaster behind the pieces for stiffness; `reason`: what speaks for this size. */
export interface ToolSize {
  diameter: number;
  sagitta: number;
  mass: number;
  hollow: number;
  pieces: number;
  thickness: number;
  reason: string;
}

export interface Load {
  weight: number;
  /** Tool and weight. */
  mass: number;
  /** On the hard area when it is worn in. */
  worn: number;
  /** Where a fresh nut bears on its ring only; absent where no standard gives the ring of one that is laid. */
  fresh?: number;
  /** Worn in, at the mirror's edge. */
  edge: number;
}

export interface Speed {
  turntable: number;
  tool: number;
  /** Of the mirror's edge, m/s. */
  rim: number;
}

/** The drive pushes `height` above the face: drag times height shifts the load forward by `shift`. */
export interface Drive {
  height: number;
  /** Drag over load that is reckoned with. */
  friction: number;
  shift: number;
  /** Pressure at the leading edge over the mean. */
  leading: number;
}

/** Removal by zone for this set-up, scaled to a mean of 1 over the whole mirror: 0 where no piece comes. */
export interface SetupWear {
  zones: { at: number; removal: number; wanted?: number }[];
  /** Mean removal of the inner third of the mirror less that of the outer third: above 0 the middle goes down. */
  bend: number;
  does: "deepens" | "flattens" | "keeps";
  /** Against the target, where there is one. */
  toward?: "toward" | "away" | "neither";
  /** How well the pass follows the removal wanted: 1 exactly, below 0 leads away. */
  match?: number;
}

/** Glass between the curve now and the curve wanted, no more than must go. */
export interface Removal {
  first: "centre" | "edge";
  /** Depth by zone and the greatest, µm. */
  zones: { at: number; depth: number }[];
  deepest: number;
  /** mL and g. */
  volume: number;
  mass?: number;
  /** How much the sagitta over the tool changes, µm. */
  overTool: number;
}

/** A 45° bevel: its leg shrinks by what the edge loses. */
export interface Bevel {
  /** Edge removal of this curve's grinding and of all later grades, mm. */
  edgeRemoval: number;
  /** Leg needed now on side and face, and the width of its face. */
  needed: number;
  face: number;
  /** As it is now, and what is left of it at the end. */
  now?: number;
  left?: number;
  /** The grain before which the present bevel has to be renewed, and the leg that lasts from there; absent where it lasts. */
  renew?: string;
  renewTo?: number;
  /** Leg of the back's bevel, for the hands only. */
  back: number;
}

export interface GrainStep {
  name: string;
  /** Mean size, µm. */
  size: number;
  /** Depth that this grade removes to clear the damage of the one before, µm. */
  depth: number;
  /** Published bounds of the damage that it leaves, µm. */
  damage: { least: number; most: number };
}

/** A ring on the turntable that holds the blank without pinching it. */
export interface Retainer {
  inside: number;
  outside: number;
  height: number;
  /** Whether it must end so low, to clear the bevel and the tool, that it holds less than a third of the blank. */
  low: boolean;
  /** Clear distance all round, and so the most that the blank can lie off centre. */
  clearance: number;
  eccentricity: number;
  cushion: number;
  slots: { count: number; width: number };
  holes: { count: number; diameter: number; circle: number };
}

/**
 * A job as understood: every default filled in; lengths in mm, masses in kg, volumes in mL, shares and ratios as plain
 * numbers. Keys are those of the job file, so that what a maker wrote and what the plan repeats have the same names.
 */
export interface Job {
  title: string;
  units: Units;
  /** What bare numbers are where this job is written: always mm, and mL, as in a plan. */
  bare?: "mm";
  blank: JobBlank;
  tool: { diameter: number; rim: number };
  pieces: JobPiece[];
  layout: JobLayout;
  grooves: JobGrooves;
  plaster: JobPlaster;
  dam: { sheet: number; overlap: number };
  socket?: JobSocket;
  container?: JobContainer;
  setup: JobSetup;
  print: JobPrint;
}

/** Units of bare numbers in the job, and of everything printed for it. */
export type Units = "mm" | "in";

export type Curve = "concave" | "convex" | "flat";

/** Exactly one of the four ways to say a curve; none for a flat blank. */
export interface JobCurve {
  radius?: number;
  "focal-ratio"?: number;
  sagitta?: number;
}

export interface JobBlank extends JobCurve {
  diameter: number;
  curve: Curve;
  /** Chord the sagitta was measured over; the blank's diameter if absent. */
  "sagitta-over"?: number;
  readings?: JobReadings;
  target?: JobCurve;
  thickness?: number;
  /** Leg of the front bevel as it is now. */
  bevel?: number;
  material?: string;
}

/** Spherometer readings. Exactly one of `ring`, `legs`, `bar` is given. */
export interface JobReadings {
  instrument: {
    /** Diameter of the circle of contact; through the balls' centres on balls; the outer diameter if `wall` is given. */
    ring?: number;
    /** Spacing of three equal legs. */
    legs?: number;
    /** Spacing of two feet. */
    bar?: number;
    /** Diameter of the feet; absent for a sharp ring. */
    ball?: number;
    wall?: number;
    /** Smallest step the dial shows. */
    resolution?: number;
    /** Standard uncertainty that the plate brings in on which it was zeroed. */
    "zero-error"?: number;
    /** Standard uncertainty of `ring`, `legs` or `bar`. */
    "size-error"?: number;
  };
  /** `at`: distance from the mirror's centre; `angle`: direction from it; `along`: the bar's own direction, degrees. */
  zones: { at: number; angle?: number; along?: number; reading: number }[];
}

export type PieceShape = "hexagon" | "square" | "triangle" | "rectangle" | "round" | "polygon";

/** A kind of piece: from the catalogue by `item`, or a shape of the maker's own. */
export type JobPiece = JobItem | JobOwnPiece;

interface JobPieceUse {
  /** Share of the count, 0 to 1. */
  share?: number;
  /** How many the maker has. */
  stock?: number;
}

interface JobItem extends JobPieceUse {
  item: string;
}

export type JobOwnPiece = JobPieceUse & { thickness: number; density: number; bore?: number } & (
    | { shape: "hexagon" | "square" | "triangle"; across: number }
    | { shape: "rectangle"; length: number; width: number }
    | { shape: "round"; diameter: number }
    | { shape: "polygon"; points: [number, number][] }
  );

export interface JobLayout {
  gap: number;
  seed: number;
  count: number | "max";
  hand: number;
  "keep-clear": { x: number; y: number; diameter: number }[];
}

interface JobGrooves {
  cutter: number;
  depth: number;
  clearance: number;
  pattern: "all" | "mains";
  order: "fewest" | "one";
  /** How far the cutter goes in a minute. */
  feed?: number;
  "rim-loop": boolean;
}

export interface JobPlaster {
  /** A name from the table of plasters, or `custom` with `water` and `density`. */
  kind: string;
  /** g water per g powder; the table's is filled in. */
  water?: number;
  /** Solid density of a custom powder, kg/L. */
  density?: number;
  /** Fill line above the glass at the tool's edge. */
  fill: number | "auto";
  cover: number;
  spare: number;
  /** Thickness of the film that lies between glass and plaster. */
  film?: number;
}

export interface JobSocket {
  diameter: number;
  bore?: number;
  length: number;
  /** What its foot stands on. */
  foot: "pieces" | "glass";
  plugged: boolean;
}

export type JobContainer = { headroom: number; height: number } & (
  | { shape: "round"; diameter: number }
  | { shape: "tapered"; bottom: number; top: number }
  | { shape: "box"; length: number; width: number }
  | { shape: "marks"; marks: { height: number; volume: number }[] }
  /** Round sections from the floor up, inside diameters; `height` is their sum. */
  | { shape: "stacked"; sections: { bottom: number; top: number; height: number }[] }
);

export interface JobSetup {
  /** Whether the set-up is the maker's own: only then do its faults stop the job. */
  given: boolean;
  offset: number | "tangent";
  stroke: number;
  /** Turntable speeds, rpm. */
  turntable: number[];
  /** The tool's turns per turn of the mirror. */
  "tool-turns": number;
  /** Added weights, kg. */
  weights: number[];
  grain: string;
  /** The grains after the first, each with the depth it is to remove where the maker says so. */
  grades?: { grain: string; depth?: number }[];
  /** What this pass did in so many minutes: change of the sagitta over the blank, plus is deeper, and its error. */
  rate?: { minutes: number; change: number; error: number };
}

interface JobPrint {
  paper: string;
  overlap: number;
  /** What the maker measured on the printed 100 mm square. */
  measured?: { x: number; y: number };
  /** Faint lines between the pieces of the placement template. */
  guides: { sectors: number; rings: number };
}

/** What is poured: volumes mL, masses kg, heights mm, temperatures °C, times min, pressures kPa. */
export interface Pour {
  /** Height of the fill line above the glass, at the tool's edge and on its axis; `cover`: least plaster over a piece. */
  fill: { edge: number; centre: number; cover: number };
  plaster: PourPlaster;
  moldVolume: number;
  piecesVolume: number;
  socketVolume: number;
  castVolume: number;
  mixVolume: number;
  /** Only with a socket. */
  socket?: PourSocket;
  /** Only with a container: what it holds below the headroom. */
  container?: { capacity: number };
  batches: Batch[];
  /** The small second mix for the cavities found when the film is peeled, as deep as `depth` over the face's plaster. */
  repair: { depth: number; mix: number; powder: number; water: number };
  heat: { rise: number; ceiling: number };
  schedule: Schedule;
  /** Water to be driven off, kg; the warmth to dry at, and the most that is safe. */
  drying: { freeWater: number; temperature: number; limit: number };
  fit: Fit;
  /** The whole tool, pieces and socket included; `pieces` and `socket` are their shares of it. */
  mass: { wet: number; dry: number; pieces: number; socket: number };
  /** What one person should lift at most at this reach, and how many people the wet tool needs. */
  lift: { guideline: number; people: number };
  /** Of the mix on the glass at its deepest. */
  pressure: number;
  /** How heavy each kind of piece is in air and in the mix. */
  pieces: PieceInMix[];
  dam: Dam;
  shopping: Shopping;
}

/** The plaster as it is mixed. */
export interface PourPlaster {
  /** Name in the table, or `custom`. */
  kind: string;
  name: string;
  /** g water per g powder. */
  water: number;
  /** Solid density of the powder, kg/L. */
  density: number;
  /** mL of mix from 1 kg of powder. */
  yield: number;
  /** kg/L of the mix, and of the cast when all free water is gone. */
  wetDensity: number;
  dryDensity: number;
}

/** Heights above the glass on the tool's axis. `projecting` is negative where the socket ends below the fill line. */
export interface PourSocket {
  foot: number;
  embedded: number;
  projecting: number;
}

/** One bucket of mix: masses in kg, its volume in mL, marks in mm. */
export interface Batch {
  powder: number;
  water: number;
  mix: number;
  /** Heights inside the container; absent without a container. */
  waterMark?: number;
  mixMark?: number;
  /** The same two along a tapered container's wall; absent where the wall is upright, or steps below them. */
  waterMarkAlongWall?: number;
  mixMarkAlongWall?: number;
}

/** Minutes from the moment the powder goes into the water. */
export interface Schedule {
  /** All of a batch is in the mold by then. */
  pourBefore: number;
  /** Nobody moves the mold until then. */
  openAfter: number;
  /** Warmth is normal until then: an estimate. */
  warmUntil: number;
  /** From one batch to the next with one bucket; only with several batches. */
  betweenBatches?: number;
}

/** How the set tool meets the glass it was cast on. */
export interface Fit {
  /** Linear setting expansion, percent. */
  expansion: { least: number; most: number };
  /**
   * How much flatter than the glass the grown tool is, as sagitta over the tool, µm. It then meets concave glass at the
   * tool's `edge`, convex glass at the `centre`, where it rocks; `even` on a flat.
   */
  mismatch: { least: number; most: number };
  meets: "edge" | "centre" | "even";
  /** How far the outermost pieces move outward, mm. */
  rimGrowth: { least: number; most: number };
  /** The glass as it bows toward the tool while the cast warms its face, µm over the tool; the heat across it in K. */
  bow?: { gradient: number; sagitta: number };
}

export interface PieceInMix {
  kind: number;
  /** g in air; g left when the mix carries its share. */
  mass: number;
  massInMix: number;
  slides: boolean;
}

/** The dam strip and what it goes round. Lengths mm. */
export interface Dam {
  length: number;
  height: number;
  formDiameter: number;
  /** Height of the former's underside above the glass at the tool's edge; absent for a full-size tool. */
  formerAt?: number;
  /** Clear distance from the dam's outside to the mirror's edge, equal all round; absent for a full-size tool. */
  centring?: number;
  /** How far out of level is still good, mm per m, and the wedge that leaves across the back, mm. */
  level: { slope: number; wedge: number };
}

export interface Shopping {
  /** `count` lie in the tool; `spares` on top; `mass` of both, kg. */
  pieces: { kind: number; name: string; count: number; spares: number; mass: number }[];
  /** Powder for the pour and the repair mix, kg. */
  powder: number;
  /** Side of the square of film, mm. */
  film: number;
  dam: { length: number; height: number; sheet: number };
  socket?: { diameter: number; length: number };
}

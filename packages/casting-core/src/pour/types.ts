/** What is poured: volumes mL, masses kg, heights mm, temperatures °C. */
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
  heat: { rise: number; ceiling: number };
  mass: { wet: number; dry: number };
  dam: { length: number; height: number; formDiameter: number };
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

export interface Batch {
  powder: number;
  water: number;
  mix: number;
  /** Heights inside the container; absent without a container. */
  waterMark?: number;
  mixMark?: number;
  /** The same two along a tapered container's wall; absent where the wall is upright. */
  waterMarkAlongWall?: number;
  mixMarkAlongWall?: number;
}

/** What is poured: volumes mL, masses kg, heights mm, temperatures °C. */
export interface Pour {
  fill: { edge: number; centre: number };
  moldVolume: number;
  piecesVolume: number;
  socketVolume: number;
  castVolume: number;
  mixVolume: number;
  batches: Batch[];
  heat: { rise: number; ceiling: number };
  mass: { wet: number; dry: number };
  dam: { length: number; height: number; formDiameter: number };
}

export interface Batch {
  powder: number;
  water: number;
  mix: number;
  /** Heights inside the container; absent without a container. */
  waterMark?: number;
  mixMark?: number;
}

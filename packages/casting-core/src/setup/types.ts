/** The first grinding pass. Lengths mm, pressures kPa, masses kg, speeds rpm. */
export interface Setup {
  /** Distance of the tool's axis from the mirror's axis. */
  offset: number;
  stroke: number;
  /** How far the tool's edge stands over the mirror's. */
  overhang: number;
}

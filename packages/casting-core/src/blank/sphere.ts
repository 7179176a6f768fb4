import { PI } from "../trig.js";

/**
 * Depth of a sphere of `curveRadius` over a chord of 2 × `halfChord`, mm: r² / (R + √(R² − r²)). This form keeps its
 * digits for long radii, where R − √(R² − r²) would lose them. Needs `halfChord` ≤ `curveRadius`.
 */
export function sagittaOf(curveRadius: number, halfChord: number): number {
  return (halfChord * halfChord) / (curveRadius + Math.sqrt((curveRadius - halfChord) * (curveRadius + halfChord)));
}

/** By how much that depth changes where the radius is off by `off`, mm: ds/dR = −s / √(R² − r²); no more than the depth itself. */
export function sagittaOff(curveRadius: number, halfChord: number, off: number): number {
  const sagitta = sagittaOf(curveRadius, halfChord);
  const root = Math.sqrt((curveRadius - halfChord) * (curveRadius + halfChord));
  return sagitta * Math.min(1, off / root);
}

/** Radius of the sphere that is `sagitta` deep over a chord of 2 × `halfChord`, mm: r² / 2s + s / 2. */
export function radiusFromSagitta(sagitta: number, halfChord: number): number {
  return (halfChord * halfChord) / (2 * sagitta) + sagitta / 2;
}

/** Volume between a sphere of `curveRadius` and the plane of the circle of radius `halfChord`, mm³: π s (3 r² + s²) / 6. */
export function capVolume(curveRadius: number, halfChord: number): number {
  const s = sagittaOf(curveRadius, halfChord);
  return (PI * s * (3 * halfChord * halfChord + s * s)) / 6;
}

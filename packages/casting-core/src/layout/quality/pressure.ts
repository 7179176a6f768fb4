import { MOST_TIMES } from "../../units/figure-text.js";
import { newEngine } from "./engine.js";

/** How hard the tool presses, as a share of load over the tool's whole area, along the line from the mirror's axis through the tool's. */
export interface Pressure {
  /** Relative pressure at `x` mm from the tool's axis, outward positive; 1 everywhere without overhang. */
  at(x: number): number;
  /** At the outermost point where tool and glass still meet; MOST_TIMES stands for that and all above it. */
  edge: number;
  /** Whether the far side lifts off. */
  lifts: boolean;
}

let opened: ReturnType<typeof newEngine> | undefined;
/** The one that all pressures are worked out by: it keeps nothing. */
const engine = () => (opened ??= newEngine());

/**
 * Pressure under a tool of radius `reach` whose axis stands `offset` from the axis of a mirror of radius `mirror`, mm.
 * The load pushes on the tool's axis; where the tool hangs over, the rest must balance about that axis, so the pressure
 * is linear, p = p₀ + p₁ x, from force and moment, clipped at zero where the far side lifts (common practice, statics).
 * Toward an overhang of half the tool, where it falls off, the contact dwindles to the edge and the pressure has no bound.
 */
export function loadPressure(mirror: number, reach: number, offset: number): Pressure {
  const { press, level, slope, line, lifts, edge } = engine();
  press(mirror, reach, offset);
  const [from, rise, start] = [level.value, slope.value, line.value];
  const least = lifts.value === 1 ? 0 : -Infinity;
  return {
    at: (x) => from + rise * Math.max(least, x - start),
    edge: Math.min(MOST_TIMES, edge.value),
    lifts: lifts.value === 1,
  };
}

/** The overhang from which on the far side of the tool lifts off, mm. */
export function liftsAt(mirror: number, reach: number): number {
  return engine().liftsAt(mirror, reach);
}

import { PI } from "../trig.js";

/** How hard the tool presses, as a share of load over the tool's whole area, along the line from the mirror's axis through the tool's. */
export interface Pressure {
  /** Relative pressure at `x` mm from the tool's axis, outward positive; 1 everywhere without overhang. */
  at(x: number): number;
  /** At the outermost point where tool and glass still meet. */
  edge: number;
  /** Contact area, mm². */
  area: number;
  /** Whether the far side lifts off. */
  lifts: boolean;
}

/** Strips across the contact; their sums come within 1e-6 of the closed forms. */
const STRIPS = 2000;

/**
 * Pressure under a tool of radius `reach` whose axis stands `offset` from the axis of a mirror of radius `mirror`, mm.
 * The load pushes on the tool's axis; where the tool hangs over, the rest must balance about that axis, so the pressure
 * is linear, p = p₀ + p₁ x, from force and moment, clipped at zero where the far side lifts (common practice, statics).
 */
export function loadPressure(mirror: number, reach: number, offset: number): Pressure {
  const end = Math.min(reach, mirror - offset);
  const start = -reach;
  const step = (end - start) / STRIPS;
  const strips = Array.from({ length: STRIPS }, (_, n) => {
    const x = start + (n + 0.5) * step;
    const tool = reach * reach - x * x;
    const glass = mirror * mirror - (x + offset) * (x + offset);
    return { x, area: 2 * Math.sqrt(Math.max(0, Math.min(tool, glass))) * step };
  });
  const sum = (weight: (x: number) => number) => strips.reduce((total, { x, area }) => total + area * weight(x), 0);
  const area = sum(() => 1);
  if (offset + reach <= mirror) return { at: () => 1, edge: 1, area, lifts: false };
  const first = sum((x) => x);
  const second = sum((x) => x * x);
  // Force: p₀ A + p₁ M₁ = the whole circle's area. Moment about the tool's axis: p₀ M₁ + p₁ M₂ = 0.
  const whole = PI * reach * reach;
  const slope = (-first * whole) / (area * second - first * first);
  const level = (whole - slope * first) / area;
  if (level + slope * start >= 0)
    return { at: (x) => level + slope * x, edge: level + slope * end, area, lifts: false };
  // The far side lifts: p = k (x − x₀) from the line x₀ on, with no moment left; the moment falls as x₀ moves out.
  let [low, high] = [start, 0];
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    if (sum((x) => Math.max(0, x - middle) * x) < 0) low = middle;
    else high = middle;
  }
  const line = (low + high) / 2;
  const force = sum((x) => Math.max(0, x - line));
  const scale = whole / force;
  return { at: (x) => scale * Math.max(0, x - line), edge: scale * (end - line), area, lifts: true };
}

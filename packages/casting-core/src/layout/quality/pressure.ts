import { PI } from "../../trig.js";
import { MOST_TIMES } from "../../units/figure-text.js";

/** How hard the tool presses, as a share of load over the tool's whole area, along the line from the mirror's axis through the tool's. */
export interface Pressure {
  /** Relative pressure at `x` mm from the tool's axis, outward positive; 1 everywhere without overhang. */
  at(x: number): number;
  /** At the outermost point where tool and glass still meet; MOST_TIMES stands for that and all above it. */
  edge: number;
  /** Whether the far side lifts off. */
  lifts: boolean;
}

/** Strips across the contact; their sums come within 1e-4 of the closed forms. */
const STRIPS = 800;

/** The contact of tool and glass in strips: where each lies, its area in mm², and the sums of area, moment and inertia. */
interface Contact {
  start: number;
  end: number;
  x: Float64Array;
  area: Float64Array;
  sums: [number, number, number];
}

/**
 * Pressure under a tool of radius `reach` whose axis stands `offset` from the axis of a mirror of radius `mirror`, mm.
 * The load pushes on the tool's axis; where the tool hangs over, the rest must balance about that axis, so the pressure
 * is linear, p = p₀ + p₁ x, from force and moment, clipped at zero where the far side lifts (common practice, statics).
 * Toward an overhang of half the tool, where it falls off, the contact dwindles to the edge and the pressure has no bound.
 */
export function loadPressure(mirror: number, reach: number, offset: number): Pressure {
  if (offset + reach <= mirror) return { at: () => 1, edge: 1, lifts: false };
  if (offset >= mirror) return { at: () => 0, edge: MOST_TIMES, lifts: true };
  const contact = contactOf(mirror, reach, offset);
  const { level, slope } = balance(contact, reach);
  const { start, end, x, area } = contact;
  if (level + slope * start >= 0)
    return { at: (place) => level + slope * place, edge: level + slope * end, lifts: false };
  // The far side lifts: p = k (x − x₀) from the line x₀ on, with no moment left; the moment falls as x₀ moves out.
  const beyond = (line: number, lever: boolean): number => {
    let sum = 0;
    for (let n = 0; n < STRIPS; n++) {
      const more = x[n]! - line;
      if (more > 0) sum += area[n]! * more * (lever ? x[n]! : 1);
    }
    return sum;
  };
  let [low, high] = [start, 0];
  for (let n = 0; n < 40; n++) {
    const middle = (low + high) / 2;
    if (beyond(middle, true) < 0) low = middle;
    else high = middle;
  }
  const line = (low + high) / 2;
  const scale = (PI * reach * reach) / beyond(line, false);
  const edge = Math.min(MOST_TIMES, scale * (end - line));
  return { at: (place) => scale * Math.max(0, place - line), edge, lifts: true };
}

/** The overhang from which on the far side of the tool lifts off, mm, by halving. */
export function liftsAt(mirror: number, reach: number): number {
  let [low, high] = [0, Math.min(reach, mirror)];
  for (let n = 0; n < 24; n++) {
    const middle = (low + high) / 2;
    const contact = contactOf(mirror, reach, mirror - reach + middle);
    const { level, slope } = balance(contact, reach);
    if (level + slope * contact.start < 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Force: p₀ A + p₁ M₁ = the whole circle's area. Moment about the tool's axis: p₀ M₁ + p₁ M₂ = 0. */
function balance({ sums: [area, first, second] }: Contact, reach: number): { level: number; slope: number } {
  const whole = PI * reach * reach;
  const slope = (-first * whole) / (area * second - first * first);
  return { level: (whole - slope * first) / area, slope };
}

function contactOf(mirror: number, reach: number, offset: number): Contact {
  const start = -reach;
  const end = Math.min(reach, mirror - offset);
  const step = (end - start) / STRIPS;
  const x = new Float64Array(STRIPS);
  const area = new Float64Array(STRIPS);
  const sums: Contact["sums"] = [0, 0, 0];
  for (let n = 0; n < STRIPS; n++) {
    const place = start + (n + 0.5) * step;
    const tool = reach * reach - place * place;
    const glass = mirror * mirror - (place + offset) * (place + offset);
    const part = 2 * Math.sqrt(Math.max(0, Math.min(tool, glass))) * step;
    x[n] = place;
    area[n] = part;
    sums[0] += part;
    sums[1] += part * place;
    sums[2] += part * place * place;
  }
  return { start, end, x, area, sums };
}

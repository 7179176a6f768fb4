/*
 * What goes off the zones of a mirror under a tool, compiled to WebAssembly by the build (see DEVELOPERS.md). A caller
 * opens it once, writes zones and rings into the arrays it exports and has the tool stand at one place after another.
 */
import { cos, PI, sin } from "../src/arc";
import { level, lifts, line, press, slope } from "./pressure";

export { edge, level, lifts, liftsAt, line, press, slope } from "./pressure";

/** Distance of each zone from the mirror's axis, mm; written by the caller. */
export let zones = new StaticArray<f64>(0);
/** Share of each ring of the tool that is hard; written by the caller. */
export let rings = new StaticArray<f64>(0);
/** What has gone off each zone, and what would have with the hard area spread evenly over the tool. */
export let removal = new StaticArray<f64>(0);
export let even = new StaticArray<f64>(0);

/** Of the directions, from the line of the axes, in which a zone is looked at on a half turn. */
let cosines = new StaticArray<f64>(0);
let sines = new StaticArray<f64>(0);

/** Makes room for so many zones and rings, with nothing gone off; `angles`: directions of a half turn. */
export function open(zoneCount: i32, ringCount: i32, angles: i32): void {
  zones = new StaticArray<f64>(zoneCount);
  removal = new StaticArray<f64>(zoneCount);
  even = new StaticArray<f64>(zoneCount);
  rings = new StaticArray<f64>(ringCount);
  cosines = new StaticArray<f64>(angles);
  sines = new StaticArray<f64>(angles);
  for (let n = 0; n < angles; n++) {
    const angle = ((n + 0.5) * PI) / angles;
    cosines[n] = cos(angle);
    sines[n] = sin(angle);
  }
}

/**
 * Adds what goes off each zone on a half turn of a mirror of radius `mirror` under a tool whose axis stands at `offset` from
 * the mirror's and whose rings go to `reach` mm. `slide`: turns of the mirror against the tool, per turn of the mirror;
 * `hard`: the mean of the rings.
 */
export function wear(mirror: f64, offset: f64, reach: f64, slide: f64, hard: f64): void {
  press(mirror, reach, Math.abs(offset));
  const outward: f64 = offset < 0 ? -1 : 1;
  const least: f64 = lifts ? 0 : -Infinity;
  const width = reach / rings.length;
  for (let zone = 0; zone < zones.length; zone++) {
    const rho = zones[zone];
    let worn = removal[zone];
    let evenly = even[zone];
    for (let n = 0; n < cosines.length; n++) {
      const x = rho * cosines[n] - offset;
      const y = rho * sines[n];
      const r = Math.sqrt(x * x + y * y);
      if (r >= reach) {
        // Past the tool's side of the axis a zone only leads away from it.
        if (offset >= 0) break;
        continue;
      }
      // Mirror: (−y, x + offset) a radian; tool: (−y, x) times its turns.
      const vx = -slide * y;
      const vy = slide * x + offset;
      const pressure = level + slope * Math.max(least, outward * x - line);
      const here = pressure * Math.sqrt(vx * vx + vy * vy);
      evenly += hard * here;
      // Just below the edge the quotient may round up to the number of rings.
      worn += rings[min(rings.length - 1, i32(r / width))] * here;
    }
    removal[zone] = worn;
    even[zone] = evenly;
  }
}

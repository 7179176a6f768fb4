import type { Outline } from "../geometry/types.js";

/** Area of an outline by triangles from its first corner, mm²; positive where it runs counter-clockwise. */
export function areaOf(outline: Outline): number {
  const [ox, oy] = outline[0]!;
  let twice = 0;
  for (let n = 1; n + 1 < outline.length; n++) {
    const [ax, ay] = outline[n]!;
    const [bx, by] = outline[n + 1]!;
    twice += (ax - ox) * (by - oy) - (bx - ox) * (ay - oy);
  }
  return twice / 2;
}

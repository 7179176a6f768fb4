import { describe, expect, it } from "vitest";
import { layPieces } from "../../packages/casting-core/src/layout/layout.js";
import { exampleJob } from "../support/jobs.js";
import { roundKind } from "../support/kinds.js";

// Equal circles in a circle, R/r of the best packings known: Graham, Lubachevsky, Nurmela and Östergård, Discrete Math.
// 181 (1998) 139–154; Grosso, Jamali, Locatelli and Schoen (2008), tables 1 and 2. Those of 37, 61 and 91 have a circle on
// the axis, where no piece may be: one fewer is all that can be reached.
const BEST: [number, number][] = [
  [20, 5.122321],
  [37, 6.75877],
  [61, 8.661298],
  [91, 10.566772],
];

describe("Rounds that may touch", () => {
  it.each(BEST)("come to all but one of the best packing known of %i", (count, ratio) => {
    const tool = { diameter: 20 * ratio, rim: 0 };
    const job = exampleJob({ tool, layout: { gap: 0, seed: 1, count: "max", hand: 0, "keep-clear": [] } });
    const { pieces } = layPieces(job, { ...tool, sagitta: 0 }, [roundKind(20)]);
    expect(pieces.length).toBe(count - 1);
    // In whole micrometres, as written.
    const places = pieces.map(({ x, y }) => [Math.round(1000 * x), Math.round(1000 * y)] as const);
    places.forEach(([x, y], i) => {
      expect(Math.hypot(x, y)).toBeLessThanOrEqual(500 * tool.diameter - 10_000);
      for (const [ox, oy] of places.slice(0, i))
        expect((x - ox) ** 2 + (y - oy) ** 2).toBeGreaterThanOrEqual(20_000 ** 2);
    });
  });
});

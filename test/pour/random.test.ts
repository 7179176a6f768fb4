import fc from "fast-check";
import { expect, test } from "vitest";
import { CastingError } from "../../packages/casting-core/src/errors.js";
import type { Job, JobContainer } from "../../packages/casting-core/src/job/types.js";
import { CATALOGUE } from "../../packages/casting-core/src/pieces/catalogue.js";
import { PLASTERS } from "../../packages/casting-core/src/pour/gypsum.js";
import { poured } from "../support/poured.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const container: fc.Arbitrary<JobContainer> = fc.oneof(
  fc.record({
    shape: fc.constant("round" as const),
    diameter: between(60, 500),
    height: between(60, 400),
    headroom: between(0, 50),
  }),
  fc.record({
    shape: fc.constant("tapered" as const),
    bottom: between(40, 400),
    top: between(40, 500),
    height: between(60, 400),
    headroom: between(0, 50),
  }),
);
const jobs: fc.Arbitrary<Partial<Job> & Pick<Job, "tool">> = fc
  .record({
    diameter: between(60, 800),
    ratio: between(0.3, 1),
    curve: fc.constantFrom("concave" as const, "convex" as const, "flat" as const),
    bend: between(0.6, 20),
    item: fc.constantFrom(...CATALOGUE.map((row) => row.item)),
    kind: fc.constantFrom(...PLASTERS.map((row) => row.kind)),
    water: fc.option(between(0.18, 1.5), { nil: undefined }),
    fill: fc.oneof(fc.constant("auto" as const), between(1, 120)),
    socket: fc.option(
      fc.record({
        diameter: between(10, 60),
        length: between(5, 120),
        foot: fc.constantFrom("pieces" as const, "glass" as const),
        plugged: fc.boolean(),
      }),
      { nil: undefined },
    ),
    container: fc.option(container, { nil: undefined }),
    units: fc.constantFrom("mm" as const, "in" as const),
  })
  .map(({ diameter, ratio, curve, bend, item, kind, water, fill, socket, container, units }) => ({
    units,
    blank: {
      diameter,
      curve,
      ...(curve === "flat" ? {} : { radius: diameter * bend }),
      thickness: 20,
      material: "soda-lime",
    },
    tool: { diameter: diameter * ratio, rim: 2 },
    pieces: [{ item }],
    plaster: { kind, fill, cover: 20, spare: 0.1, ...(water === undefined ? {} : { water }) },
    ...(socket ? { socket } : {}),
    ...(container ? { container } : {}),
  }));

/** Every number of `value` with the keys that lead to it. */
function* numbers(value: unknown, path = ""): Generator<[string, number]> {
  if (typeof value === "number") yield [path, value];
  else if (value !== null && typeof value === "object") {
    for (const [key, part] of Object.entries(value)) yield* numbers(part, `${path}.${key}`);
  }
}

/** These alone have a sign: a socket may end below the fill line, a dam may reach over the mirror's edge. */
const SIGNED = new Set([".socket.projecting", ".dam.centring"]);

test("a job either pours in finite, positive numbers or is refused in one sentence by key", () => {
  let done = 0;
  fc.assert(
    fc.property(jobs, (job) => {
      try {
        const { pour, notes } = poured(job, job.tool.diameter > 150 ? 3 : 0); // Three of the largest pieces fit.
        done++;
        for (const [path, value] of numbers(pour)) {
          expect(Number.isFinite(value), path).toBe(true);
          if (!SIGNED.has(path)) expect(value, path).toBeGreaterThanOrEqual(0);
        }
        for (const { text } of notes) expect(text).not.toMatch(/NaN|Infinity|undefined|\n/);
        const { batches, mixVolume, container } = pour;
        expect(batches.reduce((sum, batch) => sum + batch.mix, 0) / mixVolume).toBeCloseTo(1, 10);
        for (const { mix, waterMark = 0, mixMark = 1 } of batches) {
          expect(waterMark).toBeLessThan(mixMark);
          if (container) expect(mix).toBeLessThanOrEqual(container.capacity * (1 + 1e-9));
        }
      } catch (error) {
        if (!(error instanceof CastingError)) throw error;
        expect(error.faults).toHaveLength(1);
        expect(error.faults[0]!.path.length).toBeGreaterThan(0);
        expect(error.faults[0]!.text).not.toMatch(/NaN|Infinity|undefined|\n/);
      }
    }),
    { numRuns: 300 },
  );
  expect(done).toBeGreaterThan(100);
});

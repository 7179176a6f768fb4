import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blankOf, toolOf } from "../../packages/casting-core/src/blank/blank.js";
import { capVolume } from "../../packages/casting-core/src/blank/sphere.js";
import { grainNamed } from "../../packages/casting-core/src/grains.js";
import type { Job } from "../../packages/casting-core/src/job/types.js";
import { hardCoverage } from "../../packages/casting-core/src/layout/quality/hard-coverage.js";
import { pieceKinds } from "../../packages/casting-core/src/pieces/kinds.js";
import { makePart, makePlan } from "../../packages/casting-core/src/plan/make.js";
import { gradesFrom } from "../../packages/casting-core/src/setup/grades.js";
import { setupNotes } from "../../packages/casting-core/src/setup/notes.js";
import { closestOf, passOf } from "../../packages/casting-core/src/setup/pass.js";
import { setupFault } from "../../packages/casting-core/src/setup/plan.js";
import { removalOf } from "../../packages/casting-core/src/setup/removal.js";
import { passText } from "../../packages/casting-core/src/setup/words.js";
import { closeLength } from "../../packages/casting-core/src/units/figure-text.js";
import { parseLength } from "../../packages/casting-core/src/units/parse.js";
import { exampleJob } from "../support/jobs.js";

const layout = { gap: 4, seed: 1, count: 40, hand: 0, "keep-clear": [] };

function setup(changes: Partial<Job> = {}) {
  const job = exampleJob({ layout, ...changes });
  const part = makePart(job, "setup");
  return { ...part.setup!, notes: part.notes };
}

function given(changes: Partial<Job["setup"]>): Job["setup"] {
  return { ...exampleJob().setup, given: true, ...changes };
}

function removal(radius: number, target: number, curve: "concave" | "convex" = "concave") {
  const job = exampleJob({
    blank: { diameter: 400, curve, radius, target: { radius: target }, material: "borosilicate" },
  });
  const blank = blankOf(job);
  return removalOf(job, blank, toolOf(job, blank))!;
}

describe("what is to be removed", () => {
  it("lies at the edge where the curve shall get flatter, at the centre where deeper; the other way on convex glass", () => {
    // 6.543 mm now, 6.256 mm wanted.
    expect(removal(3060, 3200)).toMatchObject({ first: "edge" });
    expect(removal(3060, 3200).deepest).toBeCloseTo(287, 0);
    expect(removal(3200, 3060)).toMatchObject({ first: "centre" });
    expect(removal(3060, 3200, "convex")).toMatchObject({ first: "centre" });
    expect(removal(3200, 3060, "convex")).toMatchObject({ first: "edge" });
  });

  it("is what the two caps differ by, whichever curve", () => {
    const radius = fc.double({ min: 400, max: 20_000, noNaN: true });
    fc.assert(
      fc.property(radius, radius, fc.constantFrom("concave" as const, "convex" as const), (now, target, curve) => {
        fc.pre(Math.abs(now - target) > 1);
        const found = removal(now, target, curve);
        const caps = Math.abs(capVolume(now, 200) - capVolume(target, 200)) / 1000;
        // Either the caps' difference itself, or what is left of a disc as deep as the difference.
        const disc = (Math.PI * 200 * 200 * found.deepest) / 1e6;
        const wanted = found.first === "centre" ? [caps, disc - caps] : [disc - caps, caps];
        expect(Math.min(...wanted.map((volume) => Math.abs(volume - found.volume))) / disc).toBeLessThan(1e-6);
        expect(found.zones.every(({ depth }) => depth >= -1e-9)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

describe("the first pass", () => {
  it("stands tangent by default: the edges meet, the pressure is even", () => {
    const { offset, overhang, edgePressure, reachesCentre } = setup();
    expect([offset, overhang, edgePressure, reachesCentre]).toEqual([50, 0, 1, true]);
  });

  it("presses by weight over area", () => {
    const { loads } = setup({ setup: given({ weights: [9, 0] }) });
    expect(loads.map(({ weight }) => weight)).toEqual([0, 9]);
    const area = 40 * ((Math.sqrt(3) / 2) * 20 * 20);
    expect(loads[1]!.worn - loads[0]!.worn).toBeCloseTo((9 * 9806.65) / area, 9);
    expect(loads[0]!.fresh).toBeCloseTo(loads[0]!.worn, 9);
  });

  it("presses harder on nuts that are new: an M12 nut bears on its ring of 84 mm² (ISO 4032), not on 167 mm²", () => {
    const { loads } = setup({ pieces: [{ item: "iso-4032-m12" }] });
    expect(loads[0]!.fresh! / loads[0]!.worn).toBeGreaterThan(1.8);
    expect(loads[0]!.fresh! / loads[0]!.worn).toBeLessThan(2.6);
    // A tile bears as it is; of other nuts' rings nothing is known, and nothing told.
    expect(setup().loads[0]).toMatchObject({ fresh: setup().loads[0]!.worn });
    for (const item of ["din-934-m12", "asme-b18.2.2-1/2", "iso-4032-m14"])
      expect(Object.keys(setup({ pieces: [{ item }] }).loads[0]!)).not.toContain("fresh");
  });

  it("turns the mirror's edge at π D n: 400 mm at 45 rpm is 0.94 m/s", () => {
    expect(setup({ setup: given({ turntable: [45] }) }).speeds[0]!.rim).toBeCloseTo(0.942, 3);
  });

  it("says of all speeds at once that throw grit which one does not", () => {
    const told = (turntable: number[]) =>
      setup({ setup: given({ turntable }) }).notes.filter(({ code }) => code === "fast-rim");
    expect(told([30, 60, 71])).toEqual([]);
    expect(told([30, 72]).map(({ text }) => text)).toEqual([
      "At 72 rpm the mirror's edge runs at 1.51 m/s and throws grit and water: write at most 71.6 rpm under setup.turntable.",
    ]);
    const [all, ...more] = told([100, 80]);
    expect([all?.text, more]).toEqual([
      expect.stringMatching(
        /^At 80 rpm to 100 rpm the mirror's edge runs at 1\.68 m\/s to 2\.09 m\/s and .* at most 71\.6 rpm/,
      ),
      [],
    ]);
    expect(told([71.6])).toEqual([]);
  });

  it("steps from each speed and weight to the next, however often it is written", () => {
    const { ladder, speeds } = setup({ setup: given({ turntable: [60, 30, 30], weights: [4, 4] }) });
    expect(speeds.map(({ turntable }) => turntable)).toEqual([30, 60]);
    expect(ladder.map(({ turntable, weight }) => [turntable, weight])).toEqual([
      [30, 4],
      [60, 4],
    ]);
  });

  it("steps to no speed and no weight that a warning forbids", () => {
    const steps = (turntable: number[], weights: number[]) =>
      setup({ setup: given({ turntable, weights }) }).ladder.map((step) => [step.turntable, step.weight]);
    expect(steps([30, 71.6, 80], [0, 4, 900])).toEqual([
      [30, 0],
      [71.6, 0],
      [30, 4],
    ]);
    expect(steps([80, 100], [0])).toEqual([]);
    expect(steps([30], [900])).toEqual([]);
  });

  it("asks of a tool that comes neither to the centre nor to the edge for the one thing that does both", () => {
    const small = (offset: number, stroke: number) => ({
      blank: { ...exampleJob().blank, diameter: 400 },
      tool: { diameter: 60, rim: 3 },
      setup: given({ offset, stroke }),
    });
    const told = (offset: number, stroke: number) => setupFault(exampleJob(small(offset, stroke)))?.text;
    // Pieces end 27 mm from the axis, and are to come from 1.35 mm within that to 173 mm from the mirror's.
    const both =
      /leaves a button; write an offset of 99\.5 mm with a stroke of 148 mm, which comes to the centre and to/;
    expect(told(100, 20)).toMatch(both);
    expect(told(100, 146)).toMatch(both);
    expect(told(120, 150)).toMatch(both);
    expect(told(100, 146.1)).toBeUndefined();
    expect(told(99.5, 148)).toBeUndefined();
    const part = (offset: number, stroke: number) =>
      setup({ ...small(offset, stroke), layout: { ...layout, count: 3 } }).notes.find(
        ({ code }) => code === "edge-unreached",
      )?.text;
    // No larger offset, which would leave the centre.
    expect(part(30, 20)).toMatch(/standing: write a stroke longer by 2\d\d[.\d]* mm, unless/);
    expect(part(30, 160)).toMatch(
      /standing: write an offset of at least 9\d[.\d]* mm, or a stroke longer by 1\d\d[.\d]* mm, unless/,
    );
  });

  it("tells a target that is nearer than the grain breaks the glass", () => {
    const noted = (radius: number, grain: string) =>
      setup({ blank: { ...exampleJob().blank, radius: 3060, target: { radius } }, setup: given({ grain }) }).notes.find(
        ({ code }) => code === "grain-overshoots",
      )?.text;
    expect(noted(3059.999, "F24")).toBe(
      "The target is less than 3 µm of glass away, and grain F24 breaks the glass 27 µm deep or more: this pass overshoots it, so check the target, as no grain is fine enough and still bridges what pieces and cast stand off the glass.",
    );
    expect(noted(3050, "F24")).toMatch("The target is 21 µm of glass away");
    expect(noted(3050, "F80")).toBeUndefined();
    expect(noted(3040, "F24")).toBeUndefined();
  });

  it.each(["concave", "convex"] as const)("weighs the sizes of a tool as they are poured, on %s glass", (curve) => {
    const job = (diameter: number, count: number) =>
      exampleJob({
        blank: { ...exampleJob().blank, curve },
        tool: { diameter, rim: 3 },
        layout: { ...layout, count },
        plaster: { ...exampleJob().plaster, fill: "auto", film: 1 },
        socket: { diameter: 28, length: 48, foot: "pieces", plugged: true },
      });
    const [full, three] = makePart(job(300, 36), "setup").setup!.sizes;
    const dry = (diameter: number, count: number) => makePart(job(diameter, count), "pour").pour!.mass.dry;
    expect(three!.mass).toBeCloseTo(dry(300, 36), 9);
    expect(full!.mass).toBeCloseTo(dry(400, 64), 2);
  });

  it("deepens at tangent and says whether that leads to the target", () => {
    const flatter = setup({ blank: { ...exampleJob().blank, target: { radius: 3200 } }, setup: given({}) });
    expect(flatter.wear).toMatchObject({ does: "deepens", toward: "away" });
    expect(flatter.notes.find((note) => note.code === "away-from-target")?.level).toBe("warning");
    const deeper = setup({ blank: { ...exampleJob().blank, target: { radius: 2900 } }, setup: given({}) });
    expect(deeper.wear).toMatchObject({ does: "deepens", toward: "toward" });
  });

  it("wears the edge more with more overhang: the sweep's bend falls", () => {
    const still = setup().sweep.filter(({ stroke }) => stroke === 0);
    expect(still.at(-1)!.bend).toBeLessThan(still[1]!.bend);
  });

  it("warns from 1.5 times the mean at the mirror's edge", () => {
    const codes = (offset: number) => setup({ setup: given({ offset }) }).notes.map((note) => note.code);
    expect(codes(60)).not.toContain("edge-pressure");
    expect(codes(90)).toContain("edge-pressure");
    expect(codes(130)).toContain("tool-lifts");
    const told = (units: Job["units"]) =>
      setup({ units, setup: given({ offset: 90 }) }).notes.find(({ code }) => code === "edge-pressure")?.text;
    expect(told("mm")).toMatch(/write 0 kg alone under setup\.weights\.$/);
    expect(told("in")).toMatch(/write 0 lb alone under setup\.weights\.$/);
  });

  it.each([
    [{ setup: given({ offset: 400 }) }, "offset", /falls off/],
    [{ setup: given({ offset: 0 }) }, "stroke", /prints rings/],
    [{ tool: { diameter: 400, rim: 3 }, setup: given({}) }, "stroke", /prints rings/],
    [{ tool: { diameter: 150, rim: 3 }, setup: given({}) }, "stroke", /leaves a button/],
  ] as const)("refuses one that cannot run: %#", (changes, key, words) => {
    const job = exampleJob({ layout, ...changes } as Partial<Job>);
    expect(setupFault(job)).toMatchObject({ key, text: expect.stringMatching(words) });
    expect(() => makePart(job, "setup")).toThrow(words);
  });

  it("only notes it for a job without a set-up of its own", () => {
    const job = exampleJob({ layout, tool: { diameter: 400, rim: 3 } });
    const { text } = setupFault(job)!;
    expect(makePlan(job).notes).toContainEqual({
      level: "warning",
      code: "setup-cannot-run",
      text: `With the usual set-up (stroke) ${text}.`,
    });
  });
});

describe("grains and bevel", () => {
  it("go on from a size of the maker's own as from a grit of it", () => {
    expect(["25 µm", "25um", "25.0 μm"].map((text) => grainNamed(text)?.name)).toEqual(["25 µm", "25 µm", "25 µm"]);
    expect(gradesFrom({ grain: "25 µm" }).map(({ name }) => name)).toEqual(["25 µm", "F500"]);
    expect(gradesFrom({ grain: "12.8 µm" }).slice(1)).toEqual(gradesFrom({ grain: "F500" }).slice(1));
    expect(gradesFrom({ grain: "25 µm", grades: [{ grain: "15 µm" }] })[1]).toMatchObject({ size: 15, depth: 75 });
  });

  it("go down to fine grinding by about halves, each removing three sizes of the one before", () => {
    const steps = gradesFrom({ grain: "F80" });
    expect(steps[0]).toMatchObject({ name: "F80", size: 185, depth: 0 });
    expect(steps.at(-1)!.name).toBe("F600");
    steps.slice(1).forEach((step, n) => {
      expect(step.size).toBeLessThanOrEqual(0.6 * steps[n]!.size);
      expect(step.depth).toBe(3 * steps[n]!.size);
    });
  });

  it("give the published bounds of damage: 0.3 L^0.68 to 2 L^0.85 (Lambropoulos 2000; value from memory)", () => {
    for (const { size, damage } of gradesFrom({ grain: "F24" })) {
      expect(damage.least).toBeCloseTo(0.3 * size ** 0.68, 6);
      expect(damage.most).toBeCloseTo(2 * size ** 0.85, 6);
    }
  });

  it("are told so that a bevel renewed as written lasts, in inches too", () => {
    const noted = (bevel: number) =>
      setup({ units: "in", blank: { ...exampleJob().blank, bevel }, setup: given({}) }).notes.find(
        ({ code }) => code === "bevel-vanishes",
      )?.text;
    const written = /renew it to (.* in) before/.exec(noted(2) ?? "")?.[1];
    expect(written).toBe("0.226 in");
    expect(noted(parseLength(written!, "in"))).toBeUndefined();
  });

  it("keep a bevel up that is too wide for a small blank to be cut at once", () => {
    const noted = (diameter: number) =>
      setup({
        blank: { diameter, curve: "concave", radius: 1000, bevel: 1 },
        tool: { diameter: 75, rim: 3 },
        layout: { ...layout, count: 5 },
        setup: given({}),
      }).notes.find(({ code }) => code === "bevel-vanishes")!.text;
    expect(noted(100)).toMatch(/gone at the end: keep 0.5 mm at all times, renewed as it wears\.$/);
    expect(noted(120)).toMatch(/gone at the end: renew it to 5.74 mm before grain F40\.$/);
  });

  it("charge the edge's removal and all later grades to the bevel", () => {
    const {
      bevel,
      grains,
      removal: glass,
    } = setup({ blank: { ...exampleJob().blank, target: { radius: 3200 }, bevel: 2 }, setup: given({}) });
    const later = grains.reduce((sum, { depth }) => sum + depth, 0);
    expect(bevel.edgeRemoval).toBeCloseTo((later + glass!.deepest) / 1000, 9);
    expect(bevel.left).toBe(0);
    expect(bevel.face).toBeCloseTo(bevel.needed * Math.SQRT2, 9);
  });

  it("say how much is reckoned by the rule, of the grades alone that have no depth of their own", () => {
    const told = (grades?: { grain: string; depth?: number }[]) =>
      setup({ setup: given({ grain: "F80", ...(grades ? { grades } : {}) }) }).notes.find(
        ({ code }) => code === "grade-rule",
      )?.text;
    expect(told()).toMatch(/^Each grade is reckoned /);
    // Three sizes of F180, 69 µm each; damage to 2 · 69^0.85 µm.
    expect(told([{ grain: "F180", depth: 0.4 }, { grain: "F400" }])).toMatch(
      /^Each grade without a depth of its own is reckoned .*, 0\.21 mm altogether; .* comes to 0\.07 mm\./,
    );
    expect(told([{ grain: "F180", depth: 0.4 }])).toBeUndefined();
  });

  it("take the maker's own ladder and depths", () => {
    const steps = gradesFrom({ grain: "F80", grades: [{ grain: "F180", depth: 0.2 }, { grain: "F400" }] });
    expect(steps.map(({ name, depth }) => [name, Number(depth.toFixed(9))])).toEqual([
      ["F80", 0],
      ["F180", 200],
      ["F400", 3 * 69],
    ]);
  });

  it("name the grain before which the bevel must be renewed, and none where it lasts", () => {
    const bevel = (leg: number) =>
      setup({
        blank: { ...exampleJob().blank, bevel: leg },
        setup: given({
          grain: "F80",
          grades: [
            { grain: "F180", depth: 0.4 },
            { grain: "F400", depth: 0.3 },
          ],
        }),
      }).bevel;
    expect(bevel(0.7).renew).toBe("F180");
    expect(bevel(1).renew).toBe("F400");
    expect(bevel(1.19).renew).toBe("F400");
    expect(bevel(1.21).renew).toBeUndefined();
    // What is still to be lost, and what protects the edge: all at first, then without the 0.4 mm that are gone.
    expect(bevel(0.7).renewTo).toBeCloseTo(0.4 + 0.3 + 0.5, 9);
    expect(bevel(1).renewTo).toBeCloseTo(0.3 + 0.5, 9);
    expect(bevel(1.21).renewTo).toBeUndefined();
    // The edge's own removal counts with the first grain: 0.287 mm of a flatter target leave too little of 0.7 mm.
    const flatter = setup({
      blank: { ...exampleJob().blank, bevel: 0.7, target: { radius: 3200 } },
      setup: given({ grain: "F80", grades: [{ grain: "F180", depth: 0.1 }] }),
    });
    expect(flatter.bevel.renew).toBe("F80");
  });
});

describe("the retainer", () => {
  const of = (thickness: number) =>
    setup({ blank: { ...exampleJob().blank, thickness, bevel: 3 }, setup: given({ grain: "F80" }) });

  it("stays below the front bevel as it will be at the end, on thick glass and on thin", () => {
    for (const thickness of [60, 25, 12]) {
      const { retainer, bevel } = of(thickness);
      expect(retainer.height).toBeLessThan(retainer.cushion + thickness - bevel.edgeRemoval - bevel.left!);
    }
  });

  it("ends as low for a bevel renewed in time as for one that lasts, or is cut as told", () => {
    const height = (bevel?: number) => {
      const { bevel: _, ...blank } = exampleJob().blank;
      return setup({ blank: { ...blank, thickness: 45, ...(bevel ? { bevel } : {}) }, setup: given({}) });
    };
    const { retainer, bevel } = height(3);
    expect(bevel.left).toBe(0);
    // The bevel as told reaches `needed` down from the face as it is now.
    expect(retainer.height).toBeCloseTo(retainer.cushion + 45 - bevel.needed - 3, 9);
    expect(height().retainer.height).toBeCloseTo(retainer.height, 9);
    expect(height(bevel.needed).retainer.height).toBeCloseTo(retainer.height, 9);
    expect(height(8).retainer.height).toBeCloseTo(retainer.cushion + 45 - 8 - 3, 9);
  });

  it("says where it must be too low to hold well", () => {
    const codes = (thickness: number) => of(thickness).notes.map(({ code }) => code);
    expect(codes(60)).not.toContain("retainer-low");
    expect(codes(7)).toContain("retainer-low");
  });
});

describe("what is too much for the glass", () => {
  const told = (code: string, changes: Partial<Job>, loads?: [weight: number, worn: number][]) => {
    const job = exampleJob({ layout: { ...layout, count: 20 }, ...changes });
    const blank = blankOf(job);
    const found = setup({ ...changes, layout: { ...layout, count: 20 } });
    // A tool of 0.5 kg.
    const given = loads?.map(([weight, worn]) => ({ weight, mass: weight + 0.5, worn, fresh: worn, edge: worn }));
    const notes = setupNotes(job, blank, toolOf(job, blank), { ...found, ...(given ? { loads: given } : {}) });
    return notes.find((note) => note.code === code)?.text;
  };

  it("are weights on a small tool, also the usual ones, with what would do", () => {
    expect(told("heavy-load", {})).toBeUndefined();
    expect(
      told("heavy-load", {}, [
        [0, 5],
        [9, 30],
      ]),
    ).toBeUndefined();
    expect(
      told("heavy-load", {}, [
        [0, 5],
        [4.5, 47],
        [9, 95],
      ]),
    ).toBe(
      "With the usual weights of 4.500 kg to 9.000 kg the pieces press with 47.0 kPa (6.82 psi) to 95.0 kPa (13.78 psi), where up to 10.0 kPa (1.45 psi) is usual, and can chip the glass and break pieces out: write at most about 500 g under setup.weights.",
    );
    expect(told("heavy-load", { setup: given({ weights: [2] }) }, [[2, 50]])).toBe(
      "With a weight of 2.000 kg the pieces press with 50.0 kPa (7.25 psi), where up to 10.0 kPa (1.45 psi) is usual, and can chip the glass and break pieces out: write 0 kg alone under setup.weights, as the tool is heavy enough by itself.",
    );
    expect(told("heavy-load", { units: "in" }, [[9, 95]])).toMatch(
      /With the usual weight of 19\.84 lb .* at most about 1\.10 lb/,
    );
  });

  it("are grades that take more than a fifth of it, at its edge or where the curve leaves least", () => {
    const thin = (thickness: number | undefined, changes: Partial<Job["blank"]> = {}) =>
      told("glass-thin", {
        blank: { diameter: 400, curve: "flat", ...(thickness === undefined ? {} : { thickness }), ...changes },
      });
    // From F24 on the usual grades take 5.239 mm.
    expect(thin(undefined)).toBeUndefined();
    expect(thin(26.2)).toBeUndefined();
    expect(thin(26.1)).toBe(
      "The edge loses 5.239 mm by all grades, 20 % of the 26.100 mm of glass there (blank.thickness): start with a finer setup.grain, write setup.grades with depths of your own, or take a thicker blank.",
    );
    expect(thin(5)).toMatch(/^The edge loses 5\.239 mm by all grades, all of the 5\.000 mm/);
    expect(thin(6, { curve: "concave", radius: 3060 })).toBe(
      "The blank is 6 mm thick at its edge and its curve 6.543 mm deep, so that a flat back leaves no glass at the centre: check blank.thickness and the curve.",
    );
    // 6.543 mm deep: what stands in the middle is thinner, or under a dome thicker.
    expect(thin(32, { curve: "concave", radius: 3060 })).toMatch(
      /^The centre loses 5\.239 mm by all grades, 21 % of the 25\.457 mm/,
    );
    expect(thin(32, { curve: "convex", radius: 3060 })).toBeUndefined();
    // To a dome 0.362 mm deeper the edge goes down.
    expect(thin(5, { curve: "convex", radius: 3060, target: { radius: 2900 } })).toMatch(
      /^The edge loses 5\.601 mm by all grades and the way to the target, all of/,
    );
  });
});

describe("which run to choose", () => {
  const deeper = setup({ blank: { ...exampleJob().blank, target: { radius: 2900 } }, setup: given({}) });

  it("names the safe one that follows the removal wanted best", () => {
    const safe = deeper.sweep.filter(({ edgePressure }) => edgePressure < 1.5);
    const best = Math.max(...safe.map(({ match }) => match!));
    const own = { ...safe[0]!, match: best - 0.02 };
    expect(closestOf(deeper.sweep, own)?.match).toBe(best);
    expect(best).toBeGreaterThan(0.9);
    const worse = setup({
      blank: { ...exampleJob().blank, target: { radius: 2900 } },
      setup: given({ offset: deeper.sweep[0]!.offset }),
    });
    expect(worse.notes.find(({ code }) => code === "closest-run")?.text).toContain("follows the removal wanted best");
  });

  it("judges a run that is offered as it would the job's own", () => {
    // On a blank of 400 mm rounding puts the edge beyond the last zone.
    for (const { offset, stroke, match } of deeper.sweep) {
      const own = setup({
        blank: { ...exampleJob().blank, target: { radius: 2900 } },
        setup: given({ offset, stroke }),
      });
      expect(Math.abs(own.wear.match! - match!)).toBeLessThan(0.02);
    }
  });

  it("judges a run alike whichever side of the last zone rounding puts the mirror's edge", () => {
    const job = exampleJob({ layout, blank: { ...exampleJob().blank, target: { radius: 2900 } } });
    const tool = toolOf(job, blankOf(job));
    const coverage = hardCoverage(pieceKinds(job), makePart(job, "layout").layout!.pieces);
    const matches = Array.from({ length: 12 }, (_, n) => {
      const diameter = 400 * (1 + n * 1e-9);
      const wider = { ...job, blank: { ...job.blank, diameter } };
      const run = { mirror: diameter / 2, offset: 65, stroke: 0, turns: 0.9 };
      return passOf(blankOf(wider), coverage, run, removalOf(wider, blankOf(wider), tool)).match!;
    });
    expect(Math.max(...matches) - Math.min(...matches)).toBeLessThan(1e-6);
  });

  it("recommends no other run where the job's own follows as well", () => {
    // Another follows better, by less than is worth a change.
    const matches = deeper.sweep.filter(({ edgePressure }) => edgePressure < 1.5).map(({ match }) => match!);
    expect(Math.max(...matches)).toBeGreaterThan(deeper.wear.match!);
    expect(deeper.closest).toMatchObject({ offset: deeper.offset, stroke: deeper.stroke, match: deeper.wear.match });
    const { offset, stroke } = deeper.closest!;
    const best = setup({
      blank: { ...exampleJob().blank, target: { radius: 2900 } },
      setup: given({ offset, stroke }),
    });
    expect(best.notes.find(({ code }) => code === "closest-run")?.text).toMatch(
      /^Of the runs compared none follows the removal wanted clearly better than this one, to 9\d/,
    );
  });

  it("tells the job's own run alike in every place", () => {
    const own = deeper.sweep.find(({ offset, stroke }) => offset === deeper.offset && stroke === deeper.stroke)!;
    expect(own).toMatchObject({ bend: deeper.wear.bend, match: deeper.wear.match });
    const job = exampleJob({ layout, setup: given({}) });
    expect(own.zoning).toBe(makePart(job, "layout").layout!.quality.zoning);
    // Another run is worked out more roughly: within a tenth of what a layout meant for it would tell.
    const other = deeper.sweep.find(({ offset, stroke }) => offset !== own.offset && stroke > 0)!;
    const run = given({ offset: other.offset, stroke: other.stroke });
    const zoning = makePart({ ...job, setup: run }, "layout").layout!.quality.zoning;
    expect(Math.abs(other.zoning / zoning - 1)).toBeLessThan(0.1);
  });

  it("turns sign with the target, and has none where every safe run leads away", () => {
    const flatter = setup({ blank: { ...exampleJob().blank, target: { radius: 3200 } }, setup: given({}) });
    for (const [n, { match }] of flatter.sweep.entries()) expect(match).toBeCloseTo(-deeper.sweep[n]!.match!, 2);
    expect(flatter.closest).toBeUndefined();
  });

  it("compares none that a set-up would be refused or warned for", () => {
    // A small tool near the edge follows a flatter target well, but never reaches the centre and leaves a button.
    const small = {
      blank: { ...exampleJob().blank, target: { radius: 3200 } },
      tool: { diameter: 100, rim: 3 },
      layout: { ...layout, count: 6 },
    };
    const { sweep, closest } = setup({ ...small, setup: given({ offset: 40, stroke: 20 }) });
    expect(closest).toBeUndefined();
    expect(sweep.length).toBeGreaterThan(0);
    for (const { offset, stroke } of sweep) {
      const { reachesCentre, notes } = setup({ ...small, setup: given({ offset, stroke }) });
      expect(reachesCentre).toBe(true);
      expect(notes.map(({ code }) => code)).not.toContain("centre-unreached");
    }
  });

  it("names none that follows the removal wanted to less than half, and says what to do", () => {
    const row = { ...deeper.sweep[0]!, edgePressure: 1 };
    expect(closestOf([{ ...row, match: 0.49 }])).toBeUndefined();
    expect(closestOf([row, { ...row, match: 0.5 }].slice(1))?.match).toBe(0.5);
    // Nor one that follows it hardly better than the job's own, which a little more than half is no reason to leave.
    const own = { ...row, match: 0.498 };
    expect(closestOf([{ ...row, match: 0.501 }], own)).toBe(own);
    expect(closestOf([{ ...row, match: 0.509 }], own)?.match).toBe(0.509);
    expect(closestOf([{ ...row, match: 0.49 }], own)).toBeUndefined();
    expect(closestOf([{ ...row, match: 0.501 }], { ...own, edgePressure: 2 })?.match).toBe(0.501);
    const told = (radius: number) => {
      const job = exampleJob({ blank: { ...exampleJob().blank, target: { radius } } });
      const { closest, ...none } = deeper;
      const removal = removalOf(job, blankOf(job), toolOf(job, blankOf(job)))!;
      const wear = { ...none.wear, match: 0.49 };
      const notes = setupNotes(job, blankOf(job), toolOf(job, blankOf(job)), { ...none, removal, wear });
      return notes.find(({ code }) => code === "closest-run")?.text;
    };
    expect(told(2900)).toBe(
      "None of the runs compared follows the removal wanted, to 50 % or more, at a safe pressure on the edge, below 1.50 times the mean: work the centre by itself with a smaller tool, or plan another size of tool.",
    );
    // Not "more overhang", which what is told of the edge's pressure may forbid.
    expect(told(3200)).toMatch(
      /the mean: work the edge by itself with a smaller tool, or plan another size of tool\.$/,
    );
  });

  it("takes glass off the centre by a safe run that does, told where it leaves the edge, or by a smaller tool", () => {
    const job = exampleJob({ blank: { ...exampleJob().blank, target: { radius: 2900 } } });
    const blank = blankOf(job);
    const away = (rows: Partial<(typeof deeper.sweep)[number]>[]) => {
      const wear = { ...deeper.wear, toward: "away" as const };
      const sweep = rows.map((row) => ({ ...deeper.sweep[0]!, stroke: 0, edgePressure: 1, bend: 0.1, ...row }));
      return setupNotes(job, blank, toolOf(job, blank), { ...deeper, wear, sweep })[0]!.text;
    };
    expect(
      away([
        { offset: 55, match: 0.9 },
        { offset: 60, match: 0.95, edgePressure: 1.5 },
      ]),
    ).toMatch(
      /: take an offset of 55 mm with no stroke or a smaller tool over the centre, to make the curve deeper\.$/,
    );
    expect(away([{ offset: 25, stroke: 10 }])).toMatch(
      /: take an offset of 25 mm with a stroke of 10 mm, which works the middle alone and leaves the edge, or a smaller/,
    );
    expect(away([{ offset: 60, bend: 0.02 }])).toMatch(
      /: no offset or stroke compared makes the curve deeper with this tool; work the centre by itself with a smaller one/,
    );
  });

  it("holds out more overhang only where that turns the pass", () => {
    const job = exampleJob({ blank: { ...exampleJob().blank, target: { radius: 3200 } } });
    const [blank, tool] = [blankOf(job), toolOf(job, blankOf(job))];
    const removal = removalOf(job, blank, tool)!;
    const told = (bend: number, edgePressure = 1, least = 1) => {
      const wear = { ...deeper.wear, toward: "away" as const };
      const sweep = deeper.sweep.map((row) => ({ ...row, bend, edgePressure: Math.max(least, row.edgePressure) }));
      return setupNotes(job, blank, tool, { ...deeper, wear, removal, sweep, edgePressure })[0]!.text;
    };
    // What is told of the edge's pressure asks for less of it: the start is not safe, and more is no remedy.
    expect(told(-0.1, 1.5, 1.5)).toMatch(
      /: more overhang, which the edge does not bear, .*; work the edge by itself with a smaller tool\.$/,
    );
    expect(told(-0.1, 1.5)).toMatch(/: take an offset of .* with .*, to make the curve shallower\.$/);
    expect(told(-0.1)).toMatch(
      /: it is a safe start, but an offset of .* has to follow to make the curve shallower\.$/,
    );
    expect(told(0.1)).toMatch(
      /: no offset or stroke compared makes the curve shallower with this tool; work the edge by itself with a smaller one\.$/,
    );
  });

  it("says by which figure a pass is judged where middle against edge and the whole shape disagree", () => {
    const job = exampleJob({ blank: { ...exampleJob().blank, target: { radius: 2900 } }, setup: given({}) });
    const blank = blankOf(job);
    const told = (match: number) =>
      setupNotes(job, blank, toolOf(job, blank), { ...deeper, wear: { ...deeper.wear, match } }).find(
        ({ code }) => code === "toward-target",
      )!.text;
    expect(told(1)).toMatch(/this pass deepens it, which leads toward it\.$/);
    expect(told(0.316)).toMatch(
      /which leads toward it, but it follows the target in part only \(31\.6 %\) by its shape over all zones, by which runs are judged\.$/,
    );
  });

  it("tells time only from a measured pair that leads to the target, with its range", () => {
    const blank = { ...exampleJob().blank, target: { radius: 2900 } };
    const at = (change: number, error = 0.003) =>
      setup({ blank, setup: given({ rate: { minutes: 30, change, error } }) }).time;
    // 6.543 mm now, 6.904 mm wanted: 0.361 mm to go at 0.05 mm in 30 minutes.
    expect(at(0.05)!.minutes).toBeCloseTo((30 * 0.361) / 0.05, 0);
    expect(at(0.05)!.most / at(0.05)!.least).toBeCloseTo(0.056 / 0.044, 9);
    expect(at(-0.05)).toBeUndefined();
    expect(deeper.time).toBeUndefined();
    // Measured toward a flatter target, but predicted to deepen: not the pass that was measured.
    const against = setup({
      blank: { ...exampleJob().blank, target: { radius: 3200 } },
      setup: given({ rate: { minutes: 30, change: -0.05, error: 0.003 } }),
    });
    expect(against.time).toBeUndefined();
    expect(against.notes.find(({ code }) => code === "no-time")?.text).toMatch(/: this pass is predicted to lead away/);
    expect(against.notes.map(({ code }) => code)).toContain("rate-disagrees");
    const told = setup({ blank, setup: given({ rate: { minutes: 30, change: 0.05, error: 0.003 } }) }).notes;
    expect(told.find(({ code }) => code === "time-to-target")?.text).toContain("at twice the rate's error");
  });
});

describe("a pass that does not come to the mirror's edge", () => {
  const unreached = (changes: Partial<Job["setup"]>, bevel = 0) =>
    setup({
      setup: given(changes),
      blank: { ...exampleJob().blank, bevel },
      layout: { ...layout, count: "max" },
    }).notes.find(({ code }) => code === "edge-unreached");

  it("is told of, with what it leaves and the offset that would reach", () => {
    // 400 mm mirror, pieces to 147 mm: 20 + 10 + 147 of 200 mm, 1 − 0.885² of it left.
    expect(unreached({ offset: 20, stroke: 20 })).toMatchObject({
      level: "warning",
      text: "The pieces come no nearer than 23 mm to the mirror's edge, and leave a ring of 21.7 % of the mirror unground and standing: write an offset of at least 43.01 mm, or a stroke longer by 46.01 mm, unless the middle alone is to be worked.",
    });
  });

  it("is not where it does, as that text says", () => {
    expect(unreached({ offset: 43.01, stroke: 20 })).toBeUndefined();
    expect(unreached({ offset: 20, stroke: 66.01 })).toBeUndefined();
  });

  it("at tangent by its rim alone is told as no more than it is, where the bevel does not take it", () => {
    expect(unreached({})).toMatchObject({
      level: "info",
      text: expect.stringMatching(
        /^The pieces come no nearer than 3 mm .* at least 53\.01 mm, .* unless so much is bevelled away\.$/,
      ),
    });
    expect(unreached({}, 3)).toBeUndefined();
    const rim = (wide: number) =>
      setup({ setup: given({}), tool: { diameter: 300, rim: wide }, layout: { ...layout, count: "max" } }).notes.find(
        ({ code }) => code === "edge-unreached",
      );
    // Too wide for a bevel; and too wide for an overhang that the edge bears.
    expect(rim(19)?.level).toBe("info");
    expect(rim(21)).toMatchObject({
      level: "warning",
      text: expect.stringMatching(/: write an offset of .* unless the middle alone is to be worked\.$/),
    });
    expect(rim(50)?.text).toMatch(
      /: lay pieces nearer to the tool's edge, with a smaller tool\.rim, unless the middle/,
    );
    expect(unreached({ offset: 53.01 })).toBeUndefined();
  });
});

describe("a measured rate", () => {
  it("is doubted where the set-up is predicted to do the opposite", () => {
    const codes = (change: number) =>
      setup({ setup: given({ offset: 20, stroke: 20, rate: { minutes: 30, change, error: 0.001 } }) }).notes.map(
        ({ code }) => code,
      );
    // A tool over the middle deepens a concave mirror.
    expect(codes(-0.03)).toContain("rate-disagrees");
    expect(codes(0.03)).not.toContain("rate-disagrees");
  });
});

describe("words that fit the figures", () => {
  it("call a tool heavy only where one person should not lift it", () => {
    const reasons = (fill: number) =>
      setup({ plaster: { ...exampleJob().plaster, fill } }).sizes.map(({ reason }) => reason);
    expect(reasons(32).join()).not.toMatch(/heavy|light|lift/);
    expect(reasons(150)[0]).toMatch(/; takes \d people to lift$/);
  });

  it("say of a flat what becomes of the face", () => {
    const does = (["deepens", "flattens", "keeps"] as const).map((does) =>
      passText({ does, zones: [], bend: 0 }, "flat"),
    );
    expect(does).toEqual(["hollows the flat face", "bulges the flat face", "keeps the face flat"]);
  });

  it("write a retainer whose figures add up in the job's units", () => {
    const { retainer } = setup({ units: "in", blank: { ...exampleJob().blank, diameter: 16 * 25.4 } });
    const { inside, clearance, outside, cushion, slots, holes } = retainer;
    const sizes = [inside, clearance, outside, cushion, slots.width, holes.diameter, holes.circle];
    expect(sizes.map((mm) => closeLength(mm, "in"))).toEqual(
      ["16 1/32", "1/64", "18 1/32", "1/8", "1/2", "1/4", "17 1/32"].map((text) => `${text} in`),
    );
  });

  it("tell the thickness that a retainer too low was reckoned with", () => {
    const low = (thickness?: number) =>
      setup({
        blank: { diameter: 60, curve: "concave", radius: 500, ...(thickness ? { thickness } : {}) },
        tool: { diameter: 40, rim: 1 },
        pieces: [{ shape: "round", diameter: 5, thickness: 3, density: 2.4 }],
        layout: { ...layout, count: 3 },
        setup: given({}),
      }).notes.find(({ code }) => code === "retainer-low")?.text;
    expect(low()).toContain("thickness (taken as 10 mm: write blank.thickness if it is not): grind");
    expect(low(10)).toContain("a third of the blank's thickness: grind");
  });
});

// What is said of a pour, and of one that cannot be, word by word.
import { describe, expect, test } from "vitest";
import type { Job } from "../../packages/casting-core/src/job/types.js";
import type { Note } from "../../packages/casting-core/src/notes.js";
import { plasterOf } from "../../packages/casting-core/src/pour/plaster.js";
import { type MixOptions, mixFromOptions } from "../../packages/casting-core/src/pour/without-job.js";
import { exampleJob } from "../support/jobs.js";
import { poured } from "../support/poured.js";

const plaster = { kind: "type-3", fill: 32, cover: 20, spare: 0.1 } as const;
const socket = { diameter: 28, bore: 21, length: 48, foot: "pieces", plugged: true } as const;
const bucket = { shape: "round", diameter: 120, height: 120, headroom: 20 } as const;
const glass = { diameter: 400, radius: 3060, thickness: 45, material: "borosilicate" } as const;

/** Notes as lines, each of them whole. */
function lines(notes: readonly Note[]): string[] {
  const texts = notes.map(({ level, code, text }) => `${level} ${code}: ${text}`);
  for (const text of texts) expect(text).toMatch(/^(caution|warning|info) [a-z-]+: [A-Z0-9][^\n]*\.$/);
  return texts;
}
const said = (changes: Partial<Job>, count?: number) => lines(poured(changes, count).notes);

describe("of a pour", () => {
  test("the whole list: cautions, what can spoil it, what is good to know", () => {
    expect(said({})).toEqual([
      "caution setting-heat: Never put a hand or any part of the body into setting plaster: this mix can rise by 67 K to 87 °C, and it grips before it feels warm.",
      "caution powder-dust: Weigh and pour powder without clouds and wear a well-fitting dust mask: plaster dust can hold silica; the maker's safety data sheet comes first.",
      "caution drain: Let no plaster and no wash water go down a drain, where it sets: let it settle, bin the solid.",
      "caution hot-plaster-on-glass: Hot plaster warms the glass: pour at room temperature on glass at room temperature, let both cool by themselves and never rinse warm glass cold, or it may crack.",
      "warning pieces-slide: Each hexagon 20 mm x 6 mm weighs 4.9 g, in the mix only 0.86 g, and slides: tack the pieces down, brush on a thin first coat, and pour beside them.",
      "info no-container: No container is given, so there are no marks for water and mix, and no gauge is drawn: give one, measured inside, to have them.",
      "info setting-expansion: The cast grows by up to 0.2 %: over 300 mm it comes out up to 7.4 µm flatter than the glass, so the glass is met first at the tool's edge.",
      "info level: Level the blank to 1 mm per m: that leaves a wedge of 0.3 mm across the back.",
    ]);
  });

  test("heat and what is heavy, in an inch job in its own units", () => {
    const inches = said({
      units: "in",
      plaster: { ...plaster, fill: 120 },
      tool: { diameter: 400, rim: 3 },
      blank: { ...exampleJob().blank, ...glass },
    });
    expect(inches[0]).toContain("this mix can rise by 121 °F (67 K) to 189 °F (87 °C), and it grips");
    expect(inches.find((line) => line.includes("caution heavy:"))).toMatch(
      /weighs \d+\.\d\d lb, more than the \d+\.\d\d lb one/,
    );
    expect(inches.find((line) => line.includes("setting-expansion"))).toContain("Setting heat of 18 °F (10 K) across");
  });

  test.each<[string, Partial<Job>]>([
    [
      "warning thin-cover: The thickest piece is covered by only 6 mm of plaster at the shallowest place, less than the usual cover of 20 mm: raise the fill line to 26 mm or more.",
      { plaster: { ...plaster, fill: 12 } },
    ],
    [
      "warning thin-cover: The thickest piece is covered by only 6 mm of plaster at the shallowest place, less than the 10 mm asked for: raise the fill line to 16 mm or more.",
      { plaster: { ...plaster, fill: 12, cover: 10 } },
    ],
    [
      "warning thin-cover: The thickest piece is covered by only 0.236 in of plaster at the shallowest place, less than the usual cover of 0.787 in: raise the fill line to 1 1/32 in or more.",
      { units: "in", plaster: { ...plaster, fill: 12 } },
    ],
    [
      "warning thin-edge: The tool is 12 mm thick at its edge; below 15 mm it may break there: raise the fill line.",
      { plaster: { ...plaster, fill: 12 } },
    ],
    [
      "warning thin-edge: The tool is 17 mm thick at its edge; below 19.5 mm it may break there: raise the fill line.",
      { plaster: { ...plaster, fill: 17 }, tool: { diameter: 390, rim: 3 } },
    ],
    [
      // A twentieth of 12 in.
      "warning thin-edge: The tool is 0.599 in thick at its edge; below 0.6 in it may break there: raise the fill line.",
      { units: "in", plaster: { ...plaster, fill: 15.2146 }, tool: { diameter: 304.8, rim: 3 } },
    ],
    [
      "info level: Level the blank to 0.012 in per ft: that leaves a wedge of 0.012 in across the back.",
      { units: "in" },
    ],
    [
      "warning pieces-slide: Each hexagon 0.787 in x 15/64 in weighs 0.17 oz, in the mix only 0.03 oz, and slides: tack the pieces down, brush on a thin first coat, and pour beside them.",
      { units: "in" },
    ],
    [
      "info socket-projects: The socket stands 15.5 mm out of the back: the bar across the dam needs a hole for it.",
      { socket, tool: { diameter: 400, rim: 3 } },
    ],
    ["info socket-projects: The socket stands 18.3 mm out of the back: the former needs a hole for it.", { socket }],
    [
      "warning socket-unheld: The socket stands only 8.3 mm out of the back, and the former, 10 mm above the fill line, does not reach it to hold it upright: take a longer one, or let a rod in its bore stand up through the hole.",
      { socket: { ...socket, length: 38 } },
    ],
    [
      "warning socket-unheld: The socket stands only 9.5 mm out of the back, and the bar across the dam, 10 mm above the fill line, does not reach it to hold it upright: take a longer one.",
      { socket: { diameter: 28, length: 42, foot: "pieces", plugged: true }, tool: { diameter: 400, rim: 3 } },
    ],
    // Its foot is 6 mm above the glass, and the fill line 35.679 mm over the middle.
    ...[29.67875, poured().pour.fill.centre - 6, 29.67868].map((length): [string, Partial<Job>] => [
      "warning socket-unheld: The socket ends flush with the back, and the former, 10 mm above the fill line, does not reach it to hold it upright: take a longer one, or let a rod in its bore stand up through the hole.",
      { socket: { ...socket, length } },
    ]),
    [
      "warning socket-below-fill: The socket ends 19.7 mm below the fill line: plug it well and mark its place, or take a longer one.",
      { socket: { ...socket, length: 10 } },
    ],
    [
      "warning socket-shallow: Only 29.7 mm of the socket's 90 mm is in the plaster: raise the fill line or take a shorter one, or it may tear out.",
      { socket: { ...socket, length: 90 } },
    ],
    [
      "warning water-below-bound: A water ratio of 0.182 is less than the 0.186 that the powder binds: part of it stays powder, and the mix is stiff.",
      { plaster: { ...plaster, kind: "type-5", water: 0.182 } },
    ],
    [
      "warning water-off-table: A water ratio of 0.34 is more than a tenth above the table's 0.3: the cast loses much of its strength. Leave plaster.water out for the table's, unless the bag says so.",
      { plaster: { ...plaster, water: 0.34 } },
    ],
    [
      "warning water-off-table: A water ratio of 0.26 is more than a tenth below the table's 0.3: the mix may be too stiff to flow between the pieces. Leave plaster.water out for the table's, unless the bag says so.",
      { plaster: { ...plaster, water: 0.26 } },
    ],
    [
      "warning mixed-materials: Pieces of different materials wear unevenly, and the hard ones come to stand proud: mix kinds of equal hardness only.",
      { pieces: [{ item: "iso-4032-m12" }, { item: "mosaic-square-1in" }] },
    ],
    [
      "caution custom-heat: Heat and times of a custom plaster are taken from common ones: the maker's data sheet comes first.",
      { plaster: { ...plaster, kind: "custom", water: 0.4 } },
    ],
    [
      "info setting-expansion: The cast grows by up to 0.2 %: over 300 mm it comes out up to 7.4 µm flatter than the glass, so the glass is met first at the tool's centre, where the tool rocks at first. Setting heat of 10 K across the glass bows its face toward the tool by 8.3 µm, which works against that.",
      { blank: { ...glass, curve: "convex" } },
    ],
    [
      "info setting-expansion: The cast grows by up to 0.2 %: over 400 mm it comes out up to 13.1 µm flatter than the glass, so the glass is met first at the tool's edge. Setting heat of 10 K across the glass bows its face toward the tool by 14.7 µm, which adds to that.",
      { blank: { ...glass, curve: "concave", bevel: 2 }, tool: { diameter: 400, rim: 3 } },
    ],
    [
      "info full-size-tool: The tool is as wide as the blank: there is no former, the dam goes round the blank, and plaster must not run over the bevel (the face inside it is 396 mm across).",
      { blank: { ...glass, curve: "concave", bevel: 2 }, tool: { diameter: 400, rim: 3 } },
    ],
    [
      "info full-size-tool: The tool is as wide as the blank: there is no former, the dam goes round the blank, and plaster must not run over its edge.",
      { tool: { diameter: 400, rim: 3 } },
    ],
    [
      "warning dam-over-edge: The dam reaches 0.75 mm over the mirror's edge: take a thinner sheet or a smaller tool.",
      { tool: { diameter: 399.5, rim: 3 } },
    ],
    [
      "warning dam-over-edge: The dam reaches 1/32 in over the mirror's edge: take a thinner sheet or a smaller tool.",
      { tool: { diameter: 399.5, rim: 3 }, units: "in" },
    ],
    [
      "caution heavy: The wet tool weighs 28.5 kg, more than the 14.6 kg one person should lift at this reach (NIOSH): lift it with 2 people or a hoist.",
      { tool: { diameter: 390, rim: 3 }, plaster: { ...plaster, fill: 120 } },
    ],
    [
      "caution heavy-bucket: The mix weighs 31.3 kg without its container, more than the 23 kg one person should lift (NIOSH): pour it with 2 people, ladle it in, or mix in several smaller containers at once.",
      { tool: { diameter: 390, rim: 3 }, plaster: { ...plaster, fill: 120 } },
    ],
    [
      "warning several-batches: 3 equal fillings are needed: pour each as a layer while the one before is still wet, about 4 min apart, or mix in several buckets at once.",
      { container: bucket },
    ],
    [
      "warning several-batches: 3 fillings are needed 4 min apart, but this plaster must be poured within 1.5 min: mix in several buckets at once, or take a larger one.",
      { container: bucket, plaster: { ...plaster, kind: "type-1" } },
    ],
  ])("%s", (sentence, changes) => {
    expect(said(changes)).toContain(sentence);
  });

  test("nothing that does not apply: no bow without glass, nothing of growth on a flat, of several fillings for one", () => {
    const flat = said({ blank: { diameter: 400, curve: "flat" }, container: { ...bucket, diameter: 300 } }).join("\n");
    expect(flat).not.toMatch(/setting-expansion|several-batches|no-container|full-size|socket|heavy/);
    expect(said({ blank: { ...glass, curve: "concave", material: "unknown" } }).join("\n")).toContain(
      "tool's edge.\ninfo",
    );
    expect(said({ plaster: { ...plaster, kind: "gypsum-cement-38", cover: 26 } }).join("\n")).not.toContain(
      "thin-cover",
    );
    const none = { ...plaster, kind: "custom", water: 0.186 };
    expect(said({ plaster: none }).join("\n")).not.toMatch(/water-below-bound|water-off-table/);
    // 29.679 mm from the pieces up to the fill line: more than half of 59 in the plaster.
    expect(said({ socket: { ...socket, length: 59 } }).join("\n")).not.toContain("socket-shallow");
    expect(said({ tool: { diameter: 398, rim: 3 } }).join("\n")).not.toContain("dam-over-edge");
    expect(said({ tool: { diameter: 320, rim: 3 }, plaster: { ...plaster, fill: 16 } }).join("\n")).not.toContain(
      "thin-edge",
    );
  });
});

describe("of a pour that cannot be", () => {
  const words = (act: () => unknown): string => {
    try {
      act();
    } catch (error) {
      return `${(error as { kind?: string }).kind}: ${(error as Error).message}`;
    }
    return "nothing was refused";
  };

  test.each<[string, Partial<Job>]>([
    [
      "invalid: plaster.fill: the fill line stands 6 mm above the glass at its shallowest, not over the thickest piece of 6 mm; raise it, or write auto",
      { plaster: { ...plaster, fill: 6 } },
    ],
    [
      "impossible: plaster.fill: the glass rises 29.2 mm at the centre, through the fill line of 29 mm; fill to more than 35.2 mm",
      { plaster: { ...plaster, fill: 29 }, blank: { diameter: 400, curve: "convex", radius: 400 } },
    ],
    [
      "invalid: socket.diameter: a socket of 300 mm does not fit in a tool of 300 mm; take a smaller one",
      { socket: { ...socket, diameter: 300 } },
    ],
    [
      "invalid: socket.bore: a bore of 28 mm leaves no wall in a socket of 28 mm; measure again",
      { socket: { ...socket, bore: 28 } },
    ],
    [
      "impossible: pieces[0].density: the piece floats: it weighs 1.9 kg/L, the mix 1.94 kg/L; take a heavier piece, or check its density",
      { pieces: [{ shape: "round", diameter: 20, thickness: 6, density: 1.9 }] },
    ],
    [
      "impossible: pieces[0].item: the piece floats: it weighs 2.35 kg/L, the mix 3.85 kg/L; take a heavier piece, or check its density",
      { pieces: [{ item: "mosaic-square-1in" }], plaster: { ...plaster, kind: "custom", water: 0.2, density: 9 } },
    ],
    [
      "impossible: container: the container holds 7.9 mL below its headroom, but 2.59 L are to be mixed, more than 24 fillings; take a larger one",
      { container: { shape: "round", diameter: 20, height: 30, headroom: 5 } },
    ],
    [
      'invalid: plaster.kind: "tpye-3" is not in the table of plasters; did you mean "type-3"?',
      { plaster: { ...plaster, kind: "tpye-3" } },
    ],
    [
      `invalid: plaster.kind: "${"x".repeat(64)}" is not in the table of plasters; \`casting list plasters\` shows it`,
      { plaster: { ...plaster, kind: "x".repeat(80) } },
    ],
    [
      'invalid: plaster.kind: "costum" is not in the table of plasters; did you mean "custom"?',
      { plaster: { ...plaster, kind: "costum" } },
    ],
    [
      "invalid: plaster.water: a custom plaster needs its water ratio; write the g of water per g of powder",
      { plaster: { ...plaster, kind: "custom" } },
    ],
    [
      "invalid: plaster.water: a water ratio of 2 cannot be mixed; write g of water per g of powder, 0.18 to 1.5",
      { plaster: { ...plaster, water: 2 } },
    ],
  ])("%s", (sentence, changes) => {
    expect(words(() => poured(changes))).toBe(sentence);
  });

  test("a socket that takes the mold says how much; pieces that do, to fill deeper", () => {
    const tight = {
      blank: { diameter: 60, curve: "concave", radius: 36 },
      tool: { diameter: 18, rim: 2 },
      plaster: { ...plaster, fill: 8 },
      socket: { diameter: 17.9, length: 40, foot: "glass", plugged: true },
    } as const;
    expect(words(() => poured(tight, 0))).toBe(
      "impossible: socket.diameter: pieces and socket take 2.3 mL of the mold's 2.2 mL and leave no room for plaster; take a smaller socket, or fill deeper",
    );
    expect(words(() => poured({ plaster: { ...plaster, fill: 7 } }, 320))).toMatch(
      /^impossible: plaster\.fill: pieces and socket take [\d.]+ m?L of the mold's [\d.]+ m?L and leave no room for plaster; /,
    );
  });

  test.each<[string, MixOptions]>([
    ["invalid: tool: tool is missing; give one, such as 300 mm, or the powder at hand to find it", { fill: 32 }],
    ["invalid: fill: fill is missing; give one, such as 32 mm, or the powder at hand to find it", { tool: 300 }],
    ["invalid: tool: tool and fill are both missing; give one of them beside the powder", { powder: 3 }],
    [
      "invalid: powder: tool, fill and powder are all given; leave out the one to be found",
      { tool: 300, fill: 32, powder: 3 },
    ],
    ["invalid: powder: powder must be more than 0, not -3; write a mass with its unit", { powder: -3 }],
    ["invalid: tool: tool must be more than 0, not 0; write a length with its unit", { tool: 0, fill: 3 }],
    [
      "invalid: radius: radius must be more than 0, not Infinity; write a length with its unit",
      { tool: 300, fill: 3, radius: Infinity },
    ],
    [
      "invalid: radius: a radius stands beside a flat curve; leave one of them out",
      { tool: 300, fill: 30, radius: 1000, curve: "flat" },
    ],
    [
      "invalid: curve: a convex curve has no radius; give one, such as 1600 mm, or leave the curve out for a flat",
      { tool: 300, fill: 30, curve: "convex" },
    ],
    [
      "invalid: curve: a concave curve has no radius; give one, such as 63 in, or leave the curve out for a flat",
      { fill: 30, powder: 3, curve: "concave", units: "in" },
    ],
    ["invalid: fill: fill must be more than 0, not NaN; write a length with its unit", { fill: Number.NaN }],
    [
      "invalid: radius: a radius of 100 mm is less than half the tool of 300 mm; check the figures and their units",
      { tool: 300, fill: 32, radius: 100 },
    ],
    [
      "invalid: spare: a spare of 1000 % is not between 0 % and 100 %; write for example 10%",
      { tool: 300, fill: 32, spare: 10 },
    ],
    [
      "invalid: spare: a spare of -10 % is not between 0 % and 100 %; write for example 10%",
      { tool: 300, fill: 32, spare: -0.1 },
    ],
    [
      "impossible: powder: the powder at hand does not fill the curve of the glass, so that no fill can be found; take more powder",
      { tool: 300, radius: 400, powder: 0.1 },
    ],
    [
      "impossible: powder: the powder makes more than a tool of 3000 mm takes; give a tool, or more fill",
      { fill: 32, powder: 3000 },
    ],
    [
      "impossible: powder: the powder makes more than a tool of 2000 mm takes; give a tool, or more fill",
      { fill: 32, radius: 1000, powder: 30_000 },
    ],
  ])("%s", (sentence, options) => {
    expect(words(() => mixFromOptions(options))).toBe(sentence);
  });
});

describe("of a mix without a job", () => {
  const flat =
    "warning flat-assumed: No radius is given, so the glass is taken as flat: on hollow glass more plaster goes in, on bulging glass less: give its radius.";
  const notes = (options: MixOptions) => lines(mixFromOptions(options).notes);

  test("that the glass is taken as flat, first, unless a curve or a radius is given", () => {
    expect(notes({ tool: 300, fill: 32 })[0]).toBe(flat);
    for (const more of [{ radius: 3060 }, { curve: "flat" }, { radius: 3060, curve: "convex" }] as const)
      expect(notes({ tool: 300, fill: 32, ...more })).not.toContain(flat);
  });

  test("lengths in the units asked for", () => {
    expect(notes({ tool: 304.8, fill: 32, units: "in" }).join("\n")).toContain("a wedge of 0.012 in across");
    expect(notes({ tool: 304.8, fill: 32 }).join("\n")).toContain("a wedge of 0.3 mm across");
  });
});

describe("a plaster", () => {
  test("has its name and densities from the table, or those of the bag", () => {
    expect(plasterOf({ kind: "type-3" })).toMatchObject({
      kind: "type-3",
      name: "model stone, ISO 6873 type 3",
      water: 0.3,
      density: 2.7,
    });
    expect(plasterOf({ kind: "custom", water: 0.5, density: 2.5 })).toEqual({
      kind: "custom",
      name: "custom plaster",
      water: 0.5,
      density: 2.5,
      // 400 mL of powder and 501 mL of water from 1 kg; 1.5 kg of it wet, and 1.1862 kg dry.
      yield: expect.closeTo(400 + 500 / 0.998, 9),
      wetDensity: expect.closeTo(1500 / (400 + 500 / 0.998), 9),
      dryDensity: expect.closeTo(1186.17 / (400 + 500 / 0.998), 4),
    });
  });
});

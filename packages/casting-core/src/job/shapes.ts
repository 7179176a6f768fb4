import { z } from "zod";
import { CATALOGUE } from "../pieces/catalogue.js";
import { choice, type Fields, listOf, MEANINGS, named, record, whole, wrongKind } from "./fields.js";
import { LIMITS, type LimitedKey } from "./limits.js";
import { VARIANTS, variant } from "./variant.js";

/** The kinds of pieces: from the catalogue, or one of each shape. */
export function piecesIn(fields: Fields) {
  const length = (key: LimitedKey) => fields.length(LIMITS[key], LIMITS[key].example);
  const use = {
    share: fields.share({ least: 0.0001, most: 1 }).optional().register(MEANINGS, {
      description: "This kind's share of the count; where only others have one, an equal part of what they leave.",
    }),
    stock: whole({ least: 1, most: 1_000_000 })
      .optional()
      .register(MEANINGS, { description: "How many of this kind there are to lay." }),
  };
  const own = {
    thickness: length("pieces.thickness").meta({ description: "Thickness of the piece." }),
    density: fields.number(LIMITS["pieces.density"], "2.35").meta({ description: "Density of the material, kg/L." }),
    bore: length("pieces.bore")
      .optional()
      .register(MEANINGS, { description: "Diameter of a round hole through the middle." }),
    ...use,
  };
  const across = length("pieces.across");
  const flats = across.meta({ description: "Across the flats; of a triangle its side." });
  const corner = fields.coordinate(1000, "-12 mm");
  const piece = variant("shape", "item", {
    "": record({
      item: named(
        CATALOGUE.map((row) => row.item),
        "a piece of the catalogue",
        "casting list pieces",
      ).meta({ description: "A piece of the catalogue (casting list pieces); else a shape of your own." }),
      ...use,
    }),
    hexagon: record({ shape: choice(["hexagon"]), across: flats, ...own }),
    square: record({ shape: choice(["square"]), across: flats, ...own }),
    triangle: record({ shape: choice(["triangle"]), across: flats, ...own }),
    rectangle: record({
      shape: choice(["rectangle"]),
      length: across.meta({ description: "One side." }),
      width: across.meta({ description: "The other side." }),
      ...own,
    }),
    round: record({ shape: choice(["round"]), diameter: across.meta({ description: "Outside diameter." }), ...own }),
    polygon: record({
      shape: choice(["polygon"]),
      points: listOf(
        z.tuple([corner, corner], { error: wrongKind("a corner [x, y]") }),
        { least: 3, most: 200 },
        "corners [x, y]",
      ).meta({ description: "Corners [x, y] of a convex shape in order, such as [[0, 0], [20, 0], [10, 15]]." }),
      ...own,
    }),
  });
  const pieces = listOf(piece, { least: 1, most: 20 }, "a piece, or a list of pieces");
  const one = z
    .preprocess((raw) => (raw === undefined || Array.isArray(raw) ? raw : [raw]), pieces)
    .meta({ description: "The hard pieces: one kind, or a list to mix." });
  VARIANTS.set(one, z.union([piece, pieces]));
  return one;
}

/** The container to mix in, by its shape. */
export function containerIn(fields: Fields) {
  const length = (key: LimitedKey) => fields.length(LIMITS[key], LIMITS[key].example);
  const inside = {
    height: length("container.height").meta({ description: "Inside height." }),
    headroom: length("container.headroom")
      .prefault("0")
      .register(MEANINGS, { description: "Height below the top that stays empty." }),
  };
  const across = length("container.diameter");
  const ends = {
    bottom: across.meta({ description: "Inside diameter at the foot." }),
    top: across.meta({ description: "Inside diameter at the top." }),
  };
  const mark = record({
    height: length("container.marks.height").meta({ description: "How high above the floor the mark is." }),
    volume: fields.volume(LIMITS["container.marks.volume"]).meta({ description: "How much it holds up to the mark." }),
  });
  return variant("shape", undefined, {
    round: record({ shape: choice(["round"]), diameter: across.meta({ description: "Inside diameter." }), ...inside }),
    tapered: record({ shape: choice(["tapered"]), ...ends, ...inside }),
    box: record({
      shape: choice(["box"]),
      length: across.meta({ description: "Inside length." }),
      width: across.meta({ description: "Inside width." }),
      ...inside,
    }),
    marks: record({
      shape: choice(["marks"]),
      marks: listOf(mark, { least: 1, most: 100 }, "marks with height and volume").meta({
        description: "Marks from the floor up, measured by filling it.",
      }),
      ...inside,
    }),
    stacked: record({
      shape: choice(["stacked"]),
      sections: listOf(
        record({ ...ends, height: length("container.section").meta({ description: "Height of the section." }) }),
        { least: 1, most: 20 },
        "sections with bottom, top and height",
      ).meta({ description: "Round sections from the floor up, for a container that steps or flares." }),
      headroom: inside.headroom,
      height: inside.height
        .optional()
        .register(MEANINGS, { description: "The sum of the sections' heights, as a plan repeats it." }),
    }).transform(({ height, ...stack }, context) => {
      const sum = stack.sections.reduce((total, section) => total + section.height, 0);
      if (height === undefined || Math.abs(height - sum) < 1e-6) return { ...stack, height: sum };
      const message = "it is not the sum of the sections' heights, which it is without being written; remove it";
      context.addIssue({ code: "custom", message, path: ["height"] });
      return z.NEVER;
    }),
  });
}

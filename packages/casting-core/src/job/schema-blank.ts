import { GLASSES } from "../blank/glass.js";
import { choice, type Fields, listOf, MEANINGS, record } from "./fields.js";
import { LIMITS, type LimitedKey, SPHEROMETER } from "./limits.js";
import { glass } from "./words.js";

/** The glass: its size, and its curve as it was made, wanted or measured. */
export function blankIn(fields: Fields) {
  const length = (key: LimitedKey) => fields.length(LIMITS[key], LIMITS[key].example);
  const number = (key: LimitedKey) => fields.number(LIMITS[key], LIMITS[key].example);

  const curve = {
    radius: length("blank.radius").optional().register(MEANINGS, { description: "Radius of curvature." }),
    "focal-ratio": number("blank.focal-ratio")
      .optional()
      .register(MEANINGS, { description: "Or the focal ratio: radius over twice the diameter." }),
    sagitta: length("blank.sagitta")
      .optional()
      .register(MEANINGS, { description: "Or the depth of the curve at its centre." }),
  };

  const instrument = record({
    ring: length("blank.readings.instrument.ring").optional().register(MEANINGS, {
      description: "A ring: diameter of its circle of contact, or of its outside where wall is given.",
    }),
    legs: length("blank.readings.instrument.ring")
      .optional()
      .register(MEANINGS, { description: "Or three legs: spacing from leg to leg, all three equal." }),
    bar: length("blank.readings.instrument.ring")
      .optional()
      .register(MEANINGS, { description: "Or a bar: spacing of its two feet." }),
    ball: length("blank.readings.instrument.ball")
      .optional()
      .register(MEANINGS, { description: "Diameter of the balls it stands on; none: sharp feet or a sharp ring." }),
    wall: length("blank.readings.instrument.wall")
      .optional()
      .register(MEANINGS, { description: "Wall of a ring, which then touches with its outer or inner edge." }),
    resolution: length("blank.readings.instrument.resolution")
      .prefault(`${SPHEROMETER.resolution} mm`)
      .register(MEANINGS, { description: "Smallest step the dial shows." }),
    "zero-error": length("blank.readings.instrument.zero-error")
      .prefault(`${SPHEROMETER.zero} mm`)
      .register(MEANINGS, { description: "How flat the plate is that it was zeroed on, standard uncertainty." }),
    "size-error": length("blank.readings.instrument.size-error").optional().register(MEANINGS, {
      description: "How truly ring, legs or bar are known, standard uncertainty; default 0.2 % of it.",
    }),
  }).meta({ description: "The spherometer: a ring, three legs or a bar." });
  const degrees = fields.number({ least: 0, most: 360 }, "90");
  const zone = record({
    at: length("blank.readings.zones.at").meta({ description: "Where the plunger stood: distance from the centre." }),
    angle: degrees.optional().register(MEANINGS, { description: "In which direction from the centre, degrees." }),
    along: degrees.optional().register(MEANINGS, { description: "Which way a bar lay there, degrees." }),
    reading: fields
      .coordinate(LIMITS["blank.readings.zones.reading"].most, "0.64 mm")
      .meta({ description: "What the dial showed, zeroed on a flat." }),
  });

  return record({
    diameter: length("blank.diameter").meta({ description: "Diameter of the blank." }),
    curve: choice(["concave", "convex", "flat"])
      .default("concave")
      .register(MEANINGS, { description: "Which way the glass is curved." }),
    ...curve,
    "sagitta-over": length("blank.sagitta-over")
      .optional()
      .register(MEANINGS, { description: "Chord the sagitta was measured over; default the diameter." }),
    readings: record({
      instrument,
      zones: listOf(zone, { least: 1, most: 500 }, "zones with at and reading").meta({
        description: "Where it stood, and what it showed.",
      }),
    })
      .optional()
      .register(MEANINGS, { description: "Or what a spherometer showed." }),
    target: record(curve).optional().register(MEANINGS, { description: "The curve that is wanted." }),
    thickness: length("blank.thickness")
      .optional()
      .register(MEANINGS, { description: "Thickness at the edge, for weights." }),
    bevel: length("blank.bevel").optional().register(MEANINGS, { description: "Leg of the front bevel as it is now." }),
    material: glass.optional().register(MEANINGS, {
      description: `Kind of glass: ${GLASSES.map((glass) => glass.material).join(", ")}. For its weight and how warmth bends it.`,
    }),
  });
}

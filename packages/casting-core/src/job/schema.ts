import { PLASTERS } from "../pour/gypsum.js";
import { type Bare, choice, fieldsIn, flag, listOf, MEANINGS, named, record, whole } from "./fields.js";
import { LIMITS, type LimitedKey, USUAL_COVER, WEIGHTS } from "./limits.js";
import { blankIn } from "./schema-blank.js";
import { containerIn, piecesIn } from "./shapes.js";
import type { Units } from "./types.js";
import { countField, fillField, grainField, offsetField, paperField, title } from "./words.js";

/**
 * The schema of a job file in `units`: the one place that says which keys there are, what they may be, what they are if
 * left out, and what they mean. Defaults that follow from other keys are filled in by `filled`.
 *
 * @param bare what bare numbers are, as the job's own `bare` says
 */
export function jobSchema(units: Units, bare: Bare = "units") {
  const fields = fieldsIn(units, bare);
  const length = (key: LimitedKey) => fields.length(LIMITS[key], LIMITS[key].example);
  const number = (key: LimitedKey) => fields.number(LIMITS[key], LIMITS[key].example);

  const place = fields.coordinate(5000, "-40 mm");
  const tool = record({
    diameter: length("tool.diameter")
      .optional()
      .register(MEANINGS, { description: "Diameter of the tool; default three quarters of the blank." }),
    rim: length("tool.rim")
      .prefault("3 mm")
      .register(MEANINGS, { description: "Ring at the edge kept free of pieces." }),
  });

  return record({
    title: title.default("Grinding tool").register(MEANINGS, { description: "Name of the job, on every sheet." }),
    units: choice(["mm", "in"])
      .default("mm")
      .register(MEANINGS, { description: "Unit of bare lengths, and of what is printed." }),
    bare: choice(["mm"])
      .optional()
      .transform((): "mm" => "mm")
      .meta({ description: "Written by plans: bare numbers are in mm and mL, whatever units says." }),
    blank: blankIn(fields).meta({ description: "The glass." }),
    tool: tool.prefault({}).register(MEANINGS, { description: "The tool's circle." }),
    pieces: piecesIn(fields),
    layout: record({
      gap: length("layout.gap").optional().register(MEANINGS, {
        description: "Least clear distance between pieces; default the cutter and two clearances.",
      }),
      seed: whole({ least: 0, most: 0xffffffff })
        .prefault("1")
        .register(MEANINGS, { description: "Another seed is another layout." }),
      count: countField.prefault("max").register(MEANINGS, { description: "How many pieces: max, or a number." }),
      hand: length("layout.hand")
        .prefault("0")
        .register(MEANINGS, { description: "How far off a person may lay a piece." }),
      "keep-clear": listOf(
        record({
          x: place.meta({ description: "Centre of the circle, to the right of the tool's axis, seen from the back." }),
          y: place.meta({ description: "Centre of the circle, up from the tool's axis, seen from the back." }),
          diameter: length("layout.keep-clear.diameter").meta({ description: "Diameter of the circle." }),
        }),
        { least: 0, most: 100 },
        "circles with x, y and diameter",
      )
        .prefault([])
        .register(MEANINGS, { description: "Circles without pieces." }),
    })
      .prefault({})
      .register(MEANINGS, { description: "How the pieces are laid." }),
    grooves: record({
      cutter: length("grooves.cutter").prefault("3 mm").register(MEANINGS, { description: "Width of the channel." }),
      depth: length("grooves.depth").prefault("2.5 mm").register(MEANINGS, { description: "Depth of the channel." }),
      clearance: length("grooves.clearance")
        .prefault("0.5 mm")
        .register(MEANINGS, { description: "Least distance from the channel's side to a piece." }),
      pattern: choice(["all", "mains"])
        .default("all")
        .register(MEANINGS, { description: "Every channel, or fewer that still touch every piece." }),
      order: choice(["fewest", "one"])
        .default("fewest")
        .register(MEANINGS, { description: "Fewest cuts, or one cut with retracing." }),
      feed: length("grooves.feed")
        .optional()
        .register(MEANINGS, { description: "How far the cutter goes in a minute, for the time." }),
      "rim-loop": flag
        .default(false)
        .register(MEANINGS, { description: "Whether the channel beside the tool's edge is cut." }),
    })
      .prefault({})
      .register(MEANINGS, { description: "The channels between the pieces." }),
    plaster: record({
      kind: named(
        [...PLASTERS.map((plaster) => plaster.kind), "custom"],
        "a plaster of the table",
        "casting list plasters",
      )
        .prefault("type-3")
        .register(MEANINGS, { description: "Kind of plaster." }),
      water: number("plaster.water")
        .optional()
        .register(MEANINGS, { description: "g of water per g of powder; default the table's." }),
      density: number("plaster.density")
        .optional()
        .register(MEANINGS, { description: "Solid density of a custom powder, kg/L." }),
      fill: fillField(length("plaster.fill")).prefault("auto").register(MEANINGS, {
        description: "Fill line above the glass at the tool's edge; auto: thickest piece and cover.",
      }),
      cover: length("plaster.cover")
        .prefault(`${USUAL_COVER} mm`)
        .register(MEANINGS, { description: "Least plaster over the pieces." }),
      film: length("plaster.film")
        .optional()
        .register(MEANINGS, { description: "Thickness of the film on the glass, where it counts." }),
      spare: fields
        .share({ least: 0, most: 1 })
        .prefault("10%")
        .register(MEANINGS, { description: "Extra mixed, on top of the cast volume." }),
    })
      .prefault({})
      .register(MEANINGS, { description: "The plaster, and how much of it." }),
    dam: record({
      sheet: length("dam.sheet").prefault("1 mm").register(MEANINGS, { description: "Thickness of the dam's sheet." }),
      overlap: length("dam.overlap").prefault("40 mm").register(MEANINGS, { description: "How far its ends overlap." }),
    })
      .prefault({})
      .register(MEANINGS, { description: "The sheet round the tool that holds the plaster." }),
    socket: record({
      diameter: length("socket.diameter").meta({ description: "Outside diameter." }),
      bore: length("socket.bore").optional().register(MEANINGS, { description: "Inside diameter; none: it is solid." }),
      length: length("socket.length").meta({ description: "Length along the tool's axis." }),
      foot: choice(["pieces", "glass"])
        .default("pieces")
        .register(MEANINGS, { description: "What it stands on: the pieces, or the glass between them." }),
      plugged: flag
        .default(true)
        .register(MEANINGS, { description: "Whether its bore is plugged, so that no plaster runs in." }),
    })
      .optional()
      .register(MEANINGS, { description: "Drive socket set in the back on the tool's axis." }),
    container: containerIn(fields).optional().register(MEANINGS, { description: "What the plaster is mixed in." }),
    setup: record({
      given: flag.optional().register(MEANINGS, {
        description:
          "Written by plans: false where the job has no set-up of its own, whose faults would stop it; a value changed beside it makes it one.",
      }),
      offset: offsetField(length("setup.offset"))
        .prefault("tangent")
        .register(MEANINGS, { description: "Tool's axis from the mirror's: tangent, or a length." }),
      stroke: length("setup.stroke").prefault("0").register(MEANINGS, { description: "Stroke of the arm." }),
      turntable: listOf(fields.number({ least: 0.1, most: 1000 }, "45"), { least: 1, most: 20 }, "speeds in rpm")
        .prefault(["30", "45", "60"])
        .register(MEANINGS, { description: "Speeds of the turntable, rpm." }),
      "tool-turns": fields
        .number({ least: -10, most: 10 }, "0.9")
        .prefault("0.9")
        .register(MEANINGS, { description: "The tool's turns per turn of the mirror; below 0 the other way round." }),
      weights: listOf(fields.mass(LIMITS["setup.weights"]), { least: 1, most: 20 }, "masses")
        .prefault(WEIGHTS.map(String))
        .register(MEANINGS, { description: "Weights put on the tool." }),
      grain: grainField
        .prefault("F24")
        .register(MEANINGS, { description: "Grain of the first pass: an F grit, or its size such as 25 µm." }),
      grades: listOf(
        record({
          grain: grainField.meta({ description: "A grain finer than the one before." }),
          depth: length("setup.grades.depth")
            .optional()
            .register(MEANINGS, { description: "How much it takes off; default three sizes of the grain before." }),
        }),
        { least: 1, most: 20 },
        "grades with grain and, if wished, depth",
      )
        .optional()
        .register(MEANINGS, { description: "The grains after the first; default: each about half the one before." }),
      rate: record({
        minutes: fields
          .number({ least: 0.1, most: 10_000 }, "30")
          .meta({ description: "How long it was ground, minutes." }),
        change: fields
          .coordinate(LIMITS["setup.rate.change"].most, "0.05 mm")
          .meta({ description: "How much the sagitta over the blank changed; above 0: deeper." }),
        error: length("setup.rate.error")
          .prefault("0.003 mm")
          .register(MEANINGS, { description: "Standard uncertainty of the change." }),
      })
        .optional()
        .register(MEANINGS, { description: "What this pass was measured to do in a time." }),
    })
      .prefault({})
      .register(MEANINGS, { description: "The first pass." }),
    print: record({
      paper: paperField(units)
        .prefault("A4")
        .register(MEANINGS, { description: "Paper: a name, WIDTHxHEIGHT, or full." }),
      overlap: length("print.overlap")
        .prefault("10 mm")
        .register(MEANINGS, { description: "How far neighbouring pages overlap." }),
      measured: record({
        x: length("print.measured").meta({ description: "Width of the square on the page." }),
        y: length("print.measured").meta({ description: "Height of the square on the page." }),
      })
        .optional()
        .register(MEANINGS, { description: "What the printed 100 mm square measured, to correct a printer." }),
      guides: record({
        sectors: whole({ least: 0, most: 36 })
          .prefault("0")
          .register(MEANINGS, { description: "Number of faint lines from the centre out, on the placement template." }),
        rings: whole({ least: 0, most: 10 })
          .prefault("0")
          .register(MEANINGS, { description: "Number of faint rings about the centre, on the placement template." }),
      })
        .prefault({})
        .register(MEANINGS, { description: "Faint lines that help the eye on the placement template." }),
    })
      .prefault({})
      .register(MEANINGS, { description: "The printed sheets." }),
  });
}

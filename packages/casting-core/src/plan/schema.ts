/** A JSON Schema. */
type Json = Record<string, unknown>;

const n: Json = { type: "number" };
const whole: Json = { type: "integer", minimum: 0 };
const s: Json = { type: "string" };
const yes: Json = { type: "boolean" };
const point: Json = { type: "array", items: n, minItems: 2, maxItems: 2 };

function list(items: Json): Json {
  return { type: "array", items };
}

function word(...words: string[]): Json {
  return { enum: words };
}

/** A record; a key that ends in `?` may be absent. Others than these are refused. */
function record(keys: Record<string, Json>): Json {
  const names = Object.keys(keys);
  return {
    type: "object",
    properties: Object.fromEntries(names.map((name) => [name.replace(/\?$/, ""), keys[name]])),
    required: names.filter((name) => !name.endsWith("?")),
    additionalProperties: false,
  };
}

function means(schema: Json, description: string): Json {
  return { ...schema, description };
}

const bounds = record({ least: n, most: n });
const curve = record({ curveRadius: n, sagitta: n });

const blank = record({
  diameter: n,
  curve: word("concave", "convex", "flat"),
  "curveRadius?": means(n, "absent for a flat"),
  sagitta: means(n, "over the whole diameter"),
  "target?": curve,
  "measured?": means(
    record({
      radius: n,
      uncertainty: means(n, "standard uncertainty of the radius"),
      readings: whole,
      "spread?": means(n, "standard deviation, µm"),
      contact: means(n, "radius of the circle of contact, or half the bar"),
      zones: list(record({ at: n, "angle?": n, off: means(n, "deeper than the mean, µm"), radius: n })),
      "astigmatism?": record({ amount: n, uncertainty: n, deepest: n }),
    }),
    "from spherometer readings",
  ),
});

const layout = record({
  seed: whole,
  gap: means(n, "as asked for"),
  hand: means(n, "added to the gap in laying out"),
  pieces: list(
    record({
      id: whole,
      kind: means(whole, "index in job.pieces"),
      "item?": s,
      x: n,
      y: n,
      angle: means(n, "counter-clockwise from the job's pose"),
      outline: means({ ...list(point), minItems: 3 }, "counter-clockwise, closed implicitly"),
      "radius?": means(n, "of a round piece"),
    }),
  ),
  unplaced: list(record({ kind: whole, count: whole })),
  quality: record({
    count: whole,
    coverage: n,
    hardCoverage: n,
    "gapMin?": means(n, "absent for a single piece"),
    rimMin: n,
    "latticeCount?": whole,
    radialVariation: n,
    symmetry: n,
    zoning: n,
    offCentre: n,
    "byHand?": means(
      record({ "gapMin?": n, rimMin: n, radialVariation: n, symmetry: n }),
      "what a person's hand makes of it, simulated",
    ),
  }),
});

const grooveTotals = record({
  length: n,
  cuts: whole,
  retraced: n,
  area: n,
  share: n,
  volume: n,
  uncut: whole,
  "minutes?": n,
});

const grooves = record({
  cutter: n,
  depth: n,
  nodes: list(point),
  edges: list(
    record({
      a: whole,
      b: whole,
      points: { ...list(point), minItems: 2 },
      z: means(list(n), "height of the floor at each point, 0 at the face's edge"),
      room: n,
      cut: yes,
      "between?": word("rim", "clear"),
      "outlet?": { const: true },
    }),
  ),
  cuts: list(list(point)),
  "toolpath?": means(list(list(point)), "the cuts with their corners rounded"),
  totals: grooveTotals,
  "patterns?": list(record({ pattern: word("all", "mains"), totals: grooveTotals })),
});

const pour = record({
  fill: record({ edge: n, centre: n, cover: n }),
  plaster: record({ kind: s, name: s, water: n, density: n, yield: n, wetDensity: n, dryDensity: n }),
  moldVolume: n,
  piecesVolume: n,
  socketVolume: n,
  castVolume: n,
  mixVolume: n,
  "socket?": record({ foot: n, embedded: n, projecting: n }),
  "container?": record({ capacity: n }),
  batches: list(
    record({
      powder: n,
      water: n,
      mix: n,
      "waterMark?": n,
      "mixMark?": n,
      "waterMarkAlongWall?": n,
      "mixMarkAlongWall?": n,
    }),
  ),
  repair: record({ depth: n, mix: n, powder: n, water: n }),
  heat: record({ rise: n, ceiling: n }),
  schedule: record({ pourBefore: n, openAfter: n, warmUntil: n, "betweenBatches?": n }),
  drying: record({ freeWater: n, temperature: n, limit: n }),
  fit: record({
    expansion: bounds,
    mismatch: bounds,
    meets: word("edge", "centre", "even"),
    rimGrowth: bounds,
    "bow?": record({ gradient: n, sagitta: n }),
  }),
  mass: record({ wet: n, dry: n, pieces: n, socket: n }),
  lift: record({ guideline: n, people: whole }),
  pressure: n,
  pieces: list(record({ kind: whole, mass: n, massInMix: n, slides: yes })),
  dam: record({
    length: n,
    height: n,
    formDiameter: n,
    "formerAt?": n,
    "centring?": n,
    level: record({ slope: n, wedge: n }),
  }),
  shopping: record({
    pieces: list(record({ kind: whole, name: s, count: whole, spares: whole, mass: n })),
    powder: n,
    film: n,
    dam: record({ length: n, height: n, sheet: n }),
    "socket?": record({ diameter: n, length: n }),
  }),
});

const sweepRow = record({ offset: n, stroke: n, edgePressure: n, bend: n, zoning: n, "match?": n });

const setup = record({
  offset: n,
  stroke: n,
  overhang: n,
  edgePressure: n,
  liftsAt: n,
  reachesCentre: yes,
  reachesEdge: yes,
  loads: list(record({ weight: n, mass: n, worn: n, fresh: n, edge: n })),
  speeds: list(record({ turntable: n, tool: n, rim: n })),
  drive: record({ height: n, friction: n, shift: n, leading: n }),
  ladder: list(record({ step: whole, turntable: n, weight: n, reason: s })),
  wear: record({
    zones: list(record({ at: n, removal: n, "wanted?": n })),
    bend: n,
    does: word("deepens", "flattens", "keeps"),
    "toward?": word("toward", "away", "neither"),
  }),
  sweep: list(sweepRow),
  "closest?": sweepRow,
  "removal?": record({
    first: word("centre", "edge"),
    zones: list(record({ at: n, depth: n })),
    deepest: n,
    volume: n,
    "mass?": n,
    overTool: n,
  }),
  "time?": record({ minutes: n, least: n, most: n }),
  bevel: record({ edgeRemoval: n, needed: n, face: n, "now?": n, "left?": n, "renew?": s, back: n }),
  grains: list(record({ name: s, size: n, depth: n, damage: bounds })),
  grain: record({ name: s, size: n, mismatch: n, bridges: yes }),
  sizes: list(record({ diameter: n, sagitta: n, mass: n, hollow: n, pieces: whole, thickness: n, reason: s })),
  retainer: record({
    inside: n,
    outside: n,
    height: n,
    low: yes,
    clearance: n,
    eccentricity: n,
    cushion: n,
    slots: record({ count: whole, width: n }),
    holes: record({ count: whole, diameter: n, circle: n }),
  }),
});

/**
 * The JSON Schema (draft-7) of `plan.json`. Lengths mm, areas mm², volumes mL, masses kg, angles degrees, temperatures °C,
 * pressures kPa; what each key means stands beside its type in the library.
 */
export function planJsonSchema(): Json {
  return {
    $schema: "http://json-schema.org/draft-07/schema#",
    title: "A plan made by casting",
    ...record({
      format: { const: "casting-plan/1" },
      generator: record({ name: { const: "casting" }, version: s }),
      job: means({ type: "object" }, "the job as understood, defaults filled in, lengths in mm"),
      blank,
      tool: record({ diameter: n, rim: n, "curveRadius?": n, sagitta: n }),
      layout,
      grooves,
      pour,
      setup,
      notes: list(record({ code: s, level: word("caution", "warning", "info"), text: s })),
    }),
  };
}

import { type Json, list, means, n, open, point, record, s, whole, word, yes } from "./json-schema.js";
import { pour, setup } from "./schema-work.js";

/** The keys of the job that a plan is measured by; the others are those of the job file. */
const job = open({
  title: s,
  units: word("mm", "in"),
  "bare?": means(word("mm"), "of bare numbers, so that the job can be read again: mm, and mL"),
  blank: open({ diameter: n, curve: word("concave", "convex", "flat") }),
  tool: record({ diameter: n, rim: n }),
  pieces: { ...list(open({ "share?": n, "stock?": whole })), minItems: 1 },
  layout: open({
    gap: n,
    seed: whole,
    hand: n,
    "keep-clear": list(record({ x: n, y: n, diameter: n })),
  }),
  grooves: open({ cutter: n, depth: n, clearance: n, pattern: word("all", "mains"), "rim-loop": yes }),
  plaster: open({ "kind?": s, "water?": n, cover: n, spare: n, "film?": n }),
  dam: record({ sheet: n, overlap: n }),
  "socket?": open({ diameter: n, "bore?": n, length: n, foot: word("pieces", "glass"), plugged: yes }),
  "container?": open({ shape: s, height: n, headroom: n }),
});

const curve = record({ curveRadius: n, sagitta: n });

const blank = record({
  diameter: n,
  curve: word("concave", "convex", "flat"),
  "curveRadius?": means(n, "absent for a flat"),
  sagitta: means(n, "over the whole diameter"),
  "target?": curve,
  "mass?": means(n, "behind a flat back, of a glass whose density is known"),
  "measured?": means(
    record({
      radius: n,
      uncertainty: means(n, "standard uncertainty of the radius"),
      readings: whole,
      "spread?": means(n, "standard deviation, µm"),
      contact: means(n, "radius of the circle of contact, or half the bar"),
      zones: list(record({ at: n, "angle?": n, "along?": n, off: means(n, "deeper than the mean, µm"), radius: n })),
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
      job: means(job, "the job as understood, defaults filled in, lengths in mm"),
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

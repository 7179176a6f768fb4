import type { Job, JobPiece } from "../../packages/casting-core/src/job/types.js";

/** A typed job with every default filled in, for tests of single stages: a 300 mm tool of 20 mm hexagons. */
export function exampleJob(changes: Partial<Job> = {}): Job {
  return {
    title: "Coarse tool for a 400 mm mirror",
    units: "mm",
    blank: { diameter: 400, curve: "concave", radius: 3060 },
    tool: { diameter: 300, rim: 3 },
    pieces: [hexagon(20)],
    layout: { gap: 4, seed: 1, count: "max", hand: 0, "keep-clear": [] },
    grooves: { cutter: 3, depth: 2.5, clearance: 0.5, pattern: "all", order: "fewest", "rim-loop": false },
    plaster: { kind: "type-3", fill: 32, cover: 20, spare: 0.1 },
    dam: { sheet: 1, overlap: 40 },
    setup: {
      given: false,
      offset: "tangent",
      stroke: 0,
      turntable: [30, 45, 60],
      "tool-turns": 0.9,
      weights: [0, 4.5, 9],
      grain: "F24",
    },
    print: { paper: "A4", overlap: 10, guides: { sectors: 0, rings: 0 } },
    ...changes,
  };
}

/** Hexagonal tiles of our own, 6 mm thick. */
export function hexagon(across: number): JobPiece {
  return { shape: "hexagon", across, thickness: 6, density: 2.35 };
}

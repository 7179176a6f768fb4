// Draws the channels of a few tools as DXF and has each audited, against its plan, by Debian's python3-ezdxf.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { run, setUp } from "./setup.mjs";

setUp();
run("npx", ["tsc", "-p", "packages/casting-core/tsconfig.json"]);
const { VERSION, blankOf, groovesDxf, layOut, pieceKinds, planGrooves, toolOf } = await import(
  "../packages/casting-core/dist/index.js"
);

const hexagon = { shape: "hexagon", across: 20, thickness: 6, density: 2.35 };
const round = { shape: "round", diameter: 24, thickness: 6, density: 2.35 };
const cases = [
  { title: "Hexagons, a \\ and 50%% off", pieces: [hexagon], diameter: 200 },
  { title: "Mixed, with the rim loop ½″", pieces: [hexagon, round], diameter: 180, grooves: { "rim-loop": true } },
  { title: "Wider pattern", pieces: [round], diameter: 250, grooves: { pattern: "mains", order: "one" } },
];

const folder = mkdtempSync(join(tmpdir(), "casting-dxf-"));
try {
  for (const { title, pieces, diameter, grooves } of cases) {
    const job = {
      title,
      units: "mm",
      blank: { diameter: 300, curve: "concave", radius: 2400 },
      tool: { diameter, rim: 3 },
      pieces,
      layout: { gap: 4, seed: 1, count: "max", hand: 0, "keep-clear": [] },
      grooves: {
        cutter: 3,
        depth: 2.5,
        clearance: 0.5,
        pattern: "all",
        order: "fewest",
        "rim-loop": false,
        ...grooves,
      },
      setup: {
        given: false,
        offset: "tangent",
        stroke: 0,
        turntable: [45],
        "tool-turns": 0.9,
        weights: [0],
        grain: "F24",
      },
    };
    const tool = toolOf(job, blankOf(job));
    const kinds = pieceKinds(job);
    const layout = layOut(job, tool, kinds);
    const plan = { generator: { name: "casting", version: VERSION }, job, tool, layout };
    plan.grooves = planGrooves(job, tool, layout);
    writeFileSync(join(folder, "grooves.dxf"), groovesDxf(plan));
    writeFileSync(join(folder, "plan.json"), JSON.stringify(plan));
    run("/usr/bin/python3", [".ci/audit-dxf.py", join(folder, "grooves.dxf"), join(folder, "plan.json")]);
  }
} finally {
  rmSync(folder, { recursive: true });
}

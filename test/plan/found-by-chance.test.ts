// Jobs that random runs (npm run fuzz) once found faults with.
import { describe, expect, it, test } from "vitest";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { checkPlan } from "../../packages/casting-core/src/plan/check.js";
import { planJson } from "../../packages/casting-core/src/plan/json.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";

const JOBS = {
  "few pieces far apart: the least gap lies between pieces that are no near neighbours":
    "blank: {diameter: 366.955, radius: 2057.5}\ntool: {diameter: 366.955, rim: 1.299}\npieces: {shape: square, across: 40.025, thickness: 2.013, density: 2.489}\nlayout: {seed: 381445, gap: 1.538, count: 9, keep-clear: [{x: 8.807, y: 18.512, diameter: 56.167}]}\n",
  "a single piece has no gap":
    "blank: {diameter: 200, radius: 2000}\npieces: {item: iso-4032-m10}\nlayout: {count: 1}\n",
  "a tool that never reaches the mirror's outer third":
    "blank: {diameter: 427.146, radius: 5380.758}\ntool: {diameter: 229.805, rim: 1.788}\npieces: {shape: square, across: 17.841, thickness: 7.404, density: 5.546}\nlayout: {seed: 437496, count: 60}\nsetup: {offset: 16.929, tool-turns: 1.19, grain: F1500}\n",
  "a circle kept clear that reaches over the tool's edge: no outlet runs from a junction beside it through a piece":
    "blank: {diameter: 134.28, radius: 475.48548}\ntool: {diameter: 72.77976, rim: 4.723}\npieces: {shape: round, diameter: 6.48, thickness: 7.581, density: 3.181, bore: 1.82}\nlayout: {seed: 631871, gap: 2.222, keep-clear: [{x: 29.97, y: 18.872, diameter: 52.684}]}\nplaster: {fill: 42.667}\n",
  "pieces that touch: the room of a channel is that to the nearest piece, wherever it stands":
    "blank: {diameter: 375.786, radius: 4178.364534}\ntool: {diameter: 323.551746, rim: 1.399}\npieces: [{shape: square, across: 53.248, thickness: 6.033, density: 5.362}, {shape: triangle, across: 63.468, thickness: 2.52, density: 2.497}, {item: iso-4032-m12}]\nlayout: {seed: 136141, gap: 0}\ngrooves: {cutter: 3.244, depth: 2.261, clearance: 1.148, rim-loop: true}\nplaster: {kind: gypsum-cement-22, fill: 24.766, cover: 7.147}\n",
  "a circle kept clear over the tool's edge: what lies behind a piece is no junction with the edge, and is not cut through it":
    "blank: {diameter: 285.125, curve: flat}\ntool: {diameter: 103.21525, rim: 3.755}\npieces: {item: asme-b18.2.2-1/2}\nlayout: {seed: 301392, gap: 2.416, keep-clear: [{x: -22.022, y: 24.146, diameter: 53.163}]}\n",
  "a middle line that grazes a corner has no room there, whichever side of the corner it passes":
    "blank: {diameter: 241.48, curve: convex, focal-ratio: 9.775}\ntool: {diameter: 192.94252, rim: 5.793}\npieces: [{shape: hexagon, across: 20.576, thickness: 8.068, density: 3.188, bore: 6.173, share: 30%}, {shape: hexagon, across: 22.51, thickness: 7.693, density: 2.579}, {shape: hexagon, across: 16.358, thickness: 7.821, density: 5.974}]\nlayout: {seed: 458809, gap: 5.158, hand: 0.916, keep-clear: [{x: 26.43, y: 25.265, diameter: 54.445}]}\n",
  "a figure of more digits than a plan carries, and a target close by: what is to be ground off follows from the job as the plan holds it":
    "blank: {diameter: 336.659, radius: 2687.885456, target: {radius: 2685.197570544}}\ntool: {diameter: 317.469437, rim: 4.18}\npieces: {shape: square, across: 22.625, thickness: 3.957, density: 4.745}\nlayout: {seed: 27355, count: 9}\n",
  "a channel as narrow as the cutter goes: its rounded corners end on the way to a micrometre and still keep clear":
    "blank: {diameter: 318.649, radius: 4869.594018}\ntool: {diameter: 147.853136, rim: 3.63}\npieces: {shape: round, diameter: 8.876, thickness: 7.445, density: 4.47}\nlayout: {seed: 406070, gap: 3.179, keep-clear: [{x: 13.769, y: 2.849, diameter: 9.533}]}\nsocket: {diameter: 25.749, length: 29.355, foot: glass, plugged: true}\n",
  "pieces that touch, sampled finely round the tool's edge: no junction comes to lie outside the tool":
    "blank: {diameter: 207.528, radius: 1761.91272}\ntool: {diameter: 76.992888, rim: 5.451}\npieces: {shape: polygon, points: [[2.06, 1.534], [-2.313, 1.116], [-0.45, -2.528]], thickness: 6.428, density: 4.889}\nlayout: {seed: 740530, gap: 0}\ngrooves: {cutter: 3.4, depth: 4.172, clearance: 0.833}\nsocket: {diameter: 14.547, length: 50.573, foot: glass, plugged: true}\n",
  "two pieces far apart: a channel that bends tightly is no larger than its length and width":
    "blank: {diameter: 467.593, radius: 7008.283884}\ntool: {diameter: 198.727025, rim: 0.068}\npieces: {item: iso-4032-m16}\nlayout: {seed: 839526, gap: 0, count: 2, keep-clear: [{x: 14.341, y: -20.028, diameter: 38.91}]}\nsocket: {diameter: 30.087, length: 27.517, foot: glass, plugged: true}\n",
  "rounds that may touch: none overlaps where settling them once more was in vain":
    "blank: {diameter: 139.557, curve: convex, radius: 2162.156601}\ntool: {diameter: 139.557, rim: 0.938}\npieces: {item: iso-7089-m6}\nlayout: {seed: 405762, gap: 0}\ngrooves: {cutter: 1.55, depth: 1.9, clearance: 0.693, pattern: mains, order: one}\nsocket: {diameter: 24.037, length: 21.659, foot: glass, plugged: false}\n",
};

describe("a job that once went wrong", () => {
  it.each(Object.entries(JOBS))("%s", (_, text) => {
    const plan = JSON.parse(planJson(makePlan(readJob(text))));
    expect(checkPlan(plan).findings.filter(({ holds }) => !holds)).toEqual([]);
  });
});

test("a kind that gets no place raises neither fill line nor socket", () => {
  const nuts = "  - {shape: hexagon, across: 18 mm, thickness: 8 mm, density: 7.85}\n";
  const thick = "  - {shape: hexagon, across: 30 mm, thickness: 60 mm, density: 7.85, share: 0.01%}\n";
  const [alone, beside] = [nuts, nuts + thick].map((pieces) =>
    makePlan(
      readJob(
        `blank: {diameter: 260 mm, focal-ratio: 5}\ntool: {diameter: 200 mm}\npieces:\n${pieces}socket: {diameter: 60 mm, length: 100 mm}\n`,
      ),
    ),
  );
  expect(beside!.layout.pieces.filter(({ kind }) => kind === 1)).toEqual([]);
  expect(beside!.pour.fill).toEqual(alone!.pour.fill);
  expect(beside!.pour.socket).toEqual(alone!.pour.socket);
  expect(checkPlan(JSON.parse(planJson(beside!))).findings.filter(({ holds }) => !holds)).toEqual([]);
});

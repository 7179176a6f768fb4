// Prints how dense, even and irregular layouts come out, beside plain ways of laying. Worst of the seeds, not the best.

import { layPieces } from "../../packages/casting-core/dist/layout/layout.js";
import { latticeCount } from "../../packages/casting-core/dist/layout/quality/lattice.js";
import { orientationOrder } from "../../packages/casting-core/dist/layout/quality/orientation.js";
import { RINGS, radialVariation, ringCoverage } from "../../packages/casting-core/dist/layout/quality/rings.js";
import { symmetry } from "../../packages/casting-core/dist/layout/quality/symmetry.js";
import { forceLayout, poissonDisk, randomSequential } from "./baselines.mjs";
import { CASES, CIRCLES, hexagon, jobOf, RIM, round } from "./cases.mjs";
import { record } from "./record.mjs";

const seeds = Number(process.argv.find((word) => /^\d+$/.test(word)) ?? 10);

const ours = ({ kinds, diameter, gap }, seed) =>
  layPieces(jobOf(gap, seed), { diameter, rim: RIM, sagitta: 0 }, kinds).pieces;

/** Radius of the largest circle that holds no piece, on a raster of a 150th of the tool. */
function emptyCircle(pieces, kinds, radius) {
  let most = 0;
  const step = radius / 75;
  for (let x = -radius; x <= radius; x += step) {
    for (let y = -radius; y <= radius; y += step) {
      let room = radius - Math.hypot(x, y);
      for (const piece of pieces) {
        if (room <= most) break;
        const centre = Math.hypot(piece.x - x, piece.y - y);
        if (centre - kinds[piece.kind].reach > room) continue;
        room = Math.min(room, awayFrom(piece, x, y));
      }
      most = Math.max(most, room);
    }
  }
  return most;
}

function awayFrom({ outline }, x, y) {
  let inside = true;
  let least = Number.POSITIVE_INFINITY;
  outline.forEach(([ax, ay], c) => {
    const [bx, by] = outline[(c + 1) % outline.length];
    const [dx, dy] = [bx - ax, by - ay];
    if (dx * (y - ay) - dy * (x - ax) < 0) inside = false;
    const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
    least = Math.min(least, Math.hypot(x - ax - t * dx, y - ay - t * dy));
  });
  return inside ? 0 : least;
}

function measure(task, lay, seed) {
  const from = process.cpuUsage();
  const pieces = lay(task, seed);
  const used = process.cpuUsage(from);
  const radius = task.diameter / 2;
  const area = pieces.reduce((sum, { kind }) => sum + task.kinds[kind].area, 0);
  const moment = (axis) => pieces.reduce((sum, piece) => sum + piece[axis] * task.kinds[piece.kind].area, 0) / area;
  return {
    count: pieces.length,
    coverage: area / (Math.PI * radius * radius),
    variation: radialVariation(ringCoverage(pieces, radius, RINGS)),
    likeness: symmetry(pieces, radius),
    balance: Math.hypot(moment("x"), moment("y")) / radius,
    hole: emptyCircle(pieces, task.kinds, radius - RIM),
    order: orientationOrder(task.kinds, pieces),
    seconds: (used.user + used.system) / 1e6,
  };
}

function row(group, name, results, lattice) {
  const worst = (key) => Math.max(...results.map((result) => result[key]));
  const count = Math.min(...results.map((result) => result.count));
  const times = results.map(({ seconds }) => seconds).sort((a, b) => a - b);
  const cells = [
    name.padEnd(14),
    String(count).padStart(6),
    (count / lattice).toFixed(3).padStart(7),
    Math.min(...results.map(({ coverage }) => coverage))
      .toFixed(3)
      .padStart(8),
    worst("variation").toFixed(4).padStart(9),
    worst("likeness").toFixed(3).padStart(8),
    worst("balance").toFixed(4).padStart(8),
    worst("hole").toFixed(1).padStart(6),
    worst("order").toFixed(2).padStart(6),
    times[times.length >> 1].toFixed(2).padStart(7),
  ];
  console.log(cells.join(" "));
  record(`layout, ${group}, ${name}`, {
    count,
    variation: worst("variation"),
    likeness: worst("likeness"),
    hole: worst("hole"),
    seconds: times[times.length >> 1],
  });
}

ours(CASES[0], 0); // a warm process
for (const task of CASES) {
  const lattice = task.lattice ?? latticeCount(task.kinds[0], task.diameter / 2 - RIM, task.gap);
  console.log(
    `\n${task.name} in ${task.diameter} mm, rim ${RIM}: ordered lattice ${lattice}; worst of ${seeds} seeds, median s`,
  );
  console.log("                count   /latt coverage variation likeness balance   hole  order       s");
  const all = Array.from({ length: seeds }, (_, n) => n + 1);
  row(
    task.name,
    "casting",
    all.map((seed) => measure(task, ours, seed)),
    lattice,
  );
  const few = all.slice(0, 2);
  row(
    task.name,
    "sequential",
    few.map((seed) => measure(task, randomSequential, seed)),
    lattice,
  );
  row(
    task.name,
    "poisson disk",
    few.map((seed) => measure(task, poissonDisk, seed)),
    lattice,
  );
  row(
    task.name,
    "d3-force",
    few.map((seed) => measure(task, forceLayout, seed)),
    lattice,
  );
}

console.log("\nequal circles in a circle, no gap: pieces laid of the best known");
for (const { ratio, best } of CIRCLES) {
  // Our snap to micrometres needs some room: circles of 20 mm make it a ten-thousandth of the radius.
  const diameter = 2 * ratio * 10;
  const counts = Array.from({ length: seeds }, (_, n) => {
    const { pieces } = layPieces(jobOf(0, n + 1), { diameter, rim: 0, sagitta: 0 }, [round(20)]);
    return pieces.length;
  });
  record(`circles, R/r ${ratio}`, { count: Math.min(...counts) });
  console.log(`R/r ${ratio}: ${Math.min(...counts)} to ${Math.max(...counts)} of ${best}`);
}

if (process.argv.includes("--large")) {
  console.log("\nhexagons 20, gap 3, larger tools: pieces and seconds");
  for (const diameter of [410, 800, 1570, 3110]) {
    const result = measure({ kinds: [hexagon(20)], diameter, gap: 3 }, ours, 1);
    record(`large, ${diameter} mm`, { count: result.count, variation: result.variation, seconds: result.seconds });
    console.log(
      `${diameter} mm: ${result.count} pieces, variation ${result.variation.toFixed(4)}, ${result.seconds.toFixed(1)} s`,
    );
  }
}

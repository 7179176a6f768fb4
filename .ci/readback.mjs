// Many small layouts written out and read back: gap and rim proved again on the numbers in every format, tolerance 0.
// node .ci/readback.mjs --jobs 2700 --seed 1; about three jobs in four can be done and are read back.
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ITEMS, randomJob } from "./random-job.mjs";
import { clearance, whole } from "./remeasure/exact.mjs";
import { READ, setFaults } from "./remeasure/files.mjs";
import { gapAndRimFaults, shapeOfPiece } from "./remeasure/layout.mjs";
import { moved, pushOf } from "./remeasure/tamper.mjs";

const option = (name, fallback) => Number(process.argv[process.argv.indexOf(`--${name}`) + 1] || fallback) || fallback;
const [jobs, first] = [option("jobs", 40), option("seed", 1)];
const MAKE = new URL("make-many.mjs", import.meta.url).pathname;
/** Jobs of one process. */
const BATCH = 25;
const folder = mkdtempSync(join(tmpdir(), "readback-"));
const faults = [];
let [layouts, pieces, refused, tried, tampered] = [0, 0, 0, 0, 0];
/** Whether a set is to be spoilt: the next that can be. */
let due = false;

/** Has the sets of some jobs written and measures each; a job that cannot be done is none to read back. */
function readBack(from, count) {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder);
  const seeds = Array.from({ length: count }, (_, n) => from + n);
  for (const seed of seeds) writeFileSync(join(folder, `${seed}.yaml`), randomJob(seed, true));
  const { status, stdout, stderr } = spawnSync(process.execPath, [MAKE, folder, READ.join(",")], { encoding: "utf8" });
  if (status !== 0) throw new Error(`seeds from ${from}: ${stderr}`);
  const codes = JSON.parse(stdout);
  for (const seed of seeds) {
    const code = codes[`${seed}.yaml`];
    if (code === 0) measure(seed, join(folder, String(seed)));
    else if (code === 1 || code === 2) refused += 1;
    else faults.push(`seed ${seed}: exit ${code}`);
  }
}

function measure(seed, set) {
  const files = new Map(READ.map((name) => [name, readFileSync(join(set, name))]));
  const plan = JSON.parse(files.get("plan.json").toString("utf8"));
  layouts += 1;
  pieces += plan.layout.pieces.length;
  faults.push(...setFaults((name) => files.get(name), ITEMS).map((fault) => `seed ${seed}: ${fault}`));
  // Now and then: the measuring itself must be able to fail.
  if (layouts % 20 === 1) due = true;
  if (due && plan.layout.pieces.length > 1) due = !tamper(seed, files, plan);
}

/** One piece moved by one micrometre in one file at a time, and then as far as breaks the gap; whether one can be. */
function tamper(seed, files, plan) {
  const svg = files.get("placement.svg").toString("utf8");
  const spoil = (name, id) => moved(name, files.get(name), { plan, svg, id });
  const pdf = "templates.pdf";
  // The numbers of a PDF may not grow by more than there is to spare: of another piece they do not.
  const ids = plan.layout.pieces.map((_, n) => 1 + ((seed + n) % plan.layout.pieces.length));
  const id = ids.find((one) => spoil(pdf, one).length === files.get(pdf).length);
  if (id === undefined) return false;
  for (const name of ["plan.json", "placement.svg", "grooves.dxf", pdf]) {
    const spoilt = spoil(name, id);
    if (spoilt.equals(files.get(name))) throw new Error(`seed ${seed}: ${name} could not be spoilt`);
    const found = setFaults((other) => (other === name ? spoilt : files.get(other)), ITEMS);
    if (found.some((fault) => fault.includes(`piece ${id} `))) tampered += 1;
    else faults.push(`seed ${seed}: piece ${id} moved in ${name} was not found out`);
  }
  breakGap(seed, plan, id);
  return true;
}

/** Moves a piece toward its neighbour, micrometre by micrometre: the first that is too near must be found, none before. */
function breakGap(seed, plan, id) {
  const { gap, hand } = plan.layout;
  const all = plan.layout.pieces.map(shapeOfPiece);
  const [dx, dy] = pushOf(plan, id).map((step) => Math.round(step * 1e6));
  const to = ([x, y]) => [(Math.round(x * 1e6) + dx) / 1e6, (Math.round(y * 1e6) + dy) / 1e6];
  for (let step = 0; step < 50_000; step++) {
    const own = all[id - 1];
    const others = all.filter((piece) => piece !== own);
    const near = Math.min(...others.map((piece) => clearance(own, piece)));
    const broken = near < Number(whole(gap) + whole(hand)) / 1e18;
    const said = gapAndRimFaults(all, { ...plan.layout, ...plan.tool, rim: -1e4 }).length > 0;
    if (Math.abs(near - gap - hand) > 1e-9 && broken !== said)
      faults.push(`seed ${seed}: a gap of ${near} mm was judged wrongly`);
    if (broken) {
      tried += 1;
      return;
    }
    all[id - 1] = own.radius === undefined ? { corners: own.corners.map(to) } : { ...own, centre: to(own.centre) };
  }
}

try {
  for (let seed = first; seed < first + jobs; seed += BATCH) readBack(seed, Math.min(BATCH, first + jobs - seed));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
if (layouts >= 20 && tampered === 0)
  faults.push("no set could be spoilt, so nothing shows that a moved piece is found out");
for (const fault of faults.slice(0, 50)) console.error(fault);
console.log(
  `${layouts} layouts of ${pieces} pieces read back from ${READ.join(", ")}: ${faults.length} faults; ${refused} jobs refused; ` +
    `${tampered} files with a piece moved by 1 µm found out, ${tried} gaps broken by steps of 1 µm`,
);
process.exitCode = faults.length > 0 ? 1 : 0;

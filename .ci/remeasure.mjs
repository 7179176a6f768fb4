// Measures a written set again: node .ci/remeasure.mjs DIR. Shares nothing with what made it but the catalogue's sizes.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { ITEMS } from "./random-job.mjs";
import { setFaults } from "./remeasure/files.mjs";

const [folder = "out"] = process.argv.slice(2);
const faults = setFaults((name) => readFileSync(join(folder, name)), ITEMS);
for (const fault of faults) console.error(fault);
console.log(`${folder}: ${faults.length} faults`);
process.exitCode = faults.length > 0 ? 1 : 0;

// Random jobs over the whole job space: each ends in a verified plan or in one clear sentence.
// npm run fuzz -- --jobs 300 --seed 1
import { CastingError, checkPlan, makePlan, planJson, readJob } from "../packages/casting-core/dist/index.js";
import { ITEMS, randomJob } from "./random-job.mjs";
import { planFaults } from "./remeasure/plan.mjs";

const option = (name, fallback) => Number(process.argv[process.argv.indexOf(`--${name}`) + 1] || fallback) || fallback;
const [jobs, first] = [option("jobs", 100), option("seed", 1)];

const tally = { plans: 0, invalid: 0, impossible: 0 };
let wrong = 0;
const sentences = new Map();
for (let seed = first; seed < first + jobs; seed++) {
  const text = randomJob(seed);
  try {
    const plan = JSON.parse(planJson(makePlan(readJob(text))));
    const faults = checkPlan(plan)
      .findings.filter(({ holds }) => !holds)
      .map(({ what, text: why }) => `${what}: ${why}`);
    faults.push(...planFaults(plan, ITEMS).map((fault) => `measured again: ${fault}`));
    if (faults.length > 0) {
      wrong += 1;
      console.log(`seed ${seed}: ${faults.join("; ")}\n  ${text}`);
    }
    tally.plans += 1;
  } catch (error) {
    if (error instanceof CastingError) {
      tally[error.kind] += 1;
      for (const { path, text: why } of error.faults) {
        const key = path.filter((part) => typeof part === "string").join(".");
        sentences.set(key, [...(sentences.get(key) ?? []), why]);
        if (/NaN|undefined|Infinity/.test(why)) {
          wrong += 1;
          console.log(`seed ${seed}: a sentence that says nothing: ${key}: ${why}`);
        }
      }
    } else {
      wrong += 1;
      console.log(`seed ${seed}: ${error?.stack?.split("\n").slice(0, 3).join(" | ")}\n  ${text}`);
    }
  }
}
console.log(
  `${jobs} jobs: ${tally.plans} verified plans, ${tally.impossible} impossible, ${tally.invalid} invalid, ${wrong} wrong`,
);
for (const [key, list] of [...sentences].sort())
  console.log(`  ${key || "job"}: ${list.length} x, such as: ${list[0]}`);
process.exitCode = wrong > 0 ? 1 : 0;

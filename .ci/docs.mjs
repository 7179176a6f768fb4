// Writes what the documents take from the program: the README's table of keys, the JSON Schemas, the README's
// pictures. A test fails where they are not up to date: npm run docs
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createSVGWindow } from "../packages/casting-cli/node_modules/svgdom/main-module.js";
import { sheetSvg } from "../packages/casting-core/dist/drawing/svg.js";
import {
  jobJsonSchema,
  jobTable,
  makePlan,
  planJsonSchema,
  readJob,
  SHEETS,
} from "../packages/casting-core/dist/index.js";

const root = new URL("..", import.meta.url);
const at = (path) => new URL(path, root);

const readme = readFileSync(at("README.md"), "utf8");
const table = `<!-- keys -->\n${jobTable()}<!-- /keys -->`;
writeFileSync(
  at("README.md"),
  readme.replace(/<!-- keys -->[\s\S]*<!-- \/keys -->/, () => table),
);

writeFileSync(at("fixtures/job.schema.json"), `${JSON.stringify(jobJsonSchema(), null, 2)}\n`);
writeFileSync(at("fixtures/plan.schema.json"), `${JSON.stringify(planJsonSchema(), null, 2)}\n`);

const plan = makePlan(readJob(readFileSync(at("fixtures/sample.yaml"), "utf8")));
mkdirSync(at("fixtures/pictures"), { recursive: true });
for (const name of ["placement", "grooves"]) {
  writeFileSync(at(`fixtures/pictures/${name}.svg`), sheetSvg(SHEETS[name](plan), createSVGWindow()));
}

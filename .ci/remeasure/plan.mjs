// A written plan measured again from its numbers alone, by code that shares nothing with what made it.
import { readFileSync } from "node:fs";
import { Ajv } from "ajv";
import { grooveFaults } from "./grooves.mjs";
import { layoutFaults, shapeOfPiece } from "./layout.mjs";
import { pourFaults } from "./pour.mjs";
import { kindsOf } from "./shapes.mjs";

const schema = JSON.parse(readFileSync(new URL("../../fixtures/plan.schema.json", import.meta.url), "utf8"));
const valid = new Ajv({ strict: false }).compile(schema);

/** What does not hold of a plan, one sentence each. `items`: sizes of catalogue pieces by name. */
export function planFaults(plan, items) {
  if (!valid(plan)) return [`schema: ${valid.errors[0].instancePath} ${valid.errors[0].message}`];
  const kinds = kindsOf(plan.job, items);
  const pieces = plan.layout.pieces.map(shapeOfPiece);
  return [...layoutFaults(plan, kinds), ...grooveFaults(plan, pieces), ...pourFaults(plan, kinds)];
}

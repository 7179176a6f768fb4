import type { Blank, Tool } from "../blank/types.js";
import type { Grooves } from "../grooves/types.js";
import type { Job } from "../job/types.js";
import type { Layout } from "../layout/types.js";
import type { Note } from "../notes.js";
import type { Pour } from "../pour/types.js";
import type { Setup } from "../setup/types.js";

/** Everything worked out for one job. Each sheet, table and sentence is drawn from it. */
export interface Plan {
  format: "casting-plan/1";
  generator: { name: "casting"; version: string };
  job: Job;
  blank: Blank;
  tool: Tool;
  layout: Layout;
  grooves: Grooves;
  pour: Pour;
  setup: Setup;
  notes: Note[];
}

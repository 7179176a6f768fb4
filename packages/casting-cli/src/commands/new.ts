import { starterJob } from "casting-core";
import { writeNew } from "../files/write-one.js";
import type { Terminal } from "../terminal.js";
import { safe } from "../terminal.js";
import { unitsOf } from "./options.js";

/** `casting new`: writes a commented starter job. */
export function newJob(file: string, options: { force?: boolean; units?: string }, terminal: Terminal): number {
  writeNew(file, starterJob(safe(file), unitsOf(options.units)), options.force === true);
  terminal.out(`${safe(file)} is written: fill in your blank, tool and pieces, then run  casting make ${safe(file)}\n`);
  return 0;
}

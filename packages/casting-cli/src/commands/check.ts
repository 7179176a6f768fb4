import { statSync } from "node:fs";
import { join } from "node:path";
import { checkPlan, planJson } from "casting-core";
import { reason } from "../files/errors.js";
import { entriesOf, readManifest } from "../files/manifest.js";
import { readPlanText } from "../files/read.js";
import { isHiddenName, namesIn } from "../files/whole.js";
import { FILE_NAMES } from "../outputs.js";
import { safe, type Terminal } from "../terminal.js";
import { usage } from "../usage.js";

/** One thing looked at: what, whether it holds, and what was found. */
interface Finding {
  what: string;
  holds: boolean;
  text: string;
}

/** What is found of most of what holds: it is said once. */
const HOLDS = "holds";

/** `casting check`: re-measures a saved plan, or a folder and the plan in it. 0 where all holds, else 1. */
export function check(target: string, options: { json?: boolean }, terminal: Terminal): number {
  const findings = isFolder(target) ? folderFindings(target) : planFindings(target);
  const holds = findings.every((finding) => finding.holds);
  if (options.json) {
    terminal.out(planJson({ holds, findings }));
    return holds ? 0 : 1;
  }
  for (const { what, holds: good, text } of findings)
    terminal.out(`${good ? "holds" : "FAILS"}  ${safe(what)}${text === HOLDS ? "" : `: ${safe(text)}`}\n`);
  const failed = findings.filter((finding) => !finding.holds).length;
  terminal.out(
    holds
      ? "Everything holds.\n"
      : `${failed} of ${findings.length} ${failed === 1 ? "does" : "do"} not hold; run casting make again, with --force over what is there.\n`,
  );
  return holds ? 0 : 1;
}

function isFolder(target: string): boolean {
  try {
    return statSync(target).isDirectory();
  } catch (error) {
    throw usage(`${target} could not be read: ${reason(error)}; name a plan.json or a folder that casting make wrote`);
  }
}

/** Whether a run may have left it: a file that `make` writes, or what it was preparing. All else is the maker's own. */
function isOurs(name: string): boolean {
  return FILE_NAMES.includes(name) || isHiddenName(name);
}

function folderFindings(folder: string): Finding[] {
  if (!entriesOf(folder)) {
    return [
      { what: "manifest", holds: false, text: `${folder} has no whole manifest.json: the set was cut, or is none` },
    ];
  }
  const listed = readManifest(folder);
  const files = listed.map(({ name, intact, fault }) => ({
    what: name,
    holds: intact,
    text: fault ?? "as it was written",
  }));
  const known = new Set(["manifest.json", ...listed.map(({ name }) => name)]);
  const strangers = namesIn(folder).filter((name) => !known.has(name) && isOurs(name));
  const others = strangers.map((name) => ({
    what: name,
    holds: false,
    text: "is not in the manifest: it is of another run",
  }));
  const plan = files.find((file) => file.what === "plan.json");
  return [...files, ...others, ...(plan?.holds ? planFindings(join(folder, "plan.json")) : [])];
}

function planFindings(file: string): Finding[] {
  const text = readPlanText(file);
  let plan: unknown;
  try {
    plan = JSON.parse(text);
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    if (/^(?:blank|pieces)\s*:/m.test(text)) throw jobGiven(file);
    return [{ what: "plan", holds: false, text: `${file} is not whole JSON: it was cut or changed, or is no plan` }];
  }
  if (isJob(plan)) throw jobGiven(file);
  return checkPlan(plan).findings;
}

/** A job written as JSON: a plan repeats these keys below others of its own. */
function isJob(value: unknown): boolean {
  if (typeof value !== "object" || value === null || "format" in value) return false;
  return "blank" in value && "pieces" in value;
}

function jobGiven(file: string): Error {
  return usage(`${file} is a job, not a plan; name the plan.json or the folder that casting make wrote from it`);
}

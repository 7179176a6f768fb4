import { dirname, join } from "node:path";
import {
  blankOf,
  candidatesHtml,
  type Job,
  makePart,
  type Note,
  type PartialPlan,
  planJson,
  toolOf,
} from "casting-core";
import type { JobOptions } from "../commands.js";
import { jobName } from "../files/read.js";
import { writeNew } from "../files/write-one.js";
import { svgDrawer } from "../outputs.js";
import { layoutRows, table } from "../report/figures.js";
import { printNotes } from "../report/notes.js";
import { progressLine } from "../report/progress.js";
import { safe, type Terminal } from "../terminal.js";
import { usage } from "../usage.js";
import { loadJob } from "./job.js";
import { part } from "./part.js";

interface LayoutOptions extends JobOptions {
  candidates?: string;
  out?: string;
  force?: boolean;
}

const MOST = 48;

/** `casting layout`: one layout and its figures, or several seeds side by side as a page. Returns the exit code. */
export async function layout(file: string, options: LayoutOptions, terminal: Terminal): Promise<number> {
  if (options.candidates === undefined) {
    if (options.out !== undefined) throw usage("--out names the page of candidates; give --candidates N with it");
    return part("layout", file, options, terminal);
  }
  const count = countOf(options.candidates);
  const { job, about } = loadJob(file, options);
  if (file === "-" && options.out === undefined)
    throw usage("a job from standard input has no name to call the page by; give --out FILE");
  const out = options.out ?? join(dirname(file), `${jobName(file)}-candidates.html`);
  const plans = about(() => candidates(job, count, terminal, options.quiet));
  writeNew(out, candidatesHtml(plans, await svgDrawer()), options.force === true);
  if (!options.quiet) printNotes(sharedNotes(plans), terminal);
  if (options.json)
    terminal.out(
      planJson({
        ...plans[0],
        tool: undefined,
        file: out,
        candidates: plans.map(({ layout, notes }) => ({ seed: layout!.seed, quality: layout!.quality, notes })),
      }),
    );
  else if (!options.quiet) {
    for (const plan of plans) terminal.out(`${table(layoutRows({ layout: plan.layout!, job: plan.job }))}\n`);
    terminal.out(`${safe(out)} shows them side by side.\n`);
  }
  return 0;
}

/** The notes that hold whichever of the layouts is chosen. */
function sharedNotes([first, ...others]: readonly PartialPlan[]): Note[] {
  return first!.notes.filter(({ text }) => others.every(({ notes }) => notes.some((note) => note.text === text)));
}

/** The layouts of the job's seed and those after it. */
function candidates(job: Job, count: number, terminal: Terminal, quiet: boolean | undefined): PartialPlan[] {
  const progress = progressLine(terminal, quiet);
  const tool = toolOf(job, blankOf(job));
  try {
    return Array.from({ length: count }, (_, n) => {
      const seed = (job.layout.seed + n) % 2 ** 32;
      const seeded = { ...job, layout: { ...job.layout, seed } };
      const at = progress.at;
      const options = at ? { progress: (stage: string, share: number) => at(stage, (n + share) / count) } : {};
      return { ...makePart(seeded, "layout", options), tool };
    });
  } finally {
    progress.end();
  }
}

function countOf(text: string): number {
  const count = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  if (count >= 1 && count <= MOST) return count;
  throw usage(`--candidates ${text.slice(0, 40)} is not a number from 1 to ${MOST}; write for example --candidates 12`);
}

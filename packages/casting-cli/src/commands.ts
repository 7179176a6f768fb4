import type { Part } from "casting-core";
import type { Command } from "commander";
import type { Terminal } from "./terminal.js";
import { list, wholeNumber } from "./usage.js";

/** What every command that reads a job understands. */
export interface JobOptions {
  json?: boolean;
  seed?: number;
  quiet?: boolean;
}

export interface MakeOptions extends JobOptions {
  out?: string;
  force?: boolean;
  dryRun?: boolean;
  paper?: string;
  only?: string[];
}

/**
 * Registers every command. Only names and help texts live here; what a command does is loaded when it is called, so that
 * help costs nothing. `done` takes a command's exit code.
 */
export function addCommands(program: Command, terminal: Terminal, done: (code: number) => void): void {
  examples(program, [
    ["casting new", "write a starter job, job.yaml, to fill in"],
    ["casting make job.yaml", "work everything out and write all files into job/"],
    ["casting mix job.yaml", "how much plaster and water, and how high in the bucket"],
    ["casting list pieces", "the nuts, washers and tiles it knows"],
  ]);

  const fresh = program
    .command("new")
    .description("write a commented starter job")
    .argument("[FILE]", "file to write", "job.yaml")
    .option("--units <UNIT>", "mm (default) or in")
    .option("--force", "replace the file that is there")
    .action(async (file, options) => done(await (await import("./commands/new.js")).newJob(file, options, terminal)));
  examples(fresh, [
    ["casting new my-tool.yaml", "a starter job under a name of your own"],
    ["casting new --units in", "one in inches"],
  ]);

  const make = program
    .command("make")
    .description("the main job: work everything out, check it, write all files")
    .argument("<JOB>", "job file, or - for standard input")
    .option("--out <DIR>", "folder to write into (default: the job's name, beside it)")
    .option("--force", "replace an earlier set; allow very many pages")
    .option("--dry-run", "work everything out, write nothing")
    .option("--paper <NAME>", "paper to print on: A4, Letter, WxH, full … (casting list papers)")
    .option("--only <KIND,...>", "only these: json, svg, pdf, dxf, csv, html, or file names", list)
    .action(async (file, options) => done(await (await import("./commands/make.js")).make(file, options, terminal)));
  jobOptions(make, "the whole plan");
  examples(make, [
    ["casting make job.yaml", "everything, into the folder job/"],
    ["casting make job.yaml --paper Letter --force", "again, for Letter paper"],
    ["casting make job.yaml --json --dry-run", "the plan as JSON, nothing written"],
  ]);

  const layout = program
    .command("layout")
    .description("lay the pieces and say how good the layout is")
    .argument("<JOB>", "job file, or - for standard input")
    .option("--candidates <N>", "draw N seeds, 48 at most, side by side on one page, to choose by eye")
    .option("--out <FILE>", "page to write (default: JOB-candidates.html beside the job)")
    .option("--force", "replace the page that is there")
    .action(async (file, options) =>
      done(await (await import("./commands/layout.js")).layout(file, options, terminal)),
    );
  jobOptions(layout, "this part of the plan");
  examples(layout, [
    ["casting layout job.yaml", "the layout and its figures"],
    ["casting layout job.yaml --candidates 12", "twelve seeds side by side, as a page"],
  ]);

  const parts: [name: Part, description: string, example: string][] = [
    ["grooves", "route the channels", "length, cuts and what cannot be cut"],
    ["setup", "prepare the first grinding pass", "offset, overhang, weights and pressures"],
  ];
  for (const [name, description, example] of parts) {
    const part = program
      .command(name)
      .description(description)
      .argument("<JOB>", "job file, or - for standard input")
      .action(async (file, options) => done((await import("./commands/part.js")).part(name, file, options, terminal)));
    jobOptions(part, "this part of the plan");
    examples(part, [[`casting ${name} job.yaml`, example]]);
  }

  const mix = program
    .command("mix")
    .description("how much plaster and water, and how high in the container; from a job or from options alone")
    .argument("[JOB]", "job file, or - for standard input; none: the options below")
    .option("--tool <LENGTH>", "tool's diameter")
    .option("--radius <LENGTH>", "radius of the glass; none: flat")
    .option("--curve <KIND>", "concave (default), convex or flat")
    .option("--fill <LENGTH>", "fill line above the glass at the tool's edge")
    .option("--plaster <KIND>", "kind of plaster (casting list plasters)")
    .option("--water <RATIO>", "g of water per g of powder")
    .option("--density <KG/L>", "solid density of a custom powder")
    .option("--spare <SHARE>", "extra mixed, such as 10%")
    .option("--container <TEXT>", 'such as "round 230mm" or "tapered 180mm 220mm 250mm"')
    .option("--powder <MASS>", "powder at hand: finds the fill or the tool that is left out")
    .option("--units <UNIT>", "mm or in, for bare numbers and the answer")
    .action(async (file, options) => done(await (await import("./commands/mix.js")).mix(file, options, terminal)));
  jobOptions(mix, "the pour");
  examples(mix, [
    ["casting mix job.yaml", "for a job"],
    [`casting mix --tool 300mm --radius 3060mm --fill 32mm --container "round 230mm"`, "from options alone"],
    [`casting mix --tool 300mm --radius 3060mm --powder 3kg`, "how deep 3 kg of powder goes"],
  ]);

  const curve = program
    .command("curve")
    .description("the curve as it stands and what is left to remove; from a job or from options alone")
    .argument("[JOB]", "job file, or - for standard input; none: the options below")
    .option("--diameter <LENGTH>", "blank's diameter; without it what the instrument spans")
    .option("--radius <LENGTH>", "radius of the glass as it is")
    .option("--focal-ratio <NUMBER>", "or its focal ratio")
    .option("--sagitta <LENGTH>", "or its depth at the centre")
    .option("--ring <LENGTH>", "or a spherometer: diameter of its circle of contact")
    .option("--legs <LENGTH>", "or spacing of its three equal legs")
    .option("--bar <LENGTH>", "or spacing of its two feet")
    .option("--ball <LENGTH>", "diameter of its feet; none: a sharp ring")
    .option("--wall <LENGTH>", "wall of a ring whose outer diameter --ring is")
    .option("--readings <LENGTHS>", "what it shows, one reading or several with commas between")
    .option("--curve <KIND>", "concave (default), convex or flat")
    .option("--target-radius <LENGTH>", "radius wanted")
    .option("--units <UNIT>", "mm or in, for bare numbers and the answer")
    .action(async (file, options) => done(await (await import("./commands/curve.js")).curve(file, options, terminal)));
  jobOptions(curve, "the curve");
  examples(curve, [
    ["casting curve job.yaml", "for a job"],
    ["casting curve --ring 125mm --ball 6mm --readings 0.642,0.645,0.639", "from readings, without a job"],
  ]);

  const tables = program
    .command("list")
    .description("the built-in tables with their sources")
    .argument("<TABLE>", "pieces, plasters, papers or grains")
    .option("--units <UNIT>", "mm (default) or in")
    .option("--json", "one JSON document on standard output")
    .action(async (table, options) => done(await (await import("./commands/list.js")).list(table, options, terminal)));
  examples(tables, [
    ["casting list plasters", "kinds of plaster, their water and where the figures come from"],
    ["casting list pieces --units in", "pieces in inches"],
  ]);

  const scale = program
    .command("scale")
    .description("write a job for another tool size and show what changes")
    .argument("<JOB>", "job file")
    .requiredOption("--tool <LENGTH>", "diameter of the new tool")
    .option("--out <FILE>", "job file to write (default: JOB-LENGTH, beside the job)")
    .option("--force", "replace the file that is there")
    .option("--json", "both plans' figures as one JSON document on standard output")
    .option("--quiet", "no messages but errors")
    .action(async (file, options) => done(await (await import("./commands/scale.js")).scale(file, options, terminal)));
  examples(scale, [["casting scale job.yaml --tool 200mm", "write job-200mm.yaml and compare the two"]]);

  const view = program
    .command("view")
    .description("a local live page of the sheets and numbers, until Ctrl-C")
    .argument("<JOB>", "job file")
    .option("--port <N>", "port on this machine (default: any that is free)")
    .action(async (file, options) => done(await (await import("./commands/view.js")).view(file, options, terminal)));
  examples(view, [["casting view job.yaml", "open the address it prints; the page follows the file"]]);

  const check = program
    .command("check")
    .description("re-measure a saved plan, or a written folder against its manifest")
    .argument("<PLAN|DIR>", "plan.json, or a folder that casting make wrote")
    .option("--json", "one JSON document on standard output")
    .action(async (target, options) =>
      done(await (await import("./commands/check.js")).check(target, options, terminal)),
    );
  examples(check, [["casting check job/", "are the files whole, and does the plan hold?"]]);
}

function jobOptions(command: Command, what: string): void {
  command
    .option("--seed <N>", "another seed than the job's", wholeNumber)
    .option("--json", `${what} as one JSON document on standard output`)
    .option("--quiet", "no messages but errors")
    .option("--no-color", "plain messages without colour");
}

function examples(command: Command, lines: [line: string, what: string][]): void {
  const width = Math.min(56, Math.max(...lines.map(([line]) => line.length)));
  const text = lines.map(([line, what]) => `  ${line.padEnd(width)}  ${what}`).join("\n");
  command.addHelpText("before", `Examples:\n${text}\n`);
}

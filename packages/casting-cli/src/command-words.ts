import type { Command } from "commander";
import { list, wholeNumber } from "./usage.js";

/** Arguments and options of more than one command. */
const JOB = ["<JOB>", "job file, or - for standard input"] as const;
const JOB_OR_OPTIONS = ["[JOB]", "job file, or - for standard input; none: the options below"] as const;
const CURVE = ["--curve <KIND>", "concave (default), convex or flat"] as const;
const UNITS = ["--units <UNIT>", "mm (default) or in"] as const;
const UNITS_OF_OPTIONS = ["--units <UNIT>", "mm or in, for bare numbers and the answer"] as const;
const FORCE = ["--force", "replace the file that is there"] as const;
const JSON_ONLY = ["--json", "one JSON document on standard output"] as const;
const QUIET = ["--quiet", "no messages but errors"] as const;

/**
 * Adds every command to the program, its name, options and help alone, and returns them by name. Commands and options stand
 * in the help in this order.
 */
export function commandsOf(program: Command) {
  examples(program, [
    ["casting new", "write a starter job, job.yaml, to fill in"],
    ["casting make job.yaml", "work everything out and write all files into job/"],
    ["casting mix job.yaml", "how much plaster and water, and how high in the bucket"],
    ["casting list pieces", "the nuts, washers and tiles it knows"],
  ]);
  return {
    new: newCommand(program),
    make: makeCommand(program),
    layout: layoutCommand(program),
    grooves: partCommand(program, "grooves", "route the channels", "length, cuts and what cannot be cut"),
    setup: partCommand(program, "setup", "prepare the first grinding pass", "offset, overhang, weights and pressures"),
    mix: mixCommand(program),
    curve: curveCommand(program),
    list: listCommand(program),
    scale: scaleCommand(program),
    view: viewCommand(program),
    check: checkCommand(program),
  };
}

function newCommand(program: Command): Command {
  const fresh = program
    .command("new")
    .description("write a commented starter job")
    .argument("[FILE]", "file to write", "job.yaml")
    .option(...UNITS)
    .option(...FORCE);
  return examples(fresh, [
    ["casting new my-tool.yaml", "a starter job under a name of your own"],
    ["casting new --units in", "one in inches"],
  ]);
}

function makeCommand(program: Command): Command {
  const make = program
    .command("make")
    .description("the main job: work everything out, check it, write all files")
    .argument(...JOB)
    .option("--out <DIR>", "folder to write into (default: the job's name, beside it)")
    .option("--force", "replace an earlier set; allow very many pages")
    .option("--dry-run", "work everything out, write nothing")
    .option("--paper <NAME>", "paper to print on: A4, Letter, WxH, full … (casting list papers)")
    .option("--only <KIND,...>", "only these: json, svg, pdf, dxf, csv, html, or file names", list);
  jobOptions(make, "the whole plan");
  return examples(make, [
    ["casting make job.yaml", "everything, into the folder job/"],
    ["casting make job.yaml --paper Letter --force", "again, for Letter paper"],
    ["casting make job.yaml --json --dry-run", "the plan as JSON, nothing written"],
  ]);
}

function layoutCommand(program: Command): Command {
  const layout = program
    .command("layout")
    .description("lay the pieces and say how good the layout is")
    .argument(...JOB)
    .option("--candidates <N>", "draw N seeds, 48 at most, side by side on one page, to choose by eye")
    .option("--out <FILE>", "page to write (default: JOB-candidates.html beside the job)")
    .option("--force", "replace the page that is there");
  jobOptions(layout, "this part of the plan");
  return examples(layout, [
    ["casting layout job.yaml", "the layout and its figures"],
    ["casting layout job.yaml --candidates 12", "twelve seeds side by side, as a page"],
  ]);
}

function partCommand(program: Command, name: string, description: string, example: string): Command {
  const part = program
    .command(name)
    .description(description)
    .argument(...JOB);
  jobOptions(part, "this part of the plan");
  return examples(part, [[`casting ${name} job.yaml`, example]]);
}

function mixCommand(program: Command): Command {
  const mix = program
    .command("mix")
    .description("how much plaster and water, and how high in the container; from a job or from options alone")
    .argument(...JOB_OR_OPTIONS)
    .option("--tool <LENGTH>", "tool's diameter")
    .option("--radius <LENGTH>", "radius of the glass; none: flat")
    .option(...CURVE)
    .option("--fill <LENGTH>", "fill line above the glass at the tool's edge")
    .option("--plaster <KIND>", "kind of plaster (casting list plasters)")
    .option("--water <RATIO>", "g of water per g of powder")
    .option("--density <KG/L>", "solid density of a custom powder")
    .option("--spare <SHARE>", "extra mixed, such as 10%")
    .option("--container <TEXT>", 'such as "round 230mm" or "tapered 180mm 220mm 250mm"')
    .option("--powder <MASS>", "powder at hand: finds the fill or the tool that is left out")
    .option(...UNITS_OF_OPTIONS);
  jobOptions(mix, "the pour");
  return examples(mix, [
    ["casting mix job.yaml", "for a job"],
    [`casting mix --tool 300mm --radius 3060mm --fill 32mm --container "round 230mm"`, "from options alone"],
    [`casting mix --tool 300mm --radius 3060mm --powder 3kg`, "how deep 3 kg of powder goes"],
  ]);
}

function curveCommand(program: Command): Command {
  const curve = program
    .command("curve")
    .description("the curve as it stands and what is left to remove; from a job or from options alone")
    .argument(...JOB_OR_OPTIONS)
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
    .option(...CURVE)
    .option("--target-radius <LENGTH>", "radius wanted")
    .option(...UNITS_OF_OPTIONS);
  jobOptions(curve, "the curve");
  return examples(curve, [
    ["casting curve job.yaml", "for a job"],
    ["casting curve --ring 125mm --ball 6mm --readings 0.642,0.645,0.639", "from readings, without a job"],
  ]);
}

function listCommand(program: Command): Command {
  const tables = program
    .command("list")
    .description("the built-in tables with their sources")
    .argument("<TABLE>", "pieces, plasters, papers or grains")
    .option(...UNITS)
    .option(...JSON_ONLY);
  return examples(tables, [
    ["casting list plasters", "kinds of plaster, their water and where the figures come from"],
    ["casting list pieces --units in", "pieces in inches"],
  ]);
}

function scaleCommand(program: Command): Command {
  const scale = program
    .command("scale")
    .description("write a job for another tool size and show what changes")
    .argument("<JOB>", "job file")
    .requiredOption("--tool <LENGTH>", "diameter of the new tool")
    .option("--out <FILE>", "job file to write (default: JOB-LENGTH, beside the job)")
    .option(...FORCE)
    .option("--json", "both plans' figures as one JSON document on standard output")
    .option(...QUIET);
  return examples(scale, [["casting scale job.yaml --tool 200mm", "write job-200mm.yaml and compare the two"]]);
}

function viewCommand(program: Command): Command {
  const view = program
    .command("view")
    .description("a local live page of the sheets and numbers, until Ctrl-C")
    .argument("<JOB>", "job file")
    .option("--port <N>", "port on this machine (default: any that is free)");
  return examples(view, [["casting view job.yaml", "open the address it prints; the page follows the file"]]);
}

function checkCommand(program: Command): Command {
  const check = program
    .command("check")
    .description("re-measure a saved plan, or a written folder against its manifest")
    .argument("<PLAN|DIR>", "plan.json, or a folder that casting make wrote")
    .option(...JSON_ONLY);
  return examples(check, [["casting check job/", "are the files whole, and does the plan hold?"]]);
}

function jobOptions(command: Command, what: string): void {
  command
    .option("--seed <N>", "another seed than the job's", wholeNumber)
    .option("--json", `${what} as one JSON document on standard output`)
    .option(...QUIET)
    .option("--no-color", "plain messages without colour");
}

function examples(command: Command, lines: [line: string, what: string][]): Command {
  const width = Math.min(56, Math.max(...lines.map(([line]) => line.length)));
  const text = lines.map(([line, what]) => `  ${line.padEnd(width)}  ${what}`).join("\n");
  return command.addHelpText("before", `Examples:\n${text}\n`);
}

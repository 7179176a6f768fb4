import {
  groovesDxf,
  jobSheetHtml,
  type Plan,
  piecesCsv,
  planJson,
  retainerDxf,
  SHEETS,
  type Sheet,
} from "casting-core";
import { MANIFEST } from "./files/manifest.js";
import type { OutFile } from "./files/write.js";
import { usage } from "./usage.js";

/** One kind of file that `make` writes. */
export interface Output {
  name: string;
  kind: "json" | "svg" | "pdf" | "dxf" | "csv" | "html";
  /** What a job must have for it, and the sheet that is there only then; absent where every plan has it. */
  needs?: { what: string; sheet: (plan: Plan) => Sheet | undefined };
  /** Its text or bytes; nothing where it does not apply to this plan. */
  draw(plan: Plan, force: boolean): string | Uint8Array | undefined | Promise<string | Uint8Array | undefined>;
}

const CONTAINER = { what: "a container in the job", sheet: SHEETS.gauge };
const SET_UP = { what: "a setup in the job", sheet: SHEETS.retainer };
const READINGS = { what: "spherometer readings in the job", sheet: SHEETS.readings };

/** Everything that `make` writes, in the order it is listed. What a format needs is loaded when it is drawn. */
const OUTPUTS: readonly Output[] = [
  { name: "plan.json", kind: "json", draw: planJson },
  svg("placement"),
  svg("grooves"),
  svg("form"),
  svg("gauge", CONTAINER),
  svg("dam"),
  svg("retainer", SET_UP),
  svg("readings", READINGS),
  {
    name: "templates.pdf",
    kind: "pdf",
    draw: async (plan, force) => (await import("./pdf/templates.js")).templatesPdf(plan, force),
  },
  { name: "grooves.dxf", kind: "dxf", draw: groovesDxf },
  { name: "retainer.dxf", kind: "dxf", needs: SET_UP, draw: retainerDxf },
  { name: "pieces.csv", kind: "csv", draw: piecesCsv },
  { name: "job-sheet.html", kind: "html", draw: async (plan) => jobSheetHtml(plan, await svgDrawer()) },
];

function svg(name: keyof typeof SHEETS, needs?: Output["needs"]): Output {
  return {
    name: `${name}.svg`,
    kind: "svg",
    ...(needs && { needs }),
    draw: async (plan) => {
      const sheet = SHEETS[name](plan);
      return sheet && (await svgDrawer())(sheet);
    },
  };
}

/** Draws sheets as SVG. svg.js and its document are slow to load, so they are imported only now. */
export async function svgDrawer(): Promise<(sheet: Sheet) => string> {
  const [{ createSVGWindow }, { sheetSvg }] = await Promise.all([import("svgdom"), import("casting-core/svg")]);
  return (sheet) => sheetSvg(sheet, createSVGWindow());
}

/** Names of all files that `make` may write, the manifest aside. */
export const FILE_NAMES: readonly string[] = OUTPUTS.map(({ name }) => name);

const KINDS = [...new Set(OUTPUTS.map((output) => output.kind))];

/** The outputs that `--only` names by kind or by file. Throws UsageError for a name that is neither. */
export async function chosenOutputs(only: readonly string[] | undefined): Promise<readonly Output[]> {
  if (!only) return OUTPUTS;
  for (const name of only) {
    if (name === "") {
      const among = only.length > 1 ? ` in "${only.join(",").slice(0, 40)}"` : "";
      throw usage(`--only has an empty name${among}; write ${KINDS.join(", ")} or file names, with commas between`);
    }
    if (OUTPUTS.some((output) => output.name === name || output.kind === name)) continue;
    if (name === MANIFEST) throw usage(`--only ${MANIFEST} names what comes with every set; leave it out`);
    const { nearest } = await import("casting-core");
    const near = nearest(name, [...KINDS, ...FILE_NAMES]);
    const hint = near ? `did you mean ${near}?` : `choose from ${KINDS.join(", ")} or file names`;
    throw usage(`--only ${name.slice(0, 40)} is neither a kind nor a file that make writes; ${hint}`);
  }
  return OUTPUTS.filter((output) => only.includes(output.name) || only.includes(output.kind));
}

/** Those of `outputs` that do not apply to `plan`, each with what it needs. */
export function lacking(plan: Plan, outputs: readonly Output[]): { name: string; needs: string }[] {
  return outputs.flatMap(({ name, needs }) =>
    needs && needs.sheet(plan) === undefined ? [{ name, needs: needs.what }] : [],
  );
}

/** The files of `plan`, drawn in full before any is written. */
export async function drawAll(plan: Plan, outputs: readonly Output[], force: boolean): Promise<OutFile[]> {
  const files: OutFile[] = [];
  for (const { name, draw } of outputs) {
    const drawn = await draw(plan, force);
    if (drawn === undefined) continue;
    files.push({ name, bytes: typeof drawn === "string" ? new TextEncoder().encode(drawn) : drawn });
  }
  return files;
}

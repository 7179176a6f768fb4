import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";
import { describe, expect, it } from "vitest";

const CORE = "packages/casting-core/src";
const CLI = "packages/casting-cli/src";
/** What is compiled to WebAssembly: parts of the layout, of the channels, of the wear and of the drawing. */
const COMPILED = ["bed", "channels", "wear", "labels"].map((folder) => `packages/casting-core/${folder}`);

/** The stages in the order of the flow: a folder imports only from those before it. */
const STAGES = ["units", "geometry", "job", "blank", "pieces", "layout", "grooves", "pour", "setup", "plan", "drawing"];
/** Tables of names and figures that import nothing of the flow but types: every stage may look things up in them. */
const TABLES = ["pieces/catalogue", "pieces/nuts", "pieces/tiles", "pieces/washers", "pour/gypsum", "blank/glass"];
/** What the core may not call: it differs between engines, or is not pure. */
const NOT_IN_CORE = [
  /\bMath\.(?!sqrt|abs|min|max|floor|round|ceil|sign|trunc|imul|fround|clz32|PI|LN2|SQRT2)\w+/,
  /(?<![*/\s])\s?\*\*(?![*/])/,
  /\bIntl\b|toLocale|localeCompare|\bDate\b|\bprocess\b|\bconsole\b/,
];

function files(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(folder, name))
    .sort();
}

/** What a file imports at run time. */
function imports(text: string): string[] {
  return [...text.matchAll(/^(?:import|export) (?!type )[^;]*?from "([^"]+)";|import\("([^"]+)"\)/gms)].map(
    (match) => match[1] ?? match[2]!,
  );
}

/** Imports that run backward through the flow. */
function backward(path: string, text: string): string[] {
  const own = relative(CORE, path).replaceAll("\\", "/");
  const stage = STAGES.indexOf(own.split("/")[0]!);
  if (!own.includes("/")) return [];
  return imports(text).flatMap((name) => {
    if (!name.startsWith(".")) return [];
    const target = relative(CORE, normalize(join(dirname(path), name)))
      .replaceAll("\\", "/")
      .replace(/\.js$/, "");
    if (!target.includes("/") || TABLES.includes(target)) return [];
    return STAGES.indexOf(target.split("/")[0]!) <= stage ? [] : [`${own} imports ${target}`];
  });
}

/** Source without comments and texts. */
function bare(text: string): string {
  return text
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .replace(/(^|\s)\/\/.*$/gm, "$1")
    .replace(/"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g, '""');
}

describe("the flow", () => {
  it("runs one way: no stage imports a later one", () => {
    expect(files(CORE).flatMap((path) => backward(path, readFileSync(path, "utf8")))).toEqual([]);
  });

  it("would be seen running backward", () => {
    expect(backward(`${CORE}/job/read.ts`, 'import { layOut } from "../layout/layout.js";')).toHaveLength(1);
  });

  it("knows every folder of the core", () => {
    const folders = readdirSync(CORE, { withFileTypes: true }).filter((entry) => entry.isDirectory());
    expect(folders.map((entry) => entry.name).sort()).toEqual([...STAGES].sort());
  });

  it("keeps the core pure: nothing of Node, no clock, no chance, no functions that differ between engines", () => {
    const faults = [...files(CORE), ...COMPILED.flatMap(files)].flatMap((path) => {
      const text = readFileSync(path, "utf8");
      const node = imports(text).filter((name) => name.startsWith("node:") || name === "svgdom");
      return [...node, ...NOT_IN_CORE.flatMap((rule) => rule.exec(bare(text))?.[0] ?? [])].map(
        (what) => `${path}: ${what}`,
      );
    });
    expect(faults).toEqual([]);
  });

  it("touches the process in one file of the command line", () => {
    const touching = files(CLI).filter((path) => /\bprocess\./.test(bare(readFileSync(path, "utf8"))));
    expect(touching.map((path) => relative(CLI, path))).toEqual(["terminal.ts"]);
  });

  it("says one version everywhere", () => {
    const version = (path: string) => (JSON.parse(readFileSync(path, "utf8")) as { version: string }).version;
    const root = version("package.json");
    expect(version("packages/casting-core/package.json")).toBe(root);
    expect(version("packages/casting-cli/package.json")).toBe(root);
    for (const path of [`${CORE}/version.ts`, `${CLI}/version.ts`]) {
      expect(readFileSync(path, "utf8")).toContain(`VERSION = "${root}"`);
    }
  });
});

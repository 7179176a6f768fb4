import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { defineConfig } from "tsdown";

/**
 * What only fonts of one's own, pictures, broken lines, compression, passwords and documents read from text need: no sheet
 * has any, and it loads slower than all the rest.
 */
const UNUSED = ["fontkit", "linebreak", "png-js", "image-size", "fflate", "@noble/ciphers/aes", "sax"];
/** By these names others import it. */
const NAMES = ["create", "openSync", "zlibSync", "cbc", "ecb"];
const NOTHING = `${NAMES.map((name) => `export const ${name} = undefined;`).join(" ")} export default undefined;`;
const own = createRequire(import.meta.url);
const core = createRequire(own.resolve("casting-core/package.json"));
/**
 * Builds that load faster than those that Node would take: pdfkit as for the browser, without Node's streams, its standard
 * fonts given to it; two as ES modules, of which only what is used is bundled and nothing is parsed twice.
 */
const BUILDS: Record<string, string> = {
  pdfkit: join(dirname(own.resolve("pdfkit")), "pdfkit.browser.mjs"),
  yaml: join(dirname(core.resolve("yaml/package.json")), "browser/index.js"),
  "@tarikjabiri/dxf": join(dirname(core.resolve("@tarikjabiri/dxf")), "index.mjs"),
};

/** Parts of the geometry library, from its own sources: points and the sides of outlines are all that is drawn with it. */
const GEOMETRY = "@flatten-js/core";
const SHAPES = ["point", "vector", "line", "circle", "segment", "arc", "box"].map((name) => `classes/${name}`);
const partOf = (name: string) => JSON.stringify(join(dirname(core.resolve(GEOMETRY)), "../src", `${name}.js`));

/** Texts of modules that take the place of others. */
const TEXTS: Record<string, string> = {
  ...Object.fromEntries(UNUSED.map((id) => [id, NOTHING])),
  [GEOMETRY]: [
    ...[...SHAPES, "algorithms/distance"].map((name) => `import ${partOf(name)};`),
    `export { default } from ${partOf("flatten")};`,
  ].join("\n"),
};

// All is bundled: few files load several times faster than hundreds.
export default defineConfig({
  entry: ["src/bin.ts"],
  format: "esm",
  platform: "node",
  target: "node20",
  noExternal: /./,
  minify: false,
  dts: false,
  plugins: [
    {
      name: "leave-out",
      resolveId: (id) => (id in TEXTS ? `\0${id}` : (BUILDS[id] ?? null)),
      load: (id) => (id.startsWith("\0") ? (TEXTS[id.slice(1)] ?? null) : null),
      // svg.js brings a stand-in for old browsers, of seventy modules; every Node has the method itself.
      transform: (code) => code.replace("__toESM(require_includes(), 1)", "{ default: (list) => list.includes }"),
      // Text of ASCII alone is read and kept in one byte a letter.
      renderChunk: (code) =>
        code.replace(/[^\0-\x7f]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, "0")}`),
    },
  ],
});

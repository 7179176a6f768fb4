import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { defineConfig } from "tsdown";

/**
 * What only fonts of one's own, pictures, broken lines, compression and passwords need: no sheet has any, and it loads
 * slower than all the rest.
 */
const UNUSED = new Set(["fontkit", "linebreak", "png-js", "image-size", "fflate", "@noble/ciphers/aes"]);
/** By these names others import it. */
const NAMES = ["create", "openSync", "zlibSync", "cbc", "ecb"];
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
      resolveId: (id) => (UNUSED.has(id) ? `\0${id}` : (BUILDS[id] ?? null)),
      load: (id) =>
        id.startsWith("\0") && UNUSED.has(id.slice(1))
          ? `${NAMES.map((name) => `export const ${name} = undefined;`).join(" ")} export default undefined;`
          : null,
    },
  ],
});

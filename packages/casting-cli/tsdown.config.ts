import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { defineConfig } from "tsdown";

/** What only fonts of one's own, pictures and broken lines need: no sheet has any, and it loads slower than all the rest. */
const UNUSED = new Set(["fontkit", "linebreak", "png-js", "image-size"]);
/** pdfkit as for the browser: without Node's streams, its standard fonts given to it. */
const PDFKIT = join(dirname(createRequire(import.meta.url).resolve("pdfkit")), "pdfkit.browser.mjs");

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
      resolveId: (id) => (UNUSED.has(id) ? `\0${id}` : id === "pdfkit" ? PDFKIT : null),
      load: (id) =>
        id.startsWith("\0") && UNUSED.has(id.slice(1))
          ? "export const create = undefined, openSync = undefined; export default undefined;"
          : null,
    },
  ],
});

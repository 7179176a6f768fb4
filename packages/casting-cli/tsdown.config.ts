import { defineConfig } from "tsdown";

// Core, zod, yaml and the rest are bundled: few files load several times faster than hundreds.
// svgdom and pdfkit read font files beside their own code, so they stay outside and are imported late.
export default defineConfig({
  entry: ["src/bin.ts"],
  format: "esm",
  platform: "node",
  target: "node20",
  noExternal: (id) => id !== "svgdom" && id !== "pdfkit",
  external: ["svgdom", "pdfkit"],
  dts: false,
});

import { defineConfig } from "tsdown";

// Core, zod and yaml are bundled: one file loads several times faster than hundreds.
// svgdom and pdfkit read font files beside their own code, so they stay outside and are imported late.
export default defineConfig({
  entry: ["src/bin.ts"],
  format: "esm",
  platform: "node",
  target: "node20",
  noExternal: [/^casting-core/, "zod", "yaml", /^@svgdotjs/, /^@flatten-js/],
  external: ["svgdom", "pdfkit"],
  dts: false,
});

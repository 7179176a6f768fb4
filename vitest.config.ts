import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  resolve: {
    alias: {
      "casting-core/svg": fileURLToPath(new URL("packages/casting-core/src/drawing/svg.ts", import.meta.url)),
      "casting-core": fileURLToPath(new URL("packages/casting-core/src/index.ts", import.meta.url)),
    },
  },
  test: { include: ["test/**/*.test.ts"], testTimeout: 60_000 },
});
